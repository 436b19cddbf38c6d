"""What the picture of a step costs as a plan grows; run by hand with ``pytest -m bench -s``.

The plan is a grid: runners one way, dividers dropped over them, each crossing a notch in both. Its
pieces, faces and crossings grow together, so that pieces alone would let the cost look steeper.
Printed are milliseconds of processor time (the best of three) for the last step's picture and for
choosing the views, the faces that look towards the eye, and the growth with them.
"""

from __future__ import annotations

from math import log
from time import process_time

import pytest

from kerfolio.assembly.assembled import Assembled, BuildStep, Move
from kerfolio.assembly.lying import Shown
from kerfolio.drawing.scene import step_scene
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.view_choice import chosen_views
from kerfolio.geometry.facing import facing
from kerfolio.geometry.view import View
from tests.assembly.hand_made import crate

LOOK = View(-32.0, 28.0)
GRIDS = {8: (2, 6), 20: (4, 16), 50: (4, 46)}


def last_step(whole: Assembled) -> BuildStep:
    """The dividers have all come home but one."""
    labels = [each.label for each in whole.pieces]
    move = Move(pieces=(labels[-1],), direction=(0.0, 0.0, -1.0), travel=45.0)
    return BuildStep(number=2, standing=tuple(labels[:-1]), added=(labels[-1],), moves=(move,))


def best_of_three(work: object) -> float:
    found = []
    for _ in range(3):
        start = process_time()
        work()  # type: ignore[operator]
        found.append((process_time() - start) * 1000)
    return min(found)


@pytest.mark.bench
def test_growth_with_the_plan() -> None:
    rows = []
    for count, grid in GRIDS.items():
        whole = crate(*grid)
        step = last_step(whole)
        assert len(whole.pieces) == count
        faces = len(facing(step_scene(whole, step).solids(), LOOK)[0].solid)
        shown = Shown(assembled=whole, step=step)
        drawn = best_of_three(lambda shown=shown: step_view(shown, look=LOOK))
        chosen = best_of_three(lambda shown=shown: chosen_views([shown]))
        rows.append((count, faces, drawn, chosen))
    print("\npieces  faces  draw ms  choose ms  growth of drawing with faces")
    for before, (count, faces, drawn, chosen) in zip([None, *rows], rows, strict=False):
        growth = log(drawn / before[2]) / log(faces / before[1]) if before else float("nan")
        print(f"{count:6d}  {faces:5d}  {drawn:7.0f}  {chosen:9.0f}  {growth:6.2f}")
