"""How far what lies on others reaches past them: at either end, and which spot that is over."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.assembly.extent import box_around, corners
from kerfolio.assembly.set_together import SetTogether
from kerfolio.geometry.rigid import Vector

LEAST = 1.0
"""What reaches out no farther than this, mm, ends where it is borne."""


@dataclass(frozen=True, slots=True)
class Overhang:
    """An end of the piece ``label`` that reaches ``far`` mm past what bears it.

    ``low`` and ``high`` are the corners of the box round the piece at home, ``end`` is where along
    x it ends, and ``foot`` the outermost spot of what bears it there.
    """

    label: str
    far: float
    low: Vector
    high: Vector
    end: float
    foot: Vector


def overhangs_in(together: SetTogether) -> Iterator[Overhang]:
    """Yield the ends of each single piece that lies on others; of twins those of the first."""
    for row in together.rows:
        lying = together.stood[row.lying.name, 1].pieces
        bearing = [piece for spot in row.supports for piece in together.stood[spot].pieces]
        spots = [spot for piece in bearing for spot in corners(piece)]
        if len(lying) > 1:
            continue
        low, high = box_around(lying)
        for far, side, end in zip(row.overhangs, (-1.0, 1.0), (low[0], high[0]), strict=True):
            if far > LEAST:
                foot = max((round(side * at[0], 6), -at[2], at) for at in spots)[2]
                yield Overhang(lying[0].label, far, low, high, end, foot)
