"""The fit coupon as readers see it: its steps numbered, its places named."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.basis.thickness import reading_in
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import face_strokes
from kerfolio.drawing.lettering import CAPITAL
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.settling.coupon import places_of, size_of
from kerfolio.settling.settled import Coupon, SettledPlan
from kerfolio.settling.titles import sheet_title

ROOM = (150.0, 80.0)
_TEXT = 2.9
_OFF = 1.4
"""Between a piece and the words beside it, mm."""
_AROUND = (24.0, 10.0)
"""Room for lettering beside the pieces, mm."""
_FIFTH = 5


def coupon_view(
    settled: SettledPlan,
    coupon: Coupon,
    room: tuple[float, float] = ROOM,
    reader: Reader = METRIC,
) -> Drawing:
    """Return a picture of plate and tab to be shown at paper size, within ``room`` (mm).

    They lie as they are cut. The first, the last and every fifth step of the slots has its number;
    of the arms the first and the last. What is said to those who do not see it is for ``reader``.
    """
    wide, high = size_of(coupon)
    scale = min((room[0] - _AROUND[0]) / wide, (room[1] - _AROUND[1]) / high, 1.0)
    seat, aside = (Seat(scale=scale, x=x * scale, y=y * scale) for x, y in places_of(coupon))
    items: tuple[Item, ...] = (
        *face_strokes(coupon.plate, seat),
        *face_strokes(coupon.tab, aside),
        *_on_plate(coupon, seat, reader),
        *_on_tab(coupon, aside, reader),
    )
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=say(
            reader,
            "drawing-coupon",
            plan=settled.plan.title,
            sheet=sheet_title(settled, coupon.sheet),
        ),
        description=_sentence(coupon, reader),
    )


def _on_plate(coupon: Coupon, seat: Seat, reader: Reader) -> Iterator[Label]:
    box = bounds(seat.region(coupon.plate.routed))
    middle = _TEXT * CAPITAL / 2
    for slot in coupon.slots:
        if slot.number % _FIFTH == 0 or slot in (coupon.slots[0], coupon.slots[-1]):
            (_, y), (x, _) = (seat.point(spot) for spot in slot.spots)
            number = str(slot.number)
            yield _label(number, (box.x0 - _OFF, y - middle), Anchor.END, strong=True)
            below = box.y0 - _OFF - _TEXT * CAPITAL
            yield _label(number, (x, below), Anchor.MIDDLE, strong=True)
    (left, _), (_, low) = (seat.point(spot) for spot in coupon.slots[0].spots)
    yield _label(say(reader, "drawing-in-x"), (left, box.y1 + _OFF), Anchor.MIDDLE)
    yield _label(say(reader, "drawing-in-y"), (box.x1 + _OFF, low - middle), Anchor.START)


def _on_tab(coupon: Coupon, seat: Seat, reader: Reader) -> Iterator[Label]:
    """Yield words at the tips of the arms, and the numbers of the first step and the last."""
    box = bounds(seat.region(coupon.tab.routed))
    middle = _TEXT * CAPITAL / 2
    for step in coupon.steps:
        if step in (coupon.steps[0], coupon.steps[-1]):
            for x, y in map(seat.point, step.spots):
                yield _label(str(step.number), (x, y - middle), Anchor.MIDDLE, strong=True)
    (over, _), (_, level) = map(seat.point, coupon.steps[0].spots)
    yield _label(say(reader, "drawing-in-x"), (over, box.y1 + _OFF), Anchor.MIDDLE)
    yield _label(say(reader, "drawing-in-y"), (box.x1 + _OFF, level - middle), Anchor.START)


def _label(text: str, at: Point, anchor: Anchor, *, strong: bool = False) -> Label:
    ink = Ink.ACCENT if strong else Ink.INK
    return Label(text=text, at=at, height=_TEXT, ink=ink, anchor=anchor, strong=strong)


def _sentence(coupon: Coupon, reader: Reader) -> str:
    slots = "; ".join(
        say(
            reader,
            "drawing-coupon-step",
            step=each.number,
            wide=reading_in(each.width, reader),
            thick=reading_in(each.thickness, reader),
        )
        for each in coupon.slots
    )
    return say(reader, "drawing-coupon-shows", slots=slots)
