"""What tells edges of a part from each other, and rows of like features on one edge."""

from __future__ import annotations

from typing import Protocol

from kerfolio.geometry.contour import Point

EdgeKey = tuple[int, int, int]
"""An edge of a part: its way out in hundredths, and how far out it lies in tenths of a mm."""

_SLACK = (1, 1, 2)


class OnEdge(Protocol):
    """A tab or a notch: where it lies, its way out, its width and depth, mm."""

    @property
    def at(self) -> Point:
        """Where it lies."""

    @property
    def out(self) -> Point:
        """The unit vector out of the part."""

    @property
    def width(self) -> float:
        """Its width, mm."""

    @property
    def depth(self) -> float:
        """Its depth, mm."""


def edge_key(out: Point, at: Point) -> EdgeKey:
    """Return the edge with that way out on which a point lies."""
    level = at[0] * out[0] + at[1] * out[1]
    return round(out[0] * 100), round(out[1] * 100), round(level * 10)


def is_same_edge(one: EdgeKey, other: EdgeKey) -> bool:
    """Tell whether two keys mean one edge, rounding apart."""
    return all(abs(a - b) <= slack for a, b, slack in zip(one, other, _SLACK, strict=True))


def row_key(feature: OnEdge) -> tuple[int, ...]:
    """Return what tabs, or notches, on one edge and of one size have in common."""
    sizes = round(feature.width * 10), round(feature.depth * 10)
    return (*edge_key(feature.out, feature.at), *sizes)
