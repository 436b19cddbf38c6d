"""The form of a workshop's word for how far a bore by hand may be off."""

from __future__ import annotations

from kerfolio.basis.digits import digits
from kerfolio.basis.said import written
from kerfolio.model.hand_bore import HandBore
from kerfolio.reading.play import MmForm
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import number

_OFF, _TILT = digits(HandBore().off), digits(HandBore().tilt)

HAND_BORE: Record[HandBore] = Record(
    name="hand-bore",
    noun="how far a bore by hand may be off",
    keys=(
        Key(name="off", form=MmForm(), says=f"Beside its mark, where it begins ({_OFF} mm)."),
        Key(name="tilt", form=number(0, 10), says=f"Out of square, in degrees ({_TILT})."),
    ),
    make=HandBore,
    placed=False,
    advice=written("{off: 0.3 mm, tilt: 0.5}", "{off: 1/64 in, tilt: 0.5}"),
)
