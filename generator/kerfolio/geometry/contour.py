"""The flat shapes everything is made of: contours of lines and arcs, and regions of contours."""

from __future__ import annotations

from dataclasses import dataclass

Point = tuple[float, float]
Vertex = tuple[float, float, float]
"""(x, y, bulge): the bulge is tan(included angle / 4) of the arc to the next vertex, positive
counter-clockwise, 0 for a straight line (the DXF convention)."""


@dataclass(frozen=True, slots=True)
class Contour:
    """A closed contour, or an open path, of straight lines and circular arcs, in mm."""

    vertices: tuple[Vertex, ...]
    closed: bool = True


@dataclass(frozen=True, slots=True)
class Region:
    """An area in mm: an outer contour (counter-clockwise) without its openings (clockwise)."""

    outer: Contour
    openings: tuple[Contour, ...] = ()
