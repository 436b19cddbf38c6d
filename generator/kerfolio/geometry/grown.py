"""Contours whose every edge is moved outward: beside them a cutter runs so much further off.

To the first order: each corner goes where its moved edges meet if arcs there were their tangents,
and bulges follow. So all numbers are linear in the distance, and exact for straight edges and for
arcs that run on without a corner; else they are off by about the square of the distance over twice
the arc's radius.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from kerfolio.basis.tolerance import NOISE
from kerfolio.geometry.arc import Edge, edges, heading
from kerfolio.geometry.contour import Contour, Point, Region, Vertex
from kerfolio.geometry.measure import signed_area
from kerfolio.geometry.relief import InsideCorner

_BACK = 0.05
"""1 + the cosine of the turn: below it a corner turns back on itself, and is moved no further."""


def grown(contour: Contour, by: float) -> Contour:
    """Return a closed contour that encloses more: its edges lie ``by`` mm further out, or in."""
    outward = by if signed_area(contour) > 0 else -by
    every = tuple(edges(contour))
    moves = [_move(every[index - 1], each) for index, each in enumerate(every)]
    vertices: list[Vertex] = []
    for index, each in enumerate(every):
        here, there = moves[index], moves[(index + 1) % len(every)]
        x, y = each.start
        bulge = each.bulge + outward * _bent(each, here, there) if each.bulge else 0.0
        vertices.append((x + outward * here[0], y + outward * here[1], bulge))
    return Contour(tuple(vertices))


def grown_region(region: Region, by: float) -> Region:
    """Return an area whose every edge lies ``by`` mm further out of it: its openings shrink."""
    return Region(grown(region.outer, by), tuple(grown(each, -by) for each in region.openings))


def walls_moved(contour: Contour, by: Sequence[float]) -> Contour:
    """Return a closed contour of straight edges, each moved to its right by so many mm.

    Edges in line with the next one are moved as that is.
    """
    every = tuple(edges(contour))
    vertices: list[Vertex] = []
    for index, after in enumerate(every):
        (ax, ay), (bx, by_) = heading(every[index - 1]), heading(after)
        before, here = by[index - 1], by[index]
        cross = ax * by_ - ay * bx
        x, y = after.start
        if abs(cross) < NOISE:
            vertices.append((x + here * by_, y - here * bx, 0.0))
        else:
            # Where both moved lines meet: its offset along either normal is that edge's move.
            dx, dy = (here * ax - before * bx) / cross, (here * ay - before * by_) / cross
            vertices.append((x + dx, y + dy, 0.0))
    return Contour(tuple(vertices))


def moved_corner(corner: InsideCorner, by: float) -> InsideCorner:
    """Return a corner of an area whose edges have moved ``by`` mm out of it, into the void."""
    (ax, ay), (bx, by_) = corner.first, corner.second
    reach = by / abs(ax * by_ - ay * bx)
    x, y = corner.at
    return replace(corner, at=(x + reach * (ax + bx), y + reach * (ay + by_)))


def _move(before: Edge, after: Edge) -> Point:
    """Return how a corner moves where both its edges move by 1 to their right."""
    (ax, ay), (bx, by) = heading(before, at_end=True), heading(after)
    (ux, uy), (vx, vy) = (ay, -ax), (by, -bx)
    along = 1 + ux * vx + uy * vy
    if along < _BACK:
        return ux, uy
    return (ux + vx) / along, (uy + vy) / along


def _bent(edge: Edge, here: Point, there: Point) -> float:
    """Return how the bulge of an arc changes where its ends move so: by the turn they take off."""
    arc = edge.arc
    assert arc is not None, "only arcs have a bulge"
    (ax, ay), (bx, by) = heading(edge), heading(edge, at_end=True)
    longer = there[0] * bx + there[1] * by - here[0] * ax - here[1] * ay
    turn = longer / arc.radius * (1.0 if edge.bulge > 0 else -1.0)
    return (1 + edge.bulge * edge.bulge) / 4 * turn
