"""What a toolpath program should find, worked by hand from a plan's text."""

from __future__ import annotations

from math import pi

import pytest

from kerfolio.basis.figures import cleared_text, run_text
from kerfolio.basis.reader import INCHES, METRIC
from kerfolio.drawing.cut_sheet import cut_sheet
from kerfolio.drawing.path_count import drawn_counts
from kerfolio.edition.path_words import path_lines
from kerfolio.edition.sheet_facts import Ranged, SheetFacts
from kerfolio.layouts.layout import Placement, SheetLayout
from kerfolio.settling.settled import Operation
from tests.plans import proved

PLATE = """\
plan: Plates
version: 1.0.0
summary: Two plates to count.
sheets: {ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.8 mm, fit: 0.1}}
parts:
  plate:
    sheet: ply
    pieces: [left, right]
    outline: {rectangle: [300, 200]}
    features:
      holes: {hole: {at: [[30, 30], [60, 30]], diameter: 8}}
      wide: {hole: {at: [30, 150], diameter: 12}}
      bed: {pocket: {at: [200, 100], circle: 60, depth: 6}}
      hall: {window: {at: [100, 100], circle: 50}}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""


def test_contours_lengths_pockets_and_holes_are_those_of_two_plates() -> None:
    drawn = proved(PLATE).drawn
    assert drawn is not None
    placements = tuple(
        Placement(piece=f"plate.{name}", part="plate", x=x, y=20.0, turn=turn)
        for name, x, turn in (("left", 20.0, 0.0), ("right", 600.0, 90.0))
    )
    sheet = SheetLayout(number=1, sheet="ply", size=(2440.0, 1220.0), placements=placements)
    pocket, hole, opening, outline = drawn_counts(cut_sheet(drawn, sheet))
    assert [each.operation for each in (pocket, hole, opening, outline)] == [
        *(Operation.POCKET, Operation.HOLE, Operation.OPENING, Operation.OUTLINE)
    ]
    assert (pocket.layer, pocket.contours) == ("pocket_6.0mm", 2)
    assert pocket.area == pytest.approx(2 * pi * 30**2)
    assert hole.diameters == ((8.0, 4), (12.0, 2))
    assert hole.length == pytest.approx(2 * pi * (2 * 8 + 12))
    assert opening.length == pytest.approx(2 * pi * 50)
    assert (outline.contours, outline.length) == (2, pytest.approx(2000))
    facts = SheetFacts.of(drawn, sheet)
    assert path_lines(Ranged(here=facts, ends=(facts,)), METRIC) == (
        "pocket_6.0mm: 2 contours, 0.38 m, 56.5 cm²",
        "hole_through: 6 contours, 0.18 m, 4 × ø 8 mm and 2 × ø 12 mm",
        "opening_through: 2 contours, 0.31 m",
        "outline_through: 2 contours, 2.00 m",
    )


def test_lengths_and_areas_are_told_in_the_first_unit() -> None:
    assert (run_text(8419.9, METRIC), run_text(304.8 * 27.64, INCHES)) == ("8.42 m", "27.6 ft")
    assert (cleared_text(1260.0, METRIC), cleared_text(645.16 * 2, INCHES)) == (
        "12.6 cm²",
        "2.0 in²",
    )
