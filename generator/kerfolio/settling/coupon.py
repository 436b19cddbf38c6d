"""The fit coupon: a small test piece that tells which thickness's files to cut."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from math import ceil, floor

from kerfolio.basis.measures import depth
from kerfolio.basis.said import said
from kerfolio.basis.thickness import engraved_number
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.shapes import polygon, rectangle, slot
from kerfolio.geometry.stroke_text import stroke_text
from kerfolio.model.feature_kind import ENGRAVING, SLOT
from kerfolio.settling.face_feature import slot_corners
from kerfolio.settling.fitted import around, taking
from kerfolio.settling.part import assembled, pieces_of
from kerfolio.settling.settled import (
    Coupon,
    CouponSlot,
    Cut,
    Operation,
    SettledFeature,
    SettledPart,
    SettledSheet,
    Sized,
)
from kerfolio.settling.shape import shape_of
from kerfolio.settling.shaped import Shaped

_STEP, _INCH_STEP = 0.1, 0.127  # mm; the second is 0.005 in
_REACH = 3  # steps either side of the drawn thickness that a coupon tries at least
_MOST_SLOTS = 16
_ROW = 8
_TAB = 30.0  # mm the tab is wide
_BESIDE = 14.0  # mm between slots along a row
_MARGIN = 12.0
_LETTERS = 5.0
_ENGRAVED = 0.5  # mm deep
_X: Point = (1.0, 0.0)
_Y: Point = (0.0, 1.0)


@lru_cache(maxsize=64)
def coupon(sheet: SettledSheet, unit: str = "mm") -> Coupon:
    """Return the coupon of a sheet at the thickness it is drawn for, the same for every point.

    ``unit`` is what thicknesses are engraved in. Every slot is exactly as wide as the plan cuts it
    for the thickness engraved above it.
    """
    thicknesses = tried(sheet.published, sheet.thickness, step_of(sheet, unit))
    slots = tuple(
        CouponSlot(number=number, thickness=each, width=taking(each, sheet.fit).value)
        for number, each in enumerate(thicknesses, start=1)
    )
    return Coupon(
        sheet=sheet.name,
        plate=_plate(sheet, slots, unit),
        tab=_tab(sheet),
        slots=slots,
    )


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


def _plate(sheet: SettledSheet, slots: Sequence[CouponSlot], unit: str) -> SettledPart:
    per_row = ceil(len(slots) / ceil(len(slots) / _ROW))
    rows = [slots[start : start + per_row] for start in range(0, len(slots), per_row)]
    pitch = max(each.width for each in slots) + _BESIDE
    height = around(_TAB, sheet.fit).value + 2 * _LETTERS + _MARGIN
    width = max(len(row) for row in rows) * pitch + _MARGIN
    tall = len(rows) * height + 2.5 * _LETTERS + _MARGIN
    shapes = [
        shape
        for index, row in enumerate(rows)
        for shape in _row(row, sheet, pitch, _MARGIN + (len(rows) - 1 - index) * height, unit)
    ]
    title = f"FIT {sheet.name}"
    middle = (width / 2, tall - _MARGIN / 2 - _LETTERS / 2)
    shapes.append(_words("title", title, middle, _LETTERS))
    return _made("fit-coupon", sheet, rectangle(0, 0, width, tall, 6.0), shapes)


def _row(
    row: Sequence[CouponSlot], sheet: SettledSheet, pitch: float, bottom: float, unit: str
) -> Iterator[Shaped]:
    sized = around(_TAB, sheet.fit)
    length = sized.value
    for index, each in enumerate(row):
        at = (_MARGIN / 2 + (index + 0.5) * pitch, bottom + length / 2)
        yield Shaped(
            feature=SettledFeature(
                name=f"slot.{each.number}",
                kind=SLOT,
                at=at,
                direction=_Y,
                width=taking(each.thickness, sheet.fit),
                length=sized,
            ),
            taken=(slot(at, _Y, length, each.width),),
            mating=slot_corners(at, _Y, length, each.width),
        )
        spot = (at[0], bottom + length + 1.4 * _LETTERS)
        yield _words(f"number.{each.number}", engraved_number(each.thickness, unit), spot, _LETTERS)


def _tab(sheet: SettledSheet) -> SettledPart:
    """The piece that is tried in the slots: a tab with a grip to hold it by."""
    depth, grip = 25.0, 45.0
    wide = _TAB + 20.0
    inset = (wide - _TAB) / 2
    outline = polygon(
        [
            (0.0, 0.0, 8.0),
            (wide, 0.0, 8.0),
            (wide, grip, 0.0),
            (wide - inset, grip, 0.0),
            (wide - inset, grip + depth, 2.0),
            (inset, grip + depth, 2.0),
            (inset, grip, 0.0),
            (0.0, grip, 0.0),
        ]
    )
    return _made("fit-tab", sheet, outline, [_words("word", "TAB", (wide / 2, grip / 2), 6.0)])


def _words(name: str, text: str, at: Point, height: float) -> Shaped:
    lines: tuple[Contour, ...] = stroke_text(text, height, at)
    return Shaped(
        feature=SettledFeature(
            name=name,
            kind=ENGRAVING,
            at=at,
            direction=_X,
            width=Sized(height, "height of the letters"),
            length=Sized(0.0, "as wide as its lines"),
            depth=Sized(_ENGRAVED, said("{} engraving", depth("depth", _ENGRAVED))),
        ),
        cuts=(Cut(operation=Operation.ENGRAVE, depth=_ENGRAVED, contours=lines, feature=name),),
    )


def _made(
    name: str, sheet: SettledSheet, outline: Contour, shapes: Sequence[Shaped]
) -> SettledPart:
    shape = shape_of(outline, shapes, sheet)
    pieces = pieces_of(name, "", ())
    return assembled(name, "", sheet, pieces, "any", shape, shapes)
