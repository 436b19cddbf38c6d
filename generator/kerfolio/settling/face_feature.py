"""Features that lie in the face of their part: slots, windows, pockets and grooves."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from kerfolio.basis.said import phrase
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import slot, unit
from kerfolio.geometry.transform import moved, turned
from kerfolio.model.feature import Feature, Groove, Pocket, Slot, Window
from kerfolio.settling.bench import Bench, cut_to, settled_feature
from kerfolio.settling.outline import outline_contour
from kerfolio.settling.scope import unsettled
from kerfolio.settling.settled import Operation, Sized
from kerfolio.settling.shaped import Mating, Shaped


def slot_corners(at: Point, along: Point, length: float, width: float) -> tuple[Mating, ...]:
    """Return the four corners of a slot; a sideways relief eats its longer walls.

    So its end walls, which hold a tab where it belongs along the slot, bear from side to side.
    """
    across = (0.0 - along[1], along[0])
    eaten = along if length >= width else across
    spots = ((a * length / 2, b * width / 2) for a in (-1, 1) for b in (-1, 1))
    return tuple(
        Mating(
            at=(at[0] + u * along[0] + v * across[0], at[1] + u * along[1] + v * across[1]),
            eaten=eaten,
        )
        for u, v in spots
    )


def through_slot(cutting: Slot, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield a slot at each of its centres. Raises SettlingError, ShapeError."""
    fitting = bench.fitting
    along = unit(fitting.scope.plain(cutting.angle))
    width = fitting.width(cutting.takes, cutting.width)
    length = fitting.length(cutting.length, cutting.takes)
    for at in map(fitting.scope.point, cutting.at):
        shape = slot(at, along, length.value, width.value)
        corners = slot_corners(at, along, length.value, width.value)
        yield Shaped(
            feature=settled_feature(
                *(feature, at, along, (width, length), (shape,)),
                takes=cutting.takes,
                room=fitting.given,
            ),
            taken=(shape,),
            mating=corners if cutting.takes else (),
        )


def window(cutting: Window, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield a window. Raises SettlingError, ShapeError."""
    scope = bench.fitting.scope
    at, angle = scope.point(cutting.at), scope.plain(cutting.angle)
    made = outline_contour(cutting.outline, scope, f"`{feature.name}`", centred=True)
    shape = moved(turned(made, angle), *at)
    yield Shaped(
        feature=settled_feature(feature, at, unit(angle), _extent(made), (shape,)),
        taken=(shape,),
    )


def pocket(cutting: Pocket, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield a pocket, or a blind tab's housing, at each place. Raises SettlingError, ShapeError."""
    for at in map(bench.fitting.scope.point, cutting.at):
        yield _pocket_at(at, cutting, feature, bench)


def _pocket_at(at: Point, cutting: Pocket, feature: Feature, bench: Bench) -> Shaped:
    fitting = bench.fitting
    angle = fitting.scope.plain(cutting.angle)
    along, depth = unit(angle), bench.depth(cutting.depth)
    corners: tuple[Mating, ...] = ()
    if cutting.takes is not None and cutting.length is not None:
        sides = (fitting.width(cutting.takes, None), fitting.length(cutting.length, cutting.takes))
        shape = slot(at, along, sides[1].value, sides[0].value)
        corners = slot_corners(at, along, sides[1].value, sides[0].value)
    else:
        made = outline_contour(cutting.outline, fitting.scope, f"`{feature.name}`", centred=True)
        sides, shape = _extent(made), moved(turned(made, angle), *at)
    return Shaped(
        feature=settled_feature(
            *(feature, at, along, sides, (shape,), depth, cutting.takes), room=fitting.given
        ),
        cuts=(cut_to(Operation.POCKET, depth.value, feature, shape),),
        pocketed=corners,
    )


def groove(cutting: Groove, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield a groove. Raises SettlingError, ShapeError."""
    fitting = bench.fitting
    (x0, y0), (x1, y1) = fitting.scope.point(cutting.start), fitting.scope.point(cutting.end)
    size = hypot(x1 - x0, y1 - y0)
    if size < 1e-6:
        raise unsettled("zero-area", f"groove `{feature.name}` has no length", feature.place)
    along, at = ((x1 - x0) / size, (y1 - y0) / size), ((x0 + x1) / 2, (y0 + y1) / 2)
    width, depth = fitting.width(cutting.takes, cutting.width), bench.depth(cutting.depth)
    length = fitting.groove_length(size, cutting.takes)
    shape = slot(at, along, length.value, width.value)
    yield Shaped(
        feature=settled_feature(
            *(feature, at, along, (width, length), (shape,), depth, cutting.takes),
            room=fitting.given,
        ),
        cuts=(cut_to(Operation.POCKET, depth.value, feature, shape),),
        pocketed=slot_corners(at, along, length.value, width.value) if cutting.takes else (),
    )


def _extent(contour: Contour) -> tuple[Sized, Sized]:
    """Return the width (across) and length (along) of a shape before it is turned."""
    box = bounds(contour)
    drawn = phrase("reasons-as-drawn")
    return Sized(box.height, drawn), Sized(box.width, drawn)
