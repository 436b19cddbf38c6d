"""Kinds of pieces and the poses they may take, ready to be placed."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from kerfolio.geometry.packing import COARSE, Flat, footprint
from kerfolio.geometry.slabs import Slabs, slabs_of
from kerfolio.layouts.engine import Blank, Job
from kerfolio.layouts.room import Room

_SLACK = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Pose:
    """A kind turned one way, half the gap round it; ``slabs`` begin at 0,0.

    ``corner`` is where the lower left of its box lies in the turned part's frame, mm.
    """

    turn: float
    slabs: Slabs
    width: float
    height: float
    corner: tuple[float, float]

    def fits(self, room: Room) -> bool:
        """Tell whether the pose is no larger than a room."""
        return self.width <= room.width + _SLACK and self.height <= room.height + _SLACK


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """Pieces alike in shape and turns, with the poses that fit some sheet; area in mm2.

    ``shape`` is grown by half the gap, in the part's frame. Turns in which it covers the same
    share one pose.
    """

    labels: tuple[str, ...]
    shape: Flat
    turns: tuple[float, ...]
    poses: tuple[Pose, ...]
    area: float

    def fits(self, room: Room) -> bool:
        """Tell whether a piece of this kind can lie in a room at all, its barred zones apart."""
        return any(pose.fits(room) for pose in self.poses)


def kinds_of(job: Job, rooms: Sequence[Room], coarse: float = COARSE) -> tuple[Kind, ...]:
    """Return the kinds of a job in the order their first pieces come.

    Their footprints follow curves as closely as ``coarse`` mm.
    """
    groups: dict[tuple[Flat, tuple[float, ...]], list[str]] = {}
    for blank in job.blanks:
        groups.setdefault((blank.shape, blank.turns), []).append(blank.label)
    crevice = 0.8 * min((_narrow(blank) for blank in job.blanks), default=0.0)
    return tuple(
        _kind(footprint(shape, job.bed.gap / 2, crevice, coarse), turns, tuple(labels), rooms)
        for (shape, turns), labels in groups.items()
    )


def _narrow(blank: Blank) -> float:
    x0, y0, x1, y1 = blank.shape.box
    return min(x1 - x0, y1 - y0)


def _kind(
    grown: Flat, turns: tuple[float, ...], labels: tuple[str, ...], rooms: Sequence[Room]
) -> Kind:
    poses: list[Pose] = []
    for turn in turns:
        pose = pose_of(grown, turn)
        if any(pose.fits(room) for room in rooms) and not any(
            _alike(pose, other) for other in poses
        ):
            poses.append(pose)
    return Kind(labels=labels, shape=grown, turns=turns, poses=tuple(poses), area=grown.area)


def pose_of(grown: Flat, turn: float) -> Pose:
    """Return a footprint turned one way."""
    turned = grown.turned(turn)
    x0, y0, x1, y1 = turned.box
    slabs = slabs_of(turned).moved(-x0, -y0)
    return Pose(turn=turn, slabs=slabs, width=x1 - x0, height=y1 - y0, corner=(x0, y0))


def _alike(one: Pose, other: Pose) -> bool:
    """Tell whether two poses cover the same area (a rectangle turned by 180 degrees)."""
    a, b = (np.array(sorted(each.slabs.table.T.round(1).tolist())) for each in (one, other))
    return a.shape == b.shape and bool(np.abs(a - b).max() < 0.15)
