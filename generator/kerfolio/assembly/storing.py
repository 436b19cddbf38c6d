"""How things are stored and carried: flat, on top of one another, by one person or two."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.extent import box_around
from kerfolio.assembly.stability import Stability, pile_of
from kerfolio.geometry.hull import encloses, least_rectangle
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.stacking import stacked

_NESTS = 5.0
"""What saves no more than this in height, mm, is stacked rather than nested."""

LOAD_CONSTANT = 23.0
"""kg that one person lifts close to the body, of the NIOSH lifting equation (NIOSH 94-110)."""
_CLOSE, _FARTHEST = 25.0, 63.0
"""cm from the ankles to the hands, where its horizontal multiplier 25 / H is 1 and becomes 0."""
_BODY = 20.0
"""cm from the ankles to the near side of what is carried: H = 20 + W / 2 (from memory)."""
LONG = 1800.0
"""What is longer than this, mm, two carry (common practice, no single source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OnTop:
    """A second one moved straight down on to the first: how much higher it stands, mm.

    ``saved`` is what it stands lower than its own height. ``rests``: what bears it is around its
    centre of mass, so that it stays there by itself.
    """

    lift: float
    saved: float
    rests: bool

    @property
    def nests(self) -> bool:
        """Whether it sits in the first rather than on it."""
        return self.saved > _NESTS


def on_top(assembled: Assembled, stability: Stability) -> OnTop:
    """Return how a second one of a thing stands on the first."""
    found = stacked((each.panel, each.pose) for each in assembled.pieces)
    least, _ = box_around(assembled.pieces)
    middle = stability.centre[0] + least[0], stability.centre[1] + least[1]
    return OnTop(
        lift=found.lift,
        saved=stability.size[2] - found.lift,
        rests=encloses(found.bearing, middle),
    )


def carried_by(mass: float, size: Vector) -> int:
    """Return how many persons carry a thing of so many kg and mm: 1, 2, or 3 for more.

    One lifts 23 kg x 25 / H, H = 20 + W / 2 cm, W being its lesser side across (NIOSH 94-110, its
    other multipliers taken as 1), and what is no longer than ``LONG``. Two stand at its ends, close
    to it: twice 23 kg.
    """
    if mass <= lifted(size) and max(size) <= LONG:
        return 1
    return 2 if mass <= 2 * LOAD_CONSTANT else 3


def lifted(size: Vector) -> float:
    """Return how much one person lifts of a thing of that size, kg."""
    reach = _BODY + min(size[:2]) / 20
    if reach > _FARTHEST:
        return 0.0
    return LOAD_CONSTANT * min(1.0, _CLOSE / reach)


def laid_flat(pieces: Sequence[PosedPiece]) -> Vector:
    """Return pieces in a pile in which small ones lie side by side: long, short, high, mm.

    The pile covers no more than the longest by the widest of them. Rows of each layer are filled by
    the first piece that fits, thick and wide ones first, along the pile or across it: an upper
    bound, as a closer way may exist.
    """
    sizes = [(*least_rectangle(each.panel.shape), each.panel.thickness) for each in pieces]
    long, short, _ = pile_of(pieces)
    ordered = sorted(sizes, key=lambda size: (-size[2], -size[1], -size[0]))
    return long, short, min(_layered(ordered, long, short, across) for across in (False, True))


def _layered(sizes: Sequence[Vector], long: float, short: float, across: bool) -> float:
    """Return how high the layers are; ``across``: pieces lie across the pile where they can."""
    layers: list[_Layer] = []
    for size in sizes:
        if not any(layer.takes(size, across) for layer in layers):
            layers.append(_Layer(long, short, size[2]))
            layers[-1].takes(size, across)
    return math.fsum(layer.thickness for layer in layers)


@dataclass(slots=True)
class _Layer:
    """A layer of a pile: rows along its length, each as deep as its first piece."""

    long: float
    short: float
    thickness: float
    rows: list[list[float]] = field(default_factory=list)

    def takes(self, size: Vector, across: bool) -> bool:
        """Lay a piece down where there is room for it; tell whether there was."""
        both = (size[0], size[1]), (size[1], size[0])
        for along, deep in both[::-1] if across else both:
            for row in self.rows:
                if deep <= row[0] + _SAME and row[1] + along <= self.long + _SAME:
                    row[1] += along
                    return True
            if along <= self.long + _SAME and deep <= self.left + _SAME:
                self.rows.append([deep, along])
                return True
        return False

    @property
    def left(self) -> float:
        """The depth that no row takes, mm."""
        return self.short - math.fsum(row[0] for row in self.rows)


_SAME = 1e-6
