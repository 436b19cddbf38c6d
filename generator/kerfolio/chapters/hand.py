"""With drill, jigsaw and paper: full-size templates, and how they are printed true."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.document.blocks import Block, Fact, Facts, Heading, Listing, Manner, Paragraph
from kerfolio.document.chapter import Chapter, Who
from kerfolio.document.words import File, Reference, Words
from kerfolio.edition.by_hand import by_hand
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import PAPERS, ROLL, template_name

_SQUARES = {"mm": "100 mm, or 4 in", "in": "4 in, or 100 mm"}
_ROLL = "a copy shop’s roll, a page for each part in one piece"


def hand(edition: Edition) -> Chapter:
    """Return how the parts are cut by hand: which file, printed how, marked and sawn in order."""
    blocks: list[Block] = [
        *_judged(edition),
        Paragraph(
            words=(
                "The file of your thickness in ",
                File(name="templates", text="templates/"),
                " has every part at full size, with its holes, slots and marks. ",
                Reference(text="Measure your sheet", chapter="measuring"),
                " first: slots and notches follow its thickness.",
            )
        ),
        Heading(words="In this order"),
        Listing(entries=tuple(_order(edition)), numbered=True),
        Heading(words="The files"),
        Facts(facts=tuple(_files(edition)), rows=True),
    ]
    return Chapter(
        id="hand",
        title="With drill, jigsaw and paper",
        blocks=tuple(blocks),
        who=frozenset({Who.HAND, Who.SAW}),
    )


def _judged(edition: Edition) -> Iterator[Block]:
    """Yield whether it can be cut by hand, and what speaks against it or wants care."""
    if not edition.settled.parts:
        return
    found = by_hand(edition)
    yield Paragraph(words=f"{found.words} {found.effort}", manner=Manner.LEAD)
    if found.reasons:
        facts = (Fact(head=each.head, lines=((each.text,),)) for each in found.reasons)
        yield Facts(facts=tuple(facts), rows=True)


def _order(edition: Edition) -> Iterator[Words]:
    yield (
        "Print the first page alone, at 100 %, without any fitting to the page, and measure its "
        f"check square in both directions: {_SQUARES[edition.reader.unit]}. It says what to do "
        "when it is off."
    )
    yield "Print the rest, and lay the tiles together by the crosses; a map shows how they lie."
    yield (
        "Saw the test joint, the first in the file, from an offcut of the very sheet, until one "
        "piece goes into the other with the push of a hand."
    )
    places = Reference(text="list of holes and slots", chapter="parts")
    marked = (", or mark by the ", places) if edition.exact else ()
    yield ("Stick a template on", *marked, "; drill first, then saw.")
    yield "Saw beside the line, in the shaded waste, and finish to the line."


def _files(edition: Edition) -> Iterator[Fact]:
    """Yield the templates for the thickness that is drawn, on each paper."""
    label = edition.settled.variant.label
    for paper in (*PAPERS, ROLL):
        file = File(name=template_name(label, paper))
        yield Fact(head=f"On {PAPERS.get(paper, _ROLL)}", lines=(((file,),),))
