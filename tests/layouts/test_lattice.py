"""Depths on the lattice agree with shapely: nought just where shapes lie free."""

from __future__ import annotations

import math

import pytest
import shapely
from shapely import affinity

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.slabs import slabs_of
from kerfolio.layouts.lattice import Lattice
from kerfolio.layouts.pose import Pose

HOOK = Flat(((0, 0), (90, 0), (90, 25), (30, 25), (30, 70), (0, 70)))
FRAME = Flat(
    ((0, 0), (120, 0), (120, 100), (0, 100)), (((20, 20), (20, 80), (100, 80), (100, 20)),)
)
WEDGE = Flat(((0, 0), (50, 10), (20, 60)))
STEP = 5.0


def pose_of(flat: Flat) -> Pose:
    x0, y0, x1, y1 = flat.box
    return Pose(turn=0.0, slabs=slabs_of(flat), width=x1 - x0, height=y1 - y0, corner=(x0, y0))


def solid(flat: Flat) -> shapely.Polygon:
    return shapely.Polygon(flat.outer, flat.openings)


@pytest.mark.parametrize(("one", "other"), [(HOOK, WEDGE), (FRAME, WEDGE), (FRAME, HOOK)])
def test_depths_are_nought_just_where_shapes_lie_free(one: Flat, other: Flat) -> None:
    overlap = Lattice(STEP).overlap(pose_of(one), pose_of(other), 0.0)
    still, moving = solid(one), solid(other)
    for row in range(-20, 25):
        for column in range(-20, 28):
            lying = affinity.translate(moving, column * STEP, row * STEP)
            shared = still.intersection(lying).area
            assert (overlap.at(row, column) > 0) == (shared > 1e-6), (row, column)


def test_a_piece_may_lie_in_a_window() -> None:
    overlap = Lattice(STEP).overlap(pose_of(FRAME), pose_of(WEDGE), 0.0)
    assert overlap.at(4, 5) == 0.0
    assert overlap.at(0, 0) > 0.0


def test_a_depth_is_the_way_to_the_nearest_free_offset() -> None:
    one, other = pose_of(HOOK), pose_of(WEDGE)
    overlap = Lattice(STEP).overlap(one, other, 0.0)
    free = [
        (row, column)
        for row in range(-30, 31)
        for column in range(-30, 31)
        if overlap.at(row, column) == 0.0
    ]
    for row, column in ((0, 0), (2, 3), (-4, 1), (1, 12)):
        nearest = min(math.dist((row, column), each) for each in free) * STEP
        assert overlap.at(row, column) == pytest.approx(nearest, abs=1e-3)


def test_slack_is_taken_off_every_depth() -> None:
    lattice, one, other = Lattice(STEP), pose_of(HOOK), pose_of(WEDGE)
    plain, slack = lattice.overlap(one, other, 0.0), lattice.overlap(one, other, STEP)
    for row, column in ((0, 0), (2, 3), (9, 0), (30, 30)):
        assert slack.at(row, column) == pytest.approx(max(plain.at(row, column) - STEP, 0.0))
