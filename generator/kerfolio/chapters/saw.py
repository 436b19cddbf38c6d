"""With a table saw or a track saw: sheets and boards as a saw cuts them."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.document.blocks import Block, Caution, Figure, Heading, Paragraph
from kerfolio.document.chapter import Chapter, Who
from kerfolio.document.picture import Art, still
from kerfolio.document.words import File, Reference, Words, pieces, worded
from kerfolio.drawing.board_view import board_views
from kerfolio.drawing.saw_view import saw_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import sizes_words
from kerfolio.edition.names import PAPERS, saw_name
from kerfolio.edition.saw_words import saw_caution, saw_how, spare_words
from kerfolio.layouts.boards import BoardPlan
from kerfolio.layouts.saw_sheet import SawSheet
from kerfolio.settling.titles import sheet_title


def saw(edition: Edition) -> Chapter:
    """Return how a saw cuts sheets and boards; where it has nothing to cut, where sizes stand."""
    reader = edition.reader
    sizes = Reference(text=say(reader, "saw-parts-list"), chapter="parts")
    template = Reference(text=say(reader, "saw-template"), chapter="hand")
    blocks: list[Block] = [
        Paragraph(words=worded(reader, "saw-sizes", parts=sizes, template=template))
    ]
    if edition.saw or edition.board_plans:
        blocks += _sawn(edition)
    return Chapter(
        id="saw",
        title=say(reader, "saw-title"),
        blocks=tuple(blocks),
        who=frozenset({Who.SAW}),
    )


def _sawn(edition: Edition) -> Iterator[Block]:
    files = _files(edition.reader)
    yield Paragraph(words=(*pieces(files), f" {saw_how(edition.reader)}") if edition.saw else files)
    if edition.saw:
        yield Paragraph(words=sizes_words(edition), loud=True)
        spare = spare_words(edition)
        yield from (Paragraph(words=each) for each in (spare,) if each)
    yield Caution(head=say(edition.reader, "saw-caution"), lines=(saw_caution(edition.reader),))
    if edition.exact:
        yield from (_sheet(edition, each) for each in edition.saw)
        yield from _boards(edition)


def _files(reader: Reader) -> Words:
    one, other = (File(name=saw_name(paper)) for paper in PAPERS)
    return worded(reader, "saw-files", one=one, other=other)


def _sheet(edition: Edition, sheet: SawSheet) -> Figure:
    settled, reader = edition.settled, edition.reader
    title = sheet_title(settled, sheet.sheet)
    return Figure(
        picture=Art(
            name=f"saw-{sheet.number}",
            draw=lambda room: saw_view(settled, sheet, room, reader),
            slides=True,
        ),
        caption=say(
            reader,
            "saw-sheet",
            number=sheet.number,
            count=len(edition.saw),
            sheet=title,
            cuts=len(sheet.cuts),
            settings=sheet.settings,
        ),
    )


def _trimmed(plan: BoardPlan, reader: Reader) -> str:
    trim, kerf = (both_text(each, reader) for each in (plan.trim, plan.kerf))
    return say(reader, "saw-trim", trim=trim, kerf=kerf)


def _boards(edition: Edition) -> Iterator[Block]:
    if edition.board_plans:
        yield Heading(words=say(edition.reader, "saw-boards"), id="boards")
    for plan in edition.board_plans:
        yield Paragraph(words=_trimmed(plan, edition.reader))
        for number, drawing in enumerate(board_views(plan, reader=edition.reader), start=1):
            art = still(f"boards-{plan.stock}-{number}", drawing, slides=True)
            yield Figure(picture=art, caption=plan.title)
