"""Notches and tabs found in outlines, and outlines without them."""

from __future__ import annotations

import pytest

from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import area
from kerfolio.geometry.shapes import circle, polygon, rectangle
from kerfolio.geometry.stretch import in_a_row, steps, stretches, without
from kerfolio.geometry.transform import mirrored_x, turned

PLATE = polygon(
    [
        *((0, 0, 0), (100, 0, 0), (100, 20, 0), (118, 20, 0), (118, 60, 0), (100, 60, 0)),
        *((100, 100, 0), (60, 100, 0), (60, 70, 0), (42, 70, 0), (42, 100, 0), (0, 100, 0)),
    ]
)


def measured(outline: Contour) -> list[tuple[bool, float, float, bool]]:
    return [
        (each.tab, round(each.width, 6), round(each.depth, 6), each.level)
        for each in stretches(outline)
    ]


def test_a_tab_and_a_notch_are_measured() -> None:
    """The shoulder between them stands out, too, but its sides are not level."""
    assert measured(PLATE) == [
        (True, 40.0, 18.0, True),
        (True, 40.0, 35.0, False),
        (False, 18.0, 30.0, True),
    ]


@pytest.mark.parametrize("turn", [0.0, 12.5, 90.0, 200.0])
def test_turned_and_mirrored_outlines_hold_the_same(turn: float) -> None:
    expected = sorted(measured(PLATE))
    assert sorted(measured(turned(PLATE, turn))) == expected
    assert sorted(measured(mirrored_x(turned(PLATE, turn), 7.0))) == expected


def test_without_them_the_plate_is_square() -> None:
    found = [each for each in stretches(PLATE) if each.level]
    assert without(PLATE, found) == tidy(rectangle(0, 0, 100, 100))
    (tab, notch) = found
    assert area(without(PLATE, [tab])) == pytest.approx(100 * 100 - 18 * 30)
    assert area(without(PLATE, [notch])) == pytest.approx(100 * 100 + 18 * 40)


def test_plain_shapes_hold_none() -> None:
    for shape in (rectangle(0, 0, 9, 9), rectangle(0, 0, 90, 90, 10), circle((0, 0), 50)):
        assert stretches(shape) == ()


def test_fingers_share_walls_and_many_are_left_out_at_once() -> None:
    teeth: list[tuple[float, float, float]] = []
    for x in range(0, 300 * 40, 40):
        teeth += [(x, 50, 0.0), (x, 0, 0.0), (x + 18, 0, 0.0), (x + 18, 50, 0.0)]
    frame = [(12_100.0, 50.0, 0.0), (12_100.0, -90.0, 0.0), (-50.0, -90.0, 0.0), (-50.0, 50.0, 0.0)]
    comb = Contour((*teeth, *frame))
    found = stretches(comb)
    assert len(in_a_row(found)) == len(found)
    notches = [each for each in found if not each.tab]
    assert (len(notches), len(in_a_row(notches))) == (300, 0)
    assert without(comb, notches) == tidy(rectangle(-50, -90, 12100, 50))


def test_steps_are_the_sides_of_corners_that_stand_back() -> None:
    corner = polygon([(0, 0, 0), (118, 0, 0), (118, 60, 0), (100, 60, 0), (100, 90, 0), (0, 90, 0)])
    assert sorted(size for size, _ in steps(corner, ())) == pytest.approx([18, 30])
    assert [*steps(PLATE, stretches(PLATE))] == []
