"""Boards as they are cut: a bar each, its pieces in order, what is left over hatched."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from kerfolio.basis.lengths import both_text, inch_number, mm_number
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.block import text_block
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.hatch import hatched
from kerfolio.drawing.lettering import LEGIBLE, Box, text_width
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.boards import BoardCuts, BoardPiece, BoardPlan
from kerfolio.settling.titles import board_title

ROOM = (168.0, 230.0)
_BAR = 9.0
_ROW = 19.0
_HEAD, _NAME, _SIZE = 2.9, 3.0, 3.0
_LEAST = LEGIBLE / _SIZE
"""How far lettering may shrink to stay in its piece."""
_SEEN = 0.2
_PAD = 0.6


def board_views(
    plan: BoardPlan, room: tuple[float, float] = ROOM, reader: Reader = METRIC
) -> tuple[Drawing, ...]:
    """Return pictures of a plan's boards to be shown at paper size, each within ``room`` (mm).

    All boards have one scale. Boards cut alike are drawn once. A piece shows its label and its
    length in the reader's unit, as far as they fit.
    """
    if not plan.boards:
        return ()
    scale = (room[0] - 2 * _PAD) / max(board.length for board in plan.boards)
    groups = [tuple(group) for _, group in groupby(plan.boards, key=_alike)]
    most = max(1, int((room[1] + _ROW - _BAR - 5.0) / _ROW))
    return tuple(
        _drawing(plan, groups[start : start + most], scale, reader)
        for start in range(0, len(groups), most)
    )


def _alike(board: BoardCuts) -> tuple[float, ...]:
    return (board.length, *(piece.length for piece in board.pieces))


def _drawing(
    plan: BoardPlan, groups: Sequence[tuple[BoardCuts, ...]], scale: float, reader: Reader
) -> Drawing:
    items: list[Item] = []
    for row, group in enumerate(groups):
        items += _bar(plan, group, -row * _ROW, scale, reader)
    boards = [board for group in groups for board in group]
    marks = "; ".join(_sentence(board, reader) for board in boards)
    return Drawing(
        box=padded(extent(items), _PAD),
        items=tuple(items),
        title=say(reader, "drawing-boards", title=plan.title, count=len(boards)),
        description=f"{marks}.",
    )


def _sentence(board: BoardCuts, reader: Reader) -> str:
    pieces = ", ".join(
        f"{_names([each.label], reader)} {_length(each, reader)}" for each in board.pieces
    )
    length = both_text(board.length, reader)
    return say(reader, "drawing-board-shows", board=board.number, length=length, pieces=pieces)


def _bar(
    plan: BoardPlan, group: Sequence[BoardCuts], y: float, scale: float, reader: Reader
) -> Iterator[Item]:
    """Yield a bar with its head; trim and kerfs are dark, what is left over is hatched."""
    board = group[0]
    end = board.length * scale
    head = f"{_numbers(group, reader)}: {both_text(board.length, reader)}"
    yield Label(text=head, at=(0.0, y + _BAR + 1.6), height=_HEAD, strong=True)
    yield Stroke(contour=rectangle(0.0, y, end, y + _BAR), ink=Ink.INK, width=0.25, fill=Ink.INK)
    x, untold = plan.trim, []
    for index, piece in enumerate(board.pieces):
        box = (x * scale, y, (x + piece.length) * scale, y + _BAR)
        name = _names([each.pieces[index].label for each in group], reader)
        size = _length(piece, reader)
        words = _words(name, size, box)
        yield _filled(box, Ink.WOOD)
        yield from words
        untold += [] if words else [f"{name} {size}"]
        x += piece.length + plan.kerf
    yield from _left_over(board, scale, y, reader)
    yield from _remark(untold, y, end, reader)


def _left_over(board: BoardCuts, scale: float, y: float, reader: Reader) -> Iterator[Item]:
    end = board.length * scale
    if board.waste * scale < _SEEN:
        return
    box = (end - board.waste * scale, y, end, y + _BAR)
    name, size = say(reader, "drawing-left-over"), _mm_or_inch(board.waste, reader)
    words = _words(name, size, box, strong=False)
    yield _filled(box, Ink.WASTE)
    yield from hatched(box, [padded(extent(words), 0.6)] if words else ())
    yield from words


def _remark(untold: Sequence[str], y: float, width: float, reader: Reader) -> Iterator[Label]:
    """Yield a line below the bar for pieces too narrow to be marked, in their order."""
    if not untold:
        return
    words = say(reader, "drawing-too-narrow", pieces=listed(reader, untold))
    if text_width(words, _SIZE) > width:
        words = say(reader, "drawing-too-narrow-many", count=len(untold))
    yield Label(text=words, at=(width, y - 3.4), height=_SIZE, ink=Ink.SOFT, anchor=Anchor.END)


def _filled(box: Box, fill: Ink) -> Stroke:
    return Stroke(contour=rectangle(*box), ink=Ink.INK, width=0.13, fill=fill)


def _numbers(group: Sequence[BoardCuts], reader: Reader) -> str:
    first, last = group[0].number, group[-1].number
    return say(reader, "drawing-board", count=len(group), first=first, last=last)


def _names(labels: Sequence[str], reader: Reader) -> str:
    """Return what a piece is called; of several what they have in common: ``Rail`` of two."""
    names = (each.split(".")[0] if len(labels) > 1 else each for each in labels)
    return listed(reader, sorted(set(map(board_title, names))))


def _words(name: str, size: str, box: Box, *, strong: bool = True) -> tuple[Item, ...]:
    """Return name and length in a box, upright where it is narrow, the length alone, or nothing."""
    wide, high = box[2] - box[0] - 1.2, box[3] - box[1] - 1.2
    spot = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    for lines in (((name, _NAME, strong), (size, _SIZE, False)), ((size, _SIZE, False),)):
        words = text_block(lines)
        sides = (words.width, words.height)
        for turn, (across, up) in ((0.0, sides), (90.0, sides[::-1])):
            scale = min(1.0, wide / across, high / up)
            if scale >= _LEAST:
                return words.seated(spot, scale, turn)
    return ()


def _length(piece: BoardPiece, reader: Reader) -> str:
    return _mm_or_inch(piece.length, reader)


def _mm_or_inch(mm: float, reader: Reader) -> str:
    return mm_number(mm, reader=reader) if reader.unit == "mm" else inch_number(mm)
