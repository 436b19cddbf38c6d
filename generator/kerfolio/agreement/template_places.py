"""How the tiles of a template lie: each page's place on the drawing, from the tile's name."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.geometry.contour import Point
from kerfolio.paper.tiling import MARGIN, OVERLAP

Box = tuple[float, float, float, float]

_NAME = "0-0"
_TILE = re.compile("([0-9]+)-([0-9]+): ")
_SLACK = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Tiles:
    """A drawing's box on pages of a size, mm, that share ``OVERLAP`` or more with neighbours.

    ``across`` and ``up`` are where columns and rows begin, mm from its left and from its bottom:
    seams are moved there to keep clear of what is cut. ``reader`` is whom the pages are for.
    """

    box: Box
    page: tuple[float, float]
    across: tuple[float, ...]
    up: tuple[float, ...]
    reader: Reader

    @property
    def columns(self) -> int:
        """How many pages lie side by side."""
        return len(self.across)

    @property
    def rows(self) -> int:
        """How many pages lie above one another."""
        return len(self.up)

    def faults(self) -> Iterator[str]:
        """Yield on which side the pages leave something of the drawing uncovered, or a gap."""
        left, bottom, right, top = self.box
        for name, starts, length, side in (
            ("across", self.across, right - left, self.page[0]),
            ("up", self.up[::-1], top - bottom, self.page[1]),
        ):
            apart = [b - a for a, b in pairwise(starts)]
            covers = starts[0] <= _SLACK and starts[-1] + _room(side) >= length - _SLACK
            if not covers or max(apart, default=0.0) > _room(side) - OVERLAP + _SLACK:
                yield f"they leave a gap {name}"

    def origin(self, column: int, row: int) -> Point:
        """Return where the drawing's 0,0 lies on a page, mm from its lower left corner."""
        left, bottom, _, _ = self.box
        return MARGIN - left - self.across[column], MARGIN - bottom - self.up[row]

    def window(self, column: int, row: int) -> Box:
        """Return what of the drawing shows on a page: left, bottom, right, top."""
        x, y = self.origin(column, row)
        left, bottom = MARGIN - x, MARGIN - y
        return left, bottom, left + _room(self.page[0]), bottom + _room(self.page[1])

    def words(self, column: int, row: int) -> str:
        """Return how a page tells its place."""
        return say(
            self.reader,
            "tiles-place",
            tile=f"{row + 1}-{column + 1}",
            row=row + 1,
            rows=self.rows,
            column=column + 1,
            columns=self.columns,
        )


def place_told(text: str, part: str, reader: Reader) -> tuple[int, int] | None:
    """Return the column and row, from 0, that words tell of a part; None where they tell none."""
    if part not in text:  # nearly all words of a page: the catalogue is not asked for them
        return None
    place = say(reader, "tiles-place", tile=_NAME, row=1, rows=1, column=1, columns=1)
    told, _, rest = text.partition(f" · {place.partition(_NAME)[0]}")
    found = _TILE.match(rest)
    return (int(found[2]) - 1, int(found[1]) - 1) if found and told.endswith(part) else None


def _room(side: float) -> float:
    return side - 2 * MARGIN
