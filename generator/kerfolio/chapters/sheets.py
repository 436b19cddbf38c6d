"""The sheets: what lies on the machine, its file, its picture, its pieces."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.figures import degrees_text
from kerfolio.basis.lengths import size_pair
from kerfolio.basis.saying import say
from kerfolio.basis.sheet_size import sheet_pair
from kerfolio.basis.thickness import reading_in
from kerfolio.document.blocks import (
    Block,
    Column,
    Figure,
    Heading,
    Kind,
    Manner,
    Paragraph,
    Row,
    Table,
)
from kerfolio.document.chapter import BUILDERS, Chapter
from kerfolio.document.picture import Art
from kerfolio.document.words import Mark, pieces, twin, worded
from kerfolio.drawing.layout_view import layout_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import file_words
from kerfolio.edition.sheet_count import counted_as
from kerfolio.layouts.layout import SheetLayout
from kerfolio.layouts.stacks import zones
from kerfolio.settling.titles import piece_title, sheet_title


def sheets(edition: Edition) -> Chapter | None:
    """Return a heading for every sheet of the layout; None where none is to be seen."""
    blocks = [each for layout in edition.layout.sheets for each in _sheet(edition, layout)]
    if not blocks:
        return None
    return Chapter(
        id="sheets", title=say(edition.reader, "sheets-title"), blocks=tuple(blocks), who=BUILDERS
    )


def _sheet(edition: Edition, layout: SheetLayout) -> Iterator[Block]:
    reader, settled = edition.reader, edition.settled
    sheet = settled.sheet(layout.sheet)
    head = say(reader, "sheets-one", number=layout.number, count=len(edition.layout.sheets))
    yield Heading(words=head, id=f"sheet-{layout.number}")
    told = worded(
        reader,
        "sheets-told",
        sheet=sheet_title(settled, layout.sheet),
        thickness=reading_in(sheet.thickness, reader),
        size=twin(sheet_pair(layout.size, reader)),
        grain=int(bool(sheet.stock.grain)),
    )
    yield Paragraph(words=(*pieces(told), *_remarks(edition, layout)))
    yield Paragraph(words=file_words(edition, layout.number), manner=Manner.SMALL, loud=True)
    if edition.exact:
        yield Figure(
            picture=Art(
                name=f"sheet-{layout.number}",
                draw=lambda room: layout_view(settled, layout, room, reader),
                slides=True,
            )
        )
    yield _pieces(edition, layout)


def _remarks(edition: Edition, layout: SheetLayout) -> Iterator[str]:
    """Yield what is known of the count, at the first sheet of a material, and of its clamps."""
    same = [each.number for each in edition.layout.sheets if each.sheet == layout.sheet]
    words = counted_as(edition).get(layout.sheet, "")
    if words and layout.number == same[0]:
        yield f" {words[:1].upper()}{words[1:]}."
    if zones(edition.settled.sheet(layout.sheet), layout.size):
        yield f" {say(edition.reader, 'sheets-hatched')}"


def _pieces(edition: Edition, layout: SheetLayout) -> Table:
    reader = edition.reader
    found = [piece for part in edition.settled.parts for piece in part.pieces]
    marks = {piece.label: piece.mark for piece in found}
    order = {piece.label: number for number, piece in enumerate(found)}
    sizes = {part.name: size_pair(part.size, reader) for part in edition.settled.parts}
    rows = (
        Row(
            cells=(
                (Mark(text=marks[each.piece]),),
                piece_title(edition.plan, each.piece, reader),
                (twin(sizes[each.part]),),
                degrees_text(each.turn) if each.turn else "–",
            )
        )
        for each in sorted(layout.placements, key=lambda each: order[each.piece])
    )
    return Table(
        title=say(reader, "sheets-pieces", number=layout.number),
        columns=(
            Column(head=say(reader, "sheets-mark"), kind=Kind.MARK),
            Column(head=say(reader, "sheets-piece")),
            Column(head=say(reader, "sheets-size"), kind=Kind.NUMBER, spare=True),
            Column(head=say(reader, "sheets-turned"), kind=Kind.NUMBER),
        ),
        rows=tuple(rows),
    )
