"""Whole plans, from a stool of eight pieces to a table of fifty-six, read, settled and built.

That they are right is common practice worked out on paper: the makers of such plans draw them so.
No rule may find fault with them at the tightest, the drawn or the loosest thickness.
"""

from __future__ import annotations

import pytest

from kerfolio.assembly.closure import bridges
from kerfolio.assembly.go_together import clashes
from kerfolio.assembly.links import links_of
from kerfolio.assembly.poses import put_together
from kerfolio.geometry.rigid import between, length
from tests.assembly.rehearsal import faults
from tests.assembly.written import NAMES, built, remarks, settled, text, together, told

PIECES = {"stool": 8, "cupboard": 7, "egg-crate": 20, "workshop-table": 56}


@pytest.mark.parametrize("name", NAMES)
def test_no_rule_over_the_whole_finds_fault(name: str) -> None:
    build = built(text(name))
    assert [str(each) for each in remarks(build)] == []
    assert len(build.fitted) == 3
    assert build.deadlock is None


@pytest.mark.parametrize("name", NAMES)
def test_every_piece_has_a_place_and_every_loop_closes(name: str) -> None:
    build = built(text(name))
    for each in build.fitted:
        assert len(each.together.assembled.pieces) == PIECES[name]
        assert each.together.gaps == ()


@pytest.mark.parametrize("name", ["stool", "cupboard", "egg-crate"])
def test_no_other_rule_finds_fault_either(name: str) -> None:
    assert [str(each) for each in told(text(name))] == []


@pytest.mark.parametrize("name", NAMES)
def test_ways_are_the_same_at_every_thickness(name: str) -> None:
    build = built(text(name))
    for each in build.fitted:
        alone = put_together(build.settled, each.together)
        assert alone is not None
        assert alone.ways == each.together.ways == build.drawn.ways


def test_pieces_grow_with_the_sheet_and_keep_their_outer_faces() -> None:
    """Stated on paper: the stool's sides are `span` apart over their outer faces at every sheet."""
    for each in built(text("stool")).fitted:
        pieces = each.together.assembled
        left, right = pieces.piece("side.left"), pieces.piece("side.right")
        thick = left.panel.thickness
        outer = between(left.pose.point((0.0, 0.0, thick)), right.pose.point((320.0, 0.0, thick)))
        assert length(outer) == pytest.approx(360.0, abs=1e-9)


def test_only_what_no_loop_holds_is_unchecked() -> None:
    for name, loose in {
        "stool": {"cleat.left", "cleat.right"},
        "cupboard": set(),
        "egg-crate": set(),
        "workshop-table": {"wedge.left", "wedge.right", "plate"},
    }.items():
        links, _ = links_of(settled(text(name)))
        assert {links[each].a.piece for each in bridges(links)} == loose, name


@pytest.mark.parametrize("name", ["stool", "cupboard"])
def test_the_maker_s_order_can_be_undone_with_solids(name: str) -> None:
    """Second opinion: solids of the boolean library moved in small strides."""
    build = built(text(name))
    assert build.blocked == ()
    assert faults(build.drawn.assembled, build.order) == []


def test_two_pieces_of_the_stool_stand_oblique_to_each_other() -> None:
    pieces = together(text("stool")).assembled
    front, rear = pieces.piece("apron.front").pose, pieces.piece("apron.rear").pose
    cosine = sum(a * b for a, b in zip(front.z, rear.z, strict=True))
    # Each leans by 15 degrees, one to the back and one to the front, and their backs face.
    assert cosine == pytest.approx(-0.8660254037844387, abs=1e-9)
    assert clashes(pieces) == ()
