"""Outline and features joined: the plain shape, and the one whose mating corners are relieved."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from math import dist

from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.arc import reversed_contour
from kerfolio.geometry.boolean import contains, difference, intersection, union
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.relief import (
    InsideCorner,
    contour_corners,
    dog_bone_centre,
    inside_corners,
    relief_contour,
    relieved,
)
from kerfolio.geometry.shapes import slot
from kerfolio.model.feature_kind import GROOVE
from kerfolio.settling.settled import Cut, Operation, SettledFeature, SettledSheet
from kerfolio.settling.shaped import Mating, Shaped

NO_RELIEF = "none"
_STRIP = 0.05
_SLOPES = 3.0
"""An open end is looked for this many widths further on: an edge may cross at a slope."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """A part's shape: without relief, with relief, and what to drill first by hand."""

    plain: Region
    routed: Region
    drill_centres: tuple[Point, ...]


def shape_of(outline: Contour, shapes: Sequence[Shaped], sheet: SettledSheet, style: str) -> Shape:
    """Join an outline and its features. Raises ShapeError when the part falls into pieces."""
    added = [each for shaped in shapes for each in shaped.added]
    taken = [each for shaped in shapes for each in shaped.taken]
    plain = union(Region(outline), added)
    plain = difference(plain, taken) if taken else plain
    mating = [each for shaped in shapes for each in shaped.mating]
    corners = _matched(inside_corners(plain), mating)
    radius = sheet.cutter.diameter / 2
    routed = plain if style == NO_RELIEF else relieved(plain, corners, radius, style)
    centres = (dog_bone_centre(each.at, each.first, each.second, radius) for each in corners)
    return Shape(plain=plain, routed=routed, drill_centres=tuple(sorted(centres)))


def _matched(corners: Iterable[InsideCorner], mating: Sequence[Mating]) -> tuple[InsideCorner, ...]:
    """Return the inside corners that a mating part fills, each knowing which wall to eat."""
    found = []
    for corner in corners:
        near = [each for each in mating if dist(each.at, corner.at) < SAME]
        if near:
            eaten = near[0].eaten
            first, second = (abs(_dot(eaten, each)) for each in (corner.first, corner.second))
            wall = "first" if first >= second else "second"
            found.append(InsideCorner(corner.at, corner.first, corner.second, wall))
    return tuple(found)


def _dot(a: Point, b: Point) -> float:
    return a[0] * b[0] + a[1] * b[1]


def pocketed(cut: Cut, shaped: Shaped, plain: Region, radius: float, style: str) -> Cut:
    """Return a pocket with its mating corners relieved, a groove run out of its open ends."""
    if cut.operation is not Operation.POCKET:
        return cut
    contours = cut.contours
    if shaped.feature.kind is GROOVE:
        contours = (groove_run_out(shaped.feature, plain, radius),)
    made = tuple(_relieved_pocket(each, shaped.pocketed, radius, style) for each in contours)
    return replace(cut, contours=made)


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


def _relieved_pocket(
    contour: Contour, mating: Sequence[Mating], radius: float, style: str
) -> Contour:
    if style == NO_RELIEF or not mating:
        return contour
    # Seen from the material, a pocket is an opening: its corners point into the part.
    corners = _matched(contour_corners(reversed_contour(contour)), mating)
    discs = [relief_contour(each, radius, style) for each in corners]
    return union(Region(contour), discs).outer if discs else contour


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
