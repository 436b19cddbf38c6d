"""Which chapters a document has, in the order that its readers need them."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.chapters.cautions import cautions
from kerfolio.chapters.coupon import coupon
from kerfolio.chapters.hand import hand
from kerfolio.chapters.measuring import measuring
from kerfolio.chapters.need import need
from kerfolio.chapters.parts import parts
from kerfolio.chapters.router import router
from kerfolio.chapters.saw import saw
from kerfolio.chapters.sheets import sheets
from kerfolio.chapters.shop import shop
from kerfolio.chapters.yard import yard
from kerfolio.document.chapter import Chapter, kept
from kerfolio.edition.edition import Edition

Making = Callable[[Edition], Chapter | None]
"""How a chapter is made; None where a plan has nothing to tell in it."""

_WAYS: tuple[Making, ...] = (router, saw, hand, shop)
"""The ways to get the parts cut; a reader takes one."""

BOOKLET: tuple[Making, ...] = (
    need,
    yard,
    cautions,
    measuring,
    coupon,
    *_WAYS,
    parts,
    sheets,
)
PAGE: tuple[Making, ...] = (
    need,
    yard,
    *_WAYS,
    measuring,
    coupon,
    cautions,
    parts,
    sheets,
)
START: tuple[Making, ...] = (
    measuring,
    coupon,
    cautions,
    *_WAYS,
    need,
    yard,
    parts,
    sheets,
)


def chapters_of(edition: Edition, order: tuple[Making, ...]) -> tuple[Chapter, ...]:
    """Return the chapters of an edition in an order; those with nothing to tell are left out."""
    return kept([make(edition) for make in order])
