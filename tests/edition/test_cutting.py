"""Cutting time in words, and the figures an edition holds."""

from __future__ import annotations

import math
from dataclasses import replace
from decimal import Decimal

import pytest

from kerfolio.edition.cutting import CuttingWords, cutting_of
from tests.edition.carrying import carrying
from tests.paper.editions import stool


def words() -> CuttingWords:
    found = cutting_of(carrying())
    assert found is not None
    return found


def test_a_sheet_without_settings_has_no_time_and_the_total_says_so() -> None:
    first, second = words().sheets
    assert len(first.cutters) == 1
    assert first.minutes == pytest.approx(carrying().times[0].minutes)
    assert (second.minutes, second.cutters) == (None, ())
    assert words().minutes == pytest.approx(first.minutes)
    assert not words().whole
    assert words().known == "1 of 2 sheets"


def test_what_no_cutter_enters_is_named_with_its_reason() -> None:
    remark = words().remark
    assert remark.startswith("Reckoned for a small-shop router")
    assert remark.endswith(
        "Not in it either: holes of the shelf (too narrow for the cutters stated)."
    )


def test_the_work_of_the_cutters_is_that_of_all_sheets() -> None:
    (work,) = words().work
    # Three outlines, each 3 mm outside, cut in two passes of straight sides and quarter circles.
    outlines = (2 * (800 + 300), 2 * (800 + 100), 2 * (60 + 700))
    rounds = 3 * 2 * math.pi * 3
    assert work.metres == pytest.approx(2 * (sum(outlines) + rounds) / 1000, rel=1e-3)
    assert work.cuts == 3
    assert work.metres == pytest.approx(words().metres)


def test_assumptions_come_once_the_settings_first() -> None:
    facts = words().assumptions
    assert len(facts) == len(set(facts))
    assert facts[0].label == "Birch plywood 18 mm, through"
    assert any(each.label == "Rapid moves" for each in facts)


def test_no_settings_no_time() -> None:
    assert cutting_of(stool()) is None
    assert cutting_of(replace(carrying(), times=())) is None


def test_machine_time_has_no_price_while_a_sheet_has_no_time() -> None:
    one = carrying().copies[0]
    assert "Machine time" in one.unpriced
    assert [each.copies for each in carrying().copies] == [1, 2, 3, 4, 5, 6]
    assert {row.what: row.total for row in carrying().costs}["Oil"] == Decimal("3.50")
    assert carrying().costs == one.lines


def test_one_copy_takes_the_sheets_of_the_layout() -> None:
    assert carrying().copies[0].sheets == len(carrying().layout.sheets)


def test_the_weight_is_that_of_panels_and_hardware() -> None:
    edition = carrying()
    parts = sum(row.mass * row.count for row in edition.parts)
    assert edition.weight.total == pytest.approx(parts)
