"""A plan worked out whole, in use: a bench of two sides and a seat, which nothing braces."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from kerfolio.edition.edition import Edition, ThingInUse
from kerfolio.shop.span import sat_on
from tests.assembly.in_use_checks import bench, used
from tests.edition.carrying import carrying
from tests.plans import proved

SEAT = (
    "{seat: {part: seat, supports: [167.7, 832.3], load: {kg: 100, at: middle}, limit: span/100}}"
)


@cache
def sat(units_first: str = "mm") -> Edition:
    """Return it: the lists of another plan, this one's uses and what comes of them."""
    drawn, stated = proved(bench(SEAT)).drawn, used(bench(SEAT))
    assert drawn is not None
    found = carrying(units_first)
    return replace(
        found,
        plan=replace(found.plan, uses=drawn.plan.uses),
        in_use=(ThingInUse(found=stated, sat_on=sat_on(drawn, stated.part, stated.person.kg)),),
        spans=(),
    )
