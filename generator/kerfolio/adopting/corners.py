"""An outline as the corners of a polygon, some of them rounded, as a plan states it."""

from __future__ import annotations

from dataclasses import dataclass
from math import dist

from kerfolio.geometry.arc import Edge, edges, heading
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.transform import turn_of

_TANGENT = 2e-3
_LEVEL = 0.02
_PARALLEL = 1e-6


@dataclass(frozen=True, slots=True)
class Corner:
    """A corner of a polygon, mm; ``radius`` is that of its rounding, 0 where it is sharp."""

    at: Point
    radius: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Upright:
    """A rectangle along the axes: where its lower left corner lies, its sides, its rounding, mm."""

    at: Point
    width: float
    height: float
    radius: float = 0.0

    @property
    def centre(self) -> Point:
        """Its middle."""
        return (self.at[0] + self.width / 2, self.at[1] + self.height / 2)


def corners_of(contour: Contour) -> tuple[Corner, ...] | None:
    """Return the corners of a closed contour, counter-clockwise; None where a curve is none's.

    A curve is a corner's rounding where it goes on straight at both its ends.
    """
    walls = list(edges(tidy(contour)))
    count = len(walls)
    found: list[Corner] = []
    for index, wall in enumerate(walls):
        before, after = walls[index - 1], walls[(index + 1) % count]
        if wall.bulge:
            corner = rounding(before, wall, after)
            if corner is None:
                return None
            found.append(corner)
        elif not before.bulge:
            found.append(Corner(wall.start))
    return tuple(found) if len(found) > 2 else None


def rounding(before: Edge, wall: Edge, after: Edge) -> Corner | None:
    """Return the corner of two straight edges that a curve between them rounds, else None."""
    arc = wall.arc
    if arc is None or before.bulge or after.bulge or abs(arc.sweep) > 3.1:
        return None
    (ax, ay), (bx, by) = heading(before), heading(after)
    into, out = heading(wall), heading(wall, at_end=True)
    if abs(ax * into[1] - ay * into[0]) > _TANGENT or abs(bx * out[1] - by * out[0]) > _TANGENT:
        return None
    cross = ax * by - ay * bx
    if abs(cross) < _PARALLEL:
        return None
    dx, dy = wall.end[0] - wall.start[0], wall.end[1] - wall.start[1]
    reach = (dx * by - dy * bx) / cross
    return Corner((wall.start[0] + reach * ax, wall.start[1] + reach * ay), arc.radius)


def upright(corners: tuple[Corner, ...]) -> Upright | None:
    """Return the rectangle along the axes that corners are, all rounded alike; else None."""
    if len(corners) != 4:
        return None
    radii = [each.radius for each in corners]
    if max(radii) - min(radii) > _LEVEL:
        return None
    xs, ys = sorted(c.at[0] for c in corners), sorted(c.at[1] for c in corners)
    pairs = ((xs[0], xs[1]), (xs[2], xs[3]), (ys[0], ys[1]), (ys[2], ys[3]))
    if any(abs(a - b) > _LEVEL for a, b in pairs):
        return None
    low, high = (xs[0], ys[0]), (xs[3], ys[3])
    return Upright(at=low, width=high[0] - low[0], height=high[1] - low[1], radius=radii[0])


def rounded_slot(contour: Contour) -> tuple[Point, float, float, float] | None:
    """Return (centre, length, width, turn in degrees) of a slot with round ends, else None."""
    walls = list(edges(tidy(contour)))
    arcs = [each for each in walls if each.bulge]
    lines = [each for each in walls if not each.bulge]
    if len(lines) != 2 or not 2 <= len(arcs) <= 4:
        return None
    radii = [each.arc.radius for each in arcs if each.arc]
    if max(radii) - min(radii) > _LEVEL:
        return None
    (ax, ay), (bx, by) = heading(lines[0]), heading(lines[1])
    if ax * bx + ay * by > -1 + _TANGENT:
        return None
    straight = dist(lines[0].start, lines[0].end)
    ends = [each for line in lines for each in (line.start, line.end)]
    centre = (sum(x for x, _ in ends) / 4, sum(y for _, y in ends) / 4)
    across = abs(
        (lines[1].start[0] - lines[0].start[0]) * ay - (lines[1].start[1] - lines[0].start[1]) * ax
    )
    if abs(across - 2 * radii[0]) > _LEVEL:
        return None
    return centre, straight + across, across, turn_of((ax, ay)) % 180
