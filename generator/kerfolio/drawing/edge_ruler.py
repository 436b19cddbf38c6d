"""Rulers beside the edges of a part: where `at` is 0, which way it counts, what it says where."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import atan2, degrees, dist, hypot

from kerfolio.basis.lengths import place_decimal
from kerfolio.basis.names import set_name
from kerfolio.basis.reader import Reader
from kerfolio.basis.thickness import reading_number
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.expand import NARROW
from kerfolio.drawing.extent import apart, extent, padded
from kerfolio.drawing.lettering import CAPITAL, Box, label_box, text_width
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.boolean import intersects
from kerfolio.geometry.contour import Point, Region
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.model.feature_kind import BORE, FINGERS, TAB
from kerfolio.settling.settled import SettledFeature, SettledPart

_TEXT, _NAME = 2.8, 3.2
_AWAY = 4.0
"""Between what stands out of an edge and its first ruler, mm on paper."""
_FURTHER, _FURTHEST = 2.0, 160.0
"""In which steps, mm, and how far a ruler looks for room."""
_TICK, _HEAD, _WING = 1.2, 2.2, 0.8
_AIR = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    """The frame of an edge on paper: s along it from where its `at` is 0, h out of the part."""

    origin: Point
    along: Point
    out: Point

    def spot(self, s: float, h: float) -> Point:
        (x, y), (ax, ay), (ox, oy) = self.origin, self.along, self.out
        return x + s * ax + h * ox, y + s * ay + h * oy

    def angle(self, turned: bool) -> float:
        """Return the angle of lettering along the edge, or across it, to be read upright."""
        x, y = self.out if turned else self.along
        angle = degrees(atan2(y, x))
        while angle > 90 + 1e-6:
            angle -= 180
        while angle <= -90 + 1e-6:
            angle += 180
        return angle


def edge_rulers(
    part: SettledPart, seat: Seat, reader: Reader, taken: Sequence[Box] = ()
) -> tuple[Item, ...]:
    """Return a ruler for each set of tabs, notches or fingers, outside the part.

    A tab is measured to where it begins, a notch to its middle, as a plan states them; numbers are
    in the reader's unit. Nothing stands over what is ``taken`` (boxes on paper) or another ruler.
    """
    sets: dict[tuple[str, Point | None], list[SettledFeature]] = {}
    for each in part.features:
        if each.ruler is not None and dist(*each.ruler) > 0:
            sets.setdefault((set_name(each.name), each.direction), []).append(each)
    whole, boxes, made = seat.region(part.routed), list(taken), list[Item]()
    for (name, _), features in sets.items():
        ruler = _Ruler(name, tuple(features), seat, reader)
        items = ruler.placed(whole, boxes)
        boxes.append(extent(items))
        made += (*ruler.reaches(items), *items)
    return tuple(made)


class _Ruler:
    """The ruler of one set."""

    def __init__(
        self, name: str, features: tuple[SettledFeature, ...], seat: Seat, reader: Reader
    ) -> None:
        first = features[0]
        assert first.ruler is not None, "only what stands on an edge has a ruler"
        (x0, y0), (x1, y1) = first.ruler
        size = hypot(x1 - x0, y1 - y0)
        along = ((x1 - x0) / size, (y1 - y0) / size)
        self.frame = _Frame(origin=seat.point((x0, y0)), along=along, out=first.direction)
        self.out = max((f.length.value * seat.scale for f in features if f.kind is TAB), default=0)
        self.name = f"{name}: {edge_words(first, reader)}"
        kept = [] if first.kind is FINGERS else features
        reach = {_counted(each, along): each for each in kept}
        self.places = [(mm * seat.scale, place_decimal(mm, reader.unit)) for mm in sorted(reach)]
        if first.kind is FINGERS:
            self.places = [(size * seat.scale, place_decimal(size, reader.unit))]

    def placed(self, whole: Region, taken: Sequence[Box]) -> list[Item]:
        """Return its line and its words as near to the edge as there is room, else far from it."""
        away = self.out + _AWAY
        while True:
            items = list(self._items(away))
            words = [label_box(each) for each in items if isinstance(each, Label)]
            free = all(apart(padded(extent(items), _AIR), each) for each in taken)
            over = any(intersects(whole, rectangle(*padded(box, _AIR))) for box in words)
            if away > _FURTHEST or (free and not over):
                return items
            away += _FURTHER

    def reaches(self, items: Sequence[Item]) -> Iterator[Item]:
        """Yield the lines from the features to the ruler that was placed."""
        shaft = items[0]
        assert isinstance(shaft, Stroke)
        (x, y, _), (ox, oy) = shaft.contour.vertices[0], self.frame.out
        away = (x - self.frame.origin[0]) * ox + (y - self.frame.origin[1]) * oy
        for s, _ in self.places:
            yield _line(self.frame.spot(s, self.out + 0.8), self.frame.spot(s, away + _TICK))

    def _items(self, away: float) -> Iterator[Item]:
        frame, last = self.frame, max(s for s, _ in self.places)
        first = min(0.0, *(s for s, _ in self.places))
        tip = max(last, 0.0) + 3.0
        yield _line(frame.spot(first, away), frame.spot(tip, away))
        yield _line(
            frame.spot(tip - _HEAD, away + _WING),
            frame.spot(tip, away),
            frame.spot(tip - _HEAD, away - _WING),
        )
        yield Stroke(contour=circle(frame.spot(0, away), 1.6), width=None, fill=Ink.ACCENT)
        yield from self._words(away)

    def _words(self, away: float) -> Iterator[Label]:
        shown = [(0.0, "0"), *((s, text) for s, text in self.places if abs(s) > 1e-6)]
        shown.sort()
        near = pairwise(shown)
        room = min((b - a for (a, _), (b, _) in near), default=99.0)
        turned = room < max(text_width(text, _TEXT) for _, text in shown) + 1.0
        if turned:
            shown = _thinned(shown)
        high = _TEXT * CAPITAL
        widest = max(text_width(text, _TEXT) for _, text in shown)
        depth = widest if turned else high
        for s, text in shown:
            middle = self.frame.spot(s, away + _TICK + 0.8 + depth / 2)
            yield _centred(text, middle, _TEXT, self.frame.angle(turned))
        angle = self.frame.angle(False)
        start = (shown[0][0] + shown[-1][0]) / 2
        base = away + _TICK + 0.8 + depth + 1.4 + _NAME * CAPITAL / 2
        yield _centred(self.name, self.frame.spot(start, base), _NAME, angle, strong=True)


def edge_words(feature: SettledFeature, reader: Reader) -> str:
    """Return how large a feature on an edge is: ``60 wide, 18 long``, in the reader's unit."""
    wide, long = (
        reading_number(feature.width.value, reader),
        reading_number(feature.length.value, reader),
    )
    if feature.kind is FINGERS:
        return f"fingers and gaps, {long} deep"
    if feature.kind is BORE:
        return f"bore ø {wide} into the edge, {long} deep"
    return f"{wide} wide, {long} {'long' if feature.kind is TAB else 'deep'}"


