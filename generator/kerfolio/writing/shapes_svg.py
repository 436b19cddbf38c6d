"""Named shapes as a plain SVG, for drawings that a plan's parts are taken from."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from kerfolio.basis.digits import digits
from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds

_DECIMALS = 5
"""Shapes are read again, and settled from: a hundredth of what any file for a machine has."""


def shapes_svg(shapes: Mapping[str, Sequence[Contour]]) -> bytes:
    """Return an SVG in mm, each name a group of its paths; its box is that of the first shape.

    Shapes lie in the quarter of x and y above 0, y up; the file has y down, as SVG does.
    """
    first = next(iter(shapes.values()))[0]
    box = bounds(first)
    width, height = digits(box.x1, _DECIMALS), digits(box.y1, _DECIMALS)
    lines = [
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{width}mm" height="{height}mm" '
        f'viewBox="0 0 {width} {height}">'
    ]
    style = 'fill="none" stroke="black" stroke-width="0.3"'
    for name, contours in shapes.items():
        paths = "".join(f'<path d="{path_data(each, box.y1)}"/>' for each in contours)
        lines.append(f'  <g id="{name}" {style}>{paths}</g>')
    return "\n".join([*lines, "</svg>", ""]).encode()


def path_data(contour: Contour, top: float) -> str:
    """Return SVG path data of a contour, y down from ``top``, mm; arcs in two halves each."""
    words = list(_words(contour, top))
    return " ".join([*words, "Z"] if contour.closed else words)


def _words(contour: Contour, top: float) -> Iterator[str]:
    for index, edge in enumerate(edges(contour)):
        if index == 0:
            yield f"M {_at(edge.start, top)}"
        arc = edge.arc
        if arc is None:
            yield f"L {_at(edge.end, top)}"
            continue
        middle = arc.point(arc.start + arc.sweep / 2)
        radius, sweep = digits(arc.radius, _DECIMALS), 0 if arc.sweep > 0 else 1
        yield f"A {radius} {radius} 0 0 {sweep} {_at(middle, top)}"
        yield f"A {radius} {radius} 0 0 {sweep} {_at(edge.end, top)}"


def _at(point: Point, top: float) -> str:
    return f"{digits(point[0], _DECIMALS)} {digits(top - point[1], _DECIMALS)}"
