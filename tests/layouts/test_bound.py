"""The bound on sheets, where it can be worked out by hand."""

from __future__ import annotations

import random

import pytest
import shapely

from kerfolio.geometry.canonical import region
from kerfolio.geometry.packing import Flat, flat_region
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.bound import clear_stretches, fewest_lengths, fewest_sheets
from kerfolio.layouts.engine import Bed, Blank, Job, Stack


def job_of(*sizes: tuple[float, float, int], turns: tuple[float, ...] = (0.0, 90.0)) -> Job:
    blanks = [
        Blank(
            label=f"{kind} {copy}",
            shape=flat_region(region(rectangle(0, 0, width, height), ())),
            turns=turns,
        )
        for kind, (width, height, count) in enumerate(sizes)
        for copy in range(count)
    ]
    bed = Bed(stacks=(Stack(size=(2440.0, 1220.0)),), margin=10.0, gap=8.0)
    return Job(bed=bed, blanks=tuple(blanks), moves=1)


@pytest.mark.parametrize(
    ("sizes", "fewest"),
    [
        ([], 0),
        ([(300, 200, 1)], 1),
        # Six boards of 700 x 500 fill one sheet; the area of nine is more than a sheet's.
        ([(700, 500, 6)], 1),
        ([(700, 500, 9)], 2),
        # Wider than half the sheet and higher than half: each asks for a sheet of its own.
        ([(1300, 700, 4)], 4),
        # Wider than half the sheet: three of 390 mm lie above one another in 1200 mm, not four.
        ([(1300, 390, 4)], 2),
        ([(1300, 294, 4)], 1),
    ],
)
def test_the_bound_of_boards(sizes: list[tuple[float, float, int]], fewest: int) -> None:
    assert fewest_sheets(job_of(*sizes)) == fewest


def test_a_turn_that_avoids_the_stack_counts() -> None:
    assert fewest_sheets(job_of((1300, 390, 4), turns=(0.0, 180.0))) == 2
    # Turned by 90 degrees a board of 1230 is too high: no way out. One of 1150 mm fits upright.
    assert fewest_sheets(job_of((1240, 390, 4))) == 2
    assert fewest_sheets(job_of((1190, 390, 4))) == 1


@pytest.mark.parametrize(
    ("lengths", "room", "fewest"),
    [
        # Worked by hand: a 6 and a 4 share no bin of 9, two pieces of 4 do.
        ([6.0] * 7 + [4.0] * 7, 9.0, 7 + 4),
        ([5.0, 5.0, 5.0], 9.0, 3),
        ([5.0, 4.0], 9.0, 1),
        ([7.0, 7.0, 7.0, 3.0, 3.0, 3.0], 9.0, 4),
        ([], 9.0, 0),
    ],
)
def test_lengths_laid_end_to_end(lengths: list[float], room: float, fewest: int) -> None:
    assert fewest_lengths(lengths, room) == fewest


@pytest.mark.parametrize("seed", range(6))
def test_what_is_clear_of_a_shape_at_all_heights_of_a_band(seed: int) -> None:
    """Against the plane library: what the band less everything outside leaves, seen from above."""
    chance = random.Random(seed)
    hull = shapely.MultiPoint([(chance.uniform(0, 90), chance.uniform(0, 60)) for _ in range(9)])
    bites = [
        shapely.box(x, y, x + chance.uniform(2, 20), y + chance.uniform(2, 20))
        for x, y in ((chance.uniform(0, 80), chance.uniform(0, 50)) for _ in range(5))
    ]
    solid = hull.convex_hull.difference(shapely.union_all(bites))
    solid = max(shapely.get_parts(solid), key=shapely.area)
    rings = [tuple(ring.coords[:-1]) for ring in (solid.exterior, *solid.interiors)]
    edges = Flat(rings[0], tuple(rings[1:])).edges()
    for bottom, top in ((5.0, 8.0), (10.0, 30.0), (20.0, 21.0), (30.0, 58.0)):
        band = shapely.box(-10, bottom, 110, top)
        covered = [
            (part.bounds[0], part.bounds[2])
            for part in shapely.get_parts(band.difference(solid))
            if part.area > 0
        ]
        shadow = shapely.union_all([shapely.box(a, 0, b, 1) for a, b in covered])
        free = shapely.get_parts(shapely.box(-10, 0, 110, 1).difference(shadow))
        wanted = sorted((each.bounds[0], each.bounds[2]) for each in free if each.area > 1e-6)
        found = [each for each in clear_stretches(edges, bottom, top) if each[1] - each[0] > 1e-6]
        ends = [end for stretch in _joined(found) for end in stretch]
        assert ends == pytest.approx([end for stretch in wanted for end in stretch], abs=1e-5)


def _joined(stretches: list[tuple[float, float]]) -> list[tuple[float, float]]:
    joined: list[tuple[float, float]] = []
    for start, end in stretches:
        if joined and start - joined[-1][1] < 1e-6:
            joined[-1] = (joined[-1][0], end)
        else:
            joined.append((start, end))
    return joined
