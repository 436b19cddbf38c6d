"""The basic shapes and paths of SVG as contours (SVG 2, chapters 9 and 10)."""

from __future__ import annotations

import math
from collections.abc import Callable
from itertools import pairwise

from kerfolio.geometry.affine import Affine
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.curve import Bezier, EllipseArc, Piece
from kerfolio.geometry.path_text import contour_of, contours
from kerfolio.reading.svg_tree import SvgNode
from kerfolio.reading.svg_viewport import SvgError, length, numbers

Viewport = tuple[float, float] | None
"""Width and height in user units that percentages refer to."""


def shape_contours(node: SvgNode, affine: Affine, viewport: Viewport) -> tuple[Contour, ...]:
    """Return the contours of a shape element, mapped to mm.

    Raises SvgError or ShapeError quoting what cannot be read. KeyError for any other element.
    """
    return _READERS[node.tag](node, affine, viewport)


def is_shape(tag: str) -> bool:
    """Tell whether an element is a shape that can be cut."""
    return tag in _READERS


def _measure(node: SvgNode, name: str, viewport: Viewport, axis: str) -> float:
    text = node.get(name)
    return 0.0 if text is None else length(text, whole(viewport, axis))


def whole(viewport: Viewport, axis: str) -> float | None:
    """Return what 100 % is along ``x`` or ``y``, or of a ``diagonal`` (SVG 2, section 8.9)."""
    if viewport is None:
        return None
    width, height = viewport
    diagonal = math.hypot(width, height) / math.sqrt(2)
    return {"x": width, "y": height, "diagonal": diagonal}[axis]


def _path(node: SvgNode, affine: Affine, _viewport: Viewport) -> tuple[Contour, ...]:
    return contours(node.get("d") or "", affine)


def _rect(node: SvgNode, affine: Affine, viewport: Viewport) -> tuple[Contour, ...]:
    x, y = _measure(node, "x", viewport, "x"), _measure(node, "y", viewport, "y")
    width, height = _measure(node, "width", viewport, "x"), _measure(node, "height", viewport, "y")
    if width < 0 or height < 0:
        raise SvgError("a rect with a side below 0")
    rx, ry = _corner_radii(node, viewport, width, height)
    if rx <= 0 or ry <= 0:
        corners = [(x, y), (x + width, y), (x + width, y + height), (x, y + height)]
        return (_polyline(corners, affine, closed=True),)
    d = (
        f"M{x + rx!r} {y!r}H{x + width - rx!r}A{rx!r} {ry!r} 0 0 1 {x + width!r} {y + ry!r}"
        f"V{y + height - ry!r}A{rx!r} {ry!r} 0 0 1 {x + width - rx!r} {y + height!r}"
        f"H{x + rx!r}A{rx!r} {ry!r} 0 0 1 {x!r} {y + height - ry!r}"
        f"V{y + ry!r}A{rx!r} {ry!r} 0 0 1 {x + rx!r} {y!r}Z"
    )
    return contours(d, affine)


def _corner_radii(
    node: SvgNode, viewport: Viewport, width: float, height: float
) -> tuple[float, float]:
    """Return rx and ry: one given alone counts for both, none is more than half the side."""
    given = {
        name: _measure(node, name, viewport, axis)
        for name, axis in (("rx", "x"), ("ry", "y"))
        if node.get(name) not in (None, "auto")
    }
    rx = given.get("rx", given.get("ry", 0.0))
    ry = given.get("ry", given.get("rx", 0.0))
    return min(rx, width / 2), min(ry, height / 2)


def _circle(node: SvgNode, affine: Affine, viewport: Viewport) -> tuple[Contour, ...]:
    radius = _measure(node, "r", viewport, "diagonal")
    return _whole_ellipse(node, affine, viewport, radius, radius)


def _ellipse(node: SvgNode, affine: Affine, viewport: Viewport) -> tuple[Contour, ...]:
    given = {
        name: _measure(node, name, viewport, axis)
        for name, axis in (("rx", "x"), ("ry", "y"))
        if node.get(name) not in (None, "auto")
    }
    rx = given.get("rx", given.get("ry", 0.0))
    return _whole_ellipse(node, affine, viewport, rx, given.get("ry", rx))


def _whole_ellipse(
    node: SvgNode, affine: Affine, viewport: Viewport, rx: float, ry: float
) -> tuple[Contour, ...]:
    if rx < 0 or ry < 0:
        raise SvgError("a radius below 0")
    x, y = _measure(node, "cx", viewport, "x"), _measure(node, "cy", viewport, "y")
    if rx == 0 or ry == 0:
        return (_polyline([(x - rx, y - ry), (x + rx, y + ry)], affine, closed=True),)
    start = (x + rx, y)
    piece = EllipseArc((x, y), (rx, 0.0), (0.0, ry), 0.0, math.tau, start, start)
    return (contour_of([piece.mapped(affine)], closed=True),)


def _line(node: SvgNode, affine: Affine, viewport: Viewport) -> tuple[Contour, ...]:
    ends = [
        (_measure(node, f"x{n}", viewport, "x"), _measure(node, f"y{n}", viewport, "y"))
        for n in (1, 2)
    ]
    return (_polyline(ends, affine, closed=False),)


def _points(node: SvgNode) -> list[Point]:
    values = numbers(node.get("points") or "")
    if len(values) % 2:
        raise SvgError(f"points break off: {len(values)} numbers, pairs are needed")
    return list(zip(values[::2], values[1::2], strict=True))


def _open_points(node: SvgNode, affine: Affine, _viewport: Viewport) -> tuple[Contour, ...]:
    return (_polyline(_points(node), affine, closed=False),)


def _closed_points(node: SvgNode, affine: Affine, _viewport: Viewport) -> tuple[Contour, ...]:
    return (_polyline(_points(node), affine, closed=True),)


def _polyline(points: list[Point], affine: Affine, *, closed: bool) -> Contour:
    """Return straight edges through points, mapped."""
    if not points:
        return Contour((), closed)
    path = [*points, points[0]] if closed else points
    pieces: list[Piece] = [Bezier((p, q)).mapped(affine) for p, q in pairwise(path)]
    return contour_of(pieces, closed)


_READERS: dict[str, Callable[[SvgNode, Affine, Viewport], tuple[Contour, ...]]] = {
    "path": _path,
    "rect": _rect,
    "circle": _circle,
    "ellipse": _ellipse,
    "line": _line,
    "polyline": _open_points,
    "polygon": _closed_points,
}
