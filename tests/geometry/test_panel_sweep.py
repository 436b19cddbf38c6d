from __future__ import annotations

import numpy as np
import pytest

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Recess
from kerfolio.geometry.panel_boxes import boxes, near_pairs
from kerfolio.geometry.panel_overlap import overlap_volumes
from kerfolio.geometry.panel_solid import Posed, solid_of
from kerfolio.geometry.panel_sweep import FAR, FREE, Push, sweep_volumes, swept
from kerfolio.geometry.rigid import Rigid, Vector, scaled
from tests.geometry.panel_cases import (
    Random,
    board,
    joined,
    posed,
    put,
    random_frame,
    random_pair,
    random_panel,
    rectangle,
    reference,
    reference_sweep,
    turned,
)

RIGHT, LEFT = (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0)
BACK, FRONT = (0.0, 1.0, 0.0), (0.0, -1.0, 0.0)
UP, DOWN = (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)
WAYS = (RIGHT, LEFT, BACK, FRONT, UP, DOWN)


def free(mover: Posed, other: Posed, world: Rigid | None = None) -> set[Vector]:
    """Return the ways of WAYS along which the mover gets away, the whole turned to ``world``."""
    world = world or Rigid()
    one, two = (Posed(each.solid, world.after(each.pose)) for each in (mover, other))
    volumes = sweep_volumes([Push(one, two, world.vector(way)) for way in WAYS])
    return {way for way, volume in zip(WAYS, volumes, strict=True) if volume <= FREE}


def rail_and_side(fit: float) -> tuple[Posed, Posed]:
    """A rail along x whose tab stands in a slot of a side across x, its shoulders touching it."""
    outline = ((0, 0), (300, 0), (300, 30), (318, 30), (318, 90), (300, 90), (300, 120), (0, 120))
    rail = posed(board(outline), (0.0, 109.0, 70.0), y=UP)
    slot = rectangle(91 - fit, 100 - fit, 109 + fit, 160 + fit)
    side = posed(board(rectangle(0, 0, 200, 300), slot), (300.0, 0.0, 0.0), x=BACK, y=UP)
    return rail, side


@pytest.mark.parametrize("fit", [0.1, 0.0])
def test_a_tab_leaves_its_slot_only_the_way_it_came(fit: float) -> None:
    rail, side = rail_and_side(fit)
    assert free(rail, side) == {LEFT}
    assert free(side, rail) == {RIGHT}


def test_the_ways_out_do_not_depend_on_how_the_plan_stands() -> None:
    rng = np.random.default_rng(11)
    rail, side = rail_and_side(0.0)
    for _ in range(20):
        world = random_frame(rng, (400.0, -250.0, 90.0))
        assert free(rail, side, world) == {LEFT}


def test_a_tongue_slides_along_its_groove_and_out_of_it() -> None:
    groove = Recess(Flat(rectangle(-10, 50, 310, 68.2)), 6)
    base = posed(board(rectangle(0, 0, 300, 200), recesses=(groove,)))
    tongue = posed(board(rectangle(0, 0, 300, 80)), (0.0, 68.1, 12.0), y=UP)
    assert free(tongue, base) == {UP, LEFT, RIGHT}
    stopped = Recess(Flat(rectangle(20, 50, 310, 68.2)), 6)
    base = posed(board(rectangle(0, 0, 300, 200), recesses=(stopped,)))
    tongue = posed(board(rectangle(0, 0, 280, 80)), (20.0, 68.1, 12.0), y=UP)
    assert free(tongue, base) == {UP, RIGHT}
    assert free(base, tongue) == {DOWN, LEFT}


def test_halvings_part_along_the_line_in_which_they_cross() -> None:
    low = board(
        ((0, 0), (200, 0), (200, 80), (109.1, 80), (109.1, 40), (90.9, 40), (90.9, 80), (0, 80))
    )
    high = board(
        ((0, 0), (90.9, 0), (90.9, 40), (109.1, 40), (109.1, 0), (200, 0), (200, 80), (0, 80))
    )
    one = posed(low, (0.0, 9.0, 0.0), y=UP)
    other = posed(high, (91.0, -100.0, 0.0), x=BACK, y=UP)
    assert free(other, one) == {UP}
    assert free(one, other) == {DOWN}


def test_a_panel_lying_on_another_goes_every_way_but_through_it() -> None:
    plate, lid = board(rectangle(0, 0, 100, 100)), board(rectangle(0, 0, 60, 60), thickness=6)
    assert free(posed(lid, (20.0, 20.0, 18.0)), posed(plate)) == {*WAYS} - {DOWN}
    # In a pocket it leaves upwards alone.
    pocket = Recess(Flat(rectangle(20, 20, 80, 80)), 6)
    tray = posed(board(rectangle(0, 0, 100, 100), recesses=(pocket,)))
    assert free(posed(lid, (20.0, 20.0, 12.0)), tray) == {UP}


