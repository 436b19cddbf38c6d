"""Kinds of pieces and the poses they may take, ready to be placed."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from generator.geometry.packing import Flat, footprint
from generator.geometry.slabs import Slabs, slabs_of
from generator.layouts.engine import Blank, Job

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """Pieces alike in shape and turns, with the poses that fit an empty sheet; area in mm2."""

    labels: tuple[str, ...]
    poses: tuple[Pose, ...]
    area: float


def frame(job: Job) -> tuple[float, float]:
    """Return the room for footprints on a sheet: without its margins, with half a gap all round."""
    bed = job.bed
    spare = bed.gap - 2 * bed.margin
    return bed.size[0] + spare, bed.size[1] + spare


def kinds_of(job: Job) -> tuple[Kind, ...]:
    """Return the kinds of a job in the order their first pieces come."""
    groups: dict[tuple[Flat, tuple[float, ...]], list[str]] = {}
    for blank in job.blanks:
        groups.setdefault((blank.shape, blank.turns), []).append(blank.label)
    crevice = 0.8 * min((_narrow(blank) for blank in job.blanks), default=0.0)
    return tuple(
        _kind(shape, turns, tuple(labels), crevice, job)
        for (shape, turns), labels in groups.items()
    )


def _narrow(blank: Blank) -> float:
    x0, y0, x1, y1 = blank.shape.box
    return min(x1 - x0, y1 - y0)


def _kind(
    shape: Flat, turns: tuple[float, ...], labels: tuple[str, ...], crevice: float, job: Job
) -> Kind:
    grown = footprint(shape, job.bed.gap / 2, crevice)
    room = frame(job)
    poses: list[Pose] = []
    for turn in turns:
        pose = _pose(grown, turn)
        fits = pose.width <= room[0] + _SLACK and pose.height <= room[1] + _SLACK
        if fits and not any(_alike(pose, other) for other in poses):
            poses.append(pose)
    return Kind(labels=labels, poses=tuple(poses), area=grown.area)


def _pose(grown: Flat, turn: float) -> Pose:
    turned = grown.turned(turn)
    x0, y0, x1, y1 = turned.box
    slabs = slabs_of(turned).moved(-x0, -y0)
    return Pose(turn=turn, slabs=slabs, width=x1 - x0, height=y1 - y0, corner=(x0, y0))


def _alike(one: Pose, other: Pose) -> bool:
    """Tell whether two poses cover the same area (a rectangle turned by 180 degrees)."""
    a, b = (np.array(sorted(each.slabs.table.T.round(1).tolist())) for each in (one, other))
    return a.shape == b.shape and bool(np.abs(a - b).max() < 0.15)
