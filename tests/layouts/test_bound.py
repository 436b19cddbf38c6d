"""The bound on sheets, where it can be worked out by hand."""

from __future__ import annotations

import pytest

from kerfolio.geometry.canonical import region
from kerfolio.geometry.packing import flat_region
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.bound import fewest_lengths, fewest_sheets
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
