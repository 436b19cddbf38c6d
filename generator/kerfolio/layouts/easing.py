"""Moves the pieces of one sheet a little, all at once, so that they no longer overlap.

Near its places the question is linear (see ``kerfolio.geometry.parting``): the least sum of what
is still missing between pieces is found by linear programming, then the sides that part them are
chosen anew (compaction and separation after Li and Milenkovic, "Compaction and separation
algorithms for non-convex polygons", 1995).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import optimize, sparse

from kerfolio.geometry.parting import Partings, Sides, partings, sides_of
from kerfolio.geometry.slabs import Numbers
from kerfolio.layouts.pose import Pose
from kerfolio.layouts.room import Room

_ROUNDS = 6
_FREE = 1e-6
_GAIN = 0.05
_HAIR = 0.002


@dataclass(frozen=True, slots=True)
class Eased:
    """Places (x, y a piece, mm) and the pairs that still overlap, with by how much, mm.

    Pairs are indices of pieces; the number of pieces stands for the sheet's barred zones.
    """

    places: Numbers
    missing: tuple[tuple[int, int, float], ...]
    work: int


def eased(poses: Sequence[Pose], places: Numbers, room: Room, reach: float) -> Eased:
    """Return places without overlap, or with little; none moves more than ``reach`` in a round."""
    if not poses:
        return Eased(places, (), 0)
    crowd, work, last = _Crowd.of(poses, room, reach), 0, np.inf
    found = Eased(places, (), 0)
    for _ in range(_ROUNDS):
        found = crowd.round(found.places)
        work += found.work
        total = math.fsum(amount for *_, amount in found.missing)
        if not found.missing or total > last - _GAIN:
            break
        last = total
    return Eased(found.places, found.missing, work)


def snug(poses: Sequence[Pose], places: Numbers, room: Room, reach: float) -> Numbers:
    """Return places drawn to the left and down, without overlap where there was none.

    The side on which the larger strip lies free is drawn in first.
    """
    if not poses:
        return places
    crowd = _Crowd.of(poses, room, reach)
    sizes = np.array([[pose.width, pose.height] for pose in poses])
    for _ in range(2 * _ROUNDS):
        right, top = (places + sizes).max(axis=0)
        side = 0 if (room.width - right) * room.height >= (room.height - top) * room.width else 1
        drawn = crowd.drawn(places, sizes, side)
        if drawn is None:
            break
        gain, places = float((places - drawn).sum()), drawn
        if gain < reach / 1000:
            break
    return places


@dataclass(frozen=True, slots=True)
class _Crowd:
    """The pieces of a room, where they end at most, and how far each may go at once."""

    sides: Sides
    ends: Numbers
    reach: float

    @staticmethod
    def of(poses: Sequence[Pose], room: Room, reach: float) -> _Crowd:
        shapes = [pose.slabs for pose in poses]
        if room.barred.table.shape[1]:
            shapes.append(room.barred)
        ends = np.array([[room.width - pose.width, room.height - pose.height] for pose in poses])
        return _Crowd(sides_of(shapes), ends.clip(0.0), reach)

    def round(self, places: Numbers) -> Eased:
        """Return the places at which least is missing between the pieces."""
        count, needs = len(places), self._needs(places)
        if not len(needs.apart):
            return Eased(places, (), 1)
        pairs, which = np.unique(needs.first * (count + 1) + needs.second, return_inverse=True)
        rows, first = np.arange(len(needs.apart)), 2 * count + 2
        limits = _rows(needs, first + len(pairs), [(rows, first + which, -1.0)])
        bounds = np.zeros((first + len(pairs), 2))
        bounds[: 2 * count] = self._within(places)
        bounds[first:, 1] = np.inf
        cost = (np.arange(len(bounds)) >= first).astype(np.float64)
        made = optimize.linprog(cost, limits, -needs.apart, bounds=bounds, method="highs")
        work = 15_000 + 40 * len(rows)
        if made.x is None:
            return Eased(places, ((0, count, float("inf")),), work)
        left = tuple(
            (int(pair) // (count + 1), int(pair) % (count + 1), float(amount))
            for pair, amount in zip(pairs, made.x[first:], strict=True)
            if amount > _FREE
        )
        return Eased(_places(made.x, count), left, work)

    def drawn(self, places: Numbers, sizes: Numbers, side: int) -> Numbers | None:
        """Return places whose furthest end along a side is least, and then all x and y."""
        count, needs = len(places), self._needs(places)
        there = np.concatenate([places, np.zeros((1, 2))])
        lying = (needs.across * (there[needs.second] - there[needs.first])).sum(axis=1)
        # What overlaps by a rounding error may go on doing so, or there would be no way out.
        apart = np.where(needs.apart - lying < _HAIR, np.minimum(lying, needs.apart), needs.apart)
        furthest, pieces = 2 * count + 2, np.arange(count)
        ends = sparse.csr_matrix(
            (
                np.concatenate([np.ones(count), -np.ones(count)]),
                (np.tile(pieces, 2), np.concatenate([2 * pieces + side, 0 * pieces + furthest])),
            ),
            shape=(count, furthest + 1),
        )
        limits = sparse.vstack([_rows(needs, furthest + 1, []), ends])
        most = np.concatenate([-apart, -sizes[:, side]])
        bounds = np.zeros((furthest + 1, 2))
        bounds[: 2 * count] = self._within(places)
        bounds[furthest, 1] = np.inf
        cost = np.ones(furthest + 1)
        cost[furthest] = 100.0 * count
        made = optimize.linprog(cost, limits, most, bounds=bounds, method="highs")
        return None if made.x is None else _places(made.x, count)

    def _needs(self, places: Numbers) -> Partings:
        # The barred zones, if any, come last and stay where they are.
        return partings(self.sides, np.concatenate([places, np.zeros((1, 2))]), 3 * self.reach)

    def _within(self, places: Numbers) -> Numbers:
        low = (places - self.reach).clip(0.0, self.ends)
        high = (places + self.reach).clip(0.0, self.ends)
        return np.stack([low.ravel(), high.ravel()], axis=1)


def _places(solved: Numbers, count: int) -> Numbers:
    return np.asarray(solved[: 2 * count].reshape(count, 2), dtype=np.float64)


def _rows(
    needs: Partings, unknowns: int, more: Sequence[tuple[NDArray[np.int64], Numbers, float]]
) -> sparse.csr_matrix:
    """Return the conditions as rows: across . (first - second) <= -apart, and ``more`` entries."""
    rows, one, other = np.arange(len(needs.apart)), 2 * needs.first, 2 * needs.second
    x, y = needs.across[:, 0], needs.across[:, 1]
    values = [x, y, -x, -y, *(np.full(len(at), value) for at, _, value in more)]
    columns = [one, one + 1, other, other + 1, *(column for _, column, _ in more)]
    places = [rows, rows, rows, rows, *(at for at, _, _ in more)]
    return sparse.csr_matrix(
        (np.concatenate(values), (np.concatenate(places), np.concatenate(columns))),
        shape=(len(rows), unknowns),
    )
