"""The parts: a list, their pictures at one scale, and where to mark what is cut into them."""

from __future__ import annotations

import math
from collections.abc import Iterator

from kerfolio.basis.figures import degrees_text
from kerfolio.basis.lengths import inch_number, mm_number, size_pair
from kerfolio.basis.masses import mass_pair
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
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
from kerfolio.document.picture import still
from kerfolio.document.words import Mark, Words, twin, worded
from kerfolio.drawing.common_scale import common_scale
from kerfolio.drawing.part_view import part_view
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.edge_words import edge_map_words
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import drawn_for
from kerfolio.settling.settled import SettledPart
from kerfolio.settling.titles import part_title, sheet_title
from kerfolio.shop.places import Spot, spots_of
from kerfolio.shop.rows import PartRow

_GRAINS = {"along x": "width", "along y": "height"}
_MOST_MARKS = 8


def parts(edition: Edition) -> Chapter | None:
    """Return the parts; None where they are kept back."""
    if not edition.parts:
        return None
    blocks: list[Block] = [_list(edition), Paragraph(words=_remark(edition), manner=Manner.SMALL)]
    if edition.exact:
        blocks += [*_drawn(edition), *_places(edition)]
    return Chapter(id="parts", title=say(edition.reader, "parts-title"), blocks=tuple(blocks))


def marks_words(marks: tuple[str, ...], reader: Reader) -> Words:
    """Return the marks of pieces, of many the first and the last."""
    if len(marks) > _MOST_MARKS:
        least, most = Mark(text=marks[0]), Mark(text=marks[-1])
        return worded(reader, "figures-to", least=least, most=most)
    spaced = [(" ", Mark(text=each)) for each in marks]
    return tuple(each for pair in spaced for each in pair)[1:]


def _list(edition: Edition) -> Table:
    reader = edition.reader
    mass = math.fsum(row.count * row.mass for row in edition.parts)
    count = sum(row.count for row in edition.parts)
    return Table(
        title=say(reader, "parts-title"),
        columns=(
            Column(head=say(reader, "parts-mark"), kind=Kind.MARK),
            Column(head=say(reader, "parts-part")),
            Column(head=say(reader, "parts-count"), kind=Kind.COUNT),
            Column(head=say(reader, "parts-size"), kind=Kind.NUMBER),
            Column(head=say(reader, "parts-weight"), kind=Kind.NUMBER, spare=True),
        ),
        rows=tuple(_row(edition, row) for row in edition.parts),
        foot=Row(
            cells=(
                "",
                say(reader, "parts-together"),
                str(count),
                "",
                (twin(mass_pair(mass, reader)),),
            )
        ),
    )


def _row(edition: Edition, row: PartRow) -> Row:
    reader = edition.reader
    return Row(
        cells=(
            marks_words(row.marks, reader),
            Cell(
                words=part_title(edition.plan, row.part, edition.reader),
                below=tuple(_notes(edition, row)),
            ),
            str(row.count),
            (twin(size_pair((row.width, row.height), reader)),),
            (twin(mass_pair(row.mass, reader)),),
        )
    )


def _notes(edition: Edition, row: PartRow) -> Iterator[str]:
    """Yield its sheet where there are several, its grain, and the maker's own note."""
    many = len(edition.settled.sheets) > 1
    sheet = sheet_title(edition.settled, row.sheet) if many else ""
    along = _GRAINS.get(row.grain)
    grain = say(edition.reader, f"parts-grain-{along}") if along else ""
    head = ", ".join(text for text in (sheet, grain) if text)
    if head:
        yield f"{head[:1].upper()}{head[1:]}"
    if row.note:
        yield row.note


def _remark(edition: Edition) -> str:
    sheets = drawn_for(edition.settled, edition.reader)
    return say(edition.reader, "parts-remark", sheets=sheets)


def _drawn(edition: Edition) -> Iterator[Block]:
    """Yield what the pictures show, then the pictures."""
    found = edition.settled.parts
    scale = common_scale(found)
    words = say(edition.reader, "parts-faces", scale=f"1:{scale}")
    edged = f" {edge_map_words(edition.reader)}" if any(part.edges for part in found) else ""
    yield Paragraph(words=f"{words}{edged}")
    yield Figures(figures=tuple(_figure(edition, part, scale) for part in found))


def _figure(edition: Edition, part: SettledPart, scale: int) -> Figure:
    drawing = part_view(edition.settled, part, reader=edition.reader, scale=1 / scale)
    marks = tuple(piece.mark for piece in part.pieces)
    return Figure(
        picture=still(f"part-{part.name}", drawing, scale=1 / scale),
        caption=worded(
            edition.reader,
            "parts-one",
            marks=marks_words(marks, edition.reader),
            part=part_title(edition.plan, part.name, edition.reader),
            pieces=len(part.pieces),
        ),
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
            title = f"{part.mark}, {part_title(edition.plan, part.name, edition.reader)}"
            tables.append(_marking(title, rows, edition.reader))
    if tables:
        sheets = drawn_for(edition.settled, edition.reader)
        words = say(edition.reader, "parts-middles", sheets=sheets)
        yield Folded(
            summary=say(edition.reader, "parts-places"),
            blocks=(Paragraph(words=words, manner=Manner.SMALL), *tables),
        )


def _marking(title: str, rows: list[Row], reader: Reader) -> Table:
    """Return a table in one unit alone: a rule has no other."""
    heads = (
        say(reader, f"parts-place-{name}", unit=reader.unit)
        for name in ("left", "up", "length", "width", "depth")
    )
    numbers = (Column(head=head, kind=Kind.NUMBER) for head in heads)
    what, lies = say(reader, "parts-place-what"), say(reader, "parts-place-lies")
    columns = (Column(head=what), *numbers, Column(head=lies))
    return Table(title=title, titled=True, columns=columns, rows=tuple(rows))


def _place(spot: Spot, reader: Reader) -> Row:
    what = say(reader, f"parts-cut-{'wide' if spot.bore else spot.kind.name}")
    round_one = spot.kind.round
    wide = "" if round_one else _number(spot.width, reader)
    through = say(reader, "parts-through")
    deep = through if spot.depth is None else _number(spot.depth, reader)
    at = (_number(spot.left, reader), _number(spot.up, reader), _number(spot.length, reader))
    return Row(cells=(what, *at, wide, deep, "" if round_one else _lies(spot.turn, reader)))


def _number(mm: float, reader: Reader) -> str:
    return inch_number(mm, 64) if reader.unit == "in" else mm_number(mm, reader=reader)


def _lies(turn: float, reader: Reader) -> str:
    if min(turn, 180.0 - turn) < _STRAIGHT:
        return say(reader, "parts-level")
    if abs(turn - 90.0) < _STRAIGHT:
        return say(reader, "parts-upright")
    return say(reader, "parts-turned", angle=degrees_text(turn))


_STRAIGHT = 0.5
"""Degrees within which nobody sees that a slot is turned."""
