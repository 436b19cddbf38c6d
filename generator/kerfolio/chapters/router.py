"""With a CNC router: which files, how they are checked, what their lines mean, which cutter."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.lengths import size_pair
from kerfolio.basis.words import listed
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
from kerfolio.document.words import File, Reference, Words, twin, typed
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

_SQUARES = {"mm": "100 mm and 4 in", "in": "4 in and 100 mm"}


def router(edition: Edition) -> Chapter:
    """Return how a router cuts the parts; of a plan whose files are kept back what they hold."""
    blocks: list[Block] = [
        Heading(words="In this order"),
        Listing(entries=tuple(_order(edition)), numbered=True),
        Live(name="setup"),
        Heading(words="The files"),
        Facts(facts=tuple(_files(edition)), rows=True),
    ]
    if edition.settled.parts:
        blocks += _cutting(edition)
    return Chapter(
        id="router", title="With a CNC router", blocks=tuple(blocks), who=frozenset({Who.ROUTER})
    )


def _order(edition: Edition) -> Iterator[Words]:
    measured = Reference(text="Measure your sheet", chapter="measuring")
    yield (measured, ", and take the files that are for its thickness.")
    yield (
        f"Open a file and measure its check squares: {_SQUARES[edition.reader.unit]}. If they are "
        "off, the program has taken the unit wrongly: do not cut."
    )
    if edition.settled.coupons:
        coupon = Reference(text="coupon", chapter="coupon")
        yield ("Cut the ", coupon, " first, from the very sheet.")
    yield (
        "Set up by the setup sheet: where the sheet lies and is clamped, which cutter, in which "
        "order, how deep, and on which side of each line."
    )


def _files(edition: Edition) -> Iterator[Fact]:
    """Yield where the files for a router lie, those for the thickness drawn by their names."""
    formats, label = format_words(edition.formats, edition.reader), edition.settled.variant.label
    yield Fact(
        head="Every sheet, every part",
        lines=(
            (
                (
                    f"{formats.each} for each, in the folder of your thickness in ",
                    File(name="cut", text="cut/"),
                ),
                f"all are {formats.units}, whatever your machine shows",
            ),
        ),
    )
    needs = bed_needs(edition)
    if needs is not None:
        size = size_pair(needs.largest.size, edition.reader)
        marks = listed([piece.mark for piece in needs.largest.pieces])
        yield Fact(head="Largest piece", lines=(((twin(size),), marks),))
    yield Fact(head="Setup sheets", lines=_papers(setup_name(label, "{}")))
    if edition.exact and arts_of(edition.settled):
        alone = ("centred, for finished pieces, in ", File(name="cut/engravings"))
        lines = ((alone,), *_papers(engravings_name("{}")))
        yield Fact(head="Engravings alone", lines=lines)


def _papers(name: str) -> tuple[tuple[Words, ...], ...]:
    """Return a file on every paper, by a name with a place for the paper."""
    return tuple(((File(name=name.format(paper)),),) for paper in PAPERS)


def _cutting(edition: Edition) -> Iterator[Block]:
    yield Heading(words="Which side of the line")
    yield Paragraph(words=offset_words(edition))
    yield Heading(words="The cutter")
    yield Paragraph(words=cutter_words(edition))
    yield Heading(words="Depth")
    cuts = [cut for part in edition.settled.parts for cut in part.cuts]
    engraves = any(cut.operation is Operation.ENGRAVE for cut in cuts)
    yield Listing(entries=depth_advice(edition.reader, engraves=engraves))
    yield Heading(words="The layers of the cut files", id="layers")
    yield Paragraph(
        words="One layer for each operation and depth, in the order of cutting. Depths are from "
        "the face that lies up, which is the show face."
    )
    yield Table(
        title="The layers of the cut files",
        columns=(Column(head="Layer"), Column(head="What it is for")),
        rows=tuple(
            Row(cells=((typed(str(layer.name)),), str(layer.purpose)))
            for layer in layers_explained(edition)
        ),
    )
