"""Load and sag: what each span carries by estimate, cautions first, what it rests on last."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.chapters.grounds import figures, grounds
from kerfolio.chapters.quantities import told
from kerfolio.document.blocks import Block, Caution, Column, Heading, Paragraph, Row, Table
from kerfolio.document.chapter import Chapter, Soon
from kerfolio.edition.edition import Edition
from kerfolio.edition.loads import Bound, LoadWords, loads_of
from kerfolio.settling.titles import within
from kerfolio.shop.assumption import Assumption


def loads(edition: Edition) -> Chapter | None:
    """Return what every span of the plan carries; None of a plan without spans."""
    found, reader = loads_of(edition), edition.reader
    if found is None:
        return None
    blocks: list[Block] = [
        Caution(head=found.heading, lines=found.cautions),
        Paragraph(words=found.racking),
    ]
    for each in found.spans:
        blocks += _span(each, reader)
    blocks += grounds(_gathered(found.spans, reader), say(reader, "spans-rests"))
    title = say(reader, "spans-title")
    return Chapter(id="loads", title=title, blocks=tuple(blocks), soon=Soon.BACKGROUND)


def _span(words: LoadWords, reader: Reader) -> Iterator[Block]:
    yield Heading(words=words.title)
    yield Paragraph(words=told(words.asked))
    if words.warning:
        yield Caution(head=say(reader, "spans-mind"), lines=(told(words.warning),))
    if words.figures:
        yield figures(words.figures)
    if len(words.bounds) > 1:
        yield _bounds(words.title, words.bounds, reader)


def _bounds(title: str, bounds: Sequence[Bound], reader: Reader) -> Table:
    """Return every way a span may be held; the one that counts is the first."""
    rows = (
        Row(cells=(each.held, told(each.first_day), told(each.after_years)), chief=not number)
        for number, each in enumerate(bounds)
    )
    return Table(
        title=say(reader, "spans-bounds", span=title),
        columns=(
            Column(head=say(reader, "spans-held")),
            Column(head=say(reader, "spans-first-day")),
            Column(head=say(reader, "spans-after-years")),
        ),
        rows=tuple(rows),
    )


def _gathered(spans: Sequence[LoadWords], reader: Reader) -> tuple[Assumption, ...]:
    """Return each assumption once: first those of some spans alone, with the spans' names."""
    owners: dict[Assumption, list[str]] = {}
    for each in spans:
        for fact in each.assumptions:
            owners.setdefault(fact, []).append(within(each.title, reader))
    figured = sum(bool(each.assumptions) for each in spans)
    shared = [fact for fact, titles in owners.items() if len(titles) == figured]
    single = [
        replace(fact, label=f"{fact.label} ({listed(reader, titles)})")
        for fact, titles in owners.items()
        if fact not in shared
    ]
    return (*single, *shared)
