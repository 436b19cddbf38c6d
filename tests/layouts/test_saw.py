from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle, polygon, rectangle
from kerfolio.geometry.transform import turned
from kerfolio.layouts.saw import SAW, saw_faults, saw_plan
from kerfolio.layouts.saw_blank import blank_of
from kerfolio.layouts.saw_sheet import CROSS, RIP, SHEET, TRIM, Called, Saw, SawSheet, Workpiece
from kerfolio.settling.settled import SettledPart, SettledPlan
from tests.layouts.plans import part_of, part_set, plan_of, sheet_of

TINY = 1e-6


def follow(sheet: SawSheet) -> None:
    """Saw the sheet as it is written; assert that every cut can be made and gives what it says."""
    width, height = sheet.size
    bench = {Workpiece(x=0.0, y=0.0, width=width, height=height)}
    kerf = sheet.saw.kerf
    for number, cut in enumerate(sheet.cuts, 1):
        assert cut.number == number
        assert cut.workpiece in bench  # the sheet, or what an earlier cut left
        bench.remove(cut.workpiece)
        work, kept = cut.workpiece, cut.kept
        rest: Workpiece | None = None
        low, lower = ("y", "height") if cut.edge == "lower" else ("x", "width")
        assert cut.kind in (TRIM, RIP if cut.edge == "lower" else CROSS)
        start, length = getattr(work, low), getattr(work, lower)
        if cut.kind == TRIM:
            assert getattr(kept, low) == pytest.approx(start + cut.setting)
            assert getattr(kept, lower) == pytest.approx(length - cut.setting)
        else:
            assert getattr(kept, low) == start
            assert getattr(kept, lower) == pytest.approx(cut.setting)
            beyond = length - cut.setting - kerf
            if beyond > 1e-5:  # what lies beyond the kerf is there for a later cut
                spot = round(start + cut.setting + kerf, 6)
                rest = replace(work, **{low: spot, lower: round(beyond, 6)})
        other, across = ("x", "width") if cut.edge == "lower" else ("y", "height")
        for each in (kept, rest):  # from edge to edge
            if each is not None:
                assert getattr(each, other) == getattr(work, other)
                assert getattr(each, across) == getattr(work, across)
                bench.add(each)
    assert {blank.at for blank in sheet.blanks} <= bench
    assert len({blank.at for blank in sheet.blanks}) == len(sheet.blanks)


def holds(sheets: tuple[SawSheet, ...], settled: SettledPlan, saw: Saw = SAW) -> None:
    """Every piece has one blank of its size, the grain is kept, edges are trimmed."""
    parts = {part.name: part for part in settled.parts}
    labels = sorted(piece.label for part in settled.parts for piece in part.pieces)
    assert sorted(blank.piece for sheet in sheets for blank in sheet.blanks) == labels
    assert [sheet.number for sheet in sheets] == list(range(1, len(sheets) + 1))
    for sheet in sheets:
        follow(sheet)
        material = settled.sheet(sheet.sheet)
        for each in sheet.blanks:
            part, at = parts[each.part], each.at
            assert part.sheet == sheet.sheet
            box = bounds(turned(part.plain, each.blank.turn))
            left, bottom, right, top = each.blank.grown
            assert at.width == pytest.approx(box.width + left + right, abs=1e-4)
            assert at.height == pytest.approx(box.height + bottom + top, abs=1e-4)
            assert each.blank.corner == pytest.approx((box.x0 - left, box.y0 - bottom), abs=1e-4)
            if material.stock.grain and part.grain != "any":
                assert each.blank.turn == (0.0 if part.grain == "along x" else 90.0)
            assert min(at.x, at.y) >= saw.trim - TINY
            assert at.x + at.width <= sheet.size[0] - saw.trim + TINY
            assert at.y + at.height <= sheet.size[1] - saw.trim + TINY


def boards_of(*sizes: tuple[float, float, int, str]) -> SettledPlan:
    parts = [
        part_of(f"{'abcdefgh'[n]}", rectangle(0, 0, w, h), [str(i) for i in range(count)], grain)
        for n, (w, h, count, grain) in enumerate(sizes)
    ]
    return plan_of(parts)


def test_a_small_plan_is_cut_in_the_order_of_the_shop() -> None:
    (sheet,) = saw_plan(boards_of((600, 400, 4, "along x"), (600, 200, 2, "along x")))
    told = [(cut.kind, cut.of, cut.setting, cut.edge) for cut in sheet.cuts]
    assert told[:2] == [
        (TRIM, Called(SHEET), 5.0, "lower"),
        (TRIM, Called(SHEET), 5.0, "left"),
    ]
    kinds = [cut.kind for cut in sheet.cuts[2:]]
    assert kinds == sorted(kinds, key=[RIP, CROSS].index)  # all strips, then all lengths
    rips = [cut for cut in sheet.cuts if cut.kind == RIP]
    crosses = [cut for cut in sheet.cuts if cut.kind == CROSS]
    assert {cut.setting for cut in crosses} == {600.0}
    assert sheet.settings == 1 + len({cut.setting for cut in rips}) + 1


