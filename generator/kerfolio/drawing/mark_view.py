"""A step that marks out: the faces with their marks, and how far each is from two sides."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.block import seated
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import face_strokes
from kerfolio.drawing.lettering import Box, text_width
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.shrinking import shrunk
from kerfolio.drawing.vocabulary import Anchor, Dimension, Drawing, Ink, Item, Label, Stroke
from kerfolio.drawing.work_page import ROOM
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.settling.marked import MarkedPart

_TEXT = 3.0
_ROW = 7.0
"""Between rows of dimensions, mm."""
_CROSS = 2.2
"""Half a mark's cross, mm."""
_BESIDE, _UNDER = 14.0, 6.0
"""Between faces side by side, and one under another, mm."""
_NOTHING = 0.3
"""A mark no further from a side than this on paper, mm, stands on it."""
_DASH = (1.0, 0.7)
_NAME, _AIR = 4.2, 3.0


def mark_view(
    marked: Sequence[MarkedPart],
    *,
    reader: Reader = METRIC,
    room: tuple[float, float] = ROOM,
    title: str = "",
) -> Drawing:
    """Return the picture of a step that marks out, at paper size within ``room`` (mm).

    Each part's show face lies as it is drawn, its marks those of all pieces that are meant. A
    middle has its distance from the nearer side both ways, a line from the side it is off.
    """
    ways = (False, True) if len(marked) > 1 else (False,)
    sized = [_sized(marked, reader, room, down=down) for down in ways]
    _, items = max(sized, key=lambda each: each[0])
    names = listed(reader, [each.mark for each in marked])
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=title,
        description=say(reader, "drawing-marks-show", pieces=names),
    )


def _sized(
    marked: Sequence[MarkedPart], reader: Reader, room: tuple[float, float], *, down: bool
) -> tuple[float, tuple[Item, ...]]:
    """Return the largest scale at which the faces have room, and their items."""

    def over(_: float, box: Box) -> float:
        left, bottom, right, top = box
        return max((right - left) / room[0], (top - bottom) / room[1])

    return shrunk(lambda scale: _in_row(marked, scale, reader, down=down), over)


def _in_row(
    marked: Sequence[MarkedPart], scale: float, reader: Reader, *, down: bool
) -> tuple[Item, ...]:
    """Return faces side by side on one line, or one ``down`` under another."""
    found: list[Item] = []
    for each in marked:
        items = [one for item in _face(each, scale, reader) for one in expanded(item)]
        left, bottom, _, top = extent(items)
        _, low, end, _ = extent(found) if found else (0.0, top, -_BESIDE, 0.0)
        by = (-left, low - _UNDER - top) if down and found else (end + _BESIDE - left, -bottom)
        found += (seated(one, Seat(x=by[0], y=by[1])) for one in items)
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Rule:
    """A distance to be dimensioned from a side of a face: which side, and between which two."""

    side: str
    low: float
    high: float


def _face(marked: MarkedPart, scale: float, reader: Reader) -> Iterator[Item]:
    """Yield a part's face on paper with its marks and their distances."""
    part = marked.part
    shape = bounds(part.routed.outer)
    seat = Seat(scale=scale, x=-shape.x0 * scale, y=-shape.y0 * scale)
    wide, high = shape.width * scale, shape.height * scale
    yield from face_strokes(part, seat)
    rules: dict[_Rule, None] = {}
    spots = [(at, "xy") for at in marked.points]
    spots += [(at, "y" if abs(way[0]) > abs(way[1]) else "x") for at, way in marked.edges]
    for spot, axes in spots:
        x, y = seat.point(spot)
        yield from _cross((x, y))
        across = ("left", x) if x <= wide / 2 else ("right", wide - x)
        up = ("bottom", y) if y <= high / 2 else ("top", high - y)
        if "x" in axes and across[1] > _NOTHING:
            rules[_rule(*across, wide, high)] = None
            yield _witness((x, y), (x, 0.0))
        if "y" in axes and up[1] > _NOTHING:
            rules[_rule(*up, wide, high)] = None
            yield _witness((x, y), (wide, y))
    for side, at in marked.lines:
        far = at * scale
        ends = {
            "left": ((far, 0.0), (far, high)),
            "right": ((wide - far, 0.0), (wide - far, high)),
            "bottom": ((0.0, far), (wide, far)),
            "top": ((0.0, high - far), (wide, high - far)),
        }[side]
        yield Stroke(contour=open_path(*ends), ink=Ink.ACCENT, width=0.5, dash=(3.0, 1.2))
        rules[_rule(side, far, wide, high)] = None
    yield from _dimensions([*rules], scale, (wide, high), reader)
    middle = (wide / 2, high + 2.0)
    yield Label(text=marked.mark, at=middle, height=_NAME, anchor=Anchor.MIDDLE, strong=True)


def _witness(spot: Point, foot: Point) -> Stroke:
    return Stroke(contour=open_path(spot, foot), ink=Ink.SOFT, width=0.13, dash=_DASH)


def _rule(side: str, far: float, wide: float, high: float) -> _Rule:
    end = wide if side in ("left", "right") else high
    low, up = (0.0, far) if side in ("left", "bottom") else (end - far, end)
    return _Rule(side, round(low, 3), round(up, 3))


def _cross(at: Point) -> Iterator[Stroke]:
    x, y = at
    for dx, dy in ((_CROSS, 0.0), (0.0, _CROSS)):
        path = open_path((x - dx, y - dy), (x + dx, y + dy))
        yield Stroke(contour=path, ink=Ink.ACCENT, width=0.5)


def _dimensions(
    rules: Sequence[_Rule], scale: float, size: Point, reader: Reader
) -> Iterator[Dimension]:
    """Yield the distances below a face and to the right of it, the shortest nearest, none over
    another."""
    for sides, level in ((("left", "right"), True), (("bottom", "top"), False)):
        rows: list[list[_Rule]] = []
        mine = [rule for rule in rules if rule.side in sides]
        for each in sorted(mine, key=lambda rule: (rule.high - rule.low, rule.low)):
            text = _far(each, scale, reader)
            free = (
                row
                for row in rows
                if all(_apart(each, other, text, _far(other, scale, reader)) for other in row)
            )
            row = next(free, None)
            if row is None:
                rows.append(row := [])
            row.append(each)
        for number, row in enumerate(rows, 1):
            for each in row:
                spots = (
                    ((each.low, 0.0), (each.high, 0.0))
                    if level
                    else ((size[0], each.low), (size[0], each.high))
                )
                text = _far(each, scale, reader)
                offset = -number * _ROW
                yield Dimension(a=spots[0], b=spots[1], text=text, offset=offset, height=_TEXT)


def _far(rule: _Rule, scale: float, reader: Reader) -> str:
    return both_text((rule.high - rule.low) / scale, reader)


def _apart(one: _Rule, other: _Rule, text: str, other_text: str) -> bool:
    """Tell whether two distances stand in one row; lettering that is too long stands after it."""
    return _end(one, text) < other.low or _end(other, other_text) < one.low


def _end(rule: _Rule, text: str) -> float:
    wide = text_width(text, _TEXT)
    inside = wide < rule.high - rule.low - 1.0
    return rule.high + (_AIR if inside else wide + 3 * _AIR)
