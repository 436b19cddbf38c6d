"""The form of a workshop's word for how far a bore by hand may be off."""

from __future__ import annotations

from kerfolio.basis.said import written
from kerfolio.model.hand_bore import HandBore
from kerfolio.reading.play import MmForm
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import number

HAND_BORE: Record[HandBore] = Record(
    name="hand-bore",
    noun="how far a bore by hand may be off",
    keys=(
        Key(name="off", form=MmForm(), says="Beside its mark, where it begins (0.5 mm)."),
        Key(name="tilt", form=number(0, 10), says="Out of square, in degrees (1)."),
    ),
    make=HandBore,
    placed=False,
    advice=written("{off: 0.3 mm, tilt: 0.5}", "{off: 1/64 in, tilt: 0.5}"),
)
