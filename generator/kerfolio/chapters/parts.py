"""The parts: a list, their pictures at one scale, and where to mark what is cut into them."""

from __future__ import annotations

import math
from collections.abc import Iterator

from kerfolio.basis.figures import degrees_text
from kerfolio.basis.lengths import inch_number, mm_number, size_pair
from kerfolio.basis.masses import mass_pair
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import counted
from kerfolio.document.blocks import (
    Block,
    Cell,
    Column,
    Figure,
    Figures,
    Folded,
    Kind,
    Manner,
    Paragraph,
    Row,
    Size,
    Table,
)
from kerfolio.document.chapter import Chapter
from kerfolio.document.picture import Art
from kerfolio.document.words import Mark, Words, twin
from kerfolio.drawing.common_scale import common_scale
from kerfolio.drawing.part_view import part_view
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edge_words import edge_map_words
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import drawn_for
from kerfolio.model.feature_kind import HOLE, POCKET, WINDOW
from kerfolio.settling.settled import SettledPart
from kerfolio.settling.titles import part_title, sheet_title
from kerfolio.shop.places import Spot, spots_of
from kerfolio.shop.rows import PartRow

_GRAINS = {"along x": "grain along the width", "along y": "grain along the height"}
_MOST_MARKS = 8
_FACES = (
    "Each part from its show face, the face the cutter enters, all at one scale, {}. Dark areas "
    "are cut to a depth only. The arrow is the grain of the face."
)
_MARKED = (
    "Middles are measured from the left edge and from the lower edge of the part as it is drawn "
    "above, tabs and all; of a notch it is the middle of its bottom. Widths of slots are for {}; "
    "on another sheet a slot is wider or narrower by as much as the sheet."
)


def parts(edition: Edition) -> Chapter | None:
    """Return the parts; None where they are kept back."""
    if not edition.parts:
        return None
    blocks: list[Block] = [_list(edition), Paragraph(words=_remark(edition), manner=Manner.SMALL)]
    if edition.exact:
        blocks += [*_drawn(edition), *_places(edition)]
    return Chapter(id="parts", title="Parts", blocks=tuple(blocks))


def marks_words(marks: tuple[str, ...]) -> Words:
    """Return the marks of pieces, of many the first and the last."""
    if len(marks) > _MOST_MARKS:
        return (Mark(text=marks[0]), " to ", Mark(text=marks[-1]))
    spaced = [(" ", Mark(text=each)) for each in marks]
    return tuple(each for pair in spaced for each in pair)[1:]


def _list(edition: Edition) -> Table:
    reader = edition.reader
    mass = math.fsum(row.count * row.mass for row in edition.parts)
    pieces = sum(row.count for row in edition.parts)
    return Table(
        title="Parts",
        columns=(
            Column(head="Mark", kind=Kind.MARK),
            Column(head="Part"),
            Column(head="Count", kind=Kind.COUNT),
            Column(head="Overall size", kind=Kind.NUMBER),
            Column(head="Each weighs", kind=Kind.NUMBER, spare=True),
        ),
        rows=tuple(_row(edition, row) for row in edition.parts),
        foot=Row(cells=("", "Together", str(pieces), "", (twin(mass_pair(mass, reader)),))),
    )


def _row(edition: Edition, row: PartRow) -> Row:
    reader = edition.reader
    return Row(
        cells=(
            marks_words(row.marks),
            Cell(words=part_title(edition.plan, row.part), below=tuple(_notes(edition, row))),
            str(row.count),
            (twin(size_pair((row.width, row.height), reader)),),
            (twin(mass_pair(row.mass, reader)),),
        )
    )


def _notes(edition: Edition, row: PartRow) -> Iterator[str]:
    """Yield its sheet where there are several, its grain, and the maker's own note."""
    many = len(edition.settled.sheets) > 1
    sheet = sheet_title(edition.settled, row.sheet) if many else ""
    head = ", ".join(text for text in (sheet, _GRAINS.get(row.grain, "")) if text)
    if head:
        yield f"{head[:1].upper()}{head[1:]}"
    if row.note:
        yield row.note


