from __future__ import annotations

import numpy as np
import pytest

from generator.geometry.packing import Flat
from generator.geometry.panel import Recess
from generator.geometry.panel_gap import gap
from generator.geometry.panel_solid import Posed
from generator.geometry.rigid import Rigid, Vector
from tests.geometry.panel_cases import board, posed, random_frame, rectangle

RIGHT, LEFT = (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0)
BACK, FRONT = (0.0, 1.0, 0.0), (0.0, -1.0, 0.0)
UP, DOWN = (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)


def rail(dx: float = 0.0) -> Posed:
    """A rail along x with a tab 18 x 60 mm, its shoulders at x = 300 when ``dx`` is 0."""
    outline = ((0, 0), (300, 0), (300, 30), (318, 30), (318, 90), (300, 90), (300, 120), (0, 120))
    return posed(board(outline), (dx, 109.0, 70.0), y=UP)


SIDE = posed(
    board(rectangle(0, 0, 200, 300), rectangle(90.9, 99.8, 109.1, 160.2)),
    (300.0, 0.0, 0.0),
    x=BACK,
    y=UP,
)


def test_the_gap_of_a_shoulder_and_the_fit_on_each_side() -> None:
    # Worked by hand: the slot is 0.1 mm wider on each side, and 0.2 mm longer.
    assert gap(rail(), SIDE, RIGHT) == pytest.approx(0, abs=1e-9)
    assert gap(rail(-0.7), SIDE, RIGHT) == pytest.approx(0.7)
    assert gap(SIDE, rail(-0.7), LEFT) == pytest.approx(0.7)
    assert gap(rail(), SIDE, BACK) == pytest.approx(0.1)
    assert gap(rail(), SIDE, FRONT) == pytest.approx(0.1)
    assert gap(rail(), SIDE, UP) == pytest.approx(0.2)
    assert gap(rail(), SIDE, DOWN) == pytest.approx(0.2)
    assert gap(rail(), SIDE, LEFT) is None


def test_what_overlaps_has_no_gap() -> None:
    assert gap(rail(0.3), SIDE, RIGHT) == 0
    assert (
        gap(rail(), posed(board(rectangle(0, 0, 200, 300)), (300.0, 0.0, 0.0), BACK, UP), RIGHT)
        == 0
    )


def test_a_blind_tab_meets_the_floor_of_its_pocket_or_its_shoulders() -> None:
    base = board(rectangle(0, 0, 200, 200), recesses=(Recess(Flat(rectangle(50, 50, 110, 68)), 6),))
    outline = ((0, 0), (20, 0), (20, -5.5), (80, -5.5), (80, 0), (100, 0), (100, 60), (0, 60))
    standing = posed(board(outline), (30.0, 68.0, 20.0), y=UP)
    # Shoulders 2 mm over the face, the tab's end 2.5 mm over the floor of a 6 mm pocket.
    assert gap(standing, posed(base), DOWN) == pytest.approx(2)
    longer = tuple((x, -9.0 if y == -5.5 else float(y)) for x, y in outline)
    # 9 mm of tab: 1 mm over the floor (20 - 9 = 11; the floor is at 12) is already in it.
    assert gap(posed(board(longer), (30.0, 68.0, 23.5), y=UP), posed(base), DOWN) == pytest.approx(
        2.5
    )


def test_halvings_meet_at_their_bottoms() -> None:
    low = posed(
        board(((0, 0), (200, 0), (200, 80), (109, 80), (109, 40), (91, 40), (91, 80), (0, 80))),
        (0.0, 9.0, 0.0),
        y=UP,
    )
    outline = ((0, 0), (91, 0), (91, 39.5), (109, 39.5), (109, 0), (200, 0), (200, 80), (0, 80))
    other = posed(board(outline), (91.0, -100.0, 1.0), x=BACK, y=UP)
    assert gap(other, low, DOWN) == pytest.approx(0.5)
    assert gap(low, other, UP) == pytest.approx(0.5)


def test_faces_on_faces() -> None:
    plate = board(rectangle(0, 0, 100, 100))
    over = posed(plate, (50.0, 150.0, 39.25), y=FRONT)
    assert gap(over, posed(plate), DOWN) == pytest.approx(3.25)
    assert gap(posed(plate), over, UP) == pytest.approx(3.25)
    assert gap(over, posed(plate), UP) is None
    assert gap(posed(plate, (200.0, 0.0, 40.0)), posed(plate), DOWN) is None


def test_gaps_do_not_depend_on_how_the_plan_stands() -> None:
    rng = np.random.default_rng(3)
    for _ in range(10):
        world = random_frame(rng, (90.0, 500.0, -40.0))
        one, other = (Posed(p.solid, world.after(p.pose)) for p in (rail(-0.7), SIDE))
        assert gap(one, other, world.vector(RIGHT)) == pytest.approx(0.7)
        assert gap(one, other, world.vector(UP)) == pytest.approx(0.2)


@pytest.mark.parametrize("way", [(0.6, 0.8, 0.0), (0.6, 0.0, 0.8)])
def test_an_oblique_way_has_no_gap(way: Vector) -> None:
    assert gap(rail(-1), SIDE, way) is None
    leaning = Posed(SIDE.solid, Rigid((300.0, 0.0, 0.0), BACK, (0.6, 0.0, 0.8), (0.8, 0.0, -0.6)))
    assert gap(rail(-1), leaning, RIGHT) is None
