"""An engraving for a finished piece: where its middle lies on it, and itself at full size."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from math import dist

from kerfolio.basis.cutting_lengths import place_text
from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import Look, face_strokes, stroke_width
from kerfolio.drawing.fitted import filling
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Dimension, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import Box, bounds
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.titles import feature_title, part_title, within
from kerfolio.shop.art import Art, Reach
from kerfolio.shop.engraving import stroke_widths

_TEXT = 4.2
_AWAY = 9.0
_TARGET, _ARM = 3.4, 5.0
_LINE, _FINE = 0.35, 0.13
_FLAT = 0.5
_OVER = 8.0
CHECK = {"mm": 100.0, "in": 101.6}
"""Length of the line to measure beside what is shown at full size, mm, by the unit named first."""

_CHECKED = {"mm": "100 mm", "in": "4 in"}


def art_place_view(
    settled: SettledPlan, art: Art, room: tuple[float, float], reader: Reader = METRIC
) -> Drawing:
    """Return the piece with its art's middle and two distances to it, within ``room`` (mm).

    The edges to measure from are marked; distances are those of ``art.reaches``.
    """
    whole, engraved = bounds(art.part.plain.outer), stroke_widths(settled, art.part)
    items, box, _ = filling(
        lambda scale: _place_items(art, engraved, Seat(scale=scale), reader),
        (whole.width, whole.height),
        room,
    )
    one, other = (place_text(each, reader) for each in art.distances)
    plan = settled.plan
    called = within(part_title(plan, art.part.name, reader), reader)
    return Drawing(
        box=box,
        items=items,
        title=say(reader, "drawing-art", plan=plan.title, art=feature_title(art.name), part=called),
        description=say(reader, "drawing-art-shows", one=one, other=other),
    )


def _place_items(
    art: Art, engraved: Mapping[str, float], seat: Seat, reader: Reader
) -> tuple[Item, ...]:
    centre = seat.point(art.centre)
    middle = [circle(centre, _TARGET), *_cross(centre, _ARM)]
    return (
        *face_strokes(art.part, seat, Look(outline=_LINE, inside=_FINE), engraved),
        *_lines(art, seat, engraved),
        _frame(art.box, seat),
        *(item for each in art.reaches for item in _measured(art, each, seat, reader)),
        *(Stroke(contour=each, ink=Ink.ACCENT, width=0.4) for each in middle),
    )


def _lines(art: Art, seat: Seat, engraved: Mapping[str, float]) -> Iterator[Stroke]:
    """Yield the art as wide as the cutter makes it, its middle line fine where that is wider."""
    for each in art.features:
        width = stroke_width(engraved, each.name, seat.scale, _LINE)
        for line in map(seat.contour, each.shape):
            yield Stroke(contour=line, ink=Ink.ENGRAVE, width=width)


def art_full_view(settled: SettledPlan, art: Art, reader: Reader = METRIC) -> Drawing:
    """Return the art at full size with its middle at 0,0, a crosshair and a length to check."""
    wide, high = art.size
    arm_x, arm_y = wide / 2 + _OVER, high / 2 + _OVER
    low = -arm_y - 6.0
    cross = (open_path((-arm_x, 0), (arm_x, 0)), open_path((0, -arm_y), (0, arm_y)))
    reach = CHECK[reader.unit] / 2
    check = open_path((-reach, low), (reach, low))
    ends = (open_path((x, low - 1.2), (x, low + 1.2)) for x in (-reach, reach))
    items: tuple[Item, ...] = (
        *_lines(art, Seat(x=-art.centre[0], y=-art.centre[1]), stroke_widths(settled, art.part)),
        _frame(Box(-wide / 2, -high / 2, wide / 2, high / 2), Seat()),
        *(Stroke(contour=each, ink=Ink.ACCENT, width=0.2) for each in cross),
        Stroke(contour=circle((0, 0), _TARGET), ink=Ink.ACCENT, width=0.2),
        *(Stroke(contour=each, ink=Ink.SOFT, width=0.2) for each in (check, *ends)),
        Label(
            text=say(reader, "drawing-art-check", length=_CHECKED[reader.unit]),
            at=(0, low - 4.2),
            height=3.2,
            ink=Ink.SOFT,
            anchor=Anchor.MIDDLE,
        ),
    )
    size = {"wide": both_text(wide, reader), "high": both_text(high, reader)}
    art_title = feature_title(art.name)
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=say(reader, "drawing-art-full", plan=settled.plan.title, art=art_title),
        description=say(reader, "drawing-art-full-shows", **size),
    )


def _cross(at: Point, reach: float) -> tuple[Contour, Contour]:
    x, y = at
    return open_path((x - reach, y), (x + reach, y)), open_path((x, y - reach), (x, y + reach))


def _frame(box: Box, seat: Seat) -> Stroke:
    """Return the art's extent as a dashed box; of a single straight line, ``I``, as a line."""
    if box.width and box.height:
        frame = rectangle(box.x0, box.y0, box.x1, box.y1)
    else:
        frame = open_path((box.x0, box.y0), (box.x1, box.y1))
    return Stroke(contour=seat.contour(frame), ink=Ink.SOFT, width=_FINE, dash=(1.2, 0.9))


def _measured(art: Art, reach: Reach, seat: Seat, reader: Reader) -> Iterator[Item]:
    """Yield the edge's mark and the distance, its line moved off the piece to the nearer side."""
    foot, centre = seat.point(reach.foot), seat.point(art.centre)
    length = dist(foot, centre)
    along = ((centre[0] - foot[0]) / length, (centre[1] - foot[1]) / length)
    side = (-along[1], along[0])
    rim = points(seat.contour(art.part.plain.outer), _FLAT)
    heights = [(x - foot[0]) * side[0] + (y - foot[1]) * side[1] for x, y in rim]
    up, down = max(heights), min(heights)
    edge = open_path(seat.point(reach.start), seat.point(reach.end))
    yield Stroke(contour=edge, ink=Ink.ACCENT, width=0.9)
    yield Dimension(
        a=foot,
        b=centre,
        text=place_text(reach.distance(art.centre), reader),
        offset=up + _AWAY if up <= -down else down - _AWAY,
        height=_TEXT,
        ink=Ink.ACCENT,
    )
