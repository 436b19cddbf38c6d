"""Which parts of lines in space are seen past the faces of a scene, and which face a spot shows.

No ray is cast along lines: the depth difference between a segment and a plane is linear, so the
stretch that lies behind a face is known at once, and cutting it with the face's boundary is
exact. All pairs are worked out together.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

from kerfolio.geometry.facing import Facing
from kerfolio.geometry.solid_faces import Indices, Numbers
from kerfolio.geometry.spans import merged, uncovered

BEHIND = 0.05
"""What lies less than this behind a face, mm, is on it."""

_BESIDE = 1e-6
"""A line nearer than this to the edge of a face, mm, runs along it and is hidden with it."""

_SIDES = (-_BESIDE, _BESIDE)

_LEAST = 1e-9

_MANY = 12
"""Faces with more boundary segments than this are worth a closer look first."""

_MOST = 4_000_000
"""Pairs of a line and a boundary segment that are worked out at a time."""


class Sight:
    """A scene's front faces, ready to be asked what they hide."""

    def __init__(self, faces: Facing) -> None:
        self.faces = faces
        self._tree = shapely.STRtree(np.asarray(shapely.box(*faces.boxes.T)))
        self._ragged = _Ragged(faces)

    def seen(self, ends: Numbers) -> tuple[Indices, Numbers]:
        """Return the stretches of segments (n, 2, 3), view coordinates, that nothing hides.

        They come as the segment's number and (from, to) in shares of its length, in order.
        """
        segment, spans = self._hidden(ends)
        return uncovered(len(ends), *merged(segment, spans))

    def _hidden(self, ends: Numbers) -> tuple[Indices, Numbers]:
        segment, face, low, high = self._behind(ends)
        within, plain = self._ragged.sorted_out(ends[:, :, :2], segment, face)
        pair, cut = inside(self.faces, ends[segment[plain]][:, :, :2], face[plain], _SIDES)
        pair = np.concatenate([plain[pair], within])
        cut = np.concatenate([cut, np.tile([0.0, 1.0], (len(within), 1))])
        start = np.maximum(cut[:, 0], low[pair])
        end = np.minimum(cut[:, 1], high[pair])
        some = end > start
        return segment[pair][some], np.stack([start, end]).T[some]

    def _behind(self, ends: Numbers) -> tuple[Indices, Indices, Numbers, Numbers]:
        """Return the pairs of a segment and a face in front of it, and between which shares."""
        low, high = ends.min(axis=1), ends.max(axis=1)
        boxes = shapely.box(*low[:, :2].T, *high[:, :2].T)
        segment, face = self._tree.query(boxes)
        planes = self.faces.planes[face]
        at = ends[segment]
        gaps = planes[:, :1] * at[:, :, 0] + planes[:, 1:2] * at[:, :, 1] + planes[:, 2:]
        first, last = (gaps - at[:, :, 2] - BEHIND).T
        near = (first > 0) | (last > 0)
        segment, face, first, last = segment[near], face[near], first[near], last[near]
        with np.errstate(divide="ignore", invalid="ignore"):
            share = first / (first - last)
        start = np.where(first > 0, 0.0, share)
        end = np.where(last > 0, 1.0, share)
        return segment, face, start, end

    def nearest(self, spots: Numbers) -> Indices:
        """Return the front face seen at each spot (n, 2) of the picture, -1 where there is none."""
        spot, face = self._tree.query(shapely.points(spots))
        inside = _holds(self.faces, face, spots[spot])
        spot, face = spot[inside], face[inside]
        a, b, c = self.faces.planes[face].T
        depth = a * spots[spot, 0] + b * spots[spot, 1] + c
        order = np.lexsort((face, depth, spot))
        found = np.full(len(spots), -1, dtype=np.int64)
        found[spot[order]] = face[order]
        return found


class _Ragged:
    """Faces with many boundary segments, to which most short lines never come near.

    What stays away from the boundary of such a face lies inside or outside as a whole, and one
    look at its middle tells which.
    """

    def __init__(self, faces: Facing) -> None:
        count = np.diff(faces.first)
        self._many = count > _MANY
        self._count = len(count)
        owner = np.repeat(np.arange(len(count)), count)
        which = self._many[owner]
        self._owner = owner[which]
        walls = faces.walls[which]
        low, high = np.minimum(walls[:, :2], walls[:, 2:]), np.maximum(walls[:, :2], walls[:, 2:])
        boxes = np.asarray(shapely.box(*(low - _BESIDE).T, *(high + _BESIDE).T))
        self._tree = shapely.STRtree(boxes)
        self._faces = faces
        self._shapes: dict[int, Any] = {}

    def sorted_out(self, flat: Numbers, segment: Indices, face: Indices) -> tuple[Indices, Indices]:
        """Return which pairs lie wholly inside, and which must be looked at closely."""
        low, high = flat.min(axis=1), flat.max(axis=1)
        some, wall = self._tree.query(shapely.box(*low.T, *high.T))
        near = np.unique(some * self._count + self._owner[wall])
        far = self._many[face] & ~np.isin(segment * self._count + face, near)
        middle = flat.mean(axis=1)
        within: list[Indices] = [np.zeros(0, dtype=np.int64)]
        pairs = np.flatnonzero(far)
        for each in np.unique(face[pairs]).tolist():
            here = pairs[face[pairs] == each]
            held = shapely.contains_xy(self._shape(each), middle[segment[here]])
            within.append(here[held])
        return np.concatenate(within), np.flatnonzero(~far)

    def _shape(self, face: int) -> Any:
        if face not in self._shapes:
            first = self._faces.first
            self._shapes[face] = _polygon(self._faces.walls[first[face] : first[face + 1]])
        return self._shapes[face]


