"""The checker finds what is planted, and says it in these words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.basis.place import Place
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.check import layout_faults
from kerfolio.layouts.layout import Layout, Placement, SheetLayout
from kerfolio.settling.settled import SettledPlan
from tests.layouts.plans import part_of, plan_of, sheet_of, two_boards, window_frame


def at(piece: str, x: float, y: float, turn: float = 0.0, part: str = "") -> Placement:
    return Placement(piece=piece, part=part or piece.split(".")[0], x=x, y=y, turn=turn)


GOOD = (at("board.a", 10, 10), at("board.b", 418, 10), at("disc", 10, 318))


def sheet_with(*placements: Placement, number: int = 1, sheet: str = "ply") -> SheetLayout:
    return SheetLayout(number=number, sheet=sheet, size=(2440.0, 1220.0), placements=placements)


def layout_of(*sheets: SheetLayout) -> Layout:
    return Layout(sheets=sheets, engine="by hand", computed_from="")


def faults(*placements: Placement, settled: SettledPlan | None = None) -> list[str]:
    found = layout_faults(layout_of(sheet_with(*placements)), settled or two_boards())
    assert all(each.place == Place("plans/trial-plan/layout.json") for each in found)
    return [shown(each) for each in found]


def shown(finding: Finding) -> str:
    return f"{finding.message} [{finding.rule}]"


def test_a_layout_that_keeps_every_distance_to_the_hair_proves() -> None:
    assert faults(*GOOD) == []


@pytest.mark.parametrize(
    ("placements", "fault"),
    [
        (
            (GOOD[0], at("board.b", 405, 10), GOOD[2]),
            "`board.a` and `board.b` overlap [layout-overlap]",
        ),
        (
            (GOOD[0], at("board.b", 417.9, 10), GOOD[2]),
            "`board.a` and `board.b` are 7.9 mm apart [layout-gap]",
        ),
        (
            (GOOD[0], at("board.b", 410, 10), GOOD[2]),
            "`board.a` and `board.b` are 0 mm apart [layout-gap]",
        ),
        (
            (GOOD[0], GOOD[1], at("disc", 200, 100)),
            "`board.a` and `disc` overlap [layout-overlap]",
        ),
        ((*GOOD[:2], at("disc", 9.9, 318)), "`disc` lies in the sheet's margin [layout-margin]"),
        ((*GOOD[:2], at("disc", 2400, 318)), "`disc` is off its sheet [layout-margin]"),
        (
            (GOOD[0], at("board.b", 900, 10, 90), GOOD[2]),
            "`board.b` lies across the grain [layout-grain]",
        ),
        (GOOD[:2], "`disc` lies on no sheet [layout-piece]"),
        (
            (*GOOD, at("disc", 800, 800)),
            "`disc` lies on the sheets 2 times [layout-piece]",
        ),
        (
            (*GOOD, at("disk", 800, 800, part="disc")),
            "the plan has no piece `disk` [layout-piece]",
        ),
        (
            (*GOOD[:2], at("disc", 1500, 318, part="board")),
            "`disc` is not of the part `board` [layout-piece]",
        ),
    ],
)
def test_planted_faults_are_found(placements: tuple[Placement, ...], fault: str) -> None:
    assert faults(*placements) == [fault]


def test_a_hundredth_of_a_millimetre_is_let_pass() -> None:
    assert faults(GOOD[0], at("board.b", 417.991, 10), GOOD[2]) == []
    assert faults(GOOD[0], at("board.b", 417.98, 10), GOOD[2]) != []


def test_a_piece_may_lie_at_any_angle_when_it_has_no_grain() -> None:
    leg = part_of("leg", rectangle(0, 0, 700, 60))
    settled = plan_of((leg,))
    assert faults(at("leg", 500, 200, 33.0), settled=settled) == []


def test_upside_down_keeps_the_grain() -> None:
    assert faults(GOOD[0], at("board.b", 418 + 400, 10 + 300, 180), GOOD[2]) == []
    assert faults(GOOD[0], at("board.b", 418 + 400, 10 + 300, -180), GOOD[2]) == []


def test_a_piece_in_a_window_is_not_on_its_frame() -> None:
    plate = part_of("plate", rectangle(0, 0, 300, 300))
    settled = plan_of((part_of("frame", window_frame()), plate))
    assert faults(at("frame", 0, 0), at("plate", 100, 100), settled=settled) == []
    assert faults(at("frame", 0, 0), at("plate", 60, 100), settled=settled) == [
        "`frame` and `plate` overlap [layout-overlap]"
    ]


def test_sheets_are_checked_too() -> None:
    settled = plan_of(two_boards().parts, (sheet_of(), sheet_of("thin")))
    layout = layout_of(
        sheet_with(*GOOD[:2], number=2),
        sheet_with(GOOD[2], number=2, sheet="thin"),
        sheet_with(number=3, sheet="plu"),
        replace(sheet_with(number=4), size=(2500.0, 1250.0)),
    )
    assert [shown(each) for each in layout_faults(layout, settled)] == [
        "sheet 2 stands where sheet 1 should [layout-sheet]",
        "`disc` lies on `thin` [layout-sheet]",
        "the plan has no sheet `plu` [layout-sheet]",
        "sheet 4 has not the size of `ply` [layout-sheet]",
    ]


def test_advice_names_what_to_keep() -> None:
    found = layout_faults(
        layout_of(sheet_with(GOOD[0], at("board.b", 415, 10), GOOD[2])), two_boards()
    )
    assert found[0].advice == (
        "Keep 8 mm between pieces. Mend it, or run `kerfolio layout` to compute it anew."
    )
