"""Where solids run through one another: the lines in which their faces cross."""

from __future__ import annotations

import numpy as np
import shapely

from kerfolio.geometry.facing import Facing
from kerfolio.geometry.sight import BEHIND, inside
from kerfolio.geometry.solid_faces import Indices, Numbers
from kerfolio.geometry.spans import merged, uncovered

_LEAST = 1e-9


def piercing_lines(faces: Facing) -> tuple[Indices, Numbers]:
    """Return the lines (n, 2, 3) in which faces of different solids cross, view coordinates.

    The first value is the solid each belongs to, the one of lower number. Two planes cross where
    their depths are equal, a straight line of the picture; of it counts what lies inside both
    faces. Where faces only touch, the line lies on an edge and is drawn with it.
    """
    one, other = _pairs(faces)
    ends, some = _crossings(faces, one, other)
    one, other = one[some], other[some]
    outside = [
        uncovered(len(ends), *merged(*inside(faces, ends, face, (0.0,)))) for face in (one, other)
    ]
    line = np.concatenate([each for each, _ in outside])
    spans = np.concatenate([each for _, each in outside])
    number, spans = uncovered(len(ends), *merged(line, spans))
    start, along = ends[number, :1], ends[number, 1:] - ends[number, :1]
    flat = start + along * spans[:, :, None]
    a, b, c = faces.planes[one[number]].T[:, :, None]
    depth = a * flat[:, :, 0] + b * flat[:, :, 1] + c
    return faces.solid[one[number]], np.concatenate([flat, depth[:, :, None]], axis=2)


def _pairs(faces: Facing) -> tuple[Indices, Indices]:
    """Return the pairs of faces of different solids that now one, now the other is nearer."""
    boxes = np.asarray(shapely.box(*faces.boxes.T))
    one, other = shapely.STRtree(boxes).query(boxes)
    apart = faces.solid[one] < faces.solid[other]
    one, other = one[apart], other[apart]
    low, high = _shared(faces, one, other)
    a, b, c = (faces.planes[one] - faces.planes[other]).T
    across, up = (
        np.sort([a * low[:, 0], a * high[:, 0]], 0),
        np.sort([b * low[:, 1], b * high[:, 1]], 0),
    )
    mixed = (across[0] + up[0] + c < -BEHIND) & (across[1] + up[1] + c > BEHIND)
    return one[mixed], other[mixed]


def _shared(faces: Facing, one: Indices, other: Indices) -> tuple[Numbers, Numbers]:
    first, second = faces.boxes[one], faces.boxes[other]
    return np.maximum(first[:, :2], second[:, :2]), np.minimum(first[:, 2:], second[:, 2:])


def _crossings(faces: Facing, one: Indices, other: Indices) -> tuple[Numbers, Indices]:
    """Return the crossing lines (n, 2, 2), cut to the boxes both share, and whose they are."""
    low, high = _shared(faces, one, other)
    plane = faces.planes[one] - faces.planes[other]
    normal = plane[:, :2]
    square = np.maximum(np.sum(normal**2, axis=1), _LEAST)
    middle = (low + high) / 2
    off = (np.sum(normal * middle, axis=1) + plane[:, 2]) / square
    foot = middle - normal * off[:, None]
    way = np.stack([-normal[:, 1], normal[:, 0]]).T / np.sqrt(square)[:, None]
    with np.errstate(divide="ignore", invalid="ignore"):
        bounds = np.sort([(low - foot) / way, (high - foot) / way], axis=0)
    first = np.nanmax(np.where(np.isfinite(bounds[0]), bounds[0], -np.inf), axis=1)
    last = np.nanmin(np.where(np.isfinite(bounds[1]), bounds[1], np.inf), axis=1)
    some = np.flatnonzero(last - first > _LEAST)
    foot, way, first, last = foot[some], way[some], first[some], last[some]
    ends = np.stack([foot + way * first[:, None], foot + way * last[:, None]], axis=1)
    return ends, some
