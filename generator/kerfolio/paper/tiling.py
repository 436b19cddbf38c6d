"""How a full-size drawing is cut into pages that overlap."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.model.stock import PaperStock

MARGIN = 10.0
"""Kept clear on all sides of a page, mm: most printers cannot print nearer to the edge."""
OVERLAP = 10.0
"""Shared by neighbouring tiles, mm: a strip to lay one over the other."""

_SLACK = 1e-9


def tile_count(length: float, printable: float, overlap: float = OVERLAP) -> int:
    """Return how many tiles of a printable length cover a length, all in mm.

    One where it fits, else ceil((length - overlap) / (printable - overlap)).
    """
    if length <= printable + _SLACK:
        return 1
    return math.ceil((length - overlap) / (printable - overlap) - _SLACK)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tile:
    """One page's window on the drawing; ``left`` and ``bottom`` in mm from the drawing's corner.

    Columns are letters from the left, rows numbers from the top: the order in which paper is laid.
    """

    column: int
    row: int
    left: float
    bottom: float

    @property
    def name(self) -> str:
        """Return ``A1`` for the upper left tile."""
        return f"{letters(self.column)}{self.row + 1}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Tiling:
    """All tiles of a drawing on a page ``page`` mm wide and high, ``window`` of it printable."""

    page: tuple[float, float]
    window: tuple[float, float]
    columns: int
    rows: int
    tiles: tuple[Tile, ...]

    @property
    def step(self) -> tuple[float, float]:
        """How far one tile is from the next, across and up, mm."""
        return self.window[0] - OVERLAP, self.window[1] - OVERLAP

    def box(self, tile: Tile) -> tuple[float, float, float, float]:
        """Return a tile's window on the drawing: left, bottom, right, top."""
        return tile.left, tile.bottom, tile.left + self.window[0], tile.bottom + self.window[1]


def letters(index: int) -> str:
    """Return A, B ... Z, AA, AB ... for 0, 1 ..."""
    name = ""
    index += 1
    while index:
        index, rest = divmod(index - 1, 26)
        name = chr(ord("A") + rest) + name
    return name


def tiling(width: float, height: float, paper: PaperStock) -> Tiling:
    """Return the tiling of a drawing ``width`` x ``height`` mm with the fewest pages.

    The paper stands or lies, whichever needs fewer pages, standing when both are equal.
    """
    upright = _tiling(width, height, (paper.width, paper.height))
    lying = _tiling(width, height, (paper.height, paper.width))
    return lying if len(lying.tiles) < len(upright.tiles) else upright


def _tiling(width: float, height: float, page: tuple[float, float]) -> Tiling:
    window = (page[0] - 2 * MARGIN, page[1] - 2 * MARGIN)
    columns, rows = tile_count(width, window[0]), tile_count(height, window[1])
    return Tiling(
        page=page,
        window=window,
        columns=columns,
        rows=rows,
        tiles=tuple(_tiles((width, height), window, columns, rows)),
    )


def _tiles(
    size: tuple[float, float], window: tuple[float, float], columns: int, rows: int
) -> Iterator[Tile]:
    """Yield tiles row by row from the top; the drawing stands in the middle of what they cover."""
    step = (window[0] - OVERLAP, window[1] - OVERLAP)
    spare_x = columns * step[0] + OVERLAP - size[0]
    spare_y = rows * step[1] + OVERLAP - size[1]
    for row in range(rows):
        for column in range(columns):
            yield Tile(
                column=column,
                row=row,
                left=column * step[0] - spare_x / 2,
                bottom=(rows - 1 - row) * step[1] - spare_y / 2,
            )
