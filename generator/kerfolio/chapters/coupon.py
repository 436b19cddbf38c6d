"""Cut this first: the fit coupon, what it is for, how it is read, what to do with what it says."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.lengths import size_text
from kerfolio.basis.saying import say
from kerfolio.basis.thickness import thickness_pair
from kerfolio.document.blocks import (
    Block,
    Cell,
    Column,
    Figure,
    Heading,
    Kind,
    Manner,
    Paragraph,
    Row,
    Table,
)
from kerfolio.document.chapter import CUTTERS, Chapter
from kerfolio.document.picture import Art
from kerfolio.document.words import File, Words, twin, worded
from kerfolio.drawing.coupon_view import coupon_view
from kerfolio.edition.edition import Edition
from kerfolio.edition.folder import choice_words
from kerfolio.edition.measuring import Measuring, arms_words, measuring_of
from kerfolio.settling.coupon import size_of
from kerfolio.settling.settled import Coupon, CouponSlot
from kerfolio.settling.titles import sheet_title


def coupon(edition: Edition) -> Chapter | None:
    """Return every fit coupon with its picture and its table; None for a plan without one."""
    coupons = edition.settled.coupons
    if not coupons:
        return None
    words, reader = measuring_of(edition), edition.reader
    blocks: list[Block] = [
        Paragraph(words=words.coupon, manner=Manner.LEAD),
        Heading(words=say(reader, "coupon-read")),
        Paragraph(words=words.read),
        Heading(words=say(reader, "coupon-correct")),
        Paragraph(words=words.rule),
    ]
    for each in coupons:
        blocks += _one(edition, each, words)
    blocks.append(Paragraph(words=words.without, manner=Manner.SMALL))
    blocks.append(Paragraph(words=words.play, manner=Manner.SMALL))
    title = say(reader, "coupon-title")
    return Chapter(id="coupon", title=title, blocks=tuple(blocks), who=CUTTERS)


def _one(edition: Edition, found: Coupon, words: Measuring) -> Iterator[Block]:
    settled, reader = edition.settled, edition.reader
    title = sheet_title(settled, found.sheet)
    yield Figure(
        picture=Art(
            name=f"coupon-{found.sheet}",
            draw=lambda room: coupon_view(settled, found, room, reader),
        ),
        caption=worded(
            reader,
            "coupon-caption",
            sheet=title,
            size=size_text(size_of(found), reader),
            folder=File(name="cut/fit-coupon"),
            lies=words.lies,
        ),
    )
    yield Paragraph(words=arms_words(found, reader))
    yield Table(
        title=say(reader, "coupon-steps", sheet=title),
        columns=(
            Column(head=say(reader, "coupon-step"), kind=Kind.MARK),
            Column(head=say(reader, "coupon-slot"), kind=Kind.NUMBER, spare=True),
            Column(head=say(reader, "coupon-bare"), kind=Kind.NUMBER),
            Column(head=say(reader, "coupon-take")),
        ),
        rows=tuple(_row(edition, found, slot) for slot in found.slots),
    )


def _row(edition: Edition, found: Coupon, slot: CouponSlot) -> Row:
    reader = edition.reader
    width, thick = (twin(thickness_pair(each, reader)) for each in (slot.width, slot.thickness))
    return Row(cells=(str(slot.number), (width,), (thick,), _take(edition, found, slot)))


def _take(edition: Edition, found: Coupon, slot: CouponSlot) -> Cell:
    """Return what to take, and what there is to say of it."""
    take, note = choice_words(edition, found.sheet, slot.thickness)
    named: Words = (File(name=take),) if take.startswith("cut/") else take
    chief: Words = named or note
    return Cell(words=chief, below=(note,) if take and note else ())
