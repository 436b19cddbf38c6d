from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.assembly import blocking as module
from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.blocking import Blocking, blocking, members
from kerfolio.assembly.directions import opposite
from kerfolio.assembly.split import core, stuck
from kerfolio.geometry.panel_solid import Numbers
from kerfolio.geometry.panel_sweep import Push
from kerfolio.geometry.rigid import Rigid, Vector, cross
from tests.assembly.hand_made import (
    BACK,
    DOWN,
    FRONT,
    LEFT,
    RIGHT,
    UP,
    bench,
    crate,
    knot,
    pair,
    plan,
    stool,
)
from tests.assembly.rehearsal import hits, solid


def hit_by(graphs: Blocking, label: str, way: Vector) -> set[str]:
    group = graphs.group([label])
    return set(graphs.names(graphs.hit(group, graphs.ways.index(way))))


def test_what_a_stools_pieces_run_into() -> None:
    graphs = blocking(stool())
    assert hit_by(graphs, "seat", UP) == set()
    assert hit_by(graphs, "seat", DOWN) == {"side.left", "side.right", "rail"}
    assert hit_by(graphs, "rail", UP) == {"side.left", "side.right", "seat"}
    assert hit_by(graphs, "rail", LEFT) == {"side.left"}
    assert hit_by(graphs, "rail", RIGHT) == {"side.right"}
    assert hit_by(graphs, "side.left", LEFT) == {"seat"}
    assert hit_by(graphs, "side.left", RIGHT) == {"rail", "seat", "side.right"}
    assert hit_by(graphs, "side.left", DOWN) == {"rail"}
    assert hit_by(graphs, "side.left", FRONT) == {"rail", "seat"}


def test_in_the_knot_every_pair_parts_in_one_way_only() -> None:
    # The three panels of the project's own trial: each pair separable in exactly one direction.
    graphs = blocking(knot())
    free = {
        (one, other, way)
        for one, other in permutations("abc", 2)
        for way in graphs.ways
        if other not in hit_by(graphs, one, way)
    }
    assert free == {
        *(("b", "a", DOWN), ("a", "b", UP), ("a", "c", FRONT), ("c", "a", BACK)),
        *(("c", "b", LEFT), ("b", "c", RIGHT)),
    }


@pytest.mark.parametrize("make", [stool, knot, pair, crate])
def test_against_solids_moved_in_small_steps(make: Callable[[], Assembled]) -> None:
    whole = make()
    graphs = blocking(whole)
    solids = {piece.label: solid(piece) for piece in whole.pieces}
    for way in graphs.ways:
        for one, other in permutations(graphs.labels, 2):
            found = other in hit_by(graphs, one, way)
            assert found == hits(solids[one], solids[other], way), (one, other, way)


def test_a_turned_plan_has_the_same_graphs() -> None:
    turn = Rigid((7.0, -3.0, 11.0), (0.8, 0.6, 0.0), (-0.6, 0.8, 0.0), (0.0, 0.0, 1.0))
    whole = bench()
    pieces = [replace(each, pose=turn.after(each.pose)) for each in whole.pieces]
    ways = tuple(turn.vector(way) for way in (UP, DOWN, BACK, FRONT, RIGHT, LEFT))
    assert blocking(plan(pieces, ()), ways).hits == blocking(whole).hits
    assert cross(turn.x, turn.y) == pytest.approx(turn.z)


def test_a_pairs_edge_does_not_depend_on_what_else_stands() -> None:
    whole = bench()
    graphs = blocking(whole)
    fewer = blocking(plan(whole.pieces[1:5], whole.joints), graphs.ways)
    for way in graphs.ways:
        for label in fewer.labels:
            assert hit_by(fewer, label, way) == hit_by(graphs, label, way) & set(fewer.labels)


def test_like_pairs_are_swept_once(monkeypatch: pytest.MonkeyPatch) -> None:
    counts = []
    true = module.sweep_volumes

    def counted(pushes: Sequence[Push]) -> Numbers:
        counts.append(len(pushes))
        return true(pushes)

    monkeypatch.setattr(module, "sweep_volumes", counted)
    dividers = plan([each for each in crate(2, 8).pieces if each.part == "high"], ())
    graphs = blocking(dividers, (UP, DOWN, BACK, FRONT, RIGHT, LEFT))
    # 28 pairs in a row meet along one line only, at seven distances.
    assert sum(row.bit_count() for row in graphs.hits[4]) == 28
    assert counts == [7]


def test_labels_and_sets() -> None:
    graphs = blocking(stool())
    group = graphs.group(["seat", "side.left"])
    assert graphs.names(group) == ("side.left", "seat")
    assert list(members(group)) == [0, 3]
    with pytest.raises(KeyError, match="leg"):
        graphs.group(["leg"])


def test_what_is_carried_along() -> None:
    graphs = blocking(bench())
    bodies = [1 << each for each in range(6)]
    up = graphs.ways.index(UP)
    rail = graphs.group(["rail"])
    # Tabs hold the rail in both sides, and the sides in everything else.
    assert graphs.carried(rail, up, bodies) == sum(bodies)
    parts = [graphs.group([label]) for label in ("top", "rail", "sling")]
    assert graphs.names(graphs.carried(rail, up, parts)) == ("top", "rail")
    assert graphs.names(graphs.carried(parts[0], up, parts)) == ("top",)


@st.composite
def tables(draw: st.DrawFn) -> Blocking:
    """Graphs of up to six pieces along two lines; a way back has the edges turned round."""
    count = draw(st.integers(2, 6))
    rows = st.lists(st.integers(0, 2**count - 1), min_size=count, max_size=count)
    hits = []
    for _ in range(2):
        out = [row & ~(1 << i) for i, row in enumerate(draw(rows))]
        back = [sum(1 << j for j in range(count) if out[j] >> i & 1) for i in range(count)]
        hits += [tuple(out), tuple(back)]
    return Blocking(tuple("abcdef"[:count]), (UP, DOWN, RIGHT, LEFT), tuple(hits))


def comes_apart(graphs: Blocking, group: int) -> bool:
    """Tell by trying every subset whether a group can be parted into single pieces."""
    if group.bit_count() < 2:
        return True
    some = (group - 1) & group
    while some:
        if any(not graphs.hit(some, way) & group for way in range(4)):
            return comes_apart(graphs, some) and comes_apart(graphs, group & ~some)
        some = (some - 1) & group
    return False


@settings(max_examples=300)
@given(tables())
def test_deadlock_is_judged_as_by_trying_every_subset(graphs: Blocking) -> None:
    count = len(graphs.labels)
    bodies = [1 << each for each in range(count)]
    held = stuck(graphs, bodies)
    assert (held == ()) == comes_apart(graphs, 2**count - 1)
    least = sum(core(graphs, bodies))
    assert bool(least) == bool(held)
    if least:
        assert not comes_apart(graphs, least)
        assert all(comes_apart(graphs, least & ~(1 << each)) for each in members(least))


@given(tables())
def test_ways_back_are_the_ways_turned_round(graphs: Blocking) -> None:
    assert graphs.ways[1] == opposite(graphs.ways[0])
    for way in range(4):
        for one, other in permutations(range(len(graphs.labels)), 2):
            assert graphs.hits[way][one] >> other & 1 == graphs.hits[way ^ 1][other] >> one & 1
