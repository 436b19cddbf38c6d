"""The lists against worked figures: inches, lumber, prices, and hardware without steps."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from textwrap import dedent

import pytest

from kerfolio.model.stock import SheetStock
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.lists import board_list, hardware_list, parts_list, sheet_list
from tests.plans import RACK, proved, settled_at, small_settled

INCHES = """\
    plan: Inch shelf
    version: 1.0.0
    summary: A shelf in inches.
    units: in
    sheets: {ply: {stock: plywood-23-32, size: 96 x 48, published-for: 23/32 in}}
    boards: {post: {stock: fir-2x4, length: 8 ft, count: 2}}
    parts:
      shelf: {sheet: ply, count: 3, outline: {rectangle: [36, 11-1/4 in]}}
    hardware: [{item: bolt-m6x40, count: 4, for: posts}, {item: bolt-m6x40, count: 2}]
    releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def drawn(text: str) -> SettledPlan:
    settled = proved(dedent(text)).drawn
    assert settled is not None
    return settled


def test_an_inch_plan_lists_millimetres() -> None:
    (row,) = parts_list(drawn(INCHES))
    # 1 in = 25.4 mm exactly (international inch, 1959).
    assert (row.width, row.height) == (pytest.approx(914.4), pytest.approx(285.75))
    assert row.thickness == 18.26, "23/32 in is 18.25625 mm; a calliper reads hundredths"
    assert row.count == 3
    assert row.labels == ("shelf.1", "shelf.2", "shelf.3")
    assert row.marks == ("A1", "A2", "A3")
    assert row.area == pytest.approx(914.4 * 285.75)


def test_lumber_is_as_large_as_dressed_not_as_called() -> None:
    (row,) = board_list(drawn(INCHES))
    # A 2 x 4 is dressed to 1-1/2 x 3-1/2 in, 38 x 89 mm (American Softwood Lumber Standard PS 20,
    # dry sizes; from memory).
    assert (row.thickness, row.width) == (pytest.approx(38.1), pytest.approx(88.9))
    assert (row.length, row.count) == (pytest.approx(2438.4), 2)
    # Coast Douglas fir, specific gravity 0.48: 1.12 x 1000 x 0.48 = 538 kg/m3 at 12 % moisture
    # (Wood Handbook FPL-GTR-190, Table 12-1 and chapter 4).
    (board,) = drawn(INCHES).boards
    assert board.mass == pytest.approx(0.0381 * 0.0889 * 2.4384 * 538)


def test_a_plan_without_steps_lists_its_own_hardware() -> None:
    (row,) = hardware_list(drawn(INCHES))
    assert (row.item, row.count) == ("bolt-m6x40", 6)


def test_hardware_of_several_steps_is_added_up() -> None:
    text = RACK.replace(
        "    text: Push the tabs home.",
        "    text: Push the tabs home.\n"
        "  - {title: Tighten, hardware: {bolt-m6x40: 1, screw-4x40: 8}, text: All of them.}",
    ).replace(
        "hardware: [{item: bolt-m6x40, count: 2, for: sides}]",
        "hardware: [{item: screw-4x40, count: 8}, {item: bolt-m6x40, count: 3, for: sides}]",
    )
    rows = hardware_list(drawn(text))
    # In the order of their first use.
    assert [(row.item, row.count) for row in rows] == [("bolt-m6x40", 3), ("screw-4x40", 8)]


def test_the_size_listed_is_that_of_the_piece_with_its_tabs() -> None:
    rail = next(row for row in parts_list(settled_at(18.2)) if row.part == "rail")
    assert (rail.width, rail.height) == (pytest.approx(300 + 2 * 18.2), pytest.approx(120))


def priced(*prices: tuple[tuple[float, float], Decimal]) -> SettledPlan:
    settled = small_settled()
    sheets = tuple(replace(each, stock=_priced(each.stock, prices)) for each in settled.sheets)
    return replace(settled, sheets=sheets)


def _priced(
    stock: SheetStock, prices: tuple[tuple[tuple[float, float], Decimal], ...]
) -> SheetStock:
    return replace(stock, prices=prices)


def test_the_price_is_that_of_the_sheet_s_size() -> None:
    settled = priced(((1525.0, 1525.0), Decimal("61.00")), ((2440.0, 1220.0), Decimal("92.50")))
    (row,) = sheet_list(settled, {("ply", (2440.0, 1220.0)): 2})
    assert row.price == Decimal("92.50")


def test_a_size_without_a_price_has_none() -> None:
    (row,) = sheet_list(
        priced(((1525.0, 1525.0), Decimal("61.00"))), {("ply", (2440.0, 1220.0)): 1}
    )
    assert row.price is None
