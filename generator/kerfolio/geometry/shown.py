"""How well a view shows some lines of a scene, and how crowded its own lines are."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
import shapely

from kerfolio.geometry.facing import PosedPanel, Solids, facing, in_view
from kerfolio.geometry.panel_faces import panel_faces
from kerfolio.geometry.rigid import Rigid, Vector
from kerfolio.geometry.sight import Sight
from kerfolio.geometry.solid_faces import Numbers
from kerfolio.geometry.view import View

Line = tuple[Vector, Vector]

_LEAST = 1e-9
_PARALLEL = 0.05


def sharp_edges(solid: PosedPanel, most: int) -> tuple[Line, ...]:
    """Return the ``most`` longest edges of a solid, those between facets of a curve left out."""
    ends = _edges(solid)
    size = np.round(np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1), 6)
    return _lines(ends[np.argsort(-size, kind="stable")[:most]])


def edges_near(solid: PosedPanel, frame: Rigid, reach: Vector) -> tuple[Line, ...]:
    """Return the sharp edges that lie wholly in a box: ``reach`` mm each way along a frame."""
    ends = _edges(solid)
    axes = np.array([frame.x, frame.y, frame.z])
    local = (ends - np.array(frame.origin)) @ axes.T
    inside = np.all(np.abs(local) <= np.array(reach), axis=(1, 2))
    return _lines(ends[inside])


def _edges(solid: PosedPanel) -> Numbers:
    made = panel_faces(solid.panel)
    axes = np.array([solid.pose.x, solid.pose.y, solid.pose.z])
    ends: Numbers = made.ends[~made.smooth] @ axes + np.array(solid.pose.origin)
    return ends


def _lines(ends: Numbers) -> tuple[Line, ...]:
    return tuple(((a, b, c), (d, e, f)) for (a, b, c), (d, e, f) in ends.tolist())


def shown_shares(solids: Solids, view: View, sets: Sequence[Sequence[Line]]) -> list[float]:
    """Return for each set of lines how much is shown: length in the picture to true length.

    A line seen whole and square on counts 1, a hidden one or one that points at the eye 0. An
    empty set counts 0.
    """
    owner = np.repeat(np.arange(len(sets)), [len(each) for each in sets])
    if not len(owner):
        return [0.0] * len(sets)
    ends = in_view(np.array([line for each in sets for line in each]), view)
    true = np.linalg.norm(ends[:, 1] - ends[:, 0], axis=1)
    drawn = np.linalg.norm(ends[:, 1, :2] - ends[:, 0, :2], axis=1)
    number, spans = Sight(facing(solids, view)[0]).seen(ends)
    seen = np.bincount(owner[number], drawn[number] * (spans[:, 1] - spans[:, 0]), len(sets))
    whole = np.bincount(owner, true, len(sets))
    return [float(each) for each in seen / np.maximum(whole, _LEAST)]


def crowding(solids: Solids, view: View, near: float, least: float) -> float:
    """Return for how far contours run beside others nearer than ``near`` mm, not on them.

    Such pairs fill to a black wedge in print; what is nearer than ``least`` is drawn as one line.
    """
    faces, edges = facing(solids, view)
    whole = edges.ends[edges.contour]
    number, spans = Sight(faces).seen(whole)
    ends = whole[number, :, :2]
    way = ends[:, 1] - ends[:, 0]
    ends = ends[:, :1] + way[:, None] * spans[:, :, None]
    way = ends[:, 1] - ends[:, 0]
    strokes = np.asarray(shapely.linestrings(ends))
    one, other = shapely.STRtree(strokes).query(strokes, predicate="dwithin", distance=near)
    unit = way / np.maximum(np.linalg.norm(way, axis=1), _LEAST)[:, None]
    turn = unit[one, 0] * unit[other, 1] - unit[one, 1] * unit[other, 0]
    side = (one < other) & (np.abs(turn) < _PARALLEL)
    one, other = one[side], other[side]
    bands = [shapely.buffer(strokes[other], by, cap_style="flat") for by in (near, least)]
    beside = shapely.difference(shapely.intersection(strokes[one], bands[0]), bands[1])
    return float(shapely.length(beside).sum())
