"""The sample's plans put together by hand, from the draughtsman's own poses."""

from __future__ import annotations

from functools import cache

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, Move, PosedPiece
from kerfolio.assembly.panels import panel_of
from kerfolio.geometry.rigid import Rigid, cross, length, scaled
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.settled import SettledPlan
from tests.tools.draw_sample_pictures import SAMPLE, settled_plan
from tests.tools.sample_poses import SCENES, Pose

NAMES = tuple(SCENES)


@cache
def settled(name: str) -> SettledPlan:
    workshop, findings = read_workshop(SAMPLE)
    assert workshop is not None, findings
    plan = next(each for each in workshop.plans if each.name == name)
    return settled_plan(plan, workshop.stock)


def rigid(pose: Pose) -> Rigid:
    return Rigid(pose.origin, pose.x, pose.y, cross(pose.x, pose.y))


@cache
def assembled(name: str) -> Assembled:
    found = settled(name)
    poses = SCENES[name](found).poses
    pieces = []
    for part in found.parts:
        made = panel_of(part)
        pieces += [
            PosedPiece(
                label=each.label,
                mark=each.mark,
                part=part.name,
                sheet=part.sheet,
                panel=made,
                pose=rigid(poses[each.label]),
                mass=part.mass,
            )
            for each in part.pieces
        ]
    return Assembled(variant=found.variant, pieces=tuple(pieces), joints=())


@cache
def order(name: str) -> BuildOrder:
    moves = SCENES[name](settled(name)).moves
    steps, standing = [], []
    for number, step in enumerate(settled(name).plan.steps, start=1):
        new = tuple(each.name for each in step.add)
        ways = dict.fromkeys(moves[label] for label in new if label in moves)
        made = tuple(
            Move(
                pieces=tuple(label for label in new if moves.get(label) == way),
                direction=scaled(way, -1 / length(way)),
                travel=length(way),
            )
            for way in ways
        )
        steps.append(BuildStep(number=number, standing=tuple(standing), added=new, moves=made))
        standing += new
    return BuildOrder(steps=tuple(steps))


def titles(name: str) -> tuple[str, ...]:
    return tuple(step.title for step in settled(name).plan.steps)
