"""A sheet as it is sawn: its blanks with their marks and sizes, its cuts numbered in order."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from kerfolio.basis.lengths import inch_number, mm_number
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.sheet_size import sheet_sides
from kerfolio.drawing.arrow import grain_arrow
from kerfolio.drawing.block import Block, block, text_block
from kerfolio.drawing.extent import apart, extent, padded
from kerfolio.drawing.hatch import hatched
from kerfolio.drawing.lettering import LEGIBLE, Box, wrapped
from kerfolio.drawing.saw_badge import CutLine, badges, edge_badges
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Dimension, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.label_spot import label_spot
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.saw_sheet import CROSS, SHEET, TRIM, SawBlank, SawCut, SawSheet, Workpiece
from kerfolio.settling.settled import SettledPart, SettledPlan

ROOM = (170.0, 120.0)
_AROUND = (27.0, 31.0)
"""Room for lettering beside and above or below the sheet, mm."""
_AWAY = 5.0
_AWAY_OF_GRAIN = 8.0
_PAD = 0.6
_SHRINKS = 4
_NAMED = 8
_MARK, _SIZE, _TEXT, _NOTE = 4.2, 3.0, 3.2, 2.8
_LEAST_SIZE, _LEAST_MARK = LEGIBLE / _SIZE, LEGIBLE / _MARK
"""How far lettering in a blank may shrink while it has its size in it, and with the mark alone."""


def saw_view(
    settled: SettledPlan,
    sheet: SawSheet,
    room: tuple[float, float] = ROOM,
    reader: Reader = METRIC,
) -> Drawing:
    """Return a picture of the sheet to be shown at paper size, within ``room`` (mm).

    Cuts through the whole sheet are numbered at its edge, with the setting of the fence in the
    reader's unit; others on their lines. A blank shows its part's shape, its mark and
    its size, as far as they fit; what cannot be marked or numbered is named in a line below.
    """
    scale = min(
        *(
            (most - around) / each
            for most, around, each in zip(room, _AROUND, sheet.size, strict=True)
        ),
        1.0,
    )
    drawing = _drawing(settled, sheet, scale, reader, room[0])
    for _ in range(_SHRINKS):
        over = max(drawing.width / room[0], drawing.height / room[1])
        if over <= 1.0:
            break
        scale /= 1.01 * over
        drawing = _drawing(settled, sheet, scale, reader, room[0])
    return drawing


def _drawing(
    settled: SettledPlan, sheet: SawSheet, scale: float, reader: Reader, wide: float
) -> Drawing:
    size = (sheet.size[0] * scale, sheet.size[1] * scale)
    parts = {part.name: part for part in settled.parts}
    seated = [(each, _seat(each, scale)) for each in sheet.blanks]
    marks = [_marked(each, parts[each.part], seat, reader) for each, seat in seated]
    taken = [extent([item]) for found in marks for item in found]
    lines = [_line(cut, sheet.saw.kerf, scale) for cut in sheet.cuts]
    inner = badges([each for each in lines if not each.outer], taken)
    outer = edge_badges([each for each in lines if each.outer], lambda mm: _length(mm, reader))
    grain = settled.sheet(sheet.sheet).stock.grain
    over = [_left_over(each, scale, reader, inner.boxes) for each in sheet.offcuts]
    clear = [*inner.boxes, *(padded(extent(found), 0.8) for found in over if found)]
    items: list[Item] = [
        Stroke(contour=rectangle(0, 0, *size), ink=Ink.SOFT, fill=Ink.WASTE),
        *(s for each in sheet.offcuts for s in hatched(_scaled(each, scale), clear)),
        *(stroke for each, seat in seated for stroke in _faces(each, parts[each.part], seat)),
        *outer.lines,
        *inner.lines,
        *outer.items,
        *inner.items,
        *(item for found in (*marks, *over) for item in found),
        *_sizes(sheet, size, reader, _AWAY_OF_GRAIN if grain else _AWAY),
        *grain_arrow((2.0, size[1] + 2.0), "along x" if grain else "any", reader),
    ]
    untold = [each.mark for each, found in zip(sheet.blanks, marks, strict=True) if not found]
    left, below, *_ = extent(items)
    items += _remarks(untold, inner.missing, wide + left - 2 * _PAD, below, reader)
    return Drawing(
        box=padded(extent(items), _PAD),
        items=tuple(items),
        title=say(reader, "drawing-saw", plan=settled.plan.title, sheet=sheet.number),
        description=_sentence(sheet, reader),
    )


def _length(mm: float, reader: Reader) -> str:
    return mm_number(mm, reader=reader) if reader.unit == "mm" else inch_number(mm)


def _scaled(work: Workpiece, scale: float) -> Box:
    x, y = work.x * scale, work.y * scale
    return x, y, x + work.width * scale, y + work.height * scale


def _seat(each: SawBlank, scale: float) -> Seat:
    """Return where the part's own frame lies, so that its blank lies where it is cut."""
    corner = each.blank.corner
    x, y = (each.at.x - corner[0]) * scale, (each.at.y - corner[1]) * scale
    return Seat(x=x, y=y, turn=each.blank.turn, scale=scale)


def _faces(each: SawBlank, part: SettledPart, seat: Seat) -> Iterator[Stroke]:
    """Yield the blank, and the finished part in it."""
    yield Stroke(contour=rectangle(*_scaled(each.at, seat.scale)), width=None, fill=Ink.FACE_LIGHT)
    shape = seat.region(part.plain)
    yield Stroke(contour=shape.outer, holes=shape.openings, ink=Ink.SOFT, width=0.13, fill=Ink.WOOD)


