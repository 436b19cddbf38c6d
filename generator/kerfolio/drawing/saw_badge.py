"""Numbers of saw cuts: on their lines, or in a row along the sheet's edge."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import dist

from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.extent import apart
from kerfolio.drawing.lettering import CAPITAL, Box, text_width
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.shapes import circle

_RADII = (1.9,)
_LETTER = 1.4
"""Size of the lettering, of the radius."""
_AIR = 0.3
_STEP = 0.6
_OUT = 1.6
"""Between the sheet's edge and the badges beside it, mm."""
_SETTING = 2.8
_LINE = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class CutLine:
    """A cut on paper, from ``a`` (left or below) to ``b``, mm; its setting in mm of wood.

    ``outer``: it goes through the whole sheet, and its number stands outside.
    """

    number: int
    a: Point
    b: Point
    outer: bool
    setting: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Badges:
    """The lines, their numbers, what the numbers cover, and numbers without a place."""

    lines: tuple[Stroke, ...]
    items: tuple[Item, ...]
    boxes: tuple[Box, ...]
    missing: tuple[int, ...]


def badges(lines: Sequence[CutLine], taken: Sequence[Box]) -> Badges:
    """Number each cut on its line, near its beginning, clear of what is taken and of each other.

    The shortest line chooses first. A line is broken where its number stands.
    """
    occupied = list(taken)
    places: dict[int, tuple[Point, float]] = {}
    for line in sorted(lines, key=lambda each: (dist(each.a, each.b), each.number)):
        for radius in _RADII:
            spot = next(
                (at for at in _spots(line, radius) if _free(_box(at, radius), occupied)), None
            )
            if spot is not None:
                places[line.number] = (spot, radius)
                occupied.append(_box(spot, radius))
                break
    return Badges(
        lines=tuple(each for line in lines for each in _strokes(line, places.get(line.number))),
        items=tuple(
            item for number, place in sorted(places.items()) for item in _badge(number, *place)
        ),
        boxes=tuple(_box(*place) for place in places.values()),
        missing=tuple(line.number for line in lines if line.number not in places),
    )


def edge_badges(lines: Sequence[CutLine], words: Callable[[float], str]) -> Badges:
    """Number cuts through the whole sheet left of it or below, each with its setting."""
    radius = _RADII[0]
    strokes: list[Stroke] = []
    items: list[Item] = []
    for level in (True, False):
        own = [each for each in lines if (each.a[1] == each.b[1]) == level]
        wanted = [each.a[1] if level else each.a[0] for each in own]
        out = -_OUT - radius
        for line, place in zip(own, _spread(wanted, 2 * radius + 0.5), strict=True):
            spot = (out, place) if level else (place, out)
            rim = (out + radius, place) if level else (place, out + radius)
            foot = (0.0, line.a[1]) if level else (line.a[0], 0.0)
            strokes += _strokes(line, None)
            items.append(Stroke(contour=open_path(rim, foot), ink=Ink.ACCENT, width=0.18))
            items += _badge(line.number, spot, radius)
            items.append(_setting(words(line.setting), spot, radius, level))
    return Badges(lines=tuple(strokes), items=tuple(items), boxes=(), missing=())


def _setting(text: str, spot: Point, radius: float, level: bool) -> Label:
    drop, away = CAPITAL * _SETTING / 2, radius + 0.9
    x, y = spot
    if not level and text_width(text, _SETTING) <= 2 * radius:
        at = (x, y - away - 2 * drop)
        return Label(text=text, at=at, height=_SETTING, anchor=Anchor.MIDDLE)
    at = (x - away, y - drop) if level else (x + drop, y - away)
    angle = 0.0 if level else 90.0
    return Label(text=text, at=at, height=_SETTING, anchor=Anchor.END, angle=angle)


def _spread(wanted: Sequence[float], gap: float) -> list[float]:
    """Move places apart until they keep the gap, each group about its own middle."""
    groups: list[list[float]] = []
    order = sorted(range(len(wanted)), key=lambda index: (wanted[index], index))
    for index in order:
        groups.append([wanted[index]])
        while len(groups) > 1 and _first(groups[-1], gap) < _last(groups[-2], gap) + gap:
            groups[-2:] = [groups[-2] + groups[-1]]
    places = [_first(group, gap) + n * gap for group in groups for n in range(len(group))]
    by_index = dict(zip(order, places, strict=True))
    return [by_index[index] for index in range(len(wanted))]


def _first(group: Sequence[float], gap: float) -> float:
    return math.fsum(group) / len(group) - (len(group) - 1) * gap / 2


def _last(group: Sequence[float], gap: float) -> float:
    return math.fsum(group) / len(group) + (len(group) - 1) * gap / 2


def _spots(line: CutLine, radius: float) -> Iterator[Point]:
    """Yield places along a line from its beginning; a short line's middle, if it is no shorter
    than half a badge."""
    length = dist(line.a, line.b)
    if radius <= length < 2 * radius + 0.6:
        yield (line.a[0] + line.b[0]) / 2, (line.a[1] + line.b[1]) / 2
    along = radius + 0.4
    while along <= length - radius - 0.2:
        share = along / length
        yield (
            line.a[0] + share * (line.b[0] - line.a[0]),
            line.a[1] + share * (line.b[1] - line.a[1]),
        )
        along += _STEP


def _box(at: Point, radius: float) -> Box:
    reach = radius + _AIR
    return at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach


def _free(box: Box, taken: Sequence[Box]) -> bool:
    return all(apart(box, other) for other in taken)


def _strokes(line: CutLine, badge: tuple[Point, float] | None) -> Iterator[Stroke]:
    """Yield the line, in two where its badge stands."""
    ends = [(line.a, line.b)]
    if badge is not None:
        at, radius = badge
        level = line.a[1] == line.b[1]
        dx, dy = (radius, 0.0) if level else (0.0, radius)
        ends = [(line.a, (at[0] - dx, at[1] - dy)), ((at[0] + dx, at[1] + dy), line.b)]
    for a, b in ends:
        if a[0] + a[1] >= b[0] + b[1]:
            continue  # the badge reaches past the end
        yield Stroke(contour=open_path(a, b), ink=Ink.ACCENT, width=_LINE)


def _badge(number: int, at: Point, radius: float) -> Iterator[Item]:
    height = _LETTER * radius
    yield Stroke(contour=circle(at, 2 * radius), ink=Ink.ACCENT, width=0.25, fill=Ink.PAPER)
    spot = (at[0], at[1] - CAPITAL * height / 2)
    yield Label(text=str(number), at=spot, height=height, anchor=Anchor.MIDDLE, strong=True)