def _remark(edition: Edition) -> str:
    sheets = drawn_for(edition.settled, edition.reader)
    return (
        f"For {sheets}. Sizes are overall, with tabs: width first, then height, as the part is "
        "drawn; inches to 1/32. The mark stands on the part in every drawing and file."
    )


def _drawn(edition: Edition) -> Iterator[Block]:
    """Yield what the pictures show, then the pictures."""
    found = edition.settled.parts
    scale = common_scale(found)
    words = _FACES.format(f"1:{scale}")
    edged = f" {edge_map_words(edition.reader)}" if any(part.edges for part in found) else ""
    yield Paragraph(words=f"{words}{edged}")
    yield Figures(figures=tuple(_figure(edition, part, scale) for part in found))


def _figure(edition: Edition, part: SettledPart, scale: int) -> Figure:
    drawing = part_view(edition.settled, part, reader=edition.reader, scale=1 / scale)
    marks = tuple(piece.mark for piece in part.pieces)
    title, count = part_title(edition.plan, part.name), counted(len(part.pieces), "piece")
    return Figure(
        picture=Art(name=f"part-{part.name}", draw=lambda _: drawing, scale=1 / scale),
        caption=(*marks_words(marks), f" {title}, {count}"),
        size=_size_of(drawing),
    )


def _size_of(drawing: Drawing) -> Size:
    """Return the least room on paper in which a drawing need not shrink."""
    sizes = (size for size, room in _ROOMS.items() if _fits(drawing, room))
    return next(sizes, Size.TALL)


def _fits(drawing: Drawing, room: tuple[float, float]) -> bool:
    return drawing.width <= room[0] and drawing.height <= room[1]


_ROOMS = {Size.HALF: (78.0, 64.0), Size.WIDE: (165.0, 95.0)}
"""What such a picture has room for on any paper that is printed on, mm."""


def _places(edition: Edition) -> Iterator[Folded]:
    """Yield a table for each part into which something is cut, where nobody has to see it."""
    tables: list[Block] = []
    for part in edition.settled.parts:
        rows = [_place(spot, edition.reader) for spot in spots_of(edition.settled, part)]
        if rows:
            title = f"{part.mark}, {part_title(edition.plan, part.name)}"
            tables.append(_marking(title, rows, edition.reader))
    if tables:
        words = _MARKED.format(drawn_for(edition.settled, edition.reader))
        yield Folded(
            summary="To mark by hand: where holes, slots and recesses lie",
            blocks=(Paragraph(words=words, manner=Manner.SMALL), *tables),
        )


def _marking(title: str, rows: list[Row], reader: Reader) -> Table:
    """Return a table in one unit alone: a rule has no other."""
    heads = ("From the left", "From below", "Drill, or length", "Width", "Depth")
    numbers = (Column(head=f"{head}, {reader.unit}", kind=Kind.NUMBER) for head in heads)
    columns = (Column(head="What"), *numbers, Column(head="Lies"))
    return Table(title=title, titled=True, columns=columns, rows=tuple(rows))


def _place(spot: Spot, reader: Reader) -> Row:
    what = "Wide bore" if spot.bore else _SPOKEN.get(spot.kind, spot.kind.name.capitalize())
    round_one = spot.kind is HOLE
    wide = "" if round_one else _number(spot.width, reader)
    deep = "through" if spot.depth is None else _number(spot.depth, reader)
    at = (_number(spot.left, reader), _number(spot.up, reader), _number(spot.length, reader))
    return Row(cells=(what, *at, wide, deep, "" if round_one else _lies(spot.turn)))


def _number(mm: float, reader: Reader) -> str:
    return inch_number(mm, 64) if reader.unit == "in" else mm_number(mm)


_SPOKEN = {WINDOW: "Opening", POCKET: "Recess"}


def _lies(turn: float) -> str:
    if min(turn, 180.0 - turn) < _STRAIGHT:
        return "level"
    if abs(turn - 90.0) < _STRAIGHT:
        return "upright"
    return f"turned {degrees_text(turn)}"


_STRAIGHT = 0.5
"""Degrees within which nobody sees that a slot is turned."""
