"""Rims of recesses: what a far face is told by where a new piece is looked through."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from kerfolio.geometry.facing import PosedPanel, solids_of
from kerfolio.geometry.hidden_lines import seen
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.geometry.recess_rims import recess_rims
from kerfolio.geometry.rigid import Rigid
from kerfolio.geometry.view import View

BOARD = ((0.0, 0.0), (200.0, 0.0), (200.0, 100.0), (0.0, 100.0))
UPRIGHT = Rigid(x=(1.0, 0.0, 0.0), y=(0.0, 0.0, 1.0), z=(0.0, -1.0, 0.0))
"""The show face looks to the front."""


def box(x: float, y: float, wide: float, high: float) -> Flat:
    return Flat(((x, y), (x + wide, y), (x + wide, y + high), (x, y + high)))


def panel(*recesses: Flat) -> Panel:
    return Panel(
        shape=Flat(BOARD), thickness=18.0, recesses=tuple(Recess(each, 8.0) for each in recesses)
    )


def long(runs: tuple[tuple[tuple[float, float], ...], ...]) -> float:
    return math.fsum(math.dist(a, b) for run in runs for a, b in pairwise(run))


def test_a_pocket_has_its_whole_rim_and_a_groove_its_two_walls() -> None:
    """A pocket of 60 x 20 has 160 mm of rim; a groove right across has two walls of 100 mm."""
    assert long(recess_rims(panel(box(20, 40, 60, 20)))) == pytest.approx(160.0)
    groove = recess_rims(panel(box(120, -5, 12, 110)))
    assert len(groove) == 2
    assert long(groove) == pytest.approx(200.0, abs=0.3)
    assert recess_rims(panel()) == ()


def test_recesses_that_meet_have_one_rim() -> None:
    crossed = panel(box(20, 40, 60, 20), box(40, 20, 20, 60))
    assert long(recess_rims(crossed)) == pytest.approx(2 * 60 + 2 * 60)


def test_the_far_face_is_told_of_new_pieces_alone_and_the_near_one_by_its_own_edges() -> None:
    there = solids_of([PosedPanel(panel(box(20, 40, 60, 20)), UPRIGHT)])
    front, back = View(0.0, 0.0), View(180.0, 0.0)
    assert seen(there, front, apart=0.5, first=(0,)).engraved == ()
    assert seen(there, back, apart=0.5).engraved == ()
    runs = seen(there, back, apart=0.5, first=(0,)).engraved
    assert all(run.away for run in runs)
    across = [x for run in runs for x, _ in run.points]
    assert (min(across), max(across)) == pytest.approx((-80, -20), abs=0.05)
