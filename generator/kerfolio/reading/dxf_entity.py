"""DXF entities as contours in drawing units, seen from above."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

from kerfolio.geometry.contour import Contour, Vertex
from kerfolio.geometry.curve import EllipseArc
from kerfolio.geometry.path_text import contour_of
from kerfolio.geometry.shape_error import ShapeError


class TiltedError(ValueError):
    """An entity that lies in a plane other than the drawing's."""


def is_path(entity: Any) -> bool:
    """Tell whether an entity is a path that can be cut."""
    kind = entity.dxftype()
    if kind == "POLYLINE":
        return bool(entity.is_2d_polyline or entity.is_3d_polyline)
    return kind in _READERS


def entity_contour(entity: Any, tolerance: float) -> Contour:
    """Return the contour of a path entity, in drawing units; curves within ``tolerance`` units.

    Raises TiltedError for one that does not lie flat, and whatever the library raises for broken
    data.
    """
    return _READERS[entity.dxftype()](entity, tolerance)


def _flip(entity: Any) -> float:
    """Return 1 for an entity seen from above, -1 for one seen from below.

    By the arbitrary axis algorithm (DXF reference, object coordinate systems) an extrusion of
    0, 0, -1 turns the x axis round.
    """
    extrusion = entity.dxf.get("extrusion", (0, 0, 1))
    x, y, z = extrusion[0], extrusion[1], extrusion[2]
    size = math.sqrt(x * x + y * y + z * z)
    if size == 0 or math.hypot(x, y) / size > 1e-6:
        raise TiltedError
    return 1.0 if z > 0 else -1.0


def _line(entity: Any, _tolerance: float) -> Contour:
    start, end = entity.dxf.start, entity.dxf.end
    return Contour(((start.x, start.y, 0.0), (end.x, end.y, 0.0)), closed=False)


def _arc(entity: Any, _tolerance: float) -> Contour:
    flip = _flip(entity)
    centre, radius = entity.dxf.center, entity.dxf.radius
    begin = math.radians(entity.dxf.start_angle)
    sweep = math.radians(entity.dxf.end_angle) - begin
    return _turning(centre.x, centre.y, radius, begin, _forward(sweep), flip)


def _forward(sweep: float) -> float:
    """Return a sweep above 0 to a full turn: arcs run counter-clockwise from start to end."""
    turn = sweep % math.tau
    return math.tau if turn < 1e-9 else turn


def _circle(entity: Any, _tolerance: float) -> Contour:
    flip = _flip(entity)
    centre, radius = entity.dxf.center, entity.dxf.radius
    return _turning(centre.x, centre.y, radius, 0.0, math.tau, flip)


def _turning(x: float, y: float, radius: float, begin: float, sweep: float, flip: float) -> Contour:
    if radius <= 0:
        raise ShapeError("its radius is 0")
    first, second = (flip * radius, 0.0), (0.0, radius)
    return _ellipse_arc((flip * x, y), first, second, begin, sweep, 1.0)


def _ellipse(entity: Any, tolerance: float) -> Contour:
    _flip(entity)
    centre, major, minor = entity.dxf.center, entity.dxf.major_axis, entity.minor_axis
    begin = entity.dxf.start_param
    sweep = _forward(entity.dxf.end_param - begin)
    axes = (major.x, major.y), (minor.x, minor.y)
    return _ellipse_arc((centre.x, centre.y), *axes, begin, sweep, tolerance)


def _ellipse_arc(
    centre: tuple[float, float],
    first: tuple[float, float],
    second: tuple[float, float],
    begin: float,
    sweep: float,
    tolerance: float,
) -> Contour:
    probe = EllipseArc(centre, first, second, begin, sweep, centre, centre)
    start = probe.point(begin)
    whole = abs(sweep) > math.tau - 1e-9
    end = start if whole else probe.point(begin + sweep)
    piece = EllipseArc(centre, first, second, begin, sweep, start, end)
    # The ends are told apart in mm later; here only a full turn is closed.
    return contour_of([piece], whole, tolerance, closes=0.0)


def _spline(entity: Any, tolerance: float) -> Contour:
    points = list(entity.flattening(tolerance, segments=8))
    return Contour(tuple((p.x, p.y, 0.0) for p in points), closed=False)


def _lwpolyline(entity: Any, _tolerance: float) -> Contour:
    flip = _flip(entity)
    rows = entity.get_points("xyb")
    return Contour(_unique([(flip * x, y, flip * b) for x, y, b in rows]), bool(entity.closed))


def _polyline(entity: Any, _tolerance: float) -> Contour:
    flip = _flip(entity) if entity.is_2d_polyline else 1.0
    rows = []
    for vertex in entity.vertices:
        # Bit 16 marks the frame of a fitted curve, which is not part of the curve.
        if not vertex.dxf.get("flags", 0) & 16:
            place = vertex.dxf.location
            rows.append((flip * place.x, place.y, flip * vertex.dxf.get("bulge", 0.0)))
    return Contour(_unique(rows), bool(entity.is_closed))


def _unique(rows: list[Vertex]) -> tuple[Vertex, ...]:
    """Return vertices without immediate repeats; the later bulge counts."""
    kept: list[Vertex] = []
    for x, y, bulge in rows:
        if kept and kept[-1][:2] == (x, y):
            kept.pop()
        kept.append((float(x), float(y), float(bulge)))
    return tuple(kept)


_READERS: dict[str, Callable[[Any, float], Contour]] = {
    "LINE": _line,
    "ARC": _arc,
    "CIRCLE": _circle,
    "ELLIPSE": _ellipse,
    "SPLINE": _spline,
    "LWPOLYLINE": _lwpolyline,
    "POLYLINE": _polyline,
}
