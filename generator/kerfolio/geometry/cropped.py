"""A round piece out of a picture."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.hidden_lines import Seen, SeenLine
from kerfolio.geometry.packing import Flat, flat_of
from kerfolio.geometry.seen_areas import SeenArea

_QUARTER = 24
"""Straight edges in a quarter of the rim."""


def cropped(seen: Seen, centre: Point, radius: float) -> Seen:
    """Return what of a seen scene lies within a circle, mm of its picture plane."""
    disc = shapely.Point(centre).buffer(radius, quad_segs=_QUARTER)
    drawn = [shapely.LineString(line.points) for line in seen.lines]
    lines = tuple(
        SeenLine(line.solid, line.contour, points)
        for line, cut in zip(seen.lines, shapely.intersection(drawn, disc), strict=True)
        for points in _paths(cut)
    )
    shapes = [shapely.Polygon(area.shape.outer, area.shape.openings) for area in seen.areas]
    whole = shapely.intersection(shapely.make_valid(shapes), disc)
    areas = tuple(
        SeenArea(area.solid, area.axis, flat)
        for area, cut in zip(seen.areas, whole, strict=True)
        for flat in _parts(cut)
    )
    extra = tuple(
        (number, points[0], points[-1])
        for number, a, b in seen.extra
        for points in _paths(shapely.intersection(shapely.LineString((a, b)), disc))
    )
    runs = [shapely.LineString(each.points) for each in seen.engraved]
    engraved = tuple(
        replace(run, points=points)
        for run, cut in zip(seen.engraved, shapely.intersection(runs, disc), strict=True)
        for points in _paths(cut)
    )
    return Seen(lines, areas, extra, engraved)


def _paths(shape: Any) -> Iterator[tuple[Point, ...]]:
    for part in shapely.get_parts(shapely.line_merge(shape)):
        if part.geom_type == "LineString" and part.length > 0:
            yield tuple((float(x), float(y)) for x, y in part.coords)


def _parts(shape: Any) -> Iterator[Flat]:
    for part in shapely.get_parts(shape):
        if part.geom_type == "Polygon" and part.area > 0:
            yield flat_of(part)
