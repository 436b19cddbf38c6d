"""The shape of a wedge: a straight side, two ends square to it, and a side that slants."""

from __future__ import annotations

from dataclasses import dataclass
from math import dist

from kerfolio.adopting.corners import corners_of
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.transform import turn_of

_TAPER = (1 / 25, 1 / 4)
"""A wedge becomes so much wider for its length; good ones 1 in 8 to 1 in 6 (common practice)."""

_LONG = (2.0, 300.0)
"""It is so many times as long as it is wide at least, and so long, mm, at most."""

_SQUARE = 0.01
_TURNED = 1e-4


@dataclass(frozen=True, slots=True, kw_only=True)
class WedgeShape:
    """A wedge: the turn, degrees, that brings it upright, the end that goes in first at the bottom.

    Then its straight side lies at the ``left`` or not; ``thin`` and ``thick`` are its ends, mm.
    """

    turn: float
    left: bool
    thin: float
    thick: float
    length: float

    def across(self, width: float) -> float:
        """Return how far up it is so wide, mm."""
        return self.length * (width - self.thin) / (self.thick - self.thin)


def wedge_shape(outline: Contour) -> WedgeShape | None:
    """Return the wedge that an outline is: two ends square to a side, the fourth slanted."""
    corners = corners_of(outline)
    if corners is None or len(corners) != 4:
        return None
    spots = [each.at for each in corners]
    sides = [(spots[i], spots[(i + 1) % 4]) for i in range(4)]
    for index, (start, end) in enumerate(sides):
        size = dist(start, end)
        along = ((end[0] - start[0]) / size, (end[1] - start[1]) / size)
        ends = sides[index - 1], sides[(index + 1) % 4]
        widths = [dist(*each) for each in ends]
        skew = max(
            abs((b[0] - a[0]) * along[0] + (b[1] - a[1]) * along[1]) / dist(a, b) for a, b in ends
        )
        thin, thick = sorted(widths)
        if skew > _SQUARE or not _TAPER[0] <= (thick - thin) / size <= _TAPER[1]:
            continue
        if not _LONG[0] * thick <= size <= _LONG[1]:
            continue
        # Counter-clockwise, what is wood lies left of the side: upwards that is a right-hand side.
        rises = widths[1] > widths[0]
        up = along if rises else (0.0 - along[0], 0.0 - along[1])
        turn = (270.0 - turn_of(up)) % 360 - 180
        return WedgeShape(
            turn=0.0 if abs(turn) < _TURNED else turn,
            left=not rises,
            thin=thin,
            thick=thick,
            length=size,
        )
    return None