def test_a_slot_turned_in_its_panel_holds_a_tab_all_the_same() -> None:
    # The apron stands 15 degrees off square to the rail beside it: an oblique pair and, seen from
    # the side it is let into, an oblique push.
    side = posed(board(rectangle(-100, -100, 100, 100)))
    rail = turned(np.radians(15)).after(Rigid((-50.0, 0.0, 18.0), RIGHT, UP, FRONT))
    apron = Posed(solid_of(board(rectangle(0, 0, 100, 60))), rail)
    assert free(apron, side) == {*WAYS} - {DOWN}
    beside = posed(board(rectangle(0, 0, 100, 60)), (-50.0, 40.0, 18.0), y=UP)
    ways = free(apron, beside)
    assert FRONT in ways
    assert BACK not in ways


def test_a_push_ends_where_it_is_told_to() -> None:
    plate = board(rectangle(0, 0, 100, 100))
    wall = posed(plate, (300.0, 0.0, 0.0), x=BACK, y=UP)
    mover = posed(board(rectangle(0, 0, 100, 100)), (0.0, 0.0, 40.0))
    found = sweep_volumes([Push(mover, wall, RIGHT, each) for each in (199.0, 200.0, 205.0)])
    # From x = 100 on it reaches 300 after 200; 5 mm further it is 5 x 100 x 18 mm3 in the wall.
    assert found.tolist() == pytest.approx([0, 0, 9000])


def test_a_swept_panel_is_what_the_move_covers() -> None:
    pocket = Recess(Flat(rectangle(20, 20, 80, 80)), 6)
    panel = board(rectangle(0, 0, 100, 100), rectangle(40, 40, 60, 60), recesses=(pocket,))
    solid = solid_of(panel)
    for way, distance in ((UP, 3.0), (DOWN, 3.0), (UP, 40.0), (RIGHT, 7.0), (BACK, 500.0)):
        made = swept(solid, way, distance)
        assert made is not None
        parts = reference_sweep(panel, scaled(way, distance))
        assert made.solid.volume() == pytest.approx(joined(parts).volume())
    assert swept(solid, (0.6, 0.0, 0.8), 10.0) is None


def way_for(rng: Random, number: int, first: Rigid, second: Rigid) -> Vector:
    """Return a direction: in one panel's plane, along a normal, or any."""
    turn = turned(float(rng.uniform(0, 6.28)))
    plain = (first.after(turn).x, second.after(turn).x, first.z, scaled(second.z, -1.0))
    return (*plain, random_frame(rng).x)[number % 5]


@pytest.mark.parametrize("kind", ["crossed", "parallel", "oblique"])
def test_random_pushes_hit_what_solid_sweeps_say(kind: str) -> None:
    """Reference library: manifold3d, hulls of prisms and their moved copies, made without it."""
    rng = np.random.default_rng({"crossed": 21, "parallel": 22, "oblique": 23}[kind])
    pushes, expected = [], []
    for number in range(60):
        a, b = random_panel(rng), random_panel(rng)
        first, second = random_pair(rng, kind, 300)
        way = way_for(rng, number, first, second)
        distance = float(rng.uniform(50, 900)) if number % 2 else FAR
        pushes.append(Push(Posed(solid_of(a), first), Posed(solid_of(b), second), way, distance))
        sweep = reference_sweep(a, scaled(first.inverse.vector(way), distance))
        there = put(reference(b), first.inverse.after(second))
        met = [each ^ there for each in sweep]
        expected.append(joined(met).volume() > FREE)
    found = sweep_volumes(pushes) > FREE
    assert found.tolist() == expected
    assert 12 < sum(expected) < 50


def test_a_free_push_shares_nothing_anywhere_on_its_way() -> None:
    rng = np.random.default_rng(31)
    stops = 0
    for _ in range(60):
        kind = ("crossed", "parallel", "oblique")[int(rng.integers(0, 3))]
        first, second = random_pair(rng, kind, 350)
        mover, other = (Posed(solid_of(random_panel(rng)), each) for each in (first, second))
        way = random_frame(rng).x if kind == "oblique" else first.after(turned(1.0)).x
        if sweep_volumes([Push(mover, other, way)])[0] <= FREE:
            poses = [first.moved(scaled(way, step)) for step in np.linspace(0, 900, 19)]
            on_the_way = overlap_volumes([(Posed(mover.solid, each), other) for each in poses])
            assert max(on_the_way) <= FREE
            stops += 1
    assert stops > 10


def test_boxes_reach_round_posed_panels() -> None:
    rng = np.random.default_rng(41)
    for _ in range(20):
        panel, pose = random_panel(rng), random_frame(rng, (10.0, 20.0, 30.0))
        found = boxes([Posed(solid_of(panel), pose)])[0]
        box = put(reference(panel), pose).bounding_box()
        assert found.ravel().tolist() == pytest.approx(list(box), abs=1e-6)


def test_boxes_that_only_touch_are_not_near() -> None:
    plate = board(rectangle(0, 0, 100, 100))
    places = ((0.0, 0.0, 0.0), (0.0, 0.0, 18.0), (50.0, 0.0, 9.0), (300.0, 0.0, 0.0))
    assert near_pairs(boxes([posed(plate, each) for each in places])) == [(0, 2), (1, 2)]
