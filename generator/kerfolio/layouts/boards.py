"""Which pieces are cut from which board: one-dimensional cut lists with a kerf."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.finding import Finding, error
from kerfolio.basis.measures import length
from kerfolio.basis.said import said
from kerfolio.layouts.board_job import Job
from kerfolio.layouts.board_search import search
from kerfolio.settling.settled import SettledBoard, SettledPlan

KERF = 3.2
"""Width of a saw cut, mm: a 1/8 in blade (common practice, no single source)."""

TRIM = 10.0
"""Cut off one end of every board to begin square, kerf included, mm (common practice)."""

_NM = 1_000_000
"""Lengths are compared in whole nm, in which mm and 1/128 in are exact."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardPiece:
    """A piece to cut: its label (``rail.2``) and finished length in mm."""

    label: str
    length: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardCuts:
    """One board to buy: its length, and its pieces in the order they are cut, mm.

    ``waste`` is the usable offcut left after the last cut; trim and kerfs are not in it.
    """

    number: int
    length: float
    pieces: tuple[BoardPiece, ...]
    waste: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardPlan:
    """The boards of one stock item, of the least total length that was found.

    ``bound`` is a total length in mm below which no choice of boards can hold the pieces;
    ``proven`` tells that it is reached. Pieces no stock length holds are left out: ``board_faults``
    tells of them.
    """

    stock: str
    title: str
    section: tuple[float, float]
    kerf: float
    trim: float
    boards: tuple[BoardCuts, ...]
    bound: float
    proven: bool

    @property
    def bought(self) -> float:
        """Total length to buy, mm."""
        return round(math.fsum(board.length for board in self.boards), 6)

    @property
    def to_buy(self) -> tuple[tuple[float, int], ...]:
        """Lengths in mm with how many of each, the longest first."""
        lengths = [board.length for board in self.boards]
        return tuple((each, lengths.count(each)) for each in sorted(set(lengths), reverse=True))


def board_plan(
    settled: SettledPlan, kerf: float = KERF, trim: float = TRIM, copies: int = 1
) -> tuple[BoardPlan, ...]:
    """Return a plan for each board stock that copies use, in the order of first use."""
    return tuple(
        cut_boards(
            [piece for use in uses for piece in _pieces(use)] * copies,
            stock.lengths,
            kerf=kerf,
            trim=trim,
            stock=stock.name,
            title=stock.title,
            section=(stock.thickness, stock.width),
        )
        for uses in _by_stock(settled)
        for stock in (uses[0].stock,)
    )


def board_faults(settled: SettledPlan, trim: float = TRIM) -> tuple[Finding, ...]:
    """Return an error for each board use that no length sold can give."""
    return tuple(_faults(settled, trim))


def _faults(settled: SettledPlan, trim: float) -> Iterator[Finding]:
    for board in settled.boards:
        longest = max(board.stock.lengths, default=0.0)
        if not _fits(board.length, longest, trim):
            name = board.use.name
            advice = said(
                "It is {} long; `{}` is sold up to {}, of which {} are trimmed off.",
                length("length", board.length),
                board.stock.name,
                length("longest", longest),
                length("trim", trim),
            )
            message = f"`{name}` is longer than any board sold"
            yield error("board-too-long", message, board.use.place, advice, subject=name)


def _by_stock(settled: SettledPlan) -> list[list[SettledBoard]]:
    groups: dict[str, list[SettledBoard]] = {}
    for board in settled.boards:
        groups.setdefault(board.stock.name, []).append(board)
    return list(groups.values())


def _pieces(board: SettledBoard) -> Iterator[BoardPiece]:
    name, count = board.use.name, board.use.count
    for number in range(1, count + 1):
        label = name if count == 1 else f"{name}.{number}"
        yield BoardPiece(label=label, length=board.length)


def _fits(length: float, stock: float, trim: float) -> bool:
    return _nm(length) <= _nm(stock - trim)


def cut_boards(
    pieces: Sequence[BoardPiece],
    lengths: Sequence[float],
    *,
    kerf: float = KERF,
    trim: float = 0.0,
    stock: str = "",
    title: str = "",
    section: tuple[float, float] = (0.0, 0.0),
) -> BoardPlan:
    """Cut pieces from boards of the lengths sold: least total length, then the fewest boards found.

    Every piece but a last one that ends with the board costs its length and a kerf. The same
    pieces give the same plan. ``section`` is thickness and width in mm, for the record only.
    """
    sold = sorted(set(lengths))
    good = [each for each in pieces if _fits(each.length, max(sold, default=0.0), trim)]
    kinds: dict[int, list[BoardPiece]] = {}
    for piece in sorted(good, key=lambda each: -each.length):
        kinds.setdefault(_nm(piece.length + kerf), []).append(piece)
    found = search(
        Job(
            sizes=tuple(kinds),
            counts=tuple(len(each) for each in kinds.values()),
            rooms=tuple(_nm(each - trim + kerf) for each in sold),
            prices=tuple(_nm(each) for each in sold),
        )
    )
    boards = []
    for number, fill in enumerate(found.fills, 1):
        own = tuple(
            same.pop(0)
            for same, count in zip(kinds.values(), fill.take, strict=True)
            for _ in range(count)
        )
        waste = _waste(sold[fill.room] - trim, own, kerf)
        boards.append(BoardCuts(number=number, length=sold[fill.room], pieces=own, waste=waste))
    return BoardPlan(
        stock=stock,
        title=title,
        section=section,
        kerf=kerf,
        trim=trim,
        boards=tuple(boards),
        bound=found.bound / _NM,
        proven=found.proven,
    )


def _nm(mm: float) -> int:
    return round(mm * _NM)


def _waste(room: float, pieces: Sequence[BoardPiece], kerf: float) -> float:
    rest = room - math.fsum(each.length + kerf for each in pieces)
    return max(0.0, round(rest, 6))
