"""The fit coupon: a small test piece that tells what a cutter really cuts.

A calliper tells how thick the sheet is; the coupon tells the *true cut*. Where a toolpath program
runs a cutter that cuts ``e`` mm wider than its name beside a line, an opening comes out ``e`` wider
and a tab ``e`` narrower, whatever their size. So the plate has a slot that grows in steps, once
across x and once across y, for the sheet itself to be tried in; the tab has two arms that grow in
steps, one across each, for the plate's long slot. Each step has a notch to count or to set a
calliper to: nobody changes cutters to engrave digits.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from functools import lru_cache
from math import ceil, floor

from kerfolio.basis.digits import rounded
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.model.feature_kind import NOTCH, TAB
from kerfolio.settling.coupon_shape import arm_width, coupon_plate, coupon_tab
from kerfolio.settling.fitted import around, of_sheet, taking
from kerfolio.settling.settled import Coupon, CouponSlot, CouponStep, SettledPart, SettledSheet

_STEP, _INCH_STEP = 0.1, 0.127  # mm; the second is 0.005 in
_REACH = 3  # steps either side of the drawn thickness that a coupon tries at least
_MOST_SLOTS = 16
_NARROWER, _WIDER = 1, 3
"""Steps of a tab narrower and wider than the usual tab, each two of the slot's: what a cutter cuts
too wide makes the slot longer and the tab narrower, and most cut wide rather than narrow."""
_TAB, _LEAST_TAB, _MOST_TAB = 30.0, 20.0, 60.0
_LONGEST = 60.0
"""Of a long halving (a wide tab, too) a coupon has so much, mm: enough to feel it, on a scrap."""


def coupons_of(parts: Sequence[SettledPart], sheets: Iterable[SettledSheet], unit: str) -> Coupons:
    """Return a coupon for each sheet that some feature takes, or for all where none is taken.

    All are of a plan as it is drawn; ``unit`` is that of the plan.
    """
    taken = {feature.takes for part in parts for feature in part.features if feature.takes}
    cut = {part.sheet for part in parts}
    return tuple(
        coupon(each, unit, _usual_tab(parts, each.name), _longest_halving(parts, each.name))
        for each in sheets
        if each.name in (taken or cut)
    )


Coupons = tuple[Coupon, ...]


@lru_cache(maxsize=64)
def coupon(
    sheet: SettledSheet, unit: str = "mm", tab: float = _TAB, halving: float = 0.0
) -> Coupon:
    """Return the coupon of a sheet at the thickness it is drawn for, the same for every point.

    ``tab`` is how wide the plan's usual tab is, ``halving`` how deep its deepest notch for the
    sheet, mm; 0 where it has none. Every step of the slot is as wide as the plan cuts it for the
    thickness it stands for.
    """
    step = step_of(sheet, unit)
    widths = [
        (thickness, taking(thickness, of_sheet(sheet.fit)).value)
        for thickness in tried(sheet.published, sheet.thickness, step)
    ]
    usual = min(max(tab, _LEAST_TAB), _MOST_TAB)
    tabs = [usual + 2 * n * step for n in range(-_NARROWER, _WIDER + 1)]
    opening = around(usual, of_sheet(sheet.fit)).value
    deep = min(halving, _LONGEST)
    plate, spots = coupon_plate(sheet, [width for _, width in widths], opening)
    made, ends = coupon_tab(sheet, tabs, deep)
    inner = arm_width(sheet, widths[-1][1]) + sheet.gap
    return Coupon(
        sheet=sheet.name,
        plate=plate,
        tab=made,
        beside=(inner, inner),
        slots=tuple(
            CouponSlot(number=number, thickness=thickness, width=width, spots=at)
            for number, ((thickness, width), at) in enumerate(zip(widths, spots, strict=True), 1)
        ),
        steps=tuple(
            CouponStep(number=number, width=width, spots=at)
            for number, (width, at) in enumerate(zip(tabs, ends, strict=True), 1)
        ),
        usual=usual,
        opening=opening,
        halving=deep,
    )


def _usual_tab(parts: Iterable[SettledPart], sheet: str) -> float:
    """Return how wide most tabs of a sheet are, the narrowest of several, mm."""
    widths = Counter[float]()
    for part in parts:
        for feature in part.features if part.sheet == sheet else ():
            if feature.kind is TAB:
                widths[rounded(feature.width.value, 3)] += len(part.pieces)
    return min(widths, key=lambda each: (-widths[each], each), default=_TAB)


def _longest_halving(parts: Iterable[SettledPart], sheet: str) -> float:
    """Return the depth of the deepest notch that takes a sheet, mm; 0 where there is none."""
    features = (feature for part in parts for feature in part.features)
    notches = (each for each in features if each.kind is NOTCH and each.takes == sheet)
    return max((each.length.value for each in notches), default=0.0)


def size_of(coupon: Coupon) -> tuple[float, float]:
    """Return how wide and how high a scrap both pieces take as they are cut, mm."""
    plate, tab = bounds(coupon.plate.routed), bounds(coupon.tab.routed)
    x, y = coupon.beside
    return max(plate.width, x + tab.width), max(plate.height, y + tab.height)


def places_of(coupon: Coupon) -> tuple[Point, Point]:
    """Return by how much plate and tab are moved to lie as they are cut, mm: 0,0 is the plate's
    lower left corner.
    """
    plate, tab = bounds(coupon.plate.routed), bounds(coupon.tab.routed)
    x, y = coupon.beside
    return (-plate.x0, -plate.y0), (x - tab.x0, y - tab.y0)


def step_of(sheet: SettledSheet, unit: str) -> float:
    """Return the mm between the thicknesses that a coupon tries: as the plan states, else 0.1 mm or
    0.005 in.
    """
    if sheet.step is not None:
        return sheet.step
    return _INCH_STEP if unit == "in" else _STEP


def tried(published: tuple[float, float], drawn: float, step: float) -> tuple[float, ...]:
    """Return the thicknesses a coupon tries, in steps of ``step`` mm, at most 16 of them.

    They cover what is published and three steps either side of the drawn thickness; a longer range
    is tried around the drawn thickness only.
    """
    reach = _REACH * step
    first = floor(min(*published, drawn - reach) / step + 1e-6)
    last = ceil(max(*published, drawn + reach) / step - 1e-6)
    while last - first + 1 > _MOST_SLOTS:
        # The end that is further from the drawn thickness gives way.
        first, last = (
            (first + 1, last)
            if drawn / step - first > last - drawn / step
            else (
                first,
                last - 1,
            )
        )
    return tuple(round(index * step, 6) for index in range(first, last + 1))