def _polygon(walls: Numbers) -> Any:
    """Return a face's polygon, ready to be asked many times, from its boundary segments."""
    ends = np.flatnonzero(np.any(walls[:-1, 2:] != walls[1:, :2], axis=1)) + 1
    outer, *openings = (part[:, :2] for part in np.split(walls, ends))
    polygon = shapely.Polygon(outer, openings)
    shapely.prepare(polygon)
    return polygon


def _spread(first: Indices, face: Indices) -> tuple[Indices, Indices]:
    """Return every (pair, boundary segment) of pairs with the faces given."""
    count = first[face + 1] - first[face]
    pair = np.repeat(np.arange(len(face)), count)
    before = np.cumsum(count) - count
    return pair, np.arange(len(pair)) - np.repeat(before - first[face], count)


def inside(
    faces: Facing, flat: Numbers, face: Indices, beside: Sequence[float]
) -> tuple[Indices, Numbers]:
    """Return where segments (n, 2, 2) run inside their faces, as number and shares.

    A line enters and leaves a polygon at its crossings with the boundary in turn (even-odd). It
    is tried moved to its left by each of ``beside``, mm.
    """
    counts = faces.first[face + 1] - faces.first[face]
    found = [(np.zeros(0, dtype=np.int64), np.zeros((0, 2)))]
    for count in np.unique(counts).tolist():
        for pairs in _portions(np.flatnonzero(counts == count), _MOST // count):
            walls = faces.walls[faces.first[face[pairs]][:, None] + np.arange(count)]
            found += list(_crossed(pairs, flat[pairs], walls, beside))
    return np.concatenate([one for one, _ in found]), np.concatenate([two for _, two in found])


def _portions(pairs: Indices, most: int) -> Iterator[Indices]:
    for start in range(0, len(pairs), max(most, 1)):
        yield pairs[start : start + max(most, 1)]


def _crossed(
    pairs: Indices, flat: Numbers, walls: Numbers, beside: Sequence[float]
) -> Iterator[tuple[Indices, Numbers]]:
    """Yield between which shares lines (n, 2, 2) are inside (n, m, 4), for each way moved."""
    start, along = flat[:, 0], flat[:, 1] - flat[:, 0]
    size = np.maximum(np.hypot(along[:, 0], along[:, 1]), _LEAST)
    unit = along / size[:, None]
    dx, dy = unit[:, :1], unit[:, 1:]
    level = dx * start[:, 1:] - dy * start[:, :1]
    off_a = dx * walls[:, :, 1] - dy * walls[:, :, 0] - level
    off_b = dx * walls[:, :, 3] - dy * walls[:, :, 2] - level
    for by in beside:
        row, wall = np.nonzero((off_a > by) != (off_b > by))
        a, b = off_a[row, wall] - by, off_b[row, wall] - by
        away = walls[row, wall] - np.tile(start, 2)[row]
        at_a = np.einsum("ij,ij->i", unit[row], away[:, :2])
        at_b = np.einsum("ij,ij->i", unit[row], away[:, 2:])
        share = (at_a + (at_b - at_a) * (a / (a - b))) / size[row]
        order = np.lexsort((share, row))
        row, share = row[order], share[order]
        yield pairs[row[::2]], np.stack([share[::2], share[1::2]]).T


def _holds(faces: Facing, face: Indices, spots: Numbers) -> NDArray[np.bool_]:
    """Tell for each pair of a face and a spot whether the one holds the other (even-odd)."""
    pair, wall = _spread(faces.first, face)
    ends = faces.walls[wall]
    x, y = spots[pair].T
    above = (ends[:, 1] > y) != (ends[:, 3] > y)
    pair, ends, x, y = pair[above], ends[above], x[above], y[above]
    at = ends[:, 0] + (y - ends[:, 1]) * (ends[:, 2] - ends[:, 0]) / (ends[:, 3] - ends[:, 1])
    odd: NDArray[np.bool_] = np.bincount(pair[at > x], minlength=len(face)) % 2 == 1
    return odd
