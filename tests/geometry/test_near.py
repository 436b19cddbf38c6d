"""What the tree finds is what looking at every pair finds."""

from __future__ import annotations

import random
from itertools import combinations, product

import pytest

from kerfolio.geometry.boolean import distance
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.near import Lines, alike, line_distance, meeting, meetings, stand_apart
from kerfolio.geometry.shapes import circle, rectangle


def scattered(count: int, seed: int = 7) -> list[Contour]:
    chance = random.Random(seed)
    made = []
    for index in range(count):
        x, y, size = (chance.uniform(0, 100), chance.uniform(0, 100), chance.uniform(2, 12))
        made.append(circle((x, y), size) if index % 2 else rectangle(x, y, x + size, y + 3))
    return made


def boxes_meet(one: Contour, other: Contour, margin: float = 0.0) -> bool:
    a, b = bounds(one), bounds(other)
    return (
        a.x0 <= b.x1 + margin
        and b.x0 <= a.x1 + margin
        and a.y0 <= b.y1 + margin
        and b.y0 <= a.y1 + margin
    )


def test_meeting_boxes() -> None:
    ones, others = scattered(60), scattered(40, 8)
    pairs = product(range(60), range(40))
    assert meeting(ones, others) == [(a, b) for a, b in pairs if boxes_meet(ones[a], others[b])]
    assert meeting([], others) == meeting(ones, []) == []


def test_a_touch_is_a_meeting() -> None:
    ones = [rectangle(0, 0, 10, 10)]
    assert meeting(ones, [rectangle(10, 10, 20, 20)]) == [(0, 0)]
    assert meeting(ones, [rectangle(10.001, 0, 20, 10)]) == []


def test_counting_stops_beyond_the_most() -> None:
    given = scattered(80)
    every = sum(boxes_meet(a, b) for a, b in combinations(given, 2))
    assert every > 20
    assert meetings(given, 10_000) == every
    assert 20 < meetings(given, 20) <= every
    assert meetings([], 5) == 0


def test_standing_apart() -> None:
    given = scattered(40)
    wanted = tuple(not any(boxes_meet(a, b, 0.04) for b in given if b is not a) for a in given)
    assert any(wanted)
    assert not all(wanted)
    assert stand_apart(given, margin=0.02) == wanted
    assert stand_apart(given, standing=40) == (True,) * 40
    assert stand_apart(()) == ()


def test_alike() -> None:
    patterns = [circle((10, 10), 6), circle((30, 10), 6)]
    given = [circle((10.001, 10), 6), circle((30, 10), 7), rectangle(27, 7, 33, 13)]
    assert alike(given, patterns, 0.005) == (True, False, True)


def test_lines_near_a_point() -> None:
    given = scattered(50)
    lines = Lines(given)
    for spot in ((20.0, 30.0), (55.0, 60.0), (90.0, 10.0)):
        (found,) = lines.near([spot], [15.0])
        wanted = [(line_distance(spot, each), index) for index, each in enumerate(given)]
        assert found == sorted(each for each in wanted if each[0] <= 15.0)
    assert Lines([]).near([(0, 0)], [5.0]) == [[]]
    assert lines.near([], []) == []


def test_each_point_near_lines_has_its_own_reach() -> None:
    lines = Lines([circle((0, 0), 10), circle((30, 0), 10)])
    near = lines.near([(7, 0), (7, 0), (22, 0)], [1.0, 5.0, 50.0])
    assert [[number for _, number in each] for each in near] == [[], [0], [1, 0]]


def test_the_distance_of_a_line() -> None:
    assert line_distance((5, 4), rectangle(0, 0, 10, 10)) == pytest.approx(4)
    assert distance(rectangle(0, 0, 10, 10), rectangle(13, 0, 20, 10)) == pytest.approx(3)
