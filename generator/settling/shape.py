"""Outline and features joined: the plain shape, and the one whose mating corners are relieved."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import dist

from generator.geometry.arc import reversed_contour
from generator.geometry.boolean import difference, intersection, union
from generator.geometry.contour import Contour, Point, Region
from generator.geometry.relief import (
    InsideCorner,
    contour_corners,
    dog_bone_centre,
    inside_corners,
    relief_contour,
    relieved,
)
from generator.settling.settled import Cut, Operation, SettledSheet
from generator.settling.shaped import Mating, Shaped

NO_RELIEF = "none"
_SAME = 0.005


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
        near = [each for each in mating if dist(each.at, corner.at) < _SAME]
        if near:
            eaten = near[0].eaten
            first, second = (abs(_dot(eaten, each)) for each in (corner.first, corner.second))
            wall = "first" if first >= second else "second"
            found.append(InsideCorner(corner.at, corner.first, corner.second, wall))
    return tuple(found)


def _dot(a: Point, b: Point) -> float:
    return a[0] * b[0] + a[1] * b[1]


def pocketed(cut: Cut, mating: Sequence[Mating], plain: Region, radius: float, style: str) -> Cut:
    """Return a pocket with its mating corners relieved, kept within the part."""
    if cut.operation is not Operation.POCKET or not mating:
        return cut
    contours = []
    for contour in cut.contours:
        for piece in intersection(Region(plain.outer), [contour]):
            contours.append(_relieved_pocket(piece.outer, mating, radius, style))
    return Cut(
        operation=cut.operation, depth=cut.depth, contours=tuple(contours), feature=cut.feature
    )


def _relieved_pocket(
    contour: Contour, mating: Sequence[Mating], radius: float, style: str
) -> Contour:
    if style == NO_RELIEF:
        return contour
    # Seen from the material, a pocket is an opening: its corners point into the part.
    corners = _matched(contour_corners(reversed_contour(contour)), mating)
    discs = [relief_contour(each, radius, style) for each in corners]
    return union(Region(contour), discs).outer if discs else contour