def test_sheets_without_trim_spare_the_last_cut() -> None:
    exact = boards_of((1218.4, 608.4, 4, "along x"))  # two by two with a kerf of 3.2 between
    saw = Saw(kerf=3.2, trim=0.0)
    (sheet,) = saw_plan(exact, saw)
    assert [cut.kind for cut in sheet.cuts] == [RIP, CROSS, CROSS]
    assert sheet.offcuts == ()
    assert len(saw_plan(exact, Saw(kerf=3.3, trim=0.0))) > 1
    holds((sheet,), exact, saw)


def test_the_grain_forbids_a_turn_and_fibreboard_allows_it() -> None:
    upright = part_of("tall", rectangle(0, 0, 300, 2000), grain="along y")
    (sheet,) = saw_plan(plan_of([upright]))
    assert [blank.blank.turn for blank in sheet.blanks] == [90.0]
    across = part_of("tall", rectangle(0, 0, 300, 2000), grain="along x")
    assert saw_plan(plan_of([across])) == ()
    (fault,) = saw_faults(plan_of([across]))
    assert fault.message == "`tall` is too large to saw from its sheet"
    plain = plan_of([across], [sheet_of(grain=False)])
    assert len(saw_plan(plain)) == 1
    assert saw_faults(plain) == ()


def test_shaped_parts_get_an_allowance_where_no_straight_edge_is() -> None:
    disc = blank_of(part_of("disc", circle((50, 50), 100)), 0.0, 10.0, (2000, 1000))
    assert disc is not None
    assert (disc.size, disc.corner) == ((120, 120), (-10, -10))
    arch = polygon([(0, 0, 0), (300, 0, 0), (300, 200, 60), (150, 260, 0), (0, 200, 60)])
    upright = blank_of(part_of("arch", arch), 0.0, 10.0, (2000, 1000))
    assert upright is not None
    assert upright.grown == (0.0, 0.0, 0.0, 10.0)
    lying = blank_of(part_of("arch", arch), 90.0, 10.0, (2000, 1000))
    assert lying is not None
    assert lying.grown == (10.0, 0.0, 0.0, 0.0)  # turned counter-clockwise, its top is at the left
    assert lying.size == (270.0, 300.0)


def test_an_allowance_gives_way_before_a_part_is_refused() -> None:
    disc = part_of("disc", circle((0, 0), 995))
    blank = blank_of(disc, 0.0, 10.0, (2000, 1000))
    assert blank is not None
    assert blank.grown == pytest.approx((10.0, 2.5, 10.0, 2.5), abs=0.01)
    assert blank_of(disc, 0.0, 10.0, (2000, 990)) is None


def test_a_trim_narrower_than_the_kerf_is_refused() -> None:
    with pytest.raises(ValueError, match="narrower than the kerf"):
        Saw(kerf=3.2, trim=2.0)


@pytest.mark.parametrize("number", [1, 4])
def test_part_sets_are_sawn_from_edge_to_edge(number: int) -> None:
    _, settled = part_set(number)
    sheets = saw_plan(settled)
    holds(sheets, settled)
    assert sheets == saw_plan(settled)


def test_every_material_has_its_own_sheets() -> None:
    parts = [
        part_of("a", rectangle(0, 0, 700, 300), ("1", "2")),
        part_of("b", rectangle(0, 0, 500, 300), sheet="thin"),
    ]
    settled = plan_of(parts, [sheet_of(), sheet_of("thin", (1525.0, 1525.0))])
    sheets = saw_plan(settled)
    assert [(each.number, each.sheet) for each in sheets] == [(1, "ply"), (2, "thin")]
    holds(sheets, settled)


SIZES = st.tuples(
    st.floats(40, 2000), st.floats(40, 1200), st.integers(1, 3), st.sampled_from(["along x", "any"])
)


@settings(max_examples=15, deadline=None)
@given(
    st.lists(SIZES, min_size=1, max_size=5),
    st.sampled_from([Saw(), Saw(kerf=2.2, trim=0.0), Saw(kerf=0.0, trim=0.0)]),
)
def test_any_plan_is_cut_edge_to_edge_with_its_kerf(
    sizes: list[tuple[float, float, int, str]], saw: Saw
) -> None:
    settled = boards_of(*sizes)
    holds(saw_plan(settled, saw), settled, saw)


def test_marks_follow_the_cuts() -> None:
    settled = boards_of((600, 400, 4, "along x"))
    (sheet,) = saw_plan(settled)
    assert [blank.piece for blank in sheet.blanks] == ["a.0", "a.1", "a.2", "a.3"]
    given_marks = [cut.gives.name for cut in sheet.cuts if cut.kind == CROSS]
    assert sorted(given_marks) == ["a.0", "a.1", "a.2", "a.3"]


def test_pieces_without_a_part_are_no_matter() -> None:
    empty: list[SettledPart] = []
    assert saw_plan(replace(plan_of(empty), parts=())) == ()
