"""How the tiles of a template lie: each page's place on the drawing, from the tile's name."""

from __future__ import annotations

import re
from dataclasses import dataclass
from math import ceil

from kerfolio.geometry.contour import Point
from kerfolio.paper.tiling import MARGIN, OVERLAP

Box = tuple[float, float, float, float]

_TILE = re.compile(r" · tile ([0-9]+)-([0-9]+): ")
_SLACK = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Tiles:
    """A drawing's box on pages of a size, mm, that share ``OVERLAP`` with their neighbours.

    Of what ``columns`` and ``rows`` of them cover too much, ``share`` lies at the left and at the
    bottom: seams are moved there to keep clear of what is cut.
    """

    box: Box
    page: tuple[float, float]
    share: Point

    @property
    def columns(self) -> int:
        """How many pages lie side by side."""
        return _count(self.box[2] - self.box[0], self.page[0])

    @property
    def rows(self) -> int:
        """How many pages lie above one another."""
        return _count(self.box[3] - self.box[1], self.page[1])

    def origin(self, column: int, row: int) -> Point:
        """Return where the drawing's 0,0 lies on a page, mm from its lower left corner."""
        left, bottom, right, top = self.box
        x = _start((left, right), self.page[0], self.columns, column, self.share[0])
        y = _start((bottom, top), self.page[1], self.rows, self.rows - 1 - row, self.share[1])
        return MARGIN - x, MARGIN - y

    def window(self, column: int, row: int) -> Box:
        """Return what of the drawing shows on a page: left, bottom, right, top."""
        x, y = self.origin(column, row)
        left, bottom = MARGIN - x, MARGIN - y
        return left, bottom, left + _room(self.page[0]), bottom + _room(self.page[1])

    def words(self, column: int, row: int) -> str:
        """Return how a page tells its place."""
        return (
            f"tile {row + 1}-{column + 1}: row {row + 1} of {self.rows}, "
            f"column {column + 1} of {self.columns}"
        )


def place_told(text: str, part: str) -> tuple[int, int] | None:
    """Return the column and row, from 0, that words tell of a part; None where they tell none."""
    before, _, _ = text.partition(" · tile ")
    found = _TILE.search(text)
    return (int(found[2]) - 1, int(found[1]) - 1) if found and before.endswith(part) else None


def _room(side: float) -> float:
    return side - 2 * MARGIN


def _count(length: float, side: float) -> int:
    if length <= _room(side) + _SLACK:
        return 1
    return ceil((length - OVERLAP) / (_room(side) - OVERLAP) - _SLACK)


def _start(ends: Point, side: float, count: int, index: int, share: float) -> float:
    """Return where a tile's window begins on the drawing, along one axis."""
    low, high = ends
    step = _room(side) - OVERLAP
    spare = count * step + OVERLAP - (high - low)
    return low - spare * share + index * step
