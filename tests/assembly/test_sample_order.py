"""The sample's own steps, tried; the draughtsman's moves are a second opinion on them."""

from __future__ import annotations

from functools import cache

import pytest

from kerfolio.assembly.assembled import Assembled, BuildOrder
from kerfolio.assembly.blocking import Blocking, blocking
from kerfolio.assembly.found import find
from kerfolio.assembly.order import take_apart, verify
from kerfolio.assembly.poses import put_together
from kerfolio.geometry.rigid import Rigid, Vector, length, scaled
from tests.assembly.rehearsal import faults
from tests.assembly.scenes import NAMES, rigid, settled
from tests.tools.sample_poses import SCENES


@cache
def whole(name: str) -> Assembled:
    made = put_together(settled(name))
    assert made is not None
    return made.assembled


@cache
def graphs(name: str) -> Blocking:
    return blocking(whole(name))


@cache
def stated(name: str) -> BuildOrder:
    steps = [[each.name for each in step.add] for step in settled(name).plan.steps]
    order, blocked = verify(whole(name), steps, graphs(name))
    assert blocked == ()
    return order


def as_drawn(name: str) -> Rigid:
    """The turn from the draughtsman's world to that of the joints."""
    piece = whole(name).pieces[0]
    drawn = rigid(SCENES[name](settled(name)).poses[piece.label])
    return piece.pose.after(drawn.inverse)


@pytest.mark.parametrize("name", NAMES)
def test_pieces_come_home_along_the_draughtsmans_ways(name: str) -> None:
    turn = as_drawn(name)
    drawn: dict[str, Vector] = SCENES[name](settled(name)).moves
    moved = {
        label: move.direction
        for step in stated(name).steps
        for move in step.moves
        for label in move.pieces
    }
    assert moved.keys() == drawn.keys()
    for label, apart in drawn.items():
        home = turn.vector(scaled(apart, -1 / length(apart)))
        assert moved[label] == pytest.approx(home, abs=1e-6), label


@pytest.mark.parametrize("name", NAMES)
def test_they_go_through_with_solids(name: str) -> None:
    assert faults(whole(name), stated(name)) == []


@pytest.mark.parametrize("name", NAMES)
def test_an_order_is_found_too(name: str) -> None:
    order = find(whole(name), graphs(name))
    assert isinstance(order, BuildOrder)
    assert faults(whole(name), order) == []


def test_like_dividers_make_one_step() -> None:
    order = find(whole("desk-rack"), graphs("desk-rack"))
    assert isinstance(order, BuildOrder)
    dividers = tuple(f"divider.{number}" for number in range(1, 5))
    assert [step.added for step in order.steps] == [("front", "rear"), dividers, ("back",)]


@pytest.mark.parametrize("name", NAMES)
def test_nothing_is_captive(name: str) -> None:
    assert take_apart(whole(name), stated(name), graphs(name)).captive == ()


def test_the_stools_seat_is_what_comes_off_first() -> None:
    apart = take_apart(whole("harbour-stool"), stated("harbour-stool"), graphs("harbour-stool"))
    assert apart.first == ("seat",)
