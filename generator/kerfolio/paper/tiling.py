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
Box = tuple[float, float, float, float]


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
    """How tiles lie on a drawing: pages ``page`` mm wide and high.

    ``across`` is where the window of each column begins from the drawing's left, ``up`` that of
    each row from its bottom, mm. Rows count from the top, columns from the left: the order in which
    paper is laid. Tiles ``left_out`` are not printed.
    """

    page: Size
    across: tuple[float, ...]
    up: tuple[float, ...]
    left_out: frozenset[Spot] = frozenset()

    @property
    def columns(self) -> int:
        """How many tiles lie side by side."""
        return len(self.across)

    @property
    def rows(self) -> int:
        """How many tiles lie above one another."""
        return len(self.up)

    @property
    def window(self) -> Size:
        """What of a page is printed with the drawing, across and up, mm."""
        return window_of(self.page)

    @property
    def covered(self) -> Box:
        """What of the drawing all windows cover, from its lower left corner, mm."""
        wide, high = self.window
        return self.across[0], self.up[-1], self.across[-1] + wide, self.up[0] + high

    @property
    def seams(self) -> tuple[tuple[float, ...], tuple[float, ...]]:
        """Where neighbours are laid edge to edge: from the left, and from the bottom, mm."""
        half = OVERLAP / 2
        return tuple(x + half for x in self.across[1:]), tuple(y + half for y in self.up[:-1])

    @property
    def spots(self) -> tuple[Spot, ...]:
        """All tiles, row by row from the top."""
        return tuple((c, r) for r in range(self.rows) for c in range(self.columns))

    @property
    def printed(self) -> tuple[Spot, ...]:
        """The tiles to print, in order."""
        return tuple(spot for spot in self.spots if spot not in self.left_out)

    def tile(self, spot: Spot) -> Tile:
        """Return a tile's place on the drawing."""
        column, row = spot
        return Tile(column=column, row=row, left=self.across[column], bottom=self.up[row])

    def box(self, spot: Spot) -> Box:
        """Return a tile's window on the drawing: left, bottom, right, top."""
        (column, row), (wide, high) = spot, self.window
        x, y = self.across[column], self.up[row]
        return x, y, x + wide, y + high


def window_of(page: Size) -> Size:
    """Return what of a page is printed with the drawing, across and up, mm."""
    return page[0] - 2 * MARGIN, page[1] - 2 * MARGIN


def full_step(page: Size) -> Size:
    """Return how far one tile can be from the next at most, across and up, mm."""
    wide, high = window_of(page)
    return wide - OVERLAP, high - OVERLAP
