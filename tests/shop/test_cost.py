"""What copies cost, in decimals."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from kerfolio.model.consumable import Consumable
from kerfolio.model.workshop import Identity
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.cost import CopiesCost, copies_costs
from kerfolio.shop.lists import boards_to_buy
from kerfolio.shop.rows import BoardRow
from tests.plans import RACK, proved

IDENTITY = Identity(title="W", maker="M")


def priced() -> SettledPlan:
    text = RACK + "boards: {leg: {stock: pine-45x45, length: 600, count: 4}}\n"
    drawn = proved(text).drawn
    assert drawn is not None
    sheet = drawn.sheets[0]
    prices = (((2440.0, 1220.0), Decimal("92.50")),)
    stock = replace(
        drawn.stock,
        boards=tuple(replace(each, price_per_metre=None) for each in drawn.stock.boards),
        hardware=tuple(replace(each, price=Decimal("0.21")) for each in drawn.stock.hardware),
    )
    board = replace(
        drawn.boards[0], stock=replace(drawn.boards[0].stock, price_per_metre=Decimal("2.10"))
    )
    sheets = (replace(sheet, stock=replace(sheet.stock, prices=prices)),)
    return replace(drawn, stock=stock, sheets=sheets, boards=(board,))


def half(copies: int) -> dict[tuple[str, tuple[float, float]], int]:
    """Two copies lie on one sheet."""
    return {("ply", (2440.0, 1220.0)): (copies + 1) // 2}


def whole_boards(copies: int) -> tuple[BoardRow, ...]:
    """Every copy takes a board of 2.7 m."""
    return boards_to_buy(priced(), {"pine-45x45": [(2700.0, copies)]})


def costs(identity: Identity = IDENTITY, minutes: float | None = None) -> tuple[CopiesCost, ...]:
    return copies_costs(priced(), identity, half, whole_boards, minutes)


def test_sheets_are_counted_for_the_copies_together() -> None:
    found = costs()
    assert [each.copies for each in found] == [1, 2, 3, 4, 5, 6]
    assert [each.lines[0].count for each in found] == [1, 1, 2, 2, 3, 3]
    # One sheet, a board of 2.7 m at 2.10 a metre, two bolts.
    assert found[0].total == Decimal("92.50") + Decimal("5.67") + Decimal("0.42")
    assert found[1].total == Decimal("92.50") + 2 * Decimal("5.67") + Decimal("0.84")
    assert found[1].each == Decimal("52.34")


def test_a_copy_never_costs_more_for_making_two_of_each_sheet() -> None:
    each = [one.each for one in costs()]
    assert each[1] < each[0]
    assert each[3] == each[1]


def test_what_is_used_up_counts_by_copy_sheet_and_hour() -> None:
    identity = replace(
        IDENTITY,
        consumables=(
            Consumable(what="Oil", price=Decimal("3.50")),
            Consumable(what="Tape", price=Decimal("0.40"), each="sheet"),
            Consumable(what="Power", price=Decimal("1.20"), each="hour"),
        ),
        machine_hour=Decimal(12),
    )
    three = costs(identity, 20.0)[2]
    rows = {row.what: row.total for row in three.lines[-4:]}
    assert rows == {
        "Oil": Decimal("10.50"),
        "Tape": Decimal("0.80"),
        "Power, 1 h": Decimal("1.20"),
        "Machine time, 1 h": Decimal("12.00"),
    }
    assert three.unpriced == ()


@pytest.mark.parametrize(
    ("minutes", "shown", "total"),
    [
        # 25 minutes at 18 an hour are 7.50; 0.42 h of them would be 7.56.
        (25.0, "0.42", "7.50"),
        (1.0, "0.02", "0.30"),
        (0.2, "0", "0.06"),
    ],
)
def test_machine_time_is_priced_before_it_is_rounded(
    minutes: float, shown: str, total: str
) -> None:
    found = costs(replace(IDENTITY, machine_hour=Decimal(18)), minutes)[0]
    assert (found.lines[-1].what, found.lines[-1].total) == (
        f"Machine time, {shown} h",
        Decimal(total),
    )


def test_an_hour_without_a_time_has_no_price() -> None:
    found = costs(replace(IDENTITY, machine_hour=Decimal(12)))[0]
    assert found.unpriced == ("Machine time",)
    assert found.total == costs()[0].total


def test_the_plan_adds_its_own_lines() -> None:
    settled = priced()
    plan = replace(settled.plan, consumables=(Consumable(what="Wax", price=Decimal(2)),))
    (one,) = copies_costs(replace(settled, plan=plan), IDENTITY, half, whole_boards, None, 1)
    assert one.lines[-1].what == "Wax"
    assert one.total == costs()[0].total + 2
