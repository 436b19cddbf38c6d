"""How many sheets several copies take."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.bound import fewest_sheets
from kerfolio.layouts.copies import copied, groups_of, sheets_by_stack
from kerfolio.layouts.count import proven_minimal
from kerfolio.layouts.effort import Effort
from kerfolio.layouts.engine import Bed, Blank, Job, Packed, Spot, Stack
from kerfolio.layouts.layout import CopiesCount
from kerfolio.layouts.own_placer import OwnPlacer
from kerfolio.layouts.plan_layout import lay_out
from tests.layouts.plans import part_of, plan_of


def job_of(count: int, width: float, height: float, moves: int = 2_000_000) -> Job:
    shape = Flat(((0, 0), (width, 0), (width, height), (0, height)))
    blanks = [Blank(label=f"{n}", shape=shape, turns=(0.0, 90.0)) for n in range(count)]
    bed = Bed(stacks=(Stack(size=(2440.0, 1220.0)),), margin=10.0, gap=8.0)
    return Job(bed=bed, blanks=tuple(blanks), moves=moves)


def table(job: Job, most: int, one: Packed | None = None) -> list[tuple[int, ...]]:
    """Return the sheets of each stack that 1, 2 and more copies take, as far as there are any."""
    several = replace(job, blanks=copied(job.blanks, most))
    groups = groups_of(several, OwnPlacer(), one)[1:]
    return [sheets_by_stack(several, each) for each in groups if each]


def test_six_boards_a_sheet_shared_by_copies_of_two() -> None:
    # Six boards of 700 x 500 fill a sheet: three copies of two, worked by hand.
    assert table(job_of(2, 700, 500), 6) == [(1,), (1,), (1,), (2,), (2,), (2,)]


def test_copies_that_share_no_sheet() -> None:
    assert table(job_of(1, 1500, 800), 4) == [(1,), (2,), (3,), (4,)]


def test_copies_take_the_cheaper_size_of_sheet() -> None:
    # A half sheet holds three boards of 700 x 500 (two, and one beside them); a whole one six.
    whole, half = Stack(size=(2440.0, 1220.0), worth=3.0), Stack(size=(1220.0, 1220.0), worth=1.5)
    job = job_of(3, 700, 500)
    bed = Bed(stacks=(whole, half), margin=10.0, gap=8.0)
    # 700 and 500 stand side by side on 1200, a third lies above them: worked out on paper.
    lying = ((10.0, 10.0, 0.0), (1218.0, 10.0, 90.0), (10.0, 518.0, 0.0))
    spots = (Spot(label=f"1/{n}", sheet=0, x=x, y=y, turn=a) for n, (x, y, a) in enumerate(lying))
    one = Packed(spots=tuple(spots), engine="by hand", sheets=(1,))
    found = table(replace(job, bed=bed), 3, one)
    assert [3.0 * a + 1.5 * b for a, b in found] == [1.5, 3.0, 4.5]


def test_offcuts_are_used_once_and_then_sheets_are_bought() -> None:
    whole = Stack(size=(2440.0, 1220.0))
    offcut = Stack(size=(1600.0, 900.0), count=1, worth=0.0)
    bed = Bed(stacks=(whole, offcut), margin=10.0, gap=8.0)
    job = replace(job_of(1, 1500, 800), bed=bed)
    assert table(job, 4) == [(0, 1), (1, 1), (2, 1), (3, 1)]


def test_the_table_ends_where_offcuts_are_used_up_and_nothing_bought_will_do() -> None:
    small, offcut = Stack(size=(1000.0, 600.0)), Stack(size=(1600.0, 900.0), count=2, worth=0.0)
    job = replace(job_of(1, 1500, 800), bed=Bed(stacks=(small, offcut), margin=10.0, gap=8.0))
    assert table(job, 6) == [(0, 1), (0, 2)]


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


def test_pieces_of_copies_keep_their_names_and_their_twins_together() -> None:
    job = job_of(1, 700, 500)
    one = (replace(job.blanks[0], label="side", twin="side"),)
    two = (*one, replace(job.blanks[0], label="rail", twin="rail"))
    assert [(each.label, each.copy) for each in copied(two, 2)] == [
        ("1/side", 1),
        ("2/side", 2),
        ("1/rail", 1),
        ("2/rail", 2),
    ]
