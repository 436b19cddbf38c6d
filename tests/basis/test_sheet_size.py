"""Sheets are told by the unit they are sold in."""

from __future__ import annotations

from kerfolio.basis.reader import INCHES, METRIC, Reader
from kerfolio.basis.sheet_size import sheet_pair, sheet_sides, sheet_text, sizes_as_sold

EIGHT_BY_FOUR = (2438.4, 1219.2)


def test_a_sheet_sold_by_the_inch_is_exact_in_both() -> None:
    assert sheet_text(EIGHT_BY_FOUR, INCHES) == "96 × 48 in (2438.4 × 1219.2 mm)"


def test_a_sheet_sold_by_the_millimetre_is_no_96_and_a_sixteenth() -> None:
    assert sheet_pair((2440, 1220), METRIC) == ("2440 × 1220 mm", "about 96 × 48 in")
    assert sheet_pair((1525, 1525), INCHES) == ("about 60 × 60 in", "1525 × 1525 mm")


def test_sides_by_themselves_are_told_as_the_sheet_is() -> None:
    assert sheet_sides(EIGHT_BY_FOUR, METRIC) == ("2438.4 mm (96 in)", "1219.2 mm (48 in)")
    assert sheet_sides((2440, 1220), METRIC) == ("2440 mm (about 96 in)", "1220 mm (about 48 in)")
    assert sheet_sides((1525, 1525), INCHES)[0] == "about 60 in (1525 mm)"
    # a side that is whole in both belongs to the sheet whose other side is not
    assert sheet_sides((1270, 1220), METRIC) == ("1270 mm (about 50 in)", "1220 mm (about 48 in)")


def test_lists_of_what_is_sold_keep_its_unit() -> None:
    sizes = [EIGHT_BY_FOUR, (3048.0, 1219.2), (2440.0, 1220.0)]
    for first in ("mm", "in"):
        assert sizes_as_sold(sizes, Reader(unit=first)) == "96 × 48, 120 × 48 in, 2440 × 1220 mm"
    assert sizes_as_sold([(1828.8,), (2438.4,)], METRIC) == "72, 96 in"
    assert sizes_as_sold([(1270.0, 1270.0)], INCHES) == "50 × 50 in", "whole in both"
    assert sizes_as_sold([(1270.0, 1270.0)], METRIC) == "1270 × 1270 mm"
