"""Inserts, and brackets of a maker's own stock: counted with their screws, and looked at.

An insert's hole is shop practice, from memory (9 mm for M6); a flat iron is in no library.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.finding import Finding
from kerfolio.model.stock import HardwareStock
from kerfolio.proving.prove import Proof, prove_plan
from kerfolio.shop.lists import hardware_counts
from tests.plans import workshop
from tests.proving.two_panels import plan_text

BRACKET = HardwareStock(name="flat-iron", title="Flat iron", kind="bracket")
LAPPED = "face: rail.holes, on: side.holes, looking: away"
HOLES = "holes: {hole: {at: [[60, 60], [100, 60]], %s}}"


def proof(rail: str, side: str, fastening: str) -> Proof:
    head = f"fastenings:\n  - {{{fastening}, joins: [rail.holes, side.holes]}}"
    text = plan_text(HOLES % side, HOLES % rail, LAPPED, head)
    found = workshop(text)
    hardware = (*found.stock.hardware, BRACKET)
    return prove_plan(found.plans[0], replace(found.stock, hardware=hardware))


def errors(found: Proof, *rules: str) -> list[Finding]:
    return [each for each in found.findings if each.rule in rules]


@pytest.mark.parametrize(
    ("hole", "told"),
    [("diameter: 9", []), ("pilot: insert-m6", []), ("diameter: 8", ["8 mm", "9 mm is usual"])],
)
def test_an_insert_wants_its_own_hole(hole: str, told: list[str]) -> None:
    found = proof("for: bolt-m6x30", hole, "bolt: bolt-m6x30, nut: insert-m6")
    assert dict(hardware_counts(found.plan)) == {"bolt-m6x30": 2, "insert-m6": 2}
    remarks = errors(found, "insert-unfit", "thread-mismatch", "nut-missing", "fastening-off-axis")
    assert [each.rule for each in remarks] == ["insert-unfit"] * bool(told)
    assert all(each in f"{remarks[0].message} {remarks[0].advice}" for each in told)


def test_a_bracket_counts_once_and_its_screws_for_each_hole() -> None:
    """Two holes in either piece: one bracket, four screws. 16 mm stay in a sheet of 17.8 mm."""
    holes = "pilot: screw-4x20"
    found = proof(holes, holes, "bracket: flat-iron, by: screw-3-5x16")
    assert dict(hardware_counts(found.plan)) == {"flat-iron": 1, "screw-3-5x16": 4}
    assert errors(found, "screw-out", "fastening-item", "fastening-kind") == []


def test_a_bracket_s_screws_stay_in_the_sheet() -> None:
    holes = "pilot: screw-4x20"
    found = proof(holes, holes, "bracket: flat-iron, by: screw-4x20")
    out = errors(found, "screw-out")
    assert {each.message for each in out} >= {"`screw-4x20` is 3.2 mm too long for `rail.holes.1`"}


def test_a_maker_is_told_which_brackets_there_are() -> None:
    holes = "pilot: screw-4x20"
    head = "fastenings:\n  - {bracket: corner-iron, joins: [rail.holes, side.holes]}"
    found = workshop(plan_text(HOLES % holes, HOLES % holes, LAPPED, head))
    (told,) = errors(prove_plan(found.plans[0], found.stock), "fastening-item")
    assert told.message == "no bracket `corner-iron`"
    assert told.advice == "Known here: `bracket-1-1-2in`, `bracket-40`, `bracket-60`."
