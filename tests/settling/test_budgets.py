"""Features and points beyond their budgets are told before any is made, in exact words."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis import budgets
from kerfolio.basis.budgets import Budget
from kerfolio.basis.finding import Finding
from kerfolio.settling import copies, part, settle
from kerfolio.settling.settle import settle as settled_plan
from kerfolio.settling.variant import drawn_variant
from tests.plans import RACK, workshop


def told(features: str, before: str = "") -> list[str]:
    """Return what settling says of the rack with these features on its side besides."""
    plan_text = RACK.replace("      bolt:", f"{features}\n      bolt:").replace(
        "sizes: {", f"sizes: {{{before}"
    )
    shop = workshop(plan_text)
    plan = shop.plans[0]
    variant = drawn_variant(plan, shop.stock)
    assert variant is not None
    _, findings = settled_plan(plan, shop.stock, variant)
    return [_words(each) for each in findings]


def _words(finding: Finding) -> str:
    return f"{finding.message} [{finding.rule}] {finding.subject} / {finding.advice}"


def narrowed(monkeypatch: pytest.MonkeyPatch, name: str, most: int) -> Budget:
    """Lower a budget wherever it is used."""
    budget: Budget = replace(getattr(budgets, name), most=most)
    for module in (copies, part, settle):
        if hasattr(module, name):
            monkeypatch.setattr(module, name, budget)
    return budget


def test_a_count_worked_out_from_sizes() -> None:
    row = "      row: {hole: {at: [50, 90], diameter: 6}, repeat: {count: n*n, step: [1, 0]}}"
    assert told(row, "n: 30000, ") == [
        "a repeat of 900000000 copies, at most 500 [too-many-copies] side.row / Lower its `count`."
    ]


def test_fingers_are_counted_before_they_are_made() -> None:
    row = "      comb: {fingers: {edge: top, count: n*n, takes: ply}}"
    assert told(row, "n: 30000, ") == [
        "a row of 900000000 fingers and gaps, at most 300 [too-many-fingers] side.comb / "
        "Lower its `count`: a finger is as wide as the sheet is thick, or wider."
    ]


def test_pieces_of_a_plan(monkeypatch: pytest.MonkeyPatch) -> None:
    narrowed(monkeypatch, "PIECES", 3)  # two sides and a rail
    assert told("") == []
    narrowed(monkeypatch, "PIECES", 2)

    def never(*_: object) -> None:
        raise AssertionError("a part was made before the pieces were counted")

    monkeypatch.setattr(settle, "settled_part", never)
    assert told("") == [
        "a plan of 3 pieces, at most 2 [too-many-pieces]  / "
        "Lower a `count`, or divide the plan: a batch cuts several copies of one plan."
    ]


@pytest.mark.parametrize(
    ("features", "count"),
    [
        ("      a: {hole: {at: [[50, 90], [60, 90], [70, 90]], diameter: 6}}", 3),
        ("      a: {hole: {at: [50, 90], diameter: 6}, repeat: {count: 3, step: [9, 0]}}", 3),
        (
            "      a: {hole: {at: [[50, 90], [50, 80]], diameter: 6}, mirror: {x: 100}, "
            "repeat: {count: 3, step: [9, 0]}}",
            12,
        ),
        ("      a: {notch: {edge: top, at: [60, 90, 120], width: 8, depth: 8}}", 3),
        ("      a: {window: {at: [60, 90], circle: 9}}", 1),
    ],
)
def test_features_of_a_part(features: str, count: int, monkeypatch: pytest.MonkeyPatch) -> None:
    there = 4  # the rack's own on its side
    narrowed(monkeypatch, "FEATURES", there + count)
    assert told(features) == []
    budget = narrowed(monkeypatch, "FEATURES", there + count - 1)
    assert told(features) == [
        f"a part of {there + count} features, at most {budget.most} [too-many-features] side / "
        "Make fewer of them, or divide the part."
    ]


def test_features_of_a_plan(monkeypatch: pytest.MonkeyPatch) -> None:
    narrowed(monkeypatch, "PLAN_FEATURES", 7)
    assert told("") == []
    narrowed(monkeypatch, "PLAN_FEATURES", 6)
    assert told("") == [
        "a plan of 7 features, at most 6 [too-many-features]  / "
        "Make fewer of them, or divide the plan."
    ]


def test_points_of_an_outline(monkeypatch: pytest.MonkeyPatch) -> None:
    narrowed(monkeypatch, "OUTLINE", 6)  # the side's: two straight corners, two round ones
    assert told("") == []
    narrowed(monkeypatch, "OUTLINE", 5)
    assert told("") == [
        "an outline of 6 points, at most 5 [too-many-points] side / "
        "Draw its curves with arcs, or with fewer points."
    ]


def test_points_of_a_part(monkeypatch: pytest.MonkeyPatch) -> None:
    row = "      a: {window: {at: [50, 90], rectangle: [6, 6]}, repeat: {count: 5, step: [9, 0]}}"
    there = 12  # slot 4, bolt 2, foot 4, lettering 2
    narrowed(monkeypatch, "POINTS", there + 20)
    assert told(row) == []
    narrowed(monkeypatch, "POINTS", there + 19)
    assert told(row) == [
        "a part of 32 points, at most 31 [too-many-points] side.mark / "
        "Draw its curves with arcs, or with fewer points."
    ]
