"""The fit coupon as readers see it: which slot stands for which sheet thickness."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.basis.thickness import reading_in
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import face_strokes
from kerfolio.drawing.lettering import CAPITAL, text_width
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import Box, bounds
from kerfolio.model.feature_kind import SLOT
from kerfolio.settling.settled import Coupon, CouponSlot, SettledFeature, SettledPlan

ROOM = (150.0, 80.0)
_NUMBER = 4.6
_TEXT = 2.9
_AROUND = 14.0
"""Room for lettering above or below the plate, mm."""


@dataclass(frozen=True, slots=True)
class _Called:
    """A slot and where it lies in the picture."""

    slot: CouponSlot
    at: Point
    upright: bool


def coupon_view(
    settled: SettledPlan,
    coupon: Coupon,
    room: tuple[float, float] = ROOM,
    first: str = "mm",
) -> Drawing:
    """Return a picture of plate and tab to be shown at paper size, within ``room`` (mm).

    Every slot is called out with its number and the sheet thickness whose files it stands for,
    in ``first``, ``mm`` or ``in`` (then decimal: a ladder's steps are finer than 1/64 in).
    """
    plate, tab = bounds(coupon.plate.routed), bounds(coupon.tab.routed)
    gap = 12.0
    wide = plate.width + gap + tab.width
    high = max(plate.height, tab.height)
    scale = min((room[0] - _AROUND) / wide, (room[1] - _AROUND) / high, 1.0)
    seat = Seat(scale=scale, x=-plate.x0 * scale, y=-plate.y0 * scale)
    aside = Seat(scale=scale, x=(plate.width + gap - tab.x0) * scale, y=-tab.y0 * scale)
    items: tuple[Item, ...] = (
        *face_strokes(coupon.plate, seat),
        *face_strokes(coupon.tab, aside),
        *_callouts(_called(coupon, seat), _scaled(plate, scale), first),
        *_tab_words(coupon, aside),
    )
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=f"{settled.plan.title}: fit coupon for {coupon.sheet}",
        description=_sentence(coupon, first),
    )


def _scaled(plate: Box, scale: float) -> Box:
    return Box(0.0, 0.0, plate.width * scale, plate.height * scale)


def _called(coupon: Coupon, seat: Seat) -> tuple[_Called, ...]:
    """Match the slots to the plate's features: by width, the nearest one not yet taken."""
    left = [each for each in coupon.plate.features if each.kind is SLOT]
    called = []
    for slot in coupon.slots:
        if not left:
            break
        feature = min(left, key=lambda each: abs(each.width.value - slot.width))
        left.remove(feature)
        called.append(_Called(slot, seat.point(feature.at), _is_upright(feature)))
    return tuple(called)


def _is_upright(feature: SettledFeature) -> bool:
    return abs(feature.direction[1]) > abs(feature.direction[0])


def _callouts(called: tuple[_Called, ...], plate: Box, first: str) -> Iterator[Label]:
    """Yield number and thickness of each slot: over or under an upright one, else to its left."""
    shrink = min(1.0, _pitch(called) / (text_width("00.00 mm", _TEXT) + 1.0))
    number, text = _NUMBER * max(shrink, 0.5), _TEXT * max(shrink, 0.5)
    for each in called:
        thickness = _thickness(each.slot, first)
        if not each.upright:
            x, y = -1.5, each.at[1] - text * CAPITAL / 2
            yield _label(f"{each.slot.number}:  {thickness}", (x, y), text, Anchor.END)
            continue
        x, above = each.at[0], each.at[1] >= plate.y1 * 0.45
        upper = plate.y1 + 2.0 + text * 1.25 if above else -2.0 - number * CAPITAL
        lower = plate.y1 + 2.0 if above else upper - text * 1.25
        yield _label(str(each.slot.number), (x, upper), number, Anchor.MIDDLE, strong=True)
        yield _label(thickness, (x, lower), text, Anchor.MIDDLE)


def _thickness(slot: CouponSlot, first: str) -> str:
    return reading_in(slot.thickness, first)


def _pitch(called: tuple[_Called, ...]) -> float:
    """Return the least distance between neighbouring slots in the picture, mm."""
    spots = sorted({round(each.at[0], 3) for each in called if each.upright})
    return min((after - before for before, after in pairwise(spots)), default=100.0)


def _label(text: str, at: Point, height: float, anchor: Anchor, *, strong: bool = False) -> Label:
    ink = Ink.ACCENT if strong else Ink.INK
    return Label(text=text, at=at, height=height, ink=ink, anchor=anchor, strong=strong)


def _tab_words(coupon: Coupon, seat: Seat) -> Iterator[Label]:
    box = bounds(seat.region(coupon.tab.routed))
    yield _label("tab", (box.centre[0], box.y1 + 2.0), _TEXT, Anchor.MIDDLE)


def _sentence(coupon: Coupon, first: str) -> str:
    slots = "; ".join(
        f"slot {each.number}, {reading_in(each.width, first)} wide,"
        f" is for {reading_in(each.thickness, first)} sheets"
        for each in coupon.slots
    )
    return f"A plate with slots of growing width, and a tab to try in them: {slots}."