def _line(cut: SawCut, kerf: float, scale: float) -> CutLine:
    """Return the middle of a cut's kerf on paper, from the left or from below."""
    work, kept = cut.workpiece, cut.kept
    if cut.edge == "lower":
        y = kept.y - kerf / 2 if cut.kind == TRIM else kept.y + kept.height + kerf / 2
        ends = ((work.x, y), (work.x + work.width, y))
    else:
        x = kept.x - kerf / 2 if cut.kind == TRIM else kept.x + kept.width + kerf / 2
        ends = ((x, work.y), (x, work.y + work.height))
    a, b = ((u * scale, v * scale) for u, v in ends)
    return CutLine(number=cut.number, a=a, b=b, outer=cut.of.kind == SHEET, setting=cut.setting)


def _marked(each: SawBlank, part: SettledPart, seat: Seat, reader: Reader) -> tuple[Item, ...]:
    """Return a blank's mark and size in the part's shape, the mark alone, or nothing."""
    shape = seat.region(part.plain)
    box = bounds(shape)
    size = f"{_length(each.at.width, reader)} × {_length(each.at.height, reader)}"
    full = (text_block(((each.mark, _MARK, True), (size, _SIZE, False))), _side_by_side(each, size))
    alone = text_block(((each.mark, _MARK, True),))
    tries = [(b, turn, _LEAST_SIZE) for turn in (0.0, 90.0) for b in full]
    tries += [(alone, turn, _LEAST_MARK) for turn in (0.0, 90.0)]
    for words, turn, least in tries:
        wide, high = (words.height, words.width) if turn else (words.width, words.height)
        if box.width < least * wide or box.height < least * high:
            continue
        spot, room = label_spot(shape, wide / high, enough=high)
        scale = min(1.0, room / high)
        if scale >= least:
            return words.seated(spot, scale, 0.0 if _is_square(words) else turn)
    return ()


def _is_square(words: Block) -> bool:
    """Tell whether a mark fits upright where it fits turned: a spot is a circle about its square.

    One letter by itself is not read on its side.
    """
    return max(words.width, words.height) < math.sqrt(2) * min(words.width, words.height)


def _side_by_side(each: SawBlank, size: str) -> Block:
    mark = Label(text=each.mark, at=(-0.8, 0.0), height=3.2, anchor=Anchor.END, strong=True)
    return block((mark, Label(text=size, at=(0.8, 0.0), height=_SIZE)))


def _left_over(
    work: Workpiece, scale: float, reader: Reader, badges: Sequence[Box]
) -> tuple[Item, ...]:
    """Return the size of an offcut that is worth keeping, where it has room."""
    size = f"{_length(work.width, reader)} × {_length(work.height, reader)}"
    words = say(reader, "drawing-left-over-size", size=size)
    label = text_block(((words, LEGIBLE, False),), ink=Ink.SOFT)
    box = _scaled(work, scale)
    spot = ((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)
    sides = (label.width, label.height)
    for turn, (wide, high) in ((0.0, sides), (90.0, sides[::-1])):
        items = label.seated(spot, 1.0, turn)
        free = all(apart(extent(items), each) for each in badges)
        if free and wide + 4 < box[2] - box[0] and high + 3 < box[3] - box[1]:
            return items
    return ()


def _sizes(
    sheet: SawSheet, size: tuple[float, float], reader: Reader, above: float
) -> tuple[Item, ...]:
    wide, high = sheet_sides(sheet.size, reader)
    top, right = (0, size[1]), (size[0], 0)
    return (
        Dimension(a=top, b=size, text=wide, offset=above, height=_TEXT),
        Dimension(a=right, b=size, text=high, offset=-_AWAY, height=_TEXT),
    )


def _remarks(
    marks: Sequence[str], numbers: Sequence[int], width: float, below: float, reader: Reader
) -> Iterator[Label]:
    words = []
    if marks:
        many = len(marks) > _NAMED
        named = (
            say(reader, "drawing-pieces", count=len(marks))
            if many
            else listed(reader, sorted(marks))
        )
        words.append(f"{say(reader, 'drawing-too-small', pieces=named)}.")
    if numbers:
        cuts = _runs(numbers, reader)
        words.append(say(reader, "drawing-too-short", count=len(numbers), cuts=cuts))
    for row, line in enumerate(wrapped(" ".join(words), _NOTE, width)):
        at = (0.0, below - 4.0 - row * 1.3 * _NOTE)
        yield Label(text=line, at=at, height=_NOTE, ink=Ink.SOFT)


def _runs(numbers: Sequence[int], reader: Reader) -> str:
    """Return ``4, 7 to 9 and 12``."""
    runs: list[list[int]] = []
    for number in numbers:
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    told = (
        say(reader, "figures-to", least=run[0], most=run[-1]) if run[1:] else str(run[0])
        for run in runs
    )
    return listed(reader, list(told))


def _sentence(sheet: SawSheet, reader: Reader) -> str:
    marks = ", ".join(each.mark for each in sheet.blanks)
    wide, high = sheet_sides(sheet.size, reader)
    turned = next((cut.kind == CROSS for cut in sheet.cuts if cut.kind != TRIM), False)
    return say(
        reader,
        "drawing-saw-shows",
        wide=wide,
        high=high,
        turned=int(turned),
        cuts=len(sheet.cuts),
        settings=sheet.settings,
        blanks=marks,
    )
