"""With drill, jigsaw and paper: full-size templates, and how they are printed true."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.saying import say
from kerfolio.document.blocks import Block, Fact, Facts, Heading, Listing, Manner, Paragraph
from kerfolio.document.chapter import Chapter, Who
from kerfolio.document.words import File, Reference, Words, worded
from kerfolio.edition.by_hand import by_hand
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import PAPERS, ROLL, template_name


def hand(edition: Edition) -> Chapter:
    """Return how the parts are cut by hand: which file, printed how, marked and sawn in order."""
    reader = edition.reader
    blocks: list[Block] = [
        *_judged(edition),
        Paragraph(
            words=worded(
                reader,
                "hand-files",
                folder=File(name="templates", text="templates/"),
                measuring=Reference(text=say(reader, "hand-files-measure"), chapter="measuring"),
            )
        ),
        Heading(words=say(reader, "hand-order")),
        Listing(entries=tuple(_order(edition)), numbered=True),
        Heading(words=say(reader, "hand-which")),
        Facts(facts=tuple(_files(edition)), rows=True),
    ]
    return Chapter(
        id="hand",
        title=say(reader, "hand-title"),
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
    reader = edition.reader
    yield say(reader, "hand-order-square", unit=reader.unit)
    yield say(reader, "hand-order-tiles")
    yield say(reader, "hand-order-test")
    if edition.exact:
        places = Reference(text=say(reader, "hand-places"), chapter="parts")
        yield worded(reader, "hand-order-stick-or-mark", places=places)
    else:
        yield say(reader, "hand-order-stick")
    yield say(reader, "hand-order-saw")


def _files(edition: Edition) -> Iterator[Fact]:
    """Yield the templates for the thickness that is drawn, on each paper."""
    reader, label = edition.reader, edition.settled.variant.label
    for paper in (*PAPERS, ROLL):
        file = File(name=template_name(label, paper))
        roll = paper == ROLL
        head = say(reader, "hand-on-roll") if roll else say(reader, "hand-on", paper=PAPERS[paper])
        yield Fact(head=head, lines=(((file,),),))
