"""Balloons: none over another, over a leader or outside its room."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations
from math import cos, dist, radians, sin

import numpy as np
import pytest
import shapely

from kerfolio.drawing.balloons import Balloon, Wanted, balloons, crossing, radius_of
from kerfolio.drawing.exploded_view import exploded_view
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.packing import Flat
from tests.drawing.built import SAMPLE, areas_of, built, shown, views

ROOM = (0.0, 0.0, 120.0, 95.0)
NOTHING = Occupied([])


def square(x: float, y: float, size: float) -> Flat:
    return Flat(((x, y), (x + size, y), (x + size, y + size), (x, y + size)))


def assert_clear(found: Sequence[Balloon], room: tuple[float, float, float, float]) -> None:
    for each in found:
        (x, y), r = each.centre, each.radius
        assert room[0] - 1e-6 <= x - r
        assert x + r <= room[2] + 1e-6
        assert room[1] - 1e-6 <= y - r
        assert y + r <= room[3] + 1e-6
    for one, other in combinations(found, 2):
        assert dist(one.centre, other.centre) > one.radius + other.radius
        leader = shapely.LineString([other.anchor, other.centre])
        assert leader.distance(shapely.Point(one.centre)) > one.radius
        assert not crossing((one.anchor, one.centre), (other.anchor, other.centre))


def test_a_balloon_stands_outward_of_its_piece() -> None:
    taken = Occupied([square(40, 30, 40)])
    (one,) = balloons([Wanted("A", (75.0, 50.0))], ROOM, taken)
    assert one.centre[0] > 80
    assert taken.clearances([one.centre])[0] >= one.radius
    assert one.anchor == (75.0, 50.0)


def test_it_keeps_out_of_what_is_kept_clear() -> None:
    taken = Occupied([square(40, 30, 40)])
    shut = (80.5, 0.0, 120.0, 95.0)
    (one,) = balloons([Wanted("A", (75.0, 50.0))], ROOM, taken, [shut])
    assert one.centre[0] + one.radius <= 80.5


def test_a_long_mark_gets_a_larger_circle() -> None:
    assert radius_of("A") < radius_of("AB12")


@pytest.mark.parametrize("seed", range(6))
@pytest.mark.parametrize("count", [2, 8, 20])
def test_many_balloons_keep_clear_of_one_another(seed: int, count: int) -> None:
    rng = np.random.default_rng(seed)
    spots = rng.uniform((20, 20), (100, 75), (count, 2)).tolist()
    wanted = [Wanted(f"A{n}", (x, y)) for n, (x, y) in enumerate(spots, 1)]
    found = balloons(wanted, ROOM, Occupied([square(20, 20, 55)]))
    assert sorted(each.mark for each in found) == sorted(each.mark for each in wanted)
    assert_clear(found, ROOM)


def test_pieces_in_a_ring_have_their_balloons_round_it() -> None:
    spots = [(60 + 20 * cos(radians(t)), 47 + 20 * sin(radians(t))) for t in range(0, 360, 45)]
    found = balloons([Wanted(str(n), at) for n, at in enumerate(spots)], ROOM, NOTHING)
    assert all(dist(each.centre, (60, 47)) > 20 for each in found)
    assert_clear(found, ROOM)


def test_the_order_of_the_pieces_does_not_matter() -> None:
    spots = [(30.0, 40.0), (60.0, 50.0), (90.0, 30.0), (60.0, 20.0)]
    wanted = [Wanted(str(n), at) for n, at in enumerate(spots)]
    assert balloons(wanted, ROOM, NOTHING) == balloons(wanted[::-1], ROOM, NOTHING)


# ---------------------------------------------------------------- in the sample's pictures


def drawn_balloons(drawing: Drawing) -> list[tuple[Point, float]]:
    circles = [
        each
        for each in areas_of(drawing, {Ink.PAPER})
        if each.ink is Ink.INK and each.width == 0.35
    ]
    boxes = [bounds(each.contour) for each in circles]
    return [(box.centre, box.width / 2) for box in boxes]


def leaders(drawing: Drawing, found: list[tuple[Point, float]]) -> list[shapely.LineString]:
    """The straight lines that begin on a balloon's rim."""
    lines = []
    for each in drawing.items:
        if isinstance(each, Stroke) and not each.contour.closed and not each.dash:
            ends = [vertex[:2] for vertex in each.contour.vertices]
            start = ends[0]
            if len(ends) == 2 and any(
                abs(dist(start, centre) - radius) < 1e-6 for centre, radius in found
            ):
                lines.append(shapely.LineString(ends))
    return lines


def assert_drawn_clear(drawing: Drawing) -> None:
    found = drawn_balloons(drawing)
    lines = leaders(drawing, found)
    assert len(lines) == len(found)
    left, bottom, right, top = drawing.box
    for (x, y), radius in found:
        assert left <= x - radius <= x + radius <= right
        assert bottom <= y - radius <= y + radius <= top
    for (one, radius), (other, wide) in combinations(found, 2):
        assert dist(one, other) > radius + wide
    for one, other in combinations(lines, 2):
        assert not one.crosses(other)
    for centre, radius in found:
        over = [line for line in lines if line.distance(shapely.Point(centre)) < radius - 1e-6]
        assert not over


@pytest.mark.parametrize("name", SAMPLE)
def test_the_samples_steps(name: str) -> None:
    for each, look in zip(shown(name), views(name), strict=True):
        step = each.step
        drawing = step_view(each, look=look, hardware=[("Bolt M6 x 50", 2)])
        assert_drawn_clear(drawing)
        strong = [each for each in drawing.items if isinstance(each, Label) and each.strong]
        names = [each for each in strong if "×" not in each.text and each.ink is not Ink.PAPER]
        assert len(names) == len(step.added), "numbers of turns are in paper on ink"


@pytest.mark.parametrize("name", SAMPLE)
def test_the_samples_drawn_apart(name: str) -> None:
    assert_drawn_clear(exploded_view(*built(name)))
