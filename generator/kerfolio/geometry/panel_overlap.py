"""The volume that panels share in space, exact but for rounding, many pairs at once.

Panels at a right angle are crossed slab by slab (``crossed_slabs``), panels that lie parallel share
height times area, and any other pair is left to the library for solids.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
import shapely
from numpy.typing import NDArray

from kerfolio.geometry.crossed_slabs import Side, crossed_volumes
from kerfolio.geometry.panel_solid import LEAST, Posed, Slab, moved
from kerfolio.geometry.rigid import Rigid

Numbers = NDArray[np.float64]
Pair = tuple[Posed, Posed]

SQUARE = 1e-9
"""Panels count as parallel or at a right angle within this, radians (1 micron in 1 km)."""

_DIGITS = 9


@dataclass(frozen=True, slots=True)
class Relative:
    """Where the second panel of each pair stands in the frame of the first.

    ``axes`` (pairs, 3, 3) have its x, y and z as columns; ``origins`` (pairs, 3) in mm.
    """

    axes: Numbers
    origins: Numbers


def overlap_volumes(pairs: Sequence[Pair]) -> Numbers:
    """Return the volume (mm3) that the panels of each pair share, 0 where they do not meet.

    Pairs of the same panels in the same relative position are worked out once.
    """
    if not pairs:
        return np.zeros(0)
    relative = _relative(pairs)
    first, which = _alike(pairs, relative)
    some = [pairs[each] for each in first]
    relative = Relative(relative.axes[first], relative.origins[first])
    tilt = np.abs(relative.axes[:, 2, 2])
    lean = np.hypot(relative.axes[:, 0, 2], relative.axes[:, 1, 2])
    volumes = np.zeros(len(some))
    crossed, parallel = np.flatnonzero(tilt < SQUARE), np.flatnonzero(lean < SQUARE)
    volumes[crossed] = _crossed(some, relative, crossed)
    for each in parallel:
        volumes[each] = _parallel(*some[each], relative.axes[each], relative.origins[each])
    for each in np.flatnonzero((tilt >= SQUARE) & (lean >= SQUARE)):
        volumes[each] = shared_solid(*some[each]).volume()
    return volumes[which]


def shared_solid(one: Posed, other: Posed) -> Any:
    """Return what two panels share as a solid of the library for solids, in the first's frame."""
    return one.solid.solid ^ moved(other.solid.solid, one.pose.inverse.after(other.pose))


def _relative(pairs: Sequence[Pair]) -> Relative:
    poses = np.array([[_rows(each.pose) for each in pair] for pair in pairs])
    ours, theirs = poses[:, 0], poses[:, 1]
    back = ours[:, :3]
    axes = np.einsum("nij,nkj->nik", back, theirs[:, :3])
    return Relative(axes, np.einsum("nij,nj->ni", back, theirs[:, 3] - ours[:, 3]))


def _rows(pose: Rigid) -> tuple[tuple[float, float, float], ...]:
    return (pose.x, pose.y, pose.z, pose.origin)


def _alike(pairs: Sequence[Pair], relative: Relative) -> tuple[list[int], list[int]]:
    """Return the first of each kind of pair, and which of them each pair is like."""
    rows = np.concatenate([relative.axes.reshape(-1, 9), relative.origins], axis=1)
    rows = np.round(rows, _DIGITS) + 0.0
    known: dict[tuple[int, int, bytes], int] = {}
    first: list[int] = []
    which = []
    for number, (one, other) in enumerate(pairs):
        key = (id(one.solid), id(other.solid), rows[number].tobytes())
        if key not in known:
            known[key] = len(first)
            first.append(number)
        which.append(known[key])
    return first, which


def _crossed(pairs: Sequence[Pair], relative: Relative, some: Iterable[int]) -> Numbers:
    """Return the volumes of pairs whose panels stand at a right angle."""
    numbers = list(some)
    both = [
        (position, a, b)
        for position, number in enumerate(numbers)
        for a in pairs[number][0].solid.slabs
        for b in pairs[number][1].solid.slabs
    ]
    if not both:
        return np.zeros(len(numbers))
    owner = np.array([position for position, _, _ in both])
    rows = np.array(numbers)[owner]
    axes, origins = relative.axes[rows], relative.origins[rows]
    normal, zero = axes[:, :2, 2], np.zeros(len(rows))
    line = np.stack([-normal[:, 1], normal[:, 0]], axis=1)
    one = Side(
        [a.edges for _, a, _ in both],
        np.column_stack([line, zero]),
        np.column_stack([normal, -np.einsum("ni,ni->n", normal, origins[:, :2])]),
        *_faces(b for _, _, b in both),
    )
    other = Side(
        [b.edges for _, _, b in both],
        np.column_stack(
            [
                np.einsum("ni,nik->nk", line, axes[:, :2, :2]),
                np.einsum("ni,ni->n", line, origins[:, :2]),
            ]
        ),
        np.column_stack([axes[:, 2, :2], origins[:, 2]]),
        *_faces(a for _, a, _ in both),
    )
    return np.asarray(np.bincount(owner, crossed_volumes(one, other), minlength=len(numbers)))


def _faces(slabs: Iterable[Slab]) -> tuple[Numbers, Numbers]:
    low, high = zip(*((each.low, each.high) for each in slabs), strict=True)
    return np.array(low), np.array(high)


def _parallel(one: Posed, other: Posed, axes: Numbers, origin: Numbers) -> float:
    """Return the volume of two panels that lie parallel: shared height times shared area."""
    rise, up = origin[2], axes[2, 2]
    total = 0.0
    for b in other.solid.slabs:
        low, high = sorted((rise + up * b.low, rise + up * b.high))
        turned = None
        for a in one.solid.slabs:
            height = min(a.high, high) - max(a.low, low)
            if height > LEAST:
                if turned is None:
                    turned = shapely.transform(
                        b.area, lambda points: points @ axes[:2, :2].T + origin[:2]
                    )
                total += height * shapely.intersection(a.area, turned).area
    return float(total)
