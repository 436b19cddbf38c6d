"""A sheet being filled: finds the best free place for a piece and takes it."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np

from kerfolio.geometry.slabs import NO_SLABS, Numbers, Slabs, first_free
from kerfolio.layouts.pose import Kind, Pose
from kerfolio.layouts.room import Room

Taste = Callable[[Numbers, Numbers, Pose], Numbers]
"""Rates places (x, y of a pose's box, mm): the least is the best."""

_LEVELS = 12
_MANY = 160
_CALL = 1000
"""What a single question costs beside the pairs of slabs compared in it."""

_NEAR = 0.5


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """A free place for a kind: the pose and the lower left of its box in the room, mm."""

    kind: int
    pose: Pose
    x: float
    y: float


@dataclass(slots=True, kw_only=True)
class Filling:
    """The room on one sheet and what lies in it so far.

    ``work`` counts the pairs of slabs compared, plus a fixed share for every question.
    """

    room: Room
    taken: Slabs = NO_SLABS
    area: float = 0.0
    places: list[Found] = field(default_factory=list)
    refused: set[int] = field(default_factory=set)
    levels: list[Numbers] = field(default_factory=list)
    work: int = 0

    def __post_init__(self) -> None:
        self.taken = self.room.barred
        self.levels.append(self.room.barred.levels(_LEVELS))

    def put(self, found: Found, area: float) -> None:
        """Take a place that is known to be free."""
        slabs = found.pose.slabs.moved(found.x, found.y)
        self.taken = self.taken.joined(slabs)
        self.levels.append(slabs.levels(_LEVELS))
        self.places.append(found)
        self.area += area

    def add(self, number: int, kind: Kind, taste: Taste) -> bool:
        """Place a piece of a kind; False when there is no room (and there never will be)."""
        if number in self.refused:
            return False
        found = None
        if self.area + kind.area <= self.room.area + 1.0:
            found = self._best(number, kind, taste)
        if found is None:
            self.refused.add(number)
            return False
        self.put(found, kind.area)
        return True

    def _best(self, number: int, kind: Kind, taste: Taste) -> Found | None:
        best: Found | None = None
        least = np.inf
        for pose in kind.poses:
            if not pose.fits(self.room):
                continue
            heights = self._heights(pose)
            most = max(self.room.width - pose.width, 0.0)
            x, work = first_free(self.taken, pose.slabs, heights, most)
            self.work += work + _CALL
            with np.errstate(invalid="ignore"):
                rates = np.where(np.isfinite(x), taste(x, heights, pose), np.inf)
            first = int(np.argmin(rates))
            if rates[first] < least - 1e-6:
                least = float(rates[first])
                best = Found(kind=number, pose=pose, x=float(x[first]), y=float(heights[first]))
        return best

    def _heights(self, pose: Pose) -> Numbers:
        """Return heights worth trying: on and under what lies there, on the edge, under the top."""
        most = max(self.room.height - pose.height, 0.0)
        ends = [np.array([0.0, most])]
        for each in self.levels:
            ends += [each, each - pose.height]
        heights = np.unique(np.concatenate(ends))
        heights = heights[(heights >= -1e-6) & (heights <= most + 1e-6)].clip(0.0, most)
        heights = heights[np.append(True, np.diff(heights) > 1e-9)]
        if len(heights) > _MANY:
            heights = _thinned(heights)
        return heights


def _thinned(heights: Numbers) -> Numbers:
    """Leave out heights less than 0.5 mm above the last one kept."""
    keep: list[float] = []
    for each in heights.tolist():
        if not keep or each - keep[-1] >= _NEAR:
            keep.append(each)
    return np.array(keep)
