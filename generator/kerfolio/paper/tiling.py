"""How a full-size drawing is cut into pages that overlap."""

from __future__ import annotations

import math
from dataclasses import dataclass

MARGIN = 10.0
"""Kept clear of the drawing on all sides of a page, mm."""
EDGE = 6.0
"""Nothing at all is printed nearer to the edge of a page, mm: many printers cannot."""
OVERLAP = 10.0
"""Shared by neighbouring tiles, mm: a strip to lay one over the other."""

_SLACK = 1e-9

Spot = tuple[int, int]
"""A tile's column from the left and its row from the top, from 0."""
Size = tuple[float, float]


def tile_count(length: float, printable: float, overlap: float = OVERLAP) -> int:
    """Return how many tiles of a printable length cover a length, all in mm.

    One where it fits, else ceil((length - overlap) / (printable - overlap)).
    """
    if length <= printable + _SLACK:
        return 1
    return math.ceil((length - overlap) / (printable - overlap) - _SLACK)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tile:
    """One page's window on a drawing; ``left`` and ``bottom`` in mm from the drawing's corner."""

    column: int
    row: int
    left: float
    bottom: float

    @property
    def name(self) -> str:
        """Return ``2-1`` for the first tile of the second row, as no piece is marked."""
        return tile_name((self.column, self.row))


def tile_name(spot: Spot) -> str:
    """Return what a tile is called: its row from the top, then its column from the left."""
    return f"{spot[1] + 1}-{spot[0] + 1}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tiling:
    """How tiles lie on a drawing, whatever its exact size: pages ``page`` mm wide and high.

    Rows count from the top, columns from the left: the order in which paper is laid. ``share`` is
    how much of what the tiles cover too much lies at the left and at the bottom; tiles
    ``left_out`` are not printed.
    """

    page: Size
    columns: int
    rows: int
    share: Size = (0.5, 0.5)
    left_out: frozenset[Spot] = frozenset()

    @property
    def window(self) -> Size:
        """What of a page is printed with the drawing, across and up, mm."""
        return self.page[0] - 2 * MARGIN, self.page[1] - 2 * MARGIN

    @property
    def step(self) -> Size:
        """How far one tile is from the next, across and up, mm."""
        return self.window[0] - OVERLAP, self.window[1] - OVERLAP

    @property
    def spots(self) -> tuple[Spot, ...]:
        """All tiles, row by row from the top."""
        return tuple((c, r) for r in range(self.rows) for c in range(self.columns))

    @property
    def printed(self) -> tuple[Spot, ...]:
        """The tiles to print, in order."""
        return tuple(spot for spot in self.spots if spot not in self.left_out)

    def spare(self, size: Size) -> Size:
        """Return how much wider and higher than a drawing that is what the tiles cover, mm."""
        wide, high = self.step
        return self.columns * wide + OVERLAP - size[0], self.rows * high + OVERLAP - size[1]

    def tile(self, spot: Spot, size: Size) -> Tile:
        """Return a tile's place on a drawing ``size`` mm wide and high."""
        (column, row), spare = spot, self.spare(size)
        return Tile(
            column=column,
            row=row,
            left=column * self.step[0] - spare[0] * self.share[0],
            bottom=(self.rows - 1 - row) * self.step[1] - spare[1] * self.share[1],
        )

    def box(self, tile: Tile) -> tuple[float, float, float, float]:
        """Return a tile's window on the drawing: left, bottom, right, top."""
        return tile.left, tile.bottom, tile.left + self.window[0], tile.bottom + self.window[1]


def even_tiling(size: Size, page: Size) -> Tiling:
    """Return the tiling of a drawing on a page, the drawing in the middle of what it covers."""
    columns, rows = (
        tile_count(length, side - 2 * MARGIN) for length, side in zip(size, page, strict=True)
    )
    return Tiling(page=page, columns=columns, rows=rows)
