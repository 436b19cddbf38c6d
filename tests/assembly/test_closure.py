"""Loops of joints: they close where the plan is right, and where it is not the culprit is found."""

from __future__ import annotations

from itertools import pairwise
from random import Random

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from kerfolio.assembly.adjustment import least_deviations, least_squares
from kerfolio.assembly.blame import blamed
from kerfolio.assembly.closure import Hearing, bridges, closed
from kerfolio.assembly.pairing import gaps_in, pairings_of, walked
from kerfolio.assembly.placing import misfit, turn, walk
from kerfolio.assembly.suspects import put_right, suspects_of
from kerfolio.geometry.rigid import Rigid, between, length
from tests.assembly.tangles import pairings, spoilt, tangle, tilted

seeds = st.integers(0, 10**6)

PLAIN = Hearing(ranked=tuple, tried=lambda _: ())
"""What is found is taken as it comes: these pieces have no plan that could be changed."""


def apart(one: Rigid, other: Rigid) -> float:
    turned = sum(length(between(a, b)) for a, b in ((one.x, other.x), (one.y, other.y)))
    return length(between(one.origin, other.origin)) + 200 * turned


@settings(max_examples=40, deadline=None)
@given(seeds, st.integers(2, 14), st.integers(0, 12))
def test_joints_that_agree_close_and_give_the_places_back(
    seed: int, pieces: int, loops: int
) -> None:
    made = tangle(seed, pieces, loops)
    walks = walk(made.links, "piece-0")
    best = walks[0]
    assert best.cost < 1e-9
    for label, pose in made.poses.items():
        assert apart(best.poses[label], pose) < 1e-9
    found = pairings_of(made.links, best.ways, best.poses)
    assert gaps_in(found, best.poses) == ()
    assert closed(walks, made.links, "piece-0", PLAIN).poses is best.poses


@settings(max_examples=25, deadline=None)
@given(seeds, st.integers(3, 9))
def test_loops_decide_which_way_round_each_joint_goes(seed: int, pieces: int) -> None:
    """Each joint could go two ways; where loops hold every joint, one way is left for all."""
    made = tangle(seed, pieces, 2 * pieces, decoys=True)
    assume(not bridges(made.links))
    best = walk(made.links, "piece-0")[0]
    assert best.cost < 1e-9
    for label, pose in made.poses.items():
        assert apart(best.poses[label], pose) < 1e-9


@settings(max_examples=25, deadline=None)
@given(seeds, st.integers(3, 10), st.integers(2, 12))
def test_the_order_of_joints_makes_no_difference(seed: int, pieces: int, loops: int) -> None:
    made = tangle(seed, pieces, loops)
    links = list(made.links)
    Random(seed).shuffle(links)
    for label, pose in walk(links, "piece-0")[0].poses.items():
        assert apart(pose, made.poses[label]) < 1e-9


@settings(max_examples=30, deadline=None)
@given(seeds, st.integers(3, 10), st.sampled_from([(2.0, 0.0), (0.0, -2.0), (1.2, 1.6)]))
def test_a_feature_2_mm_off_is_blamed(seed: int, pieces: int, off: tuple[float, float]) -> None:
    made = tangle(seed, pieces, 2 * pieces)
    number = Random(seed).randrange(len(made.links))
    links = tuple(
        spoilt(link, (*off, 0.0)) if n == number else link for n, link in enumerate(made.links)
    )
    found = closed(walk(links, "piece-0"), links, "piece-0", PLAIN)
    named = {each.culprits[0].suspect.name: each for each in found.blames}
    guilty = named[f"{links[number].b.piece}.joint-{number}"]
    assert len(guilty.culprits) == 1
    assert guilty.culprits[0].by == pytest.approx((-off[0], -off[1], 0.0), abs=1e-3)
    assert {gap.pairing.link for gap in guilty.gaps} == {number}
    for label, pose in made.poses.items():
        assert apart(guilty.poses[label], pose) < 0.01


def test_two_features_off_are_both_blamed() -> None:
    made = tangle(7, 8, 16)
    links = list(made.links)
    for number, by in ((3, (2.0, 0.0, 0.0)), (12, (0.0, 3.0, 0.0))):
        links[number] = spoilt(links[number], by)
    found = closed(walk(links, "piece-0"), links, "piece-0", PLAIN)
    blamed_for = {each.suspect.feature: each.by for each in found.blames[0].culprits}
    assert set(blamed_for) == {"joint-3", "joint-12"}
    assert blamed_for["joint-3"] == pytest.approx((-2.0, 0.0, 0.0), abs=1e-3)
    assert blamed_for["joint-12"] == pytest.approx((0.0, -3.0, 0.0), abs=1e-3)


