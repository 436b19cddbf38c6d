"""What the picture of a step costs as a plan grows; run by hand with ``pytest -m bench -s``.

The plan is a grid: runners one way, dividers dropped over them, each crossing a notch in both. Its
pieces, faces and crossings grow together, so that pieces alone would let the cost look steeper.
Printed are milliseconds of processor time (the best of three) for the last step's picture and for
choosing the views, the faces that look towards the eye, and the growth with them. ``bolted`` is the
same picture with a bolt and a washer at every piece, those of the last one drawn out.
"""

from __future__ import annotations

from dataclasses import replace
from math import log
from time import process_time

import pytest

from kerfolio.assembly.assembled import Assembled, BuildStep, Move
from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.fitting import Fitting
from kerfolio.assembly.lying import Shown
from kerfolio.drawing.scene import step_scene
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.view_choice import chosen_views
from kerfolio.geometry.facing import facing
from kerfolio.geometry.rigid import Rigid
from kerfolio.geometry.view import View
from kerfolio.model.stock import HardwareStock
from tests.assembly.hand_made import crate

LOOK = View(-32.0, 28.0)
GRIDS = {8: (2, 6), 20: (4, 16), 50: (4, 46)}


def last_step(whole: Assembled) -> BuildStep:
    """The dividers have all come home but one."""
    labels = [each.label for each in whole.pieces]
    move = Move(pieces=(labels[-1],), direction=(0.0, 0.0, -1.0), travel=45.0)
    return BuildStep(number=2, standing=tuple(labels[:-1]), added=(labels[-1],), moves=(move,))


def bolts(whole: Assembled, step: BuildStep) -> tuple[Fitting, ...]:
    """A bolt with its washer comes to every piece from above, at its first joint."""
    bolt = HardwareStock(name="b", title="Bolt", kind="bolt", thread=6.0, length=50.0)
    washer = HardwareStock(name="w", title="Washer", kind="washer", thread=6.0)
    joints = {label: each for each in reversed(whole.joints) for label in (each.a, each.b)}
    down = Rigid(y=(0.0, -1.0, 0.0), z=(0.0, 0.0, -1.0))
    found = []
    for number, (label, joint) in enumerate(sorted(joints.items())):
        x, y, z = joint.frame.origin
        at = (x + 30.0, y, z + 60.0)
        frame = Rigid(at, down.x, down.y, down.z)
        for item, role, far in ((bolt, Role.SHANK, 80.0), (washer, Role.WASHER, 12.0)):
            found.append(
                Fitting(
                    item=item,
                    role=role,
                    frame=frame,
                    follows=label,
                    out=(0.0, 0.0, 1.0),
                    far=far,
                    mouth=at,
                    pieces=(label,),
                    step=step.number if label in step.added else 1,
                    number=number,
                )
            )
    return tuple(found)


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
        with_bolts = replace(shown, fittings=bolts(whole, step))
        bolted = best_of_three(lambda shown=with_bolts: step_view(shown, look=LOOK))
        rows.append((count, faces, drawn, chosen, bolted))
    print("\npieces  faces  draw ms  choose ms  bolted ms  growth of drawing with faces")
    for before, (count, faces, drawn, chosen, bolted) in zip([None, *rows], rows, strict=False):
        growth = log(drawn / before[2]) / log(faces / before[1]) if before else float("nan")
        print(f"{count:6d}  {faces:5d}  {drawn:7.0f}  {chosen:9.0f}  {bolted:9.0f}  {growth:6.2f}")
