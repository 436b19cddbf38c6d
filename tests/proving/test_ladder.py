"""Thicknesses published for against those sold.

18 mm birch plywood measures 17.1 to 18.1 mm (birch plywood datasheet, limits of thickness).
"""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Severity
from tests.proving.two_panels import plan_text, told, weighs

RULES = ("thin-sheet-uncovered", "thick-sheet-uncovered", "outside-stock")
SLOT = "slot: {slot: {at: [200, 150], length: 60, angle: 90, takes: ply}}"


def published(ladder: str, more: str = "") -> str:
    return plan_text(SLOT, ladder=ladder).replace("fit: 0.1}", f"fit: 0.1{more}}}")


@pytest.mark.parametrize(
    ("ladder", "rule", "messages"),
    [
        ("17.2 to 18.2 by 0.2", "thin-sheet-uncovered", []),
        ("17.6 to 18.2 by 0.2", "thin-sheet-uncovered", []),  # half a millimetre more
        (
            "17.7 to 18.3 by 0.2",
            "thin-sheet-uncovered",
            ["a sheet of 17.1 mm has 0.6 mm more play than the fit"],
        ),
        ("17.2 to 18.0 by 0.2", "thick-sheet-uncovered", []),  # 18 + 2 x 0.1 admits 18.1
        (
            "17.2 to 17.8 by 0.2",
            "thick-sheet-uncovered",
            ["a sheet of 18.1 mm goes into no published slot"],
        ),
        ("15", "outside-stock", ["`ply` is published up to 15 mm"]),
        ("20 to 21 by 0.5", "outside-stock", ["`ply` is published from 20 mm"]),
    ],
)
def test_readers_at_both_ends(ladder: str, rule: str, messages: list[str]) -> None:
    assert told(published(ladder), rule) == messages


def test_a_sheet_drawn_for_a_thickness_that_is_not_sold_is_told() -> None:
    text = published("17.2 to 18.2 by 0.2", ", drawn-for: 19")
    assert told(text, "outside-stock") == ["`ply` is drawn for 19 mm"]
    assert weighs(text, "outside-stock") == {Severity.WARNING}


def test_sheets_that_nothing_takes_are_left_alone() -> None:
    assert told(plan_text(ladder="17.8").replace("fit: 0.1", "fit: 0"), *RULES) == []
