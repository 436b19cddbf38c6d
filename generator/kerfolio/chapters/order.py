"""Which chapters a document has, in the order that its readers need them."""

from __future__ import annotations

from collections.abc import Callable

from kerfolio.chapters.about import about
from kerfolio.chapters.care import care
from kerfolio.chapters.cautions import cautions
from kerfolio.chapters.costs import costs
from kerfolio.chapters.coupon import coupon
from kerfolio.chapters.cutting import cutting
from kerfolio.chapters.files import files
from kerfolio.chapters.hand import hand
from kerfolio.chapters.in_use import in_use
from kerfolio.chapters.loads import loads
from kerfolio.chapters.measuring import measuring
from kerfolio.chapters.need import need
from kerfolio.chapters.parts import parts
from kerfolio.chapters.questions import questions
from kerfolio.chapters.readers import readers
from kerfolio.chapters.releases import releases
from kerfolio.chapters.router import router
from kerfolio.chapters.saw import saw
from kerfolio.chapters.sheets import sheets
from kerfolio.chapters.shop import shop
from kerfolio.chapters.steps import steps
from kerfolio.chapters.story import story
from kerfolio.chapters.swaps import swaps
from kerfolio.chapters.trials import trials
from kerfolio.chapters.whole import whole
from kerfolio.chapters.yard import yard
from kerfolio.document.chapter import Chapter, kept
from kerfolio.edition.edition import Edition

Making = Callable[[Edition], Chapter | None]
"""How a chapter is made; None where a plan has nothing to tell in it."""

_WAYS: tuple[Making, ...] = (router, saw, hand, shop)
"""The ways to get the parts cut; a reader takes one."""
_BACKGROUND: tuple[Making, ...] = (costs, cutting, in_use, loads, swaps)
"""Where the figures come from."""

BOOKLET: tuple[Making, ...] = (
    *(need, cautions, measuring, coupon),
    *_WAYS,
    *(yard, parts, sheets, whole, steps, care),
    *_BACKGROUND,
    *(questions, releases, about),
)
PAGE: tuple[Making, ...] = (
    *_WAYS,
    *(measuring, coupon, cautions, sheets, yard),
    *(story, whole, parts, need, steps, care),
    *_BACKGROUND,
    *(questions, readers, trials, releases, about),
)
START: tuple[Making, ...] = (
    *_WAYS,
    *(measuring, coupon, cautions, files, yard, need, parts, sheets, whole, steps, care),
    *_BACKGROUND,
    *(questions, releases, about),
)


def chapters_of(edition: Edition, order: tuple[Making, ...]) -> tuple[Chapter, ...]:
    """Return the chapters of an edition in an order; those with nothing to tell are left out."""
    return kept([make(edition) for make in order])
