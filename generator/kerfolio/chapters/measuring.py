"""Measure your sheet: where and how often, which reading counts, which files that means."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.cutting_lengths import fit_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.thickness import thickness_pair
from kerfolio.document.blocks import (
    Block,
    Cell,
    Column,
    Figure,
    Heading,
    Kind,
    Listing,
    Live,
    Manner,
    Paragraph,
    Row,
    Size,
    Table,
)
from kerfolio.document.chapter import BUILDERS, Chapter
from kerfolio.document.picture import still
from kerfolio.document.words import File, Reference, twin, worded
from kerfolio.drawing.measuring_view import measuring_view
from kerfolio.edition.damp_words import room_words
from kerfolio.edition.edition import Edition
from kerfolio.edition.joint_fits import JointFits, joint_fits
from kerfolio.edition.measuring import Measuring, measuring_of
from kerfolio.edition.names import START
from kerfolio.edition.other_sheets import other_words
from kerfolio.edition.proved_words import proved_words
from kerfolio.settling.titles import sheet_title


def measuring(edition: Edition) -> Chapter | None:
    """Return how a sheet is measured and its files chosen; None where no sheet is to be seen."""
    if not edition.settled.sheets:
        return None
    words = measuring_of(edition)
    blocks: list[Block] = [
        Paragraph(words=words.measure, manner=Manner.LEAD),
        Figure(
            picture=still("measuring", measuring_view(edition.reader)),
            caption=words.points,
            size=Size.SMALL,
        ),
        Paragraph(words=words.counts),
        Live(name="fitting", blocks=tuple(_makes(words, edition.reader))),
        *_coupon_first(edition),
        Paragraph(words=words.take),
        _folders(edition),
        *_proved(edition),
        *_others(edition),
        *_fits(edition),
    ]
    title = say(edition.reader, "measure-title")
    return Chapter(id="measuring", title=title, blocks=tuple(blocks), who=BUILDERS)


def _makes(words: Measuring, reader: Reader) -> Iterator[Block]:
    """Yield where files are made for a reading, for documents in which they are not."""
    if words.makes:
        start = File(name=START)
        yield Paragraph(words=worded(reader, "measure-open", start=start))


def _coupon_first(edition: Edition) -> Iterator[Block]:
    if edition.settled.coupons:
        reader = edition.reader
        coupon = Reference(text=say(reader, "measure-coupon"), chapter="coupon")
        yield Paragraph(words=worded(reader, "measure-coupon-first", coupon=coupon), loud=True)


def _folders(edition: Edition) -> Table:
    reader, sheets = edition.reader, edition.settled.sheets
    rows = []
    for each in edition.variants:
        thick = dict(each.variant.thickness)
        fits = sorted({sheet.fit for sheet in each.sheets})
        cells = [(twin(thickness_pair(thick[sheet.name], reader)),) for sheet in sheets]
        folder = (File(name=f"cut/{each.variant.label}"),)
        told = listed(reader, [fit_in(fit, reader) for fit in fits])
        rows.append(Row(cells=(folder, *cells, told)))
    heads = [sheet_title(edition.settled, sheet.name) for sheet in sheets]
    return Table(
        title=say(reader, "measure-folders"),
        columns=(
            Column(head=say(reader, "measure-folder")),
            *(Column(head=head, kind=Kind.NUMBER) for head in heads),
            Column(head=say(reader, "measure-fit"), kind=Kind.NUMBER, spare=True),
        ),
        rows=tuple(rows),
    )


def _proved(edition: Edition) -> Iterator[Block]:
    words = proved_words(edition)
    if words:
        yield Paragraph(words=words, manner=Manner.SMALL)


def _others(edition: Edition) -> Iterator[Block]:
    reader, others = edition.reader, other_words(edition)
    if others:
        yield Heading(words=say(reader, "measure-others"), id="other-sheets")
        yield Paragraph(words=say(reader, "measure-others-lie"))
        yield Listing(
            entries=tuple(
                worded(
                    reader,
                    "measure-other",
                    sheet=each.title,
                    takes=each.takes,
                    folder=File(name=each.folder),
                )
                for each in others
            )
        )


def _fits(edition: Edition) -> Iterator[Block]:
    reader, room, fits = edition.reader, room_words(edition), joint_fits(edition)
    if room or fits is not None:
        yield Heading(words=say(reader, "measure-joints"))
    if room:
        care = Reference(text=say(reader, "measure-care"), chapter="care")
        yield Paragraph(words=worded(reader, "measure-damp", care=care, room=room))
    if fits is not None:
        yield Paragraph(words=fits.words)
        yield _fits_table(fits, reader)


def _fits_table(fits: JointFits, reader: Reader) -> Table:
    joints, purpose, *rooms = fits.heads
    columns = (Column(head=joints), Column(head=purpose, spare=True))
    return Table(
        title=say(reader, "measure-joints"),
        columns=(*columns, *(Column(head=each, kind=Kind.NUMBER) for each in rooms)),
        rows=tuple(Row(cells=(Cell(words=row.joints), *row.cells[1:])) for row in fits.rows),
    )