def test_many_features_off_are_told_of_without_a_culprit() -> None:
    """Five at once are more than can be blamed: the pairs that miss are told of instead."""
    made = tangle(11, 8, 20)
    links = list(made.links)
    spoiled = (1, 6, 11, 16, 21)
    for number in spoiled:
        links[number] = spoilt(links[number], (3.0, 1.0, 0.0))
    found = closed(walk(links, "piece-0"), links, "piece-0", PLAIN)
    assert found.blames == ()
    assert {gap.pairing.link for gap in found.gaps} == set(spoiled)


def test_least_deviations_leave_the_miss_where_it_is_and_least_squares_spread_it() -> None:
    """Textbook: of 1, 1, 1 and 3 the median is 1, the mean 1.5."""
    made = tangle(3, 2, 3)
    links = (*made.links[:3], spoilt(made.links[3], (0.0, 2.0, 0.0)))
    start = {"piece-0": Rigid(), "piece-1": made.poses["piece-1"]}
    pairs = pairings(links)
    fitted = least_deviations(start, pairs, "piece-0")
    misses = [misfit(each.way, fitted[each.a], fitted[each.b]) for each in pairs]
    assert misses[3] == pytest.approx(2.0, abs=0.1)
    assert max(misses[:3]) < 0.05
    spread = least_squares(start, pairs, "piece-0")
    misses = [misfit(each.way, spread[each.a], spread[each.b]) for each in pairs]
    assert max(misses) < 2.0
    assert min(misses) > 0.1


def test_put_right_undoes_what_spoilt_a_joint() -> None:
    made = tangle(5, 4, 6)
    links = (*made.links[:2], spoilt(made.links[2], (1.5, -0.5, 0.0)), *made.links[3:])
    pairs = pairings(links)
    guilty = next(
        each for each in suspects_of(pairs, links) if each.name == f"{links[2].b.piece}.joint-2"
    )
    right = put_right(guilty, (-1.5, 0.5, 0.0), pairs)
    assert gaps_in(right, made.poses) == ()
    assert [each.pairing.link for each in gaps_in(pairs, made.poses)] == [2]


def test_a_feature_out_of_its_sheet_is_nobody_s_fault() -> None:
    """No feature can be off along its own sheet's normal: so none of that piece is blamed."""
    made = tangle(9, 5, 10)
    links = (*made.links[:4], spoilt(made.links[4], (0.0, 0.0, 2.0)), *made.links[5:])
    pairs = pairings(links)
    found = blamed(
        least_squares(made.poses, pairs, "piece-0"),
        pairs,
        suspects_of(pairs, links),
        "piece-0",
        counts=(1,),
    )
    assert f"{links[4].b.piece}.joint-4" not in {e.culprits[0].suspect.name for e in found}


def test_turns_are_measured_at_a_lever_of_200_mm() -> None:
    """The chord of an angle at 200 mm: 2 x 200 x sin(angle / 2), here of 0.01 radians."""
    pair = (Rigid(), tilted(0.01))
    assert turn(pair, Rigid(), Rigid()) == pytest.approx(1.999991667, abs=1e-9)
    assert turn((Rigid(), Rigid()), tilted(0.3), tilted(0.3)) == 0.0


def test_bridges_are_the_joints_that_no_loop_holds() -> None:
    """A tree has nothing but bridges; each further joint takes those of its loop away."""
    tree = tangle(1, 6, 0)
    assert bridges(tree.links) == tuple(range(5))
    looped = tangle(1, 6, 20)
    assert bridges(looped.links) == ()
    assert bridges(tangle(2, 2, 1).links) == ()


def test_pieces_that_no_pair_reaches_are_left_out() -> None:
    made = tangle(4, 5, 0)
    last = [link for link in made.links if "piece-4" in (link.a.piece, link.b.piece)]
    rest = tuple(link for link in made.links if link not in last)
    assert "piece-4" not in walked(pairings(rest), "piece-0")
    assert all(a != b for a, b in pairwise(sorted(walked(pairings(made.links), "piece-0"))))
