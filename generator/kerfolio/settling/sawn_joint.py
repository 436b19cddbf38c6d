"""The joint that a reader with hand tools saws first, from an offcut of the very sheet.

It is one small piece, sawn twice: the tab of one goes into the slot of the other. Both are as the
plan has them for the sheet's thickness and fit, the tab as wide as most of its tabs. Where a sheet
has no tabs it is a piece with a notch, as deep as the plan's deepest, and two of them cross.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from kerfolio.geometry.shapes import rectangle, slot
from kerfolio.model.feature_kind import NOTCH, SLOT, TAB, FeatureKind
from kerfolio.settling.edge_feature import ROOT
from kerfolio.settling.face_feature import slot_corners
from kerfolio.settling.fitted import around, of_sheet, taking
from kerfolio.settling.part import assembled, pieces_of
from kerfolio.settling.settled import (
    Coupon,
    SettledFeature,
    SettledPart,
    SettledPlan,
    SettledSheet,
    Sized,
)
from kerfolio.settling.shape import shape_of
from kerfolio.settling.shaped import Mating, Shaped

TEST_JOINT = "test-joint"
"""What its template is called; of several sheets each has its own, ``test-joint-ply``."""

_MARK = "TEST"
_ONES = ("", "I", "II", "III", "IV", "V", "VI", "VII", "VIII", "IX")
_TWICE = ("one", "other")
_BESIDE = 20.0  # mm beside a slot, a tab or a notch
_ALONG: tuple[float, float] = (1.0, 0.0)
_UP: tuple[float, float] = (0.0, 1.0)


def with_test_joints(settled: SettledPlan) -> SettledPlan:
    """Return a plan whose parts begin with the test joints of its sheets."""
    return replace(settled, parts=(*_joints(settled), *settled.parts))


def _joints(settled: SettledPlan) -> Iterator[SettledPart]:
    several = len(settled.sheets) > 1
    for number, each in enumerate(settled.coupons, 1):
        sheet = settled.sheet(each.sheet)
        name = f"{TEST_JOINT}-{each.sheet}" if several else TEST_JOINT
        mark = f"{_MARK} {_roman(number)}" if several else _MARK
        if any(f.kind is TAB for p in settled.parts if p.sheet == sheet.name for f in p.features):
            yield _tab_and_slot((name, mark), sheet, each)
        elif each.halving:
            yield _notched((name, mark), sheet, each)


def _roman(number: int) -> str:
    """Return a number as no tile is called, and no piece marked."""
    tens, ones = divmod(number, 10)
    return "X" * tens + _ONES[ones]


def _tab_and_slot(called: tuple[str, str], sheet: SettledSheet, coupon: Coupon) -> SettledPart:
    tab, width = coupon.usual, taking(sheet.thickness, of_sheet(sheet.fit))
    length = around(tab, of_sheet(sheet.fit))
    wide, high = tab + 2 * _BESIDE, width.value + 2 * _BESIDE
    (left, right), middle = (_BESIDE, _BESIDE + tab), (wide / 2, high / 2)
    stands = Shaped(
        feature=_feature(TAB, (wide / 2, high), _UP, (Sized(tab), Sized(sheet.thickness))),
        added=(rectangle(left, high - ROOT, right, high + sheet.thickness),),
        mating=tuple(Mating(at=(x, high), eaten=_ALONG) for x in (left, right)),
    )
    opens = Shaped(
        feature=_feature(SLOT, middle, _ALONG, (width, length), sheet.name),
        taken=(slot(middle, _ALONG, length.value, width.value),),
        mating=slot_corners(middle, _ALONG, length.value, width.value),
    )
    return _made(called, sheet, (wide, high), (stands, opens))


def _notched(called: tuple[str, str], sheet: SettledSheet, coupon: Coupon) -> SettledPart:
    width, deep = taking(sheet.thickness, of_sheet(sheet.fit)), coupon.halving
    wide, high = width.value + 3 * _BESIDE, 2 * deep
    middle = wide / 2
    sides = (middle - width.value / 2, middle + width.value / 2)
    notch = Shaped(
        feature=_feature(NOTCH, (middle, deep), _UP, (width, Sized(deep)), sheet.name),
        taken=(rectangle(sides[0], deep, sides[1], high + ROOT),),
        mating=tuple(Mating(at=(x, deep), eaten=_UP) for x in sides),
    )
    return _made(called, sheet, (wide, high), (notch,))


def _feature(
    kind: FeatureKind,
    at: tuple[float, float],
    direction: tuple[float, float],
    sides: tuple[Sized, Sized],
    takes: str = "",
) -> SettledFeature:
    return SettledFeature(
        name=kind.name,
        kind=kind,
        at=at,
        direction=direction,
        width=sides[0],
        length=sides[1],
        takes=takes,
    )


def _made(
    called: tuple[str, str],
    sheet: SettledSheet,
    size: tuple[float, float],
    shapes: tuple[Shaped, ...],
) -> SettledPart:
    """Return the joint, ``called`` by its name and its mark."""
    name, mark = called
    with_shapes = tuple(
        replace(s, feature=replace(s.feature, shape=(*s.taken, *s.added))) for s in shapes
    )
    shape = shape_of(rectangle(0.0, 0.0, *size), with_shapes, sheet)
    pieces = pieces_of(name, mark, _TWICE)
    return assembled(name, mark, sheet, pieces, "any", shape, with_shapes)
