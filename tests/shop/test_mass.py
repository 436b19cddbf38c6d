"""Weight and centre of gravity, by hand."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.settling.settled import SettledPart
from kerfolio.shop.mass import part_mass, weight_of
from tests.plans import RACK, proved, small_settled

PLATE = """\
plan: Plate
version: 1.0.0
summary: A plate to weigh.
units: mm
sheets: {ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 18}}
parts:
  plate:
    sheet: ply
    outline: {rectangle: [200, 100]}
    features: {FEATURES}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def plate(features: str) -> SettledPart:
    drawn = proved(PLATE.replace("FEATURES", features)).drawn
    assert drawn is not None
    return drawn.parts[0]


def test_a_plain_plate_hangs_in_its_middle() -> None:
    found = part_mass(plate("m: {engrave: {text: I, at: [20, 20], height: 8, depth: 0.5}}"))
    assert (found.x, found.y, found.z) == pytest.approx((100, 50, 9))
    assert found.mass == pytest.approx(0.2 * 0.1 * 0.018 * 685)


def test_a_window_moves_the_centre_away() -> None:
    found = part_mass(plate("w: {window: {at: [150, 50], rectangle: [60, 60]}}"))
    # Moments: (20000 x 100 - 3600 x 150) / 16400.
    assert found.x == pytest.approx((20_000 * 100 - 3600 * 150) / 16_400)
    assert found.y == pytest.approx(50)


def test_a_pocket_moves_it_away_and_down() -> None:
    found = part_mass(plate("p: {pocket: {at: [150, 50], rectangle: [60, 60], depth: 6}}"))
    whole, taken = 20_000 * 18, 3600 * 6
    assert found.x == pytest.approx((whole * 100 - taken * 150) / (whole - taken))
    assert found.z == pytest.approx((whole * 9 - taken * 15) / (whole - taken))
    assert found.mass == pytest.approx((whole - taken) * 685e-9)


def test_where_pockets_overlap_the_deeper_one_counts() -> None:
    found = part_mass(
        plate(
            "p: {pocket: {at: [150, 50], rectangle: [60, 60], depth: 6}}, "
            "q: {pocket: {at: [150, 50], rectangle: [20, 20], depth: 10}}"
        )
    )
    whole, wide, deep = 20_000 * 18, 3600 * 6, 400 * 4
    left = whole - wide - deep
    assert found.mass == pytest.approx(left * 685e-9)
    assert found.z == pytest.approx((whole * 9 - wide * 15 - deep * 10) / left)


@settings(deadline=None, max_examples=15)
@given(st.integers(40, 160), st.integers(25, 75), st.integers(1, 12))
def test_the_mass_is_that_of_the_settled_part(x: int, y: int, depth: int) -> None:
    part = plate(f"p: {{pocket: {{at: [{x}, {y}], rectangle: [40, 20], depth: {depth}}}}}")
    found = part_mass(part)
    assert found.mass == part.mass
    assert 0 < found.z < 9
    assert (found.x - 100) * (x - 100) <= 1e-9


def test_a_copy_weighs_its_pieces_boards_and_hardware() -> None:
    text = RACK + "boards: {leg: {stock: pine-45x45, length: 600, count: 4}}\n"
    drawn = proved(text).drawn
    assert drawn is not None
    weight = weight_of(drawn)
    bolt = drawn.stock.item("bolt-m6x40")
    assert bolt is not None
    assert weight.panels == pytest.approx(sum(p.mass * len(p.pieces) for p in drawn.parts))
    assert weight.boards == pytest.approx(4 * drawn.boards[0].mass)
    assert weight.hardware == pytest.approx(2 * (bolt.mass or 0))
    assert weight.unweighed == (() if bolt.mass is not None else ("bolt-m6x40",))
    assert weight.total == pytest.approx(weight.panels + weight.boards + weight.hardware)


def test_without_boards_it_still_adds_up() -> None:
    assert weight_of(small_settled()).boards == 0
