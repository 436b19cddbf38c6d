"""The whole: put together with its sizes, drawn apart with its marks, and its numbers."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.saying import say
from kerfolio.chapters.quantities import told
from kerfolio.document.blocks import (
    Block,
    Caution,
    Fact,
    Facts,
    Figure,
    Figures,
    Folded,
    Heading,
    Live,
    Manner,
    Paragraph,
    Size,
)
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.document.picture import still
from kerfolio.edition.edition import Edition
from kerfolio.edition.making import TheSet, Whole, set_of, wholes_of

_MODEL = Live(name="model")


def whole(edition: Edition) -> Chapter | None:
    """Return what is made, put together; None where nothing tells how it goes."""
    wholes, the_set = wholes_of(edition), set_of(edition)
    if not wholes:
        return None
    blocks = [*_set(the_set, edition)] if the_set else []
    for each in wholes:
        blocks += _whole(each, edition, live=the_set is None)
    title = say(edition.reader, "whole-title")
    return Chapter(id="whole", title=title, blocks=tuple(blocks), soon=Soon.FIRST)


def _set(the_set: TheSet, edition: Edition) -> Iterator[Block]:
    yield Paragraph(words=the_set.holds, manner=Manner.LEAD)
    caption = say(edition.reader, "whole-set")
    yield from _figures(edition, ((the_set.picture, caption),))
    yield _MODEL
    yield _rows(the_set.rows)


def _whole(each: Whole, edition: Edition, *, live: bool) -> Iterator[Block]:
    reader = edition.reader
    if each.title:
        yield Heading(words=each.title)
    apart = " ".join(filter(None, (say(reader, "whole-apart"), each.left_out)))
    together = say(reader, "whole-together")
    yield from _figures(edition, ((each.assembled, together), (each.exploded, apart)))
    if live:
        yield _MODEL
    yield _rows(each.rows)
    if each.on_wall:
        yield Caution(head=say(reader, "whole-wall"), lines=(each.on_wall,))
    if each.steady:
        remark = Paragraph(words=each.remark, manner=Manner.SMALL)
        summary = say(reader, "whole-steady")
        yield Folded(summary=summary, blocks=(_rows(each.steady), remark))
    if each.proved:
        yield Paragraph(words=" ".join(each.proved), manner=Manner.SMALL)


def _figures(edition: Edition, named: Sequence[tuple[str, str]]) -> Iterator[Block]:
    """Yield the drawings there are, two of them side by side."""
    there = [(name, words) for name, words in named if name in edition.drawings]
    size = Size.HALF if len(there) > 1 else Size.WIDE
    found = tuple(
        Figure(picture=still(name, edition.drawings[name]), caption=words, size=size)
        for name, words in there
    )
    if found:
        yield Figures(figures=found) if len(found) > 1 else found[0]


def _rows(rows: Sequence[tuple[str, str]]) -> Facts:
    facts = tuple(Fact(head=label, lines=((told(value),),)) for label, value in rows)
    return Facts(facts=facts, rows=True)
