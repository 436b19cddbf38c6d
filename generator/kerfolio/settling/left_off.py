"""What a part lacks that is looked at though some of its features cannot be read or made."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.said import stated_name
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.model.feature import Feature, Fingers, Hole, Notch, Pocket, Slot, Tabs
from kerfolio.model.part import LeftOut, Part
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.settling.settled import LeftOff
from kerfolio.settling.shaped import Shaped


def left_off(
    part: Part, shapes: Sequence[Shaped], outline: Contour, scope: Scope
) -> tuple[LeftOff, ...]:
    """Return the features of a part that have no shape, where they were to be where that is known.

    Of one on a side of the part that is the middle of the side.
    """
    made = {name for each in shapes for name in _names(each)}
    lost = (*part.left_out, *(_known(each) for each in part.features if each.name not in made))
    return tuple(LeftOff(name=each.name, at=tuple(_points(each, outline, scope))) for each in lost)


def _names(shaped: Shaped) -> tuple[str, str]:
    return shaped.feature.name, stated_name(shaped.feature.name)


def _known(feature: Feature) -> LeftOut:
    """Return what a feature states of its place."""
    match feature.cutting:
        case Slot() | Pocket() | Hole():
            return LeftOut(name=feature.name, spots=feature.cutting.at)
        case Tabs() | Notch() | Fingers():
            return LeftOut(name=feature.name, side=feature.cutting.edge.side)
        case _:
            return LeftOut(name=feature.name)


def _points(lost: LeftOut, outline: Contour, scope: Scope) -> Iterator[Point]:
    box = bounds(outline)
    x, y = box.centre
    ends = {"left": (box.x0, y), "right": (box.x1, y), "bottom": (x, box.y0), "top": (x, box.y1)}
    if lost.side in ends:
        yield ends[lost.side]
    for spot in lost.spots:
        try:
            yield scope.point(spot)
        except SettlingError:  # told where it is stated
            continue
