"""An edition of everything at its longest."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.edition.edition import Edition
from kerfolio.model.plan import HardwareUse, Step
from kerfolio.model.prose import (
    Alignment,
    Code,
    Heading,
    Listing,
    Paragraph,
    Prose,
    Quotation,
    Span,
    Table,
)
from kerfolio.model.statement import Named
from tests.paper.editions import stool
from tests.paper.stool_plan import prose


def long_edition() -> Edition:
    """Return an edition of everything at its longest: names, words, lists, prose of all kinds."""
    edition = stool()
    name = "a-very-long-name-for-a-part-that-goes-on-and-on-without-a-blank-in-it"
    point = Paragraph(spans=(Span(text="A point of some length. " * 5),))
    word = Paragraph(spans=(Span(text="W" * 300),))
    inner = Listing(entries=((word, Listing(entries=((word, Code(lines=("W" * 300,))),))),))
    cell = (Span(text="a cell with much to say " * 60),)
    text = Prose(
        blocks=(
            *(Heading(spans=(Span(text="A heading " * 12),), level=level) for level in (1, 2, 3)),
            Listing(entries=((point, inner),) * 4),
            Listing(entries=((point,), (point,)), first=99_998),
            Quotation(blocks=(point, inner)),
            Code(lines=("W" * 300, "  a word and another " * 40)),
            Table(
                alignments=(Alignment.END, *(Alignment.CENTRE,) * 5),
                head=((Span(text="W" * 100),),) * 6,
                rows=((cell,) * 6, ((),) * 6) * 3,
            ),
            *(prose("W" * 300, "A sentence that is said again. " * 40).blocks),
        )
    )
    step = Step(
        title="A title so long that it cannot stand on a single line of any page " * 2,
        add=tuple(Named(name) for _ in range(30)),
        tools=("a tool with a remarkably long name, in three sizes",) * 6,
        hardware=(HardwareUse(item=Named("a-bolt-nobody-has-ever-heard-of-before"), count=144),),
        text=text,
        caution="Mind this. " * 60,
    )
    parts = tuple(
        replace(
            row,
            part=name,
            marks=tuple(f"{row.mark}{number}" for number in range(1, 60)),
            note="A note that has much to say about the part. " * 4,
        )
        for row in edition.parts
    )
    plan = replace(
        edition.plan,
        title="The longest name that a bench was ever given in this workshop",
        summary="A summary. " * 30,
        steps=(step, step),
        cautions=("A caution of the plan. " * 20,) * 12,
    )
    identity = replace(edition.identity, title="A workshop " * 6, maker="M. " * 40)
    return replace(edition, plan=plan, parts=parts * 12, identity=identity, pictures={})
