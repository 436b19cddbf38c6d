"""Outline and features joined: the plain shape, and the one whose mating corners are relieved."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import combinations

from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.arc import reversed_contour
from kerfolio.geometry.boolean import contains, difference, intersection, union
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area, bounds, contours_of
from kerfolio.geometry.relief import (
    contour_corners,
    dog_bone_centre,
    inside_corners,
    relief_contour,
)
from kerfolio.geometry.shapes import slot
from kerfolio.model.feature_kind import GROOVE
from kerfolio.settling.relief import Relieved, mating_corners, relieved
from kerfolio.settling.settled import (
    Cut,
    MovedRelief,
    Operation,
    Relief,
    Relieving,
    SettledFeature,
    SettledSheet,
)
from kerfolio.settling.shaped import Shaped

_STRIP = 0.05
_SLOPES = 3.0
"""An open end is looked for this many widths further on: an edge may cross at a slope."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """A part's shape: without relief, with relief, and what to drill first by hand.

    ``reliefs`` are all of them, ``moved`` those that are not as asked for.
    """

    plain: Region
    routed: Region
    drill_centres: tuple[Point, ...]
    reliefs: tuple[Relief, ...]
    moved: tuple[MovedRelief, ...]


def shape_of(outline: Contour, shapes: Sequence[Shaped], sheet: SettledSheet) -> Shape:
    """Join an outline and its features. Raises ShapeError when the part falls into pieces."""
    added = [each for shaped in shapes for each in shaped.added]
    taken = [each for shaped in shapes for each in shaped.taken]
    plain = union(Region(outline), added)
    plain = difference(plain, taken) if taken else plain
    mating = [each.mating for each in shapes]
    corners = mating_corners(inside_corners(plain), mating) if any(mating) else ()
    names = [each.feature.name for each in shapes]
    made = relieved(contours_of(plain), corners, names, sheet.relief)
    opened = _reliefs(made, sheet.relief)
    reliefs = [_contour(each) for each in opened]
    radius = sheet.cutter.diameter / 2
    drilled = (each.corner for each in corners)
    centres = (dog_bone_centre(each.at, each.first, each.second, radius) for each in drilled)
    return Shape(
        plain=plain,
        routed=difference(plain, reliefs) if reliefs else plain,
        drill_centres=tuple(sorted(centres)),
        reliefs=opened,
        moved=made.moved,
    )


def _reliefs(made: Relieved, asked: Relieving) -> tuple[Relief, ...]:
    radius = asked.diameter / 2
    corners = made.corners
    return tuple(Relief(corner=each, style=style, radius=radius) for each, style in corners)


def _contour(relief: Relief) -> Contour:
    """Return what a relief cuts away."""
    return relief_contour(relief.corner, relief.radius, relief.style)


def _dot(a: Point, b: Point) -> float:
    return a[0] * b[0] + a[1] * b[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Recess:
    """A cut to a depth as it is made, and which of its reliefs are not as asked for."""

    cut: Cut
    moved: tuple[MovedRelief, ...] = ()


def recess(cut: Cut, shaped: Shaped, plain: Region, sheet: SettledSheet) -> Recess:
    """Return a pocket with its mating corners relieved, a groove run out of its open ends."""
    if cut.operation is not Operation.POCKET:
        return Recess(cut=cut)
    contours = cut.contours
    if shaped.feature.kind is GROOVE:
        contours = (groove_run_out(shaped.feature, plain, sheet.cut_width / 2),)
    # Seen from the material, a pocket is an opening: its corners point into the part.
    walls = [reversed_contour(each) for each in contours]
    sharp = (corner for each in walls for corner in contour_corners(each))
    corners = mating_corners(sharp, [shaped.pocketed])
    made = relieved(walls, corners, [shaped.feature.name], sheet.relief)
    opened, square = _reliefs(made, sheet.relief), contours
    reliefs = [_contour(each) for each in opened]
    if reliefs:
        contours = tuple(union(Region(each), reliefs).outer for each in contours)
    done = replace(cut, contours=contours, square=square, reliefs=opened)
    return Recess(cut=done, moved=made.moved)


def groove_run_out(feature: SettledFeature, plain: Region, radius: float) -> Contour:
    """Return a groove's contour, carried past the part's edge where an end lies open there.

    The cutter then clears the whole width at the open end; a contour that ended on the edge would
    leave a fillet of the cutter's ``radius`` in both its corners (common practice, no single
    source). It ends squarely, a radius beyond the last of the part in its way.
    """
    opened = [not contains(plain.outer, _end(feature, sign), SAME) for sign in (-1.0, 1.0)]
    if not any(opened):
        return feature.shape[0]
    length, width = feature.length.value, feature.width.value
    reach = length / 2 + radius + _SLOPES * width
    way = intersection(Region(plain.outer), [_stretched(feature, -reach, reach)])
    if not way:
        return feature.shape[0]
    first, last = _extent(feature, way)
    start = first - radius if opened[0] else -length / 2
    end = last + radius if opened[1] else length / 2
    return _stretched(feature, min(start, -length / 2), max(end, length / 2))


def _stretched(feature: SettledFeature, start: float, end: float) -> Contour:
    """Return a groove from ``start`` to ``end``, both measured along it from its middle."""
    (x, y), (ux, uy) = feature.at, feature.direction
    middle = (start + end) / 2
    return slot(
        (x + middle * ux, y + middle * uy), feature.direction, end - start, feature.width.value
    )


def _extent(feature: SettledFeature, pieces: Iterable[Region]) -> tuple[float, float]:
    """Return from where to where the part lies in a groove's way, in one piece with its middle."""
    spans = []
    for piece in pieces:
        along = [
            _dot((x - feature.at[0], y - feature.at[1]), feature.direction)
            for x, y in points(piece.outer)
        ]
        spans.append((min(along), max(along)))
    half = feature.length.value / 2
    return max(spans, key=lambda span: min(span[1], half) - max(span[0], -half))


def _end(feature: SettledFeature, sign: float) -> Contour:
    """Return a thin strip just beyond an end of a groove."""
    (x, y), (ux, uy) = feature.at, feature.direction
    reach = sign * (feature.length.value / 2 + _STRIP)
    return slot((x + reach * ux, y + reach * uy), (ux, uy), 2 * _STRIP, feature.width.value)


def recess_volume(cuts: Iterable[Cut], solid: Region) -> float:
    """Return the volume in mm3 that cuts to a depth take from a shape; overlaps count once.

    The layers between two depths are as large as what goes deeper.
    """
    recesses = [(cut.depth or 0.0, each) for cut in cuts for each in cut.contours]
    if all(contains(solid, each, 0.0) for _, each in recesses) and _apart(recesses):
        return math.fsum(depth * area(each) for depth, each in recesses)
    volume, above = 0.0, 0.0
    for depth in sorted({depth for depth, _ in recesses}):
        deeper = [each for reach, each in recesses if reach >= depth]
        volume += (depth - above) * math.fsum(map(area, intersection(solid, deeper)))
        above = depth
    return volume


def _apart(recesses: Iterable[tuple[float, Contour]]) -> bool:
    """Tell whether no two recesses can overlap, going by their boxes."""
    boxes = [bounds(each) for _, each in recesses]
    return not any(
        a.x0 < b.x1 and b.x0 < a.x1 and a.y0 < b.y1 and b.y0 < a.y1
        for a, b in combinations(boxes, 2)
    )
