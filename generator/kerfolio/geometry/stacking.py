"""How high a body stands on another of its kind that is moved straight down on to it.

The second comes to rest as soon as some upright line through both would hold more than it can: the
way up is the greatest distance, along any upright line, from a face of the body that looks down to
one that looks up. Faces are plane, so over what two of them share across the floor the distance is
greatest at a corner. That is exact for panels with straight edges; curves are in facets that stray
by 0.1 mm at most (``panel_faces``).
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

import numpy as np
import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.hull import convex_hull
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.panel_faces import panel_faces
from kerfolio.geometry.rigid import Rigid
from kerfolio.geometry.solid_faces import Numbers

_LEVEL = 1e-6
"""Faces whose normal rises or falls by no more than this stand upright."""
_LEAST = 1e-3
"""Faces that share no more than this across the floor, mm2, only touch."""
_RESTS = 0.5
"""What is no farther apart than this when the second has come down, mm, bears it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stacked:
    """``lift`` mm is how much higher the second stands; ``bearing`` the hull of what bears it."""

    lift: float
    bearing: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class _Face:
    """A plane face seen from above; its height is ``slope`` . (x, y) + ``height``."""

    area: Any
    slope: Numbers
    height: float


def stacked(body: Iterable[tuple[Panel, Rigid]]) -> Stacked:
    """Return how a body of posed panels stands on another like it; z is up, mm."""
    up: list[_Face] = []
    down: list[_Face] = []
    for panel, pose in body:
        for face, rises in _faces(panel, pose):
            (up if rises else down).append(face)
    spots = _gaps(up, down)
    lift = float(spots[:, 2].max())
    bears = spots[spots[:, 2] >= lift - _RESTS, :2].tolist()
    return Stacked(lift=lift, bearing=convex_hull((x, y) for x, y in bears))


def _gaps(up: list[_Face], down: list[_Face]) -> Numbers:
    """Return the corners of what faces share: rows x, y, and the way up from the lower, mm."""
    above, below = (np.array([each.area for each in faces]) for faces in (up, down))
    one, other = shapely.STRtree(below).query(above, predicate="intersects")
    parts, pair = shapely.get_parts(
        shapely.intersection(above[one], below[other]), return_index=True
    )
    shared = shapely.area(parts) > _LEAST
    spots, part = shapely.get_coordinates(parts[shared], return_index=True)
    which = pair[shared][part]
    slopes = np.array([up[a].slope - down[b].slope for a, b in zip(one, other, strict=True)])
    heights = np.array([up[a].height - down[b].height for a, b in zip(one, other, strict=True)])
    gaps = np.einsum("ij,ij->i", spots, slopes[which]) + heights[which]
    return np.column_stack([spots, gaps])


def _faces(panel: Panel, pose: Rigid) -> Iterable[tuple[_Face, bool]]:
    """Yield a panel's faces that do not stand upright, and whether each looks up."""
    made = panel_faces(panel)
    turn = np.array([pose.x, pose.y, pose.z])
    points, normals = made.points @ turn + np.array(pose.origin), made.normals @ turn
    for number, normal in enumerate(normals):
        if abs(normal[2]) > _LEVEL:
            loops = range(made.faces[number], made.faces[number + 1])
            rings = [points[made.loops[each] : made.loops[each + 1]] for each in loops]
            area = shapely.Polygon(rings[0][:, :2], [each[:, :2] for each in rings[1:]])
            slope = -normal[:2] / normal[2]
            height = float(rings[0][0, 2] - slope @ rings[0][0, :2])
            if shapely.is_valid(area) and area.area > _LEAST:
                yield _Face(area, slope, height), bool(normal[2] > 0)
