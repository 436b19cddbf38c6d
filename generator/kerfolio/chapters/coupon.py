"""Cut this first: the fit coupon, what it is for, how it is read, what to do with what it says."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.lengths import size_text
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
from kerfolio.document.words import File, Words, twin
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
    words = measuring_of(edition)
    blocks: list[Block] = [
        Paragraph(words=words.coupon, manner=Manner.LEAD),
        Heading(words="Read it"),
        Paragraph(words=words.read),
        Heading(words="Correct once"),
        Paragraph(words=words.rule),
    ]
    for each in coupons:
        blocks += _one(edition, each, words)
    blocks.append(Paragraph(words=words.without, manner=Manner.SMALL))
    blocks.append(Paragraph(words=words.play, manner=Manner.SMALL))
    return Chapter(id="coupon", title="Cut this first", blocks=tuple(blocks), who=CUTTERS)


def _one(edition: Edition, found: Coupon, words: Measuring) -> Iterator[Block]:
    settled, reader = edition.settled, edition.reader
    title = sheet_title(settled, found.sheet)
    yield Figure(
        picture=Art(
            name=f"coupon-{found.sheet}",
            draw=lambda room: coupon_view(settled, found, room, reader),
        ),
        caption=(
            f"The coupon for {title}, on a scrap of {size_text(size_of(found), reader)}: the plate "
            "with its two slots, and the tab with its two arms and its tongue. It lies in ",
            File(name="cut/fit-coupon"),
            f". {words.lies}",
        ),
    )
    yield Paragraph(words=arms_words(found, reader))
    yield Table(
        title=f"Steps of the coupon for {title}",
        columns=(
            Column(head="Step", kind=Kind.MARK),
            Column(head="Slot as drawn", kind=Kind.NUMBER, spare=True),
            Column(head="Without a caliper", kind=Kind.NUMBER),
            Column(head="Take"),
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
