"""Pieces of one copy are kept together where it costs nothing, and only there."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.batch import several
from kerfolio.layouts.check import layout_faults
from kerfolio.layouts.copies import SHARE
from kerfolio.layouts.effort import Effort
from kerfolio.layouts.engine import Bed, Blank, Job, Packed, Stack
from kerfolio.layouts.own_placer import OwnPlacer
from kerfolio.layouts.plan_layout import lay_out
from kerfolio.layouts.together import KeptTogether
from kerfolio.layouts.verify import packing_faults
from tests.layouts.plans import part_of, plan_of

SHEET = Stack(size=(1000.0, 600.0))
PLACER = KeptTogether(OwnPlacer())


def blanks(copy: int, **sizes: tuple[float, float]) -> list[Blank]:
    return [
        Blank(
            label=f"{copy}/{name}",
            shape=Flat(((0, 0), (w, 0), (w, h), (0, h))),
            turns=(0.0, 90.0),
            copy=copy,
            twin=name[0],
        )
        for name, (w, h) in sizes.items()
    ]


def job_of(copies: int, *stacks: Stack, **sizes: tuple[float, float]) -> Job:
    every = [blank for copy in range(1, copies + 1) for blank in blanks(copy, **sizes)]
    bed = Bed(stacks=stacks or (SHEET,), margin=10.0, gap=8.0)
    return Job(bed=bed, blanks=tuple(every), moves=300_000)


def copies_by_sheet(packed: Packed) -> list[set[str]]:
    return [
        {spot.label.split("/")[0] for spot in packed.spots if spot.sheet == sheet}
        for sheet in range(len(packed.sheets))
    ]


def test_copies_that_fill_a_sheet_each_share_none() -> None:
    job = job_of(3, a=(900, 400), b=(400, 100), c=(400, 100))
    packed = PLACER.pack(job)
    assert packing_faults(job, packed) == ()
    assert copies_by_sheet(packed) == [{"1"}, {"2"}, {"3"}]


def test_copies_share_a_sheet_where_that_saves_one() -> None:
    # Two boards of 480 x 560 lie side by side on 980 x 580: two copies of one board a sheet.
    job = job_of(4, a=(480, 560))
    packed = PLACER.pack(job)
    assert packing_faults(job, packed) == ()
    assert copies_by_sheet(packed) == [{"1", "2"}, {"3", "4"}]


def test_the_worth_of_many_sheets_is_not_rounded_away() -> None:
    # Two sheets of 1.48644864 are worth 2.972897 together, and 2.972898 rounded one by one.
    square = Stack(size=(1219.2, 1219.2), worth=1.48644864)
    packed = PLACER.pack(job_of(4, square, a=(900, 900)))
    assert copies_by_sheet(packed) == [{"1"}, {"2"}, {"3"}, {"4"}]


def test_an_odd_copy_lies_alone() -> None:
    packed = PLACER.pack(job_of(5, a=(480, 560)))
    assert sorted(map(len, copies_by_sheet(packed))) == [1, 2, 2]


def test_a_copy_is_split_only_where_sheets_are_saved() -> None:
    # Three boards of 480 x 560 take two sheets alone, and six take three.
    job = job_of(2, a1=(480, 560), a2=(480, 560), a3=(480, 560))
    packed = PLACER.pack(job)
    assert packing_faults(job, packed) == ()
    assert len(packed.sheets) == 3
    assert Counter(map(len, copies_by_sheet(packed))) == {1: 2, 2: 1}


def test_offcuts_are_not_used_twice() -> None:
    offcut = Stack(size=(520.0, 600.0), count=1, worth=0.0)
    job = job_of(2, SHEET, offcut, a=(495, 560))
    packed = PLACER.pack(job)
    assert packing_faults(job, packed) == ()
    assert sorted(packed.sheets) == [0, 1]


def test_a_piece_without_a_sheet_is_told() -> None:
    assert set(PLACER.pack(job_of(2, a=(1200, 10))).too_large) == {"1/a", "2/a"}


def test_a_single_copy_is_packed_as_ever() -> None:
    job = job_of(1, a=(900, 400), b=(400, 100))
    assert PLACER.pack(job) == OwnPlacer().pack(job)


_SIDE = st.floats(60, 560)


@settings(max_examples=15, deadline=None)
@given(st.integers(2, 4), st.lists(st.tuples(_SIDE, _SIDE), min_size=1, max_size=4))
def test_it_never_costs_a_sheet(copies: int, sizes: list[tuple[float, float]]) -> None:
    """Against the same blanks packed anyhow, with as many moves."""
    job = job_of(copies, **{f"{'abcd'[n]}": size for n, size in enumerate(sizes)})
    packed = PLACER.pack(job)
    assert packing_faults(job, packed) == ()
    anyhow = OwnPlacer().pack(replace(job, moves=job.moves // SHARE))
    assert len(packed.sheets) <= len(anyhow.sheets)


def test_a_batch_is_a_plan_that_proves() -> None:
    board = part_of("board", rectangle(0, 0, 700, 500), ("a", "b"))
    settled = several(plan_of((board,)), 4)
    assert [piece.label for piece in settled.parts[0].pieces][:3] == [
        "1/board.a",
        "1/board.b",
        "2/board.a",
    ]
    assert settled.plan.title.endswith(", 4 copies")
    effort = Effort(moves=600_000, seconds=1.0)
    layout, findings = lay_out([settled], effort, PLACER, copies=1)
    assert findings == ()
    assert layout is not None
    assert layout_faults(layout, settled) == ()
    assert [each.counts for each in layout.copies] == [(2,)]
    # Six boards fill a sheet, so the eighth board makes a second: three copies and one, or two
    # and two; the smaller groups are taken.
    shared = [{p.piece[0] for p in sheet.placements} for sheet in layout.sheets]
    assert shared == [{"1", "2"}, {"3", "4"}]
    assert layout_faults(replace(layout, sheets=layout.sheets[:1]), settled)


_BOARD = st.tuples(st.floats(200, 1300), st.floats(150, 1100))


@settings(max_examples=10, deadline=None)
@given(st.lists(_BOARD, min_size=1, max_size=3), st.integers(2, 5))
def test_a_batch_takes_the_sheets_that_the_table_tells(
    sizes: list[tuple[float, float]], copies: int
) -> None:
    parts = [
        part_of(f"board-{n}", rectangle(0, 0, *size), ("a", "b")[: 1 + n % 2])
        for n, size in enumerate(sizes)
    ]
    effort = Effort(moves=200_000, seconds=1.0)
    plan = plan_of(tuple(parts))
    layout, _ = lay_out([plan], effort)
    assert layout is not None
    (table,) = layout.copies
    engine = KeptTogether(OwnPlacer(), layout)
    batch, _ = lay_out([several(plan, copies)], effort, engine, copies=1)
    assert batch is not None
    assert len(batch.sheets) == table.counts[copies - 1]
    counts = (0, *table.counts)
    for n in range(1, len(counts)):  # never more than fewer copies apart
        assert all(counts[n] <= counts[k] + counts[n - k] for k in range(1, n))
