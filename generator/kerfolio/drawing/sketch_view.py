"""A finding on a part that could not be made: what is known of its shape, and what is wrong."""

from __future__ import annotations

from math import hypot

from kerfolio.basis.finding import Run, Sketch
from kerfolio.drawing.extent import box_of_contours, extent, padded
from kerfolio.drawing.face import FINE, OUTLINE
from kerfolio.drawing.finding_view import ROOM
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle

_WIDE = 1.6
"""A sketch has nothing beside it, and so may be so many times as wide as a part with its lens."""
_RING, _LEAST_RING, _AIR = 0.7, 3.0, 2.0


def sketch_view(sketch: Sketch) -> Drawing:
    """Return the outline, the features that it has, the wrong ones in red and each ringed."""
    outline = _contour(sketch.outline)
    every = [outline, *map(_contour, (*sketch.wrong, *sketch.beside))]
    x0, y0, x1, y1 = box_of_contours(every)
    wide, high = max(x1 - x0, 1e-3), max(y1 - y0, 1e-3)
    scale = min(_WIDE * ROOM[0] / wide, ROOM[1] / high, 1.0)
    seat = Seat(scale=scale, x=-x0 * scale, y=-y0 * scale)
    items: list[Item] = [
        Stroke(contour=seat.contour(outline), width=OUTLINE, fill=Ink.WOOD),
        *(
            Stroke(contour=seat.contour(_contour(each)), ink=Ink.SOFT, width=FINE)
            for each in sketch.beside
        ),
    ]
    for run in sketch.wrong:
        shape = seat.contour(_contour(run))
        items.append(Stroke(contour=shape, ink=Ink.ACCENT, width=2 * OUTLINE, dash=(2.0, 1.0)))
        items.append(_ring(bounds(shape).centre, _reach(shape)))
    items += [_ring(seat.point(spot), _LEAST_RING) for spot in sketch.spots]
    return Drawing(
        box=padded(extent(items), 0.8),
        items=tuple(items),
        title=f"{sketch.part}: what is known of its shape",
        description="The part could not be made. What the remark is about is ringed.",
    )


def _ring(middle: Point, reach: float) -> Stroke:
    return Stroke(contour=circle(middle, 2 * reach), ink=Ink.ACCENT, width=_RING)


def _reach(shape: Contour) -> float:
    box = bounds(shape)
    return max(_LEAST_RING, hypot(box.width, box.height) / 2 + _AIR)


def _contour(run: Run) -> Contour:
    return Contour(tuple((x, y, 0.0) for x, y in run))
