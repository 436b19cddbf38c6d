"""Pieces into strips, strips into columns, columns into pieces: three stages of saw cuts.

Whole numbers throughout, in the frame of the strips: u along a strip, v from strip to strip. Every
size has a kerf in it, and so has the sheet's room: then sizes add up without one.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace

Size = tuple[int, int]


@dataclass(slots=True)
class Column:
    """A length of a strip: ``width`` along it; its pieces (number, u, v) from the near edge up."""

    width: int
    used: int = 0
    pieces: list[tuple[int, int, int]] = field(default_factory=list)


@dataclass(slots=True)
class Strip:
    """A strip across the whole sheet: ``height`` is its width on the saw."""

    height: int
    used: int = 0
    columns: list[Column] = field(default_factory=list)


@dataclass(slots=True)
class Levels:
    """A sheet in strips; ``turned`` when they run along the sheet's y, that is, cross-cut first."""

    turned: bool
    used: int = 0
    area: int = 0
    strips: list[Strip] = field(default_factory=list)

    @property
    def pieces(self) -> list[int]:
        """Numbers of the pieces on the sheet."""
        return [
            each[0] for strip in self.strips for column in strip.columns for each in column.pieces
        ]

    @property
    def settings(self) -> int:
        """How often the fence is set: once for each different distance in each stage."""
        columns = [column for strip in self.strips for column in strip.columns]
        stages: tuple[set[int], ...] = (
            {strip.height for strip in self.strips},
            {column.width for column in columns},
            {v for s in self.strips for c in s.columns for *_, v in c.pieces if v < s.height},
            {u for column in columns for _, u, _ in column.pieces if u < column.width},
        )
        return sum(map(len, stages))

    @property
    def cuts(self) -> int:
        """How many cuts free the pieces, those that the sheet's far edges may spare included."""
        columns = [column for strip in self.strips for column in strip.columns]
        divided = [
            (u < column.width) + 1
            for strip in self.strips
            for column in strip.columns
            for _, u, v in column.pieces
            if v < strip.height
        ]
        return len(self.strips) + len(columns) + sum(divided)


@dataclass(frozen=True, slots=True)
class Stock:
    """The sheet's room (x, y), and for each piece the sizes (x, y) it may lie in, one or two."""

    room: Size
    sizes: tuple[tuple[Size, ...], ...]

    def area(self, piece: int) -> int:
        """Return the area of a piece."""
        x, y = self.sizes[piece][0]
        return x * y


def filled(
    stock: Stock, order: Iterable[int], turns: Sequence[bool], most: int | None = None
) -> list[Levels]:
    """Place pieces one after the other where they fit best.

    ``turns`` says for each new sheet whether it is cross-cut first, over and over. Nothing comes
    back where the pieces need more than ``most`` sheets.
    """
    sheets: list[Levels] = []
    for piece in order:
        spot = _best_spot(stock, sheets, piece)
        if spot is None:
            if len(sheets) == most:
                return []
            sheets.append(Levels(turned=turns[len(sheets) % len(turns)]))
            spot = _best_spot(stock, sheets[-1:], piece)
        if spot is None:
            raise ValueError("a piece is larger than a sheet")
        _put(stock, spot, piece)
    return sheets


def in_order(levels: Levels) -> Levels:
    """Return a sheet with its strips, columns and pieces from large to small."""
    strips = []
    for strip in levels.strips:
        columns = [
            replace(column, pieces=sorted(column.pieces, key=lambda p: (-p[2], -p[1], p[0])))
            for column in strip.columns
        ]
        columns.sort(key=lambda column: (-column.width, len(column.pieces), column.pieces))
        strips.append(replace(strip, columns=columns))
    strips.sort(key=lambda strip: (-strip.height, [each.pieces for each in strip.columns]))
    return replace(levels, strips=strips)


_Spot = tuple[tuple[int, int, int], Levels, Strip | None, Column | None, Size]


def _best_spot(stock: Stock, sheets: Sequence[Levels], piece: int) -> _Spot | None:
    """Return the spot that wastes least: on a column, else along a strip, else a new strip."""
    best: _Spot | None = None
    for sheet in sheets:
        along, up = stock.room[::-1] if sheet.turned else stock.room
        for size in stock.sizes[piece]:
            u, v = size[::-1] if sheet.turned else size
            for strip in sheet.strips:
                spare = strip.height - v
                if spare < 0:
                    continue
                if along - strip.used >= u:
                    rank = (1, spare, along - strip.used - u)
                    if best is None or rank < best[0]:
                        best = (rank, sheet, strip, None, (u, v))
                for column in strip.columns:
                    if column.width >= u and strip.height - column.used >= v:
                        rank = (0, column.width - u, strip.height - column.used - v)
                        if best is None or rank < best[0]:
                            best = (rank, sheet, strip, column, (u, v))
            if along >= u and up - sheet.used >= v:
                rank = (2, up - sheet.used - v, along - u)
                if best is None or rank < best[0]:
                    best = (rank, sheet, None, None, (u, v))
    return best


def _put(stock: Stock, spot: _Spot, piece: int) -> None:
    _, sheet, strip, column, (u, v) = spot
    if strip is None:
        strip = Strip(height=v)
        sheet.strips.append(strip)
        sheet.used += v
    if column is None:
        column = Column(width=u)
        strip.columns.append(column)
        strip.used += u
    column.pieces.append((piece, u, v))
    column.used += v
    sheet.area += stock.area(piece)
