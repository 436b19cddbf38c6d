"""The forms of what can be carried home, and of the bed of a machine."""

from __future__ import annotations

from kerfolio.basis.said import written
from kerfolio.model.carrying import Carries
from kerfolio.reading.record import Key, Record
from kerfolio.reading.values import SHEET_SIZE, number

CARRIES: Record[Carries] = Record(
    name="carries",
    noun="what can be carried",
    keys=(
        Key(name="size", form=SHEET_SIZE, says="The largest blank the car takes (1700 x 1000 mm)."),
        Key(name="kg", form=number(1, 1000), says="The heaviest that is lifted (25)."),
    ),
    make=Carries,
    placed=False,
    advice=written("{size: 1700 x 1000 mm, kg: 25}", "{size: 66 x 40 in, kg: 25}"),
)
