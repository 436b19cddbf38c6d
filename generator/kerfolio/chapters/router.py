"""With a CNC router: which files, how they are checked, what their lines mean, which cutter."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.lengths import size_pair
from kerfolio.basis.saying import listed, say
from kerfolio.document.blocks import (
    Block,
    Column,
    Fact,
    Facts,
    Heading,
    Listing,
    Live,
    Paragraph,
    Row,
    Table,
)
from kerfolio.document.chapter import Chapter, Who
from kerfolio.document.words import File, Reference, Words, twin, typed, worded
from kerfolio.edition.bed import bed_needs
from kerfolio.edition.cutter_words import cutter_words
from kerfolio.edition.depth_words import depth_advice
from kerfolio.edition.edition import Edition
from kerfolio.edition.format_words import format_words
from kerfolio.edition.layers import layers_explained
from kerfolio.edition.names import PAPERS, engravings_name, setup_name
from kerfolio.edition.side_words import offset_words
from kerfolio.settling.settled import Operation
from kerfolio.shop.art import arts_of


def router(edition: Edition) -> Chapter:
    """Return how a router cuts the parts; of a plan whose files are kept back what they hold."""
    reader = edition.reader
    blocks: list[Block] = [
        Heading(words=say(reader, "router-order")),
        Listing(entries=tuple(_order(edition)), numbered=True),
        Live(name="setup"),
        Heading(words=say(reader, "router-files")),
        Facts(facts=tuple(_files(edition)), rows=True),
    ]
    if edition.settled.parts:
        blocks += _cutting(edition)
    title = say(reader, "router-title")
    return Chapter(id="router", title=title, blocks=tuple(blocks), who=frozenset({Who.ROUTER}))


def _order(edition: Edition) -> Iterator[Words]:
    reader = edition.reader
    measured = Reference(text=say(reader, "router-measure"), chapter="measuring")
    yield worded(reader, "router-order-measure", measuring=measured)
    yield say(reader, "router-order-square", unit=reader.unit)
    if edition.settled.coupons:
        coupon = Reference(text=say(reader, "router-coupon"), chapter="coupon")
        yield worded(reader, "router-order-coupon", coupon=coupon)
    yield say(reader, "router-order-setup")


def _files(edition: Edition) -> Iterator[Fact]:
    """Yield where the files for a router lie, those for the thickness drawn by their names."""
    reader, label = edition.reader, edition.settled.variant.label
    formats, folder = format_words(edition.formats, reader), File(name="cut", text="cut/")
    each = worded(reader, "router-each", formats=formats.each, folder=folder)
    units = say(reader, "router-units", units=formats.units)
    yield Fact(head=say(reader, "router-all"), lines=((each, units),))
    needs = bed_needs(edition)
    if needs is not None:
        size = size_pair(needs.largest.size, reader)
        marks = listed(reader, [piece.mark for piece in needs.largest.pieces])
        yield Fact(head=say(reader, "router-largest"), lines=(((twin(size),), marks),))
    yield Fact(head=say(reader, "router-setup"), lines=_papers(setup_name(label, "{}")))
    if edition.exact and arts_of(edition.settled):
        alone = worded(reader, "router-centred", folder=File(name="cut/engravings"))
        lines = ((alone,), *_papers(engravings_name("{}")))
        yield Fact(head=say(reader, "router-engravings"), lines=lines)


def _papers(name: str) -> tuple[tuple[Words, ...], ...]:
    """Return a file on every paper, by a name with a place for the paper."""
    return tuple(((File(name=name.format(paper)),),) for paper in PAPERS)


def _cutting(edition: Edition) -> Iterator[Block]:
    reader = edition.reader
    yield Heading(words=say(reader, "router-side"))
    yield Paragraph(words=offset_words(edition))
    yield Heading(words=say(reader, "router-cutter"))
    yield Paragraph(words=cutter_words(edition))
    yield Heading(words=say(reader, "router-depth"))
    cuts = [cut for part in edition.settled.parts for cut in part.cuts]
    engraves = any(cut.operation is Operation.ENGRAVE for cut in cuts)
    yield Listing(entries=depth_advice(reader, engraves=engraves))
    yield Heading(words=say(reader, "router-layers"), id="layers")
    yield Paragraph(words=say(reader, "router-layers-order"))
    yield Table(
        title=say(reader, "router-layers"),
        columns=(
            Column(head=say(reader, "router-layer")),
            Column(head=say(reader, "router-layer-for")),
        ),
        rows=tuple(
            Row(cells=((typed(str(layer.name)),), str(layer.purpose)))
            for layer in layers_explained(edition)
        ),
    )
