"""What lies between the straight edges of an outline: corners, roundings, and whatever curves."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.adopting.corners import Corner, rounding
from kerfolio.geometry.arc import Edge, edges
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour, Point

_MOST = 64
"""An outline of more edges is drawn, not stated."""

_FEW = 2


@dataclass(frozen=True, slots=True)
class Turning:
    """Where one straight edge ends and the next begins: a point, or curves between the two."""

    start: Point
    curves: tuple[Edge, ...] = ()
    corner: Corner | None = None

    @property
    def end(self) -> Point:
        """Where the next straight edge begins."""
        return self.curves[-1].end if self.curves else self.start


def turnings_of(contour: Contour) -> tuple[Turning, ...] | None:
    """Return the turnings of a closed contour: straight edge i begins at the i-th.

    None where it has too few straight edges to be stated by them, or too many edges.
    """
    walls = list(edges(tidy(contour)))
    straight = [index for index, wall in enumerate(walls) if not wall.bulge]
    if len(straight) < _FEW or len(walls) > _MOST:
        return None
    found = []
    for place, index in enumerate(straight):
        before = straight[place - 1]
        count = (index - before - 1) % len(walls)
        curves = tuple(walls[(before + 1 + step) % len(walls)] for step in range(count))
        found.append(_turning(walls[before], curves, walls[index]))
    return tuple(found)


def _turning(before: Edge, curves: tuple[Edge, ...], after: Edge) -> Turning:
    if not curves:
        return Turning(after.start, corner=Corner(after.start))
    corner = rounding(before, curves[0], after) if len(curves) == 1 else None
    return Turning(before.end, curves, corner)
