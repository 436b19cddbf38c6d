"""How many sheets several copies take."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.bound import fewest_sheets
from kerfolio.layouts.copies import sheets_for_copies
from kerfolio.layouts.count import proven_minimal
from kerfolio.layouts.effort import Effort
from kerfolio.layouts.engine import Bed, Blank, Job, Stack
from kerfolio.layouts.layout import CopiesCount
from kerfolio.layouts.plan_layout import lay_out
from tests.layouts.plans import part_of, plan_of


def job_of(count: int, width: float, height: float, moves: int = 2_000_000) -> Job:
    shape = Flat(((0, 0), (width, 0), (width, height), (0, height)))
    blanks = [Blank(label=f"{n}", shape=shape, turns=(0.0, 90.0)) for n in range(count)]
    bed = Bed(stacks=(Stack(size=(2440.0, 1220.0)),), margin=10.0, gap=8.0)
    return Job(bed=bed, blanks=tuple(blanks), moves=moves)


def test_six_boards_a_sheet_shared_by_copies_of_two() -> None:
    # Six boards of 700 x 500 fill a sheet: three copies of two, worked by hand.
    assert sheets_for_copies(job_of(2, 700, 500), (1,), 6) == ((1,), (1,), (1,), (2,), (2,), (2,))


def test_copies_that_share_no_sheet() -> None:
    assert sheets_for_copies(job_of(1, 1500, 800), (1,), 4) == ((1,), (2,), (3,), (4,))


def test_without_work_copies_are_laid_out_apart() -> None:
    assert sheets_for_copies(job_of(2, 700, 500, moves=0), (1,), 3) == ((1,), (2,), (3,))


def test_copies_take_the_cheaper_size_of_sheet() -> None:
    # A half sheet holds three boards of 700 x 500 (two, and one beside them); a whole one six.
    whole, half = Stack(size=(2440.0, 1220.0), worth=3.0), Stack(size=(1220.0, 1220.0), worth=1.5)
    job = job_of(3, 700, 500)
    bed = Bed(stacks=(whole, half), margin=10.0, gap=8.0)
    table = sheets_for_copies(replace(job, bed=bed), (0, 1), 3)
    assert [3.0 * a + 1.5 * b for a, b in table] == [1.5, 3.0, 4.5]


def test_offcuts_are_used_once_and_then_sheets_are_bought() -> None:
    whole = Stack(size=(2440.0, 1220.0))
    offcut = Stack(size=(1600.0, 900.0), count=1, worth=0.0)
    bed = Bed(stacks=(whole, offcut), margin=10.0, gap=8.0)
    for moves in (0, 2_000_000):
        job = replace(job_of(1, 1500, 800, moves), bed=bed)
        assert sheets_for_copies(job, (0, 1), 4) == ((0, 1), (1, 1), (2, 1), (3, 1))


def test_the_table_ends_where_offcuts_are_used_up_and_nothing_bought_will_do() -> None:
    small, offcut = Stack(size=(1000.0, 600.0)), Stack(size=(1600.0, 900.0), count=2, worth=0.0)
    job = replace(job_of(1, 1500, 800), bed=Bed(stacks=(small, offcut), margin=10.0, gap=8.0))
    assert sheets_for_copies(job, (0, 1), 6) == ((0, 1), (0, 2))


def test_a_layout_carries_its_bound_and_its_copies() -> None:
    settled = plan_of((part_of("board", rectangle(0, 0, 700, 500), ("a", "b")),))
    layout, _ = lay_out([settled], Effort(moves=1_000_000, seconds=1.0))
    assert layout is not None
    assert layout.bounds == (("ply", 1),)
    assert layout.copies == (
        CopiesCount(sheet="ply", size=(2440.0, 1220.0), counts=(1, 1, 1, 2, 2, 2)),
    )
    assert proven_minimal(layout) == {"ply": True}
    assert fewest_sheets(job_of(12, 700, 500)) == 2
