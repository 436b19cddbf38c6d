"""The lists, and money in decimals."""

from __future__ import annotations

from decimal import Decimal

import pytest

from generator.shop.lists import (
    board_list,
    cost_list,
    hardware_list,
    known_total,
    parts_list,
    sheet_list,
)
from generator.shop.rows import HardwareRow, SheetRow
from tests.plans import RACK, proved, small_settled


def test_the_parts_list_has_every_piece_once() -> None:
    rows = parts_list(small_settled())
    assert [(row.part, row.marks, row.count) for row in rows] == [
        ("side", ("A1", "A2"), 2),
        ("rail", ("B",), 1),
    ]
    assert (rows[0].width, rows[0].height) == (pytest.approx(200), pytest.approx(120))


def test_hardware_is_summed_over_the_steps() -> None:
    (row,) = hardware_list(small_settled())
    assert (row.item, row.count, row.purpose) == ("bolt-m6x40", 2, "sides")
    assert row.inch_twin == "Bolt 1/4-20 x 1 1/2 in"


def test_sheets_that_are_not_used_are_not_listed() -> None:
    assert [row.count for row in sheet_list(small_settled(), {"ply": 2})] == [2]
    assert sheet_list(small_settled(), {}) == ()


def test_boards_weigh_and_cost_by_their_length() -> None:
    text = RACK + "boards: {leg: {stock: pine-45x45, length: 600, count: 4}}\n"
    drawn = proved(text).drawn
    assert drawn is not None
    (row,) = board_list(drawn)
    assert (row.length, row.count, row.thickness) == (600, 4, 45)
    (board,) = drawn.boards
    # Volume times density, by hand: 0.6 m x 0.045 m x 0.045 m.
    assert board.mass == pytest.approx(0.6 * 0.045 * 0.045 * board.stock.density)


def test_money_is_exact_to_the_cent() -> None:
    sheet = SheetRow(
        sheet="ply", title="Ply", thickness=18, width=1, height=1, count=3, price=Decimal("0.10")
    )
    screw = HardwareRow(item="s", title="Screw", count=7, price=Decimal("0.065"))
    free = HardwareRow(item="n", title="Nut", count=1)
    costs = cost_list([sheet], [], [screw, free])
    # In binary floating point three dimes are 0.30000000000000004.
    assert [row.total for row in costs] == [Decimal("0.30"), Decimal("0.46"), None]
    assert known_total(costs) == Decimal("0.76")