def _counted(feature: SettledFeature, along: Point) -> float:
    """Return how far along its edge a plan states a feature, mm."""
    assert feature.ruler is not None
    (x, y), (x0, y0) = feature.at, feature.ruler[0]
    s = (x - x0) * along[0] + (y - y0) * along[1]
    return s - feature.width.value / 2 if feature.kind is TAB else s


def _thinned(shown: list[tuple[float, str]]) -> list[tuple[float, str]]:
    """Return what of many places on a ruler has room across it: the first and the last always."""
    kept, last = [shown[0]], shown[-1]
    if last[0] - kept[0][0] < _TEXT:
        return [last]  # a dot marks where 0 is
    for each in shown[1:-1]:
        if min(each[0] - kept[-1][0], last[0] - each[0]) >= _TEXT:
            kept.append(each)
    return [*kept, last]


def _line(*points: Point) -> Stroke:
    return Stroke(contour=open_path(*points), ink=Ink.SOFT, width=NARROW)


def _centred(
    text: str, middle: Point, height: float, angle: float, *, strong: bool = False
) -> Label:
    """Return a label with the middle of its capitals on a point."""
    seat = Seat(x=middle[0], y=middle[1], turn=angle)
    at = seat.point((0.0, -height * CAPITAL / 2))
    ink = Ink.INK if strong else Ink.SOFT
    return Label(
        text=text, at=at, height=height, angle=angle, anchor=Anchor.MIDDLE, strong=strong, ink=ink
    )
