"""Plane faces of a solid, each with the material behind it, and the edges between them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.geometry.panel_mesh import Corners, triangles_of
from kerfolio.geometry.solid_faces import FacesMade, Spot


@dataclass(frozen=True, slots=True)
class Surface:
    """A plane face: loops with the material behind them, the outer one first."""

    loops: tuple[tuple[Spot, ...], ...]
    normal: Spot

    def make(self, made: FacesMade) -> None:
        """Add it to the faces of a solid."""
        made.face([list(each) for each in self.loops], self.normal)

    def triangles(self) -> Iterator[Corners]:
        """Yield its triangles, counter-clockwise seen from outside."""
        first, *openings = self.loops
        if not openings and len(first) <= 4:  # walls
            for b, c in pairwise(first[1:]):
                yield first[0], b, c
            return
        axis = max(range(3), key=lambda each: (abs(self.normal[each]), each))
        flat = [[_turned(spot, axis) for spot in loop] for loop in self.loops]
        for each in triangles_of(flat, up=self.normal[axis] > 0):
            a, b, c = (_turned(spot, 1 - axis) for spot in each)
            yield a, b, c


def _turned(spot: Spot, axis: int) -> Spot:
    """Return a spot with its axes moved on so that one becomes z; 1 less the axis moves back."""
    by = (axis - 2) % 3
    return spot[by], spot[(1 + by) % 3], spot[(2 + by) % 3]


def joined(made: FacesMade) -> None:
    """Make the edges: the sides that two faces share."""
    owner: dict[tuple[Spot, Spot], int] = {}
    bounds = [*made.firsts, len(made.loops)]
    for number, (first, last) in enumerate(pairwise(bounds)):
        for loop in made.loops[first:last]:
            for a, b in pairwise([*loop, loop[0]]):
                other = owner.pop((b, a), None)
                if other is None:
                    owner[a, b] = number
                else:
                    made.edge(a, b, other, number)
