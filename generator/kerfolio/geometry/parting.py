"""How far shapes that lie close must part: one straight line between each two of their slabs.

Two slabs are convex, so they lie free of each other just where some side of one of them has the
other wholly beyond it. Taking for each two slabs the side that parts them best gives conditions
that are linear in the places of the shapes, as long as none of them moves far.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from kerfolio.geometry.slabs import Numbers, Slabs

_NO_SIDE = -1e12


@dataclass(frozen=True, slots=True)
class Partings:
    """Conditions, one a row: across . (place of second - place of first) >= apart, in mm.

    ``first`` and ``second`` are indices of shapes, ``across`` unit vectors.
    """

    first: NDArray[np.int64]
    second: NDArray[np.int64]
    across: Numbers
    apart: Numbers


@dataclass(frozen=True, slots=True)
class Sides:
    """The corners and outward unit normals of all slabs of some shapes, four a slab."""

    owner: NDArray[np.int64]
    corners: Numbers
    normals: Numbers


def sides_of(shapes: Sequence[Slabs]) -> Sides:
    """Return the sides of shapes, each in its own frame."""
    tables = [each.table for each in shapes]
    owner = np.concatenate([np.full(t.shape[1], index) for index, t in enumerate(tables)])
    bottom, top, left0, left1, right0, right1 = np.concatenate(tables, axis=1)
    xs = np.stack([left0, right0, right1, left1], axis=1)
    ys = np.stack([bottom, bottom, top, top], axis=1)
    corners = np.stack([xs, ys], axis=2)
    along = np.roll(corners, -1, axis=1) - corners
    normals = np.stack([along[:, :, 1], -along[:, :, 0]], axis=2)
    lengths = np.sqrt((normals**2).sum(axis=2, keepdims=True))
    # The point of a triangle is a side without a length: it parts nothing.
    normals = np.where(lengths > 1e-9, normals / np.maximum(lengths, 1e-9), 0.0)
    return Sides(owner.astype(np.int64), corners, normals)


def partings(sides: Sides, places: Numbers, near: float) -> Partings:
    """Return the conditions between slabs of different shapes nearer than ``near`` mm.

    ``places`` holds x, y of each shape, mm.
    """
    moved = places[sides.owner]
    one, other = _near(sides, moved, near)
    normals = np.concatenate([sides.normals[one], -sides.normals[other]], axis=1)
    reach = np.einsum("nkd,ncd->nkc", normals, sides.corners[one]).max(axis=2)
    begin = np.einsum("nkd,ncd->nkc", normals, sides.corners[other]).min(axis=2)
    apart = reach - begin
    free = np.einsum("nkd,nd->nk", normals, moved[other] - moved[one]) - apart
    free[(normals**2).sum(axis=2) < 0.5] = _NO_SIDE
    row, side = np.arange(len(one)), free.argmax(axis=1)
    kept = free[row, side] < near
    row, side = row[kept], side[kept]
    return Partings(
        sides.owner[one[kept]],
        sides.owner[other[kept]],
        normals[row, side],
        apart[row, side],
    )


def _near(sides: Sides, moved: Numbers, near: float) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Return the pairs of slabs of different shapes whose boxes are nearer than ``near``."""
    low = sides.corners.min(axis=1) + moved
    high = sides.corners.max(axis=1) + moved
    order = np.argsort(low[:, 0], kind="stable")
    # Those that begin, from the left, before a slab ends plus ``near``: a run of the order.
    end = np.searchsorted(low[order, 0], high[order, 0] + near)
    count = np.maximum(end - np.arange(len(order)) - 1, 0)
    first = np.repeat(np.arange(len(order)), count)
    before = np.repeat(np.cumsum(count) - count, count)
    one, other = order[first], order[first + 1 + np.arange(len(first)) - before]
    close = sides.owner[one] != sides.owner[other]
    close &= low[one, 1] - high[other, 1] < near
    close &= low[other, 1] - high[one, 1] < near
    one, other = one[close], other[close]
    turned = sides.owner[one] > sides.owner[other]
    return np.where(turned, other, one), np.where(turned, one, other)
