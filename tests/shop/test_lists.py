"""The lists, and money in decimals."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kerfolio.settling.settled import SettledOffcut
from kerfolio.shop.lists import (
    board_list,
    boards_to_buy,
    cost_list,
    hardware_list,
    known_total,
    parts_list,
    sheet_list,
)
from kerfolio.shop.rows import HardwareRow, SheetRow
from tests.plans import RACK, proved, small_settled

WHOLE = (2440.0, 1220.0)


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
    assert row.inch_twin == "Bolt 1/4-20 × 1 1/2 in"


def test_sheets_that_are_not_used_are_not_listed() -> None:
    assert [row.count for row in sheet_list(small_settled(), {("ply", WHOLE): 2})] == [2]
    assert sheet_list(small_settled(), {}) == ()


def test_every_size_is_listed_with_its_own_price_and_offcuts_are_free() -> None:
    settled = small_settled()
    half, offcut = (1220.0, 1220.0), (600.0, 400.0)
    prices = ((WHOLE, Decimal("92.50")), (half, Decimal("51.00")))
    sheet = replace(
        settled.sheets[0],
        stock=replace(settled.sheets[0].stock, prices=prices),
        also=(half,),
        offcuts=(SettledOffcut(size=offcut, count=1), SettledOffcut(size=half, count=1)),
    )
    counts = {("ply", offcut): 1, ("ply", half): 3, ("ply", WHOLE): 2}
    rows = sheet_list(replace(settled, sheets=(sheet,)), counts)
    # One of the three half sheets is at hand.
    assert [(row.width, row.height, row.count, row.price) for row in rows] == [
        (*WHOLE, 2, Decimal("92.50")),
        (*half, 2, Decimal("51.00")),
        (*half, 1, Decimal(0)),
        (*offcut, 1, Decimal(0)),
    ]
    assert [row.title.endswith("offcut at hand") for row in rows] == [False, False, True, True]


def test_boards_weigh_by_their_length() -> None:
    text = RACK + "boards: {leg: {stock: pine-45x45, length: 600, count: 4}}\n"
    drawn = proved(text).drawn
    assert drawn is not None
    (row,) = board_list(drawn)
    assert (row.length, row.count, row.thickness) == (600, 4, 45)
    (board,) = drawn.boards
    # Volume times density, by hand: 0.6 m x 0.045 m x 0.045 m.
    assert board.mass == pytest.approx(0.6 * 0.045 * 0.045 * board.stock.density)


def test_boards_are_paid_for_as_they_are_bought() -> None:
    text = RACK + "boards: {leg: {stock: pine-45x45, length: 600, count: 4}}\n"
    drawn = proved(text).drawn
    assert drawn is not None
    board = drawn.boards[0]
    stock = replace(board.stock, price_per_metre=Decimal("2.15"))
    priced = replace(drawn, boards=(replace(board, stock=stock),))
    rows = boards_to_buy(priced, {stock.name: [(2400.0, 1), (900.0, 2)]})
    assert [(row.length, row.count, row.price) for row in rows] == [
        (2400.0, 1, Decimal("5.16")),
        (900.0, 2, Decimal("1.94")),
    ]
    costs = cost_list([], rows, [])
    assert [row.what for row in costs] == [
        f"{stock.title}, 2400 mm (94 1/2 in)",
        f"{stock.title}, 900 mm (35 7/16 in)",
    ]
    assert known_total(costs) == Decimal("9.04")


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
