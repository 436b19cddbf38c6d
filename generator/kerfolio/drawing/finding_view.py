"""A finding shown on its part: the face, a ring round each place, the first one under a lens."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from math import dist

from kerfolio.basis.finding import Mark, Ring
from kerfolio.basis.lengths import place_number
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import listed
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import FINE, OUTLINE, face_strokes, stroke_width
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Stroke
from kerfolio.geometry.boolean import intersection
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.engraved import clipped
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan
from kerfolio.settling.titles import part_title
from kerfolio.shop.engraving import stroke_widths

ROOM = (62.0, 70.0)
"""The part's own room, width and height in mm; the lens stands beside it."""

_RING = 0.7
_WRONG = 0.5
_LEAST_RING = 2.4
_LENS = 19.0
_AROUND = 2.6
"""The lens shows this many radii of the first ring around its middle."""
_LEAST_SIGHT = 14.0
_BESIDE = 9.0
_PLAIN = 0.5
_LARGE = 7.0
"""A part shown at this scale, or a ring of this radius on paper, in mm, needs no lens."""
_SHOWN = 3


def finding_view(
    settled: SettledPlan, part: SettledPart, mark: Mark, wrong: Sequence[Contour] = ()
) -> Drawing:
    """Return a picture of a part with its marked places, at most 115 mm wide and 72 mm high.

    A mark without rings is about all of it. Contours that are ``wrong`` are drawn in red.
    """
    box = bounds(part.routed.outer)
    scale = min(ROOM[0] / box.width, ROOM[1] / box.height, 1.0)
    seat = Seat(scale=scale, x=-box.x0 * scale, y=-box.y0 * scale)
    rings = [_ring(ring, seat) for ring in _apart(mark.rings, seat)]
    engraved = stroke_widths(settled, part)
    red = [
        Stroke(contour=seat.contour(each), ink=Ink.ACCENT, width=_WRONG)
        for each in wrong
        if each.closed
    ]
    items: list[Item] = [*face_strokes(part, seat, engraved=engraved), *red, *rings]
    if scale < _PLAIN and mark.rings and mark.rings[0].r * scale < _LARGE:
        middle = (box.width * scale + _BESIDE + _LENS, box.height * scale / 2)
        items += _lens(part, engraved, mark.rings, middle, seat)
    return Drawing(
        box=padded(extent(items), 0.8),
        items=tuple(items),
        title=f"{settled.plan.title}: part {part.mark}, {part_title(settled.plan, part.name)}",
        description=_sentence(mark, Reader(unit=settled.plan.units)),
    )


def _apart(rings: Sequence[Ring], seat: Seat) -> list[Ring]:
    """Return the rings that stand clear of those before them on paper."""
    kept: list[Ring] = []
    for each in rings:
        if all(dist((each.x, each.y), (k.x, k.y)) * seat.scale > _LEAST_RING for k in kept):
            kept.append(each)
    return kept


def _ring(ring: Ring, seat: Seat) -> Stroke:
    reach = max(ring.r * seat.scale, _LEAST_RING)
    shape = circle(seat.point((ring.x, ring.y)), 2 * reach)
    return Stroke(contour=shape, ink=Ink.ACCENT, width=_RING)


def _lens(
    part: SettledPart,
    engraved: Mapping[str, float],
    rings: Sequence[Ring],
    middle: Point,
    small: Seat,
) -> Iterator[Item]:
    """Yield the first place at a larger scale, cut out by a circle, and a line that leads there.

    Other places are ringed where they lie within it, too.
    """
    ring = rings[0]
    sight = max(ring.r * _AROUND, _LEAST_SIGHT)
    scale = _LENS / sight
    seat = Seat(scale=scale, x=middle[0] - ring.x * scale, y=middle[1] - ring.y * scale)
    glass = circle((ring.x, ring.y), 2 * sight)
    spot, reach = small.point((ring.x, ring.y)), max(ring.r * small.scale, _LEAST_RING)
    yield Stroke(contour=seat.contour(glass), width=None, fill=Ink.PAPER)
    yield from _seen(part, glass, seat)
    for cut in part.cuts:
        if cut.operation is Operation.ENGRAVE:
            width = stroke_width(engraved, cut.feature, scale, FINE)
            for line in clipped(cut.contours, (ring.x, ring.y), sight - width / scale / 2):
                yield Stroke(contour=seat.contour(line), ink=Ink.SOFT, width=width)
    for each in rings:
        again = max(each.r * scale, _LEAST_RING)
        if dist((each.x, each.y), (ring.x, ring.y)) * scale + again < _LENS:
            spot_there = seat.point((each.x, each.y))
            yield Stroke(contour=circle(spot_there, 2 * again), ink=Ink.ACCENT, width=_RING)
    yield Stroke(contour=seat.contour(glass), ink=Ink.SOFT, width=OUTLINE)
    way = dist(spot, middle)
    ends = [_towards(spot, middle, at / way) for at in (reach, way - _LENS)]
    yield Stroke(contour=open_path(*ends), ink=Ink.SOFT, width=FINE)


def _seen(part: SettledPart, glass: Contour, seat: Seat) -> Iterator[Stroke]:
    """Yield what of the face lies under the lens."""
    for piece in intersection(part.routed, [glass]):
        shown = seat.region(piece)
        yield Stroke(contour=shown.outer, holes=shown.openings, width=OUTLINE, fill=Ink.WOOD)
    for cut in part.cuts:
        if cut.depth is None or cut.operation is Operation.ENGRAVE:
            continue
        for contour in cut.contours:
            for piece in intersection(Region(contour), [glass]):
                shape = seat.contour(piece.outer)
                yield Stroke(contour=shape, width=FINE, fill=Ink.WOOD_DARK)


def _towards(start: Point, end: Point, share: float) -> Point:
    return start[0] + (end[0] - start[0]) * share, start[1] + (end[1] - start[1]) * share


def _sentence(mark: Mark, reader: Reader) -> str:
    if not mark.rings:
        return "The whole part."
    shown = mark.rings[:_SHOWN]
    spots = [f"({place_number(ring.x, reader)}, {place_number(ring.y, reader)})" for ring in shown]
    more = len(mark.rings) - _SHOWN
    if more > 0:
        spots.append(f"{more} more")
    told = "inches" if reader.unit == "in" else "mm"
    return f"Marked at {listed(spots)}, in {told} from the part's lower left corner."
