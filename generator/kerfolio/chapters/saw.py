"""With a table saw or a track saw: sheets and boards as a saw cuts them."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import counted
from kerfolio.document.blocks import Block, Caution, Figure, Heading, Paragraph
from kerfolio.document.chapter import Chapter, Who
from kerfolio.document.picture import Art, still
from kerfolio.document.words import File, Reference
from kerfolio.drawing.board_view import board_views
from kerfolio.drawing.saw_view import saw_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import sizes_words
from kerfolio.edition.names import PAPERS, saw_name
from kerfolio.edition.saw_words import CAUTION, HOW, spare_words
from kerfolio.layouts.boards import BoardPlan
from kerfolio.layouts.saw_sheet import SawSheet
from kerfolio.settling.titles import sheet_title


def saw(edition: Edition) -> Chapter:
    """Return how a saw cuts sheets and boards; where it has nothing to cut, where sizes stand."""
    sizes = Reference(text="parts list", chapter="parts")
    blocks: list[Block] = [
        Paragraph(
            words=(
                "The ",
                sizes,
                " has every overall size. Take a ",
                Reference(text="template", chapter="hand"),
                " for parts with curves and slots.",
            )
        )
    ]
    if edition.saw or edition.board_plans:
        blocks += _sawn(edition)
    return Chapter(
        id="saw",
        title="With a table saw or a track saw",
        blocks=tuple(blocks),
        who=frozenset({Who.SAW}),
    )


def _sawn(edition: Edition) -> Iterator[Block]:
    yield Paragraph(words=(*_files(), f" {HOW}" if edition.saw else ""))
    if edition.saw:
        yield Paragraph(words=sizes_words(edition), loud=True)
        spare = spare_words(edition)
        yield from (Paragraph(words=each) for each in (spare,) if each)
    yield Caution(head="At the saw", lines=(CAUTION,))
    if edition.exact:
        yield from (_sheet(edition, each) for each in edition.saw)
        yield from _boards(edition)


def _files() -> tuple[str | File, ...]:
    papers = [File(name=saw_name(paper)) for paper in PAPERS]
    spaced = [piece for each in papers for piece in (" or ", each)]
    return (
        "The saw sheets have every cut in order, with every setting of the fence: ",
        *spaced[1:],
        ".",
    )


def _sheet(edition: Edition, sheet: SawSheet) -> Figure:
    settled, reader = edition.settled, edition.reader
    title = sheet_title(settled, sheet.sheet)
    cuts, settings = counted(len(sheet.cuts), "cut"), counted(sheet.settings, "setting")
    return Figure(
        picture=Art(
            name=f"saw-{sheet.number}",
            draw=lambda room: saw_view(settled, sheet, room, reader),
            slides=True,
        ),
        caption=(
            f"Sheet {sheet.number} of {len(edition.saw)}, {title}: {cuts} from edge to edge in the "
            f"order of their numbers, {settings} of the fence."
        ),
    )


def _trimmed(plan: BoardPlan, reader: Reader) -> str:
    return (
        f"Trim {both_text(plan.trim, reader)} off one end to begin square, then cut in the order "
        f"drawn; the saw takes {both_text(plan.kerf, reader)} beyond each length."
    )


def _boards(edition: Edition) -> Iterator[Block]:
    if edition.board_plans:
        yield Heading(words="Boards", id="boards")
    for plan in edition.board_plans:
        yield Paragraph(words=_trimmed(plan, edition.reader))
        for number, drawing in enumerate(board_views(plan, reader=edition.reader), start=1):
            art = still(f"boards-{plan.stock}-{number}", drawing, slides=True)
            yield Figure(picture=art, caption=plan.title)
