"""A part in two releases: the older outline over the newer one, what moved ringed."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import bounds, contours_of
from kerfolio.geometry.shapes import circle
from kerfolio.releasing.change import PartChange

_DASH = (1.6, 1.1)
_RING = 6.0
"""How wide a ring is at least, mm on paper."""
_AROUND = 3.0
_ROOM = (84.0, 60.0)
"""What a part takes at most, mm: that is enough to see what moved."""


def change_view(part: PartChange, room: tuple[float, float], reader: Reader) -> Drawing:
    """Return a picture of a part that changed, within ``room`` (mm).

    The newer shape is filled; the older one lies on it as it serves, dashed. A ring stands round
    each mating feature that moved, with a line from where it was.
    """
    shapes = [each for each in (part.before, part.after) if each is not None]
    boxes = [bounds(each.outer) for each in shapes]
    left, low = min(each.x0 for each in boxes), min(each.y0 for each in boxes)
    wide = max(each.x1 for each in boxes) - left
    high = max(each.y1 for each in boxes) - low
    across, up = (min(side, most) - _RING for side, most in zip(room, _ROOM, strict=True))
    scale = min(across / wide, up / high, 1.0)
    seat = Seat(x=-left * scale, y=-low * scale, scale=scale)
    strokes = (*_after(part, seat), *_before(part, seat), *_rings(part, seat))
    return Drawing(
        box=padded(extent(strokes), 0.6),
        items=strokes,
        title=say(reader, "drawing-change", part=part.title),
        description=say(reader, "drawing-change-shows", count=len(part.moved)),
    )


def _after(part: PartChange, seat: Seat) -> Iterator[Stroke]:
    if part.after is not None:
        placed = seat.region(part.after)
        holes = placed.openings
        yield Stroke(contour=placed.outer, holes=holes, ink=Ink.INK, width=0.3, fill=Ink.WOOD)
        for each in holes:
            yield Stroke(contour=each, ink=Ink.INK, width=0.25)


def _before(part: PartChange, seat: Seat) -> Iterator[Stroke]:
    """Yield the older contours, but those that are as they were."""
    if part.before is None:
        return
    known = set(_told(part.after)) if part.after is not None else set()
    for each in contours_of(part.before):
        if _key(each) not in known:
            yield Stroke(contour=seat.contour(each), ink=Ink.SOFT, width=0.3, dash=_DASH)


def _told(region: Region) -> Iterator[frozenset[Point]]:
    return (_key(each) for each in contours_of(region))


def _key(contour: Contour) -> frozenset[Point]:
    return frozenset((round(x, 2), round(y, 2)) for x, y, _ in contour.vertices)


def _rings(part: PartChange, seat: Seat) -> Iterator[Stroke]:
    for each in part.moved:
        was, now = seat.point(each.was), seat.point(each.now)
        line = Contour(((*was, 0.0), (*now, 0.0)), closed=False)
        yield Stroke(contour=line, ink=Ink.ACCENT, width=0.35)
        wide = max(_RING, each.size * seat.scale + _AROUND)
        yield Stroke(contour=circle(now, wide), ink=Ink.ACCENT, width=0.5)
