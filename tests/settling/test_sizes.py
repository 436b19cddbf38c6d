"""Sizes: worked out in the order they need each other, and what only follows stays silent."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.model.plan import Plan, Size
from kerfolio.model.statement import Amount
from kerfolio.proving.prove import prove_plan
from kerfolio.settling.settle import settle
from kerfolio.settling.sizes import scope_of
from tests.plans import RACK, workshop
from tests.settling.panels import stated, variant


def with_sizes(units: str = "mm", **sizes: str) -> Plan:
    plan, _ = stated("h: {hole: {at: [9, 9], diameter: 8}}")
    made = tuple(Size(name=name, amount=Amount(text)) for name, text in sizes.items())
    return replace(plan, units=units, sizes=made)


def values(plan: Plan) -> dict[str, float]:
    _, sized, findings = scope_of(plan, {"ply": 17.8, "thin": 6.4}, {"ply": 0.1, "thin": 0.1})
    assert findings == ()
    return {name: each.value for name, each in sized}


def test_sizes_may_stand_in_any_order() -> None:
    found = values(with_sizes(c="a + b", a="b * 2", b="thickness(ply)"))
    assert found == {"c": pytest.approx(53.4), "a": pytest.approx(35.6), "b": 17.8}
    assert list(found) == ["c", "a", "b"]


def test_sizes_of_an_inch_plan_are_worked_out_in_inches_and_kept_in_mm() -> None:
    found = values(with_sizes("in", t="thickness(ply)", f="fit(thin)", q="25.4 mm + 1"))
    # 1 in = 25.4 mm exactly (international inch, 1959).
    assert found["t"] == pytest.approx(17.8)
    assert found["f"] == pytest.approx(0.1)
    assert found["q"] == pytest.approx(2 * 25.4)


def test_a_long_chain_is_worked_out_once_each() -> None:
    # Fibonacci numbers: with every size worked out anew this would take 2^80 steps.
    chain = {f"s{n}": f"s{n - 1} + s{n - 2}" for n in range(80, 1, -1)}
    assert values(with_sizes(**chain, s1="1", s0="0"))["s80"] == pytest.approx(23416728348467685)


def test_a_deep_chain_does_not_exhaust_the_stack() -> None:
    chain = {f"s{n}": f"s{n - 1} + 1" for n in range(3000, 0, -1)}
    assert values(with_sizes(**chain, s0="0"))["s3000"] == 3000


def test_a_ring_of_sizes_is_told_once_with_its_chain() -> None:
    plan = with_sizes(a="b", b="c + 1", c="a", d="a + 1", e="2")
    _, sized, findings = scope_of(plan, {}, {})
    assert [name for name, _ in sized] == ["e"]
    told = [each for each in findings if each.rule == "size-cycle"]
    assert len(told) == 1
    assert told[0].message in {
        f"sizes go in a circle: {chain}"
        for chain in ("a -> b -> c -> a", "b -> c -> a -> b", "c -> a -> b -> c")
    }


def test_what_follows_from_a_wrong_sheet_is_not_told_too() -> None:
    found = workshop()
    plan = found.plans[0]
    sheets = tuple(replace(use, stock=replace(use.stock, name="birch")) for use in plan.sheets)
    findings = prove_plan(replace(plan, sheets=sheets), found.stock).findings
    assert [each.rule for each in findings] == ["unknown-stock"]


def test_what_follows_from_a_wrong_size_is_not_told_too() -> None:
    found = workshop(RACK.replace("w: 300", "w: 300/(h - 120)"))
    findings = prove_plan(found.plans[0], found.stock).findings
    assert [(each.rule, each.message) for each in findings] == [
        ("no-value", "`300/(h - 120)`: division by zero")
    ]


def test_settling_is_a_pure_function() -> None:
    plan, stock = stated("s: {slot: {at: [200, 150], length: 60, takes: ply}}")
    assert settle(plan, stock, variant(17.6)) == settle(plan, stock, variant(17.6))
    assert settle(plan, stock, variant(17.6)) != settle(plan, stock, variant(17.7))
