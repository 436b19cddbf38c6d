"""Dots in rows over a scale: how cuts came out, over what they were cut with.

Rows say how, the shape of a dot says it again, so that no one needs to see colours. It knows
nothing of the log; whoever asks hands over words and numbers.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from enum import Enum

from kerfolio.basis.digits import digits, fixed
from kerfolio.drawing.lettering import CAPITAL, text_width
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.shapes import circle, rectangle

WIDE = 78.0
"""mm; in letters of the height below it is narrow enough for a phone."""
_LETTER = 3.1
_ROW = 7.4
_RADIUS = 1.05
_GAP = 2.4
_EDGE = 2.6
_CLOSE = 2.25
"""Middles of dots in one row lie so far apart at least, mm; where they cannot, they overlap."""
_LIFTS = (0.0, 0.5, -0.5, 1.0, -1.0)
"""How far a dot may be lifted off its row's line, in distances of dots."""
_TICKS = 5
_PAD = 0.06


class Sign(Enum):
    """The shape of a dot, from the best to the worst."""

    DISC = 1
    RING = 2
    TRIANGLE = 3
    CROSS = 4
    SQUARE = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class Dot:
    """One thing measured: its place on the scale, its row counted from the top, its shape."""

    value: float
    row: int
    sign: Sign


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A place on the scale that matters, with its words."""

    value: float
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Ruler:
    """How a scale is told: ``per`` is its unit in that of the values (25.4 for inches where values
    are mm), ``mark`` the decimal mark.
    """

    per: float = 1.0
    mark: str = "."


@dataclass(frozen=True, slots=True, kw_only=True)
class Chart:
    """What is drawn: ``rows`` from the top, what the ``scale`` measures, and how it is told.

    ``ratios`` make equal ratios equally long. ``zone`` is a stretch that stands out.
    """

    title: str
    description: str
    rows: tuple[str, ...]
    scale: str
    dots: tuple[Dot, ...]
    ruler: Ruler = field(default_factory=Ruler)
    ratios: bool = False
    zone: tuple[float, float] | None = None
    lines: tuple[Line, ...] = ()


def chart_view(chart: Chart) -> Drawing:
    """Return the chart as a drawing."""
    left = max(text_width(each, _LETTER) for each in chart.rows) + _GAP
    low, high = _ends(chart)
    head = _LETTER + 1.6 if chart.lines else 0.6
    foot = 2 * _LETTER + 4.2
    high_of_rows = _ROW * len(chart.rows)
    top = foot + high_of_rows
    seat = _Seat(left=left + _EDGE, right=WIDE - _EDGE, low=low, high=high, ratios=chart.ratios)
    levels = [top - _ROW * (number + 0.5) for number in range(len(chart.rows))]
    items: list[Item] = [*_zone(chart, seat, foot, top)]
    items += _rows(chart, left, levels)
    items += _scale(chart, seat, foot)
    items += [each for line in chart.lines for each in _line(line, seat, foot, top)]
    items += [sign for dot, at in _placed(chart.dots, seat, levels) for sign in _sign(dot.sign, at)]
    return Drawing(
        box=(0.0, 0.0, WIDE, top + head),
        items=tuple(items),
        title=chart.title,
        description=chart.description,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class _Seat:
    """Where a value stands, mm from the left."""

    left: float
    right: float
    low: float
    high: float
    ratios: bool

    def at(self, value: float) -> float:
        low, high, here = self.low, self.high, value
        if self.ratios:
            low, high, here = math.log(low), math.log(high), math.log(value)
        return self.left + (self.right - self.left) * (here - low) / (high - low)


def _ends(chart: Chart) -> tuple[float, float]:
    """Return the ends of the scale, somewhat beyond all that stands on it."""
    values = [each.value for each in chart.dots] + [each.value for each in chart.lines]
    values += chart.zone or ()
    least, most = min(values), max(values)
    if chart.ratios:
        more = max((most / least) ** _PAD, 1.05)
        return least / more, most * more
    more = max((most - least) * _PAD, abs(most) * 0.0025, 1e-6)
    return (least - more if least - more > 0 or least < 0 else 0.0), most + more


def ticks(low: float, high: float, *, ratios: bool) -> tuple[float, ...]:
    """Return even numbers between two ends: by 1, 2 or 5 times a power of ten, or along ratios."""
    if ratios:
        decades = range(math.floor(math.log10(low)), math.ceil(math.log10(high)) + 1)
        every = [base * 10.0**power for power in decades for base in (1, 2, 5)]
        found = tuple(each for each in every if low <= each <= high)
        if len(found) >= 2:
            return found
    step = 10.0 ** math.floor(math.log10((high - low) / _TICKS))
    step *= next(each for each in (1, 2, 5, 10) if (high - low) / (step * each) <= _TICKS)
    first = math.ceil(low / step - 1e-9)
    last = math.floor(high / step + 1e-9)
    return tuple(number * step for number in range(first, last + 1))


def _zone(chart: Chart, seat: _Seat, foot: float, top: float) -> list[Item]:
    if chart.zone is None:
        return []
    a, b = (seat.at(each) for each in chart.zone)
    return [Stroke(contour=rectangle(a, foot, b, top), width=None, fill=Ink.WASTE)]


def _rows(chart: Chart, left: float, levels: Sequence[float]) -> list[Item]:
    items: list[Item] = []
    for words, y in zip(chart.rows, levels, strict=True):
        items.append(_stroke((left, y), (WIDE, y), Ink.FAINT, 0.15))
        base = y - _LETTER * CAPITAL / 2
        at = (left - _GAP, base)
        items.append(Label(text=words, at=at, height=_LETTER, anchor=Anchor.END, ink=Ink.INK))
    return items


def _scale(chart: Chart, seat: _Seat, foot: float) -> list[Item]:
    items: list[Item] = [_stroke((seat.left - _EDGE, foot), (WIDE, foot), Ink.SOFT, 0.2)]
    taken = -math.inf
    ruler = chart.ruler
    found = ticks(seat.low / ruler.per, seat.high / ruler.per, ratios=chart.ratios)
    places = 0 if chart.ratios else max(len(digits(each, 4).partition(".")[2]) for each in found)
    for each in found:
        text = digits(each, 4) if chart.ratios else fixed(each, places)
        x, text = seat.at(each * ruler.per), text.replace(".", ruler.mark)
        half = text_width(text, _LETTER) / 2
        items.append(_stroke((x, foot), (x, foot - 1.0), Ink.SOFT, 0.2))
        if x - half > taken and x + half <= WIDE:
            at = (x, foot - 1.6 - _LETTER * CAPITAL)
            anchor = Anchor.MIDDLE
            items.append(Label(text=text, at=at, height=_LETTER, anchor=anchor, ink=Ink.SOFT))
            taken = x + half + 1.5
    items.append(
        Label(text=chart.scale, at=(WIDE, 0.8), height=_LETTER, anchor=Anchor.END, ink=Ink.SOFT)
    )
    return items


def _line(line: Line, seat: _Seat, foot: float, top: float) -> list[Item]:
    x = seat.at(line.value)
    half = text_width(line.words, _LETTER) / 2
    middle = min(max(x, half), WIDE - half)
    stroke = Stroke(
        contour=Contour(((x, foot, 0.0), (x, top, 0.0)), closed=False),
        ink=Ink.ACCENT,
        width=0.3,
        dash=(1.2, 0.9),
    )
    at = (middle, top + 1.2)
    label = Label(text=line.words, at=at, height=_LETTER, anchor=Anchor.MIDDLE, ink=Ink.ACCENT)
    return [stroke, label]


def _placed(dots: Sequence[Dot], seat: _Seat, levels: Sequence[float]) -> list[tuple[Dot, Point]]:
    """Return dots with their places, those of one row beside and above each other."""
    placed: list[tuple[Dot, Point]] = []
    rows: dict[int, list[Point]] = {}
    for dot in sorted(dots, key=lambda each: (each.row, each.value)):
        x, own = seat.at(dot.value), rows.setdefault(dot.row, [])
        near = [each for each in own if x - each[0] < _CLOSE]
        ways = [(x, levels[dot.row] + lift * _CLOSE) for lift in _LIFTS]
        free = (at for at in ways if all(math.dist(at, each) >= _CLOSE for each in near))
        at = next(free, ways[len(near) % len(ways)])
        own.append(at)
        placed.append((dot, at))
    return placed


def _sign(sign: Sign, at: Point) -> list[Item]:
    """Return a dot: five shapes of about one weight."""
    (x, y), r = at, _RADIUS
    match sign:
        case Sign.DISC:
            return [Stroke(contour=circle(at, 2 * r), fill=Ink.ACCENT, ink=Ink.PAPER, width=0.2)]
        case Sign.RING:
            ring = circle(at, 2 * r - 0.3)
            return [Stroke(contour=ring, fill=Ink.PAPER, ink=Ink.ACCENT, width=0.45)]
        case Sign.TRIANGLE:
            base = y - 0.8 * r
            corners = ((x - r, base, 0.0), (x + r, base, 0.0), (x, y + r, 0.0))
            shape = Contour(corners, closed=True)
            return [Stroke(contour=shape, fill=Ink.PAPER, ink=Ink.INK, width=0.4)]
        case Sign.CROSS:
            d = 0.8 * r
            ways = (((x - d, y - d), (x + d, y + d)), ((x - d, y + d), (x + d, y - d)))
            return [_stroke(a, b, Ink.INK, 0.5) for a, b in ways]
        case Sign.SQUARE:
            d = 0.85 * r
            box = rectangle(x - d, y - d, x + d, y + d)
            return [Stroke(contour=box, fill=Ink.INK, ink=Ink.PAPER, width=0.2)]


def _stroke(a: Point, b: Point, ink: Ink, width: float) -> Stroke:
    return Stroke(contour=Contour(((*a, 0.0), (*b, 0.0)), closed=False), ink=ink, width=width)
