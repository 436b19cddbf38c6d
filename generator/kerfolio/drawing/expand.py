"""Dimensions as the lines, arrows and lettering they are made of; every writer uses this one."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, degrees, hypot

from kerfolio.drawing.lettering import CAPITAL, text_width
from kerfolio.drawing.vocabulary import Anchor, Dimension, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point

NARROW = 0.18
"""Line width of dimensions in mm, half of an outline's 0.35 (ISO 128 series, from memory)."""

_GAP = 0.8  # between the object and its extension line
_OVERRUN = 1.5  # of the extension line past the dimension line
_ARROW = 2.4
_ARROW_HALF = 0.4
_ROOMY = 2.5 * _ARROW
"""A dimension line at least this long has its arrows inside."""
_TEXT_ABOVE = 0.35  # of the text's height, between line and baseline


@dataclass(frozen=True, slots=True)
class _Frame:
    """The dimension line from ``start`` to ``end``, its unit vector and its length."""

    start: Point
    end: Point
    along: Point
    side: Point
    length: float


def expanded(item: Item) -> tuple[Stroke | Label, ...]:
    """Return the item as strokes and labels: a dimension taken apart, anything else as it is.

    Lettering stands above the line and reads from below or from the right (ISO 129-1, from
    memory); where it does not fit between the arrows it stands beside them.
    """
    if not isinstance(item, Dimension):
        return (item,)
    frame = _frame(item)
    if frame.length == 0:
        return ()
    return (*_extensions(item, frame), *_line(item, frame), _text(item, frame))


def _frame(dimension: Dimension) -> _Frame:
    (ax, ay), (bx, by) = dimension.a, dimension.b
    length = hypot(bx - ax, by - ay)
    along = ((bx - ax) / length, (by - ay) / length) if length else (1.0, 0.0)
    side = (-along[1], along[0])
    start = _moved(dimension.a, side, dimension.offset)
    return _Frame(start, _moved(dimension.b, side, dimension.offset), along, side, length)


def _moved(point: Point, way: Point, distance: float) -> Point:
    return point[0] + way[0] * distance, point[1] + way[1] * distance


def _stroke(dimension: Dimension, *points: Point) -> Stroke:
    path = Contour(tuple((x, y, 0.0) for x, y in points), closed=False)
    return Stroke(contour=path, layer=dimension.layer, ink=dimension.ink, width=NARROW)


def _extensions(dimension: Dimension, frame: _Frame) -> list[Stroke]:
    if abs(dimension.offset) <= _GAP:
        return []
    sign = 1 if dimension.offset > 0 else -1
    return [
        _stroke(
            dimension,
            _moved(point, frame.side, sign * _GAP),
            _moved(point, frame.side, dimension.offset + sign * _OVERRUN),
        )
        for point in (dimension.a, dimension.b)
    ]


def _line(dimension: Dimension, frame: _Frame) -> list[Stroke]:
    if frame.length >= _ROOMY:
        arrows = [_arrow(dimension, frame, frame.start, 1), _arrow(dimension, frame, frame.end, -1)]
        return [_stroke(dimension, frame.start, frame.end), *arrows]
    before, after = _tail(frame)
    arrows = [_arrow(dimension, frame, frame.start, -1), _arrow(dimension, frame, frame.end, 1)]
    return [_stroke(dimension, before, after), *arrows]


def _tail(frame: _Frame) -> tuple[Point, Point]:
    return _moved(frame.start, frame.along, -2 * _ARROW), _moved(frame.end, frame.along, 2 * _ARROW)


def _arrow(dimension: Dimension, frame: _Frame, tip: Point, inward: int) -> Stroke:
    foot = _moved(tip, frame.along, inward * _ARROW)
    wings = (_moved(foot, frame.side, _ARROW_HALF), _moved(foot, frame.side, -_ARROW_HALF))
    shape = Contour(tuple((x, y, 0.0) for x, y in (tip, *wings)))
    return Stroke(contour=shape, layer=dimension.layer, width=None, fill=dimension.ink)


def _text(dimension: Dimension, frame: _Frame) -> Label:
    angle = degrees(atan2(frame.along[1], frame.along[0]))
    forward = -90 < round(angle, 6) <= 90
    reading = angle if forward else angle - 180 if angle > 90 else angle + 180
    if text_width(dimension.text, dimension.height) <= frame.length - 1:
        up = frame.side if forward else (-frame.side[0], -frame.side[1])
        spot = _moved(_middle(frame), up, _TEXT_ABOVE * dimension.height)
        return _label(dimension, spot, Anchor.MIDDLE, reading)
    drop = -CAPITAL / 2 * dimension.height
    if abs(reading) > 45:  # upright and short: level lettering beside the line
        away = frame.side[0] * (1 if dimension.offset >= 0 else -1)
        anchor = Anchor.START if away > 0 else Anchor.END
        x, y = _middle(frame)
        if frame.length < dimension.height + 2:  # else the extension lines would cross it
            y = frame.end[1] + frame.along[1] * (dimension.height * CAPITAL / 2 + 1.2)
        return _label(dimension, (x + (1.4 if away > 0 else -1.4), y + drop), anchor, 0.0)
    reach = 1.2 if frame.length >= _ROOMY else 2 * _ARROW + 1
    up = frame.side if forward else (-frame.side[0], -frame.side[1])
    spot = _moved(_moved(frame.end, frame.along, reach), up, drop)
    return _label(dimension, spot, Anchor.START if forward else Anchor.END, reading)


def _label(dimension: Dimension, at: Point, anchor: Anchor, angle: float) -> Label:
    return Label(
        text=dimension.text,
        at=at,
        height=dimension.height,
        layer=dimension.layer,
        ink=dimension.ink,
        anchor=anchor,
        angle=angle,
    )


def _middle(frame: _Frame) -> Point:
    return (frame.start[0] + frame.end[0]) / 2, (frame.start[1] + frame.end[1]) / 2
