"""What stays below a recess; the bounds are common practice, no single source.

Two plies of thirteen in a sheet of 17.2 mm are 2 x 17.2 / 13 = 2.65 mm.
"""

from __future__ import annotations

import pytest

from tests.proving.two_panels import plan_text, remarks, told

RULE = "thin-floor"
LADDER = "17.2 to 18.6"


def recess(stated: str, stock: str = "birch-plywood-18", ladder: str = LADDER) -> str:
    return plan_text(f"r: {{{stated}}}", ladder=ladder).replace("birch-plywood-18", stock)


@pytest.mark.parametrize(
    ("stated", "messages"),
    [
        (
            "pocket: {at: [100, 100], circle: 40, depth: 16.9}",
            ["pocket `side.r` leaves 0.3 mm of a sheet of 17.2 mm"],
        ),
        (
            "groove: {from: [50, 150], to: [350, 150], width: 9, depth: 14.6}",
            ["groove `side.r` leaves 2.6 mm of a sheet of 17.2 mm (at 17.2mm)"],
        ),
        (
            "pocket: {at: [100, 100], length: 60, takes: ply, depth: 15}",
            ["pocket `side.r` leaves 2.2 mm of a sheet of 17.2 mm (at 17.2mm)"],
        ),
        (
            "hole: {at: [100, 100], diameter: 8, depth: 16}",
            ["hole `side.r` leaves 1.2 mm of a sheet of 17.2 mm"],
        ),
        (
            "hole: {at: [100, 100], diameter: 7, counterbore: {diameter: 14, depth: 12}}",
            ["the counterbore of `side.r` leaves 5.2 mm of a sheet of 17.2 mm (at 17.2mm)"],
        ),
        ("pocket: {at: [100, 100], circle: 40, depth: 14.5}", []),
        ("hole: {at: [100, 100], diameter: 8, depth: 14}", []),
        (
            "hole: {at: [100, 100], diameter: 7, counterbore: {diameter: 14, depth: 11.4}}",
            [],
        ),
        ("engrave: {text: A, at: [100, 100], height: 20, depth: 0.5}", []),
    ],
)
def test_what_leaves_little_at_the_thinnest_sheet_is_told(stated: str, messages: list[str]) -> None:
    assert told(recess(stated), RULE) == messages


def test_the_advice_counts_plies_where_they_are_known() -> None:
    (plies,) = remarks(recess("pocket: {at: [100, 100], circle: 40, depth: 16}"), RULE)
    assert plies.advice == "Keep 2.65 mm, 2 of its 13 plies: cut it 14.55 mm deep at most."
    board = recess("pocket: {at: [99, 99], circle: 40, depth: 15.5}", "mdf-18", "17.8 to 18.2")
    (whole,) = remarks(board, RULE)
    assert whole.advice == "Keep 3 mm, as common practice has it: cut it 14.8 mm deep at most."
    thin = recess("pocket: {at: [99, 99], circle: 40, depth: 1.6}", "mdf-3", "3")
    (half,) = remarks(thin, RULE)
    assert half.advice == "Keep 1.5 mm, half of the sheet: cut it 1.5 mm deep at most."


def test_what_goes_through_some_sheet_of_the_range_is_told_as_that_alone() -> None:
    text = recess("pocket: {at: [100, 100], circle: 40, depth: 17.5}")
    assert told(text, RULE, "deeper-than-sheet") == ["pocket `side.r` is 17.5 mm deep (at 17.2mm)"]


@pytest.mark.parametrize(
    ("depth", "thin", "through"),
    [
        (11, [], []),
        (15, ["the counterbore of `side.r` leaves 2.2 mm of a sheet of 17.2 mm"], []),
        (16.2, [], ["the counterbore of `side.r` leaves 1 mm of a sheet of 17.2 mm"]),
        (17, [], ["the counterbore of `side.r` leaves 0.2 mm of a sheet of 17.2 mm"]),
    ],
)
def test_a_head_on_one_ply_is_pulled_through(
    depth: float, thin: list[str], through: list[str]
) -> None:
    # A thirteenth of 17.2 mm is 1.32 mm.
    text = recess(
        f"hole: {{at: [100, 100], diameter: 7, counterbore: {{diameter: 14, depth: {depth}}}}}"
    )
    assert (told(text, RULE), told(text, "head-pulls-through")) == (thin, through)
