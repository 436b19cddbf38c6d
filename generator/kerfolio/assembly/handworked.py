"""What a step glues and clamps: the joints that close in it, and where their faces meet."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, PosedJoint, PosedPiece
from kerfolio.assembly.explode import apart
from kerfolio.basis.names import begins
from kerfolio.geometry.contact import contacts, faces_of
from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.patch import Patch
from kerfolio.geometry.rigid import HERE, between, length
from kerfolio.model.handwork import Handwork
from kerfolio.model.plan import Plan, Step
from kerfolio.model.purpose import GLUED

_ROOM = 1.2
"""Faces of a joint that are no further apart than this when it is home, mm, are glued together:
more than twice the play of any purpose."""
_STILL = 1e-6


def is_of(joint: PosedJoint, name: str) -> bool:
    """Tell whether a name means a joint: a feature at one of its ends, that piece or its part."""
    return any(begins(end, name) for end in joint.ends)


def closing(assembled: Assembled, step: BuildStep) -> tuple[PosedJoint, ...]:
    """Return the joints that come together in a step."""
    there, stood = {*step.standing, *step.added}, {*step.standing}
    met = [each for each in assembled.joints if {each.a, each.b} <= there]
    # only of joints between pieces that stood is it in question, where one of them moves alone
    doubtful = any({each.a, each.b} <= stood and _is_split(each, step) for each in met)
    away = apart(assembled, BuildOrder(steps=(step,))) if doubtful else {}

    def closes(joint: PosedJoint) -> bool:
        far = between(away.get(joint.a, HERE.origin), away.get(joint.b, HERE.origin))
        return not {joint.a, joint.b} <= stood or length(far) > _STILL

    return tuple(each for each in met if closes(each))


def _is_split(joint: PosedJoint, step: BuildStep) -> bool:
    """Tell whether a move of a step takes one of the two pieces of a joint without the other."""
    return any((joint.a in each.pieces) != (joint.b in each.pieces) for each in step.moves)


def glued_ends(plan: Plan) -> frozenset[tuple[str, str]]:
    """Return the ends, as stated, of the joints that the plan gives room for glue."""
    fits = (
        (joint, joint.fit or made.fit or plan.fit) for made in plan.made for joint in made.joints
    )
    return frozenset(
        (joint.a.name, joint.b.name) for joint, fit in fits if fit and fit.purpose is GLUED
    )


def has_ends(joint: PosedJoint, stated: Collection[tuple[str, str]]) -> bool:
    """Tell whether a joint is one of those stated by their two ends."""
    return any(is_of(joint, a) and is_of(joint, b) for a, b in stated)


def glued_in(
    assembled: Assembled, step: BuildStep, stated: Step, plan: Plan
) -> tuple[PosedJoint, ...]:
    """Return the joints that a step glues: those it names, and those that close and are glued."""
    ends = glued_ends(plan)
    named = stated.glues.of if stated.glues else ()
    return tuple(
        each
        for each in closing(assembled, step)
        if has_ends(each, ends) or any(is_of(each, name.name) for name in named)
    )


def clamped_in(
    assembled: Assembled, step: BuildStep, clamps: Handwork, glued: Sequence[PosedJoint]
) -> tuple[PosedJoint, ...]:
    """Return the joints that clamps press: those they name, else those glued in the step."""
    if not clamps.of:
        return tuple(glued)
    there = {*step.standing, *step.added}
    return tuple(
        each
        for each in assembled.joints
        if {each.a, each.b} <= there and any(is_of(each, name.name) for name in clamps.of)
    )


@dataclass(frozen=True, slots=True)
class Coated:
    """A piece with the patches of its faces that get glue, in the world."""

    piece: PosedPiece
    patches: tuple[Patch, ...]


def coated(assembled: Assembled, joints: Collection[PosedJoint]) -> tuple[Coated, ...]:
    """Return the pieces that joints glue, in order, each with what meets another there."""
    found: dict[str, list[Patch]] = {}
    for a, b in dict.fromkeys((each.a, each.b) for each in joints):
        for one, other in meeting_faces(assembled, (a, b), joints):
            found.setdefault(a, []).append(one)
            found.setdefault(b, []).append(other)
    return tuple(
        Coated(each, tuple(found[each.label])) for each in assembled.pieces if each.label in found
    )


def meeting_faces(
    assembled: Assembled, pair: tuple[str, str], joints: Collection[PosedJoint]
) -> Iterator[tuple[Patch, Patch]]:
    """Yield what of two pieces meets at some of their joints: what is nearer to no other joint."""
    all_joints = [each for each in assembled.joints if {each.a, each.b} == {*pair}]
    one, other = (
        faces_of(PosedPanel(each.panel, each.pose)) for each in map(assembled.piece, pair)
    )
    for mine, theirs in contacts(one, other, _ROOM):
        if min(all_joints, key=lambda each: _off(mine, each)) in joints:
            yield mine, theirs


def _off(patch: Patch, joint: PosedJoint) -> float:
    loop = patch.loops[0]
    x, y, z = (sum(at[axis] for at in loop) / len(loop) for axis in range(3))
    return round(length(between((x, y, z), joint.frame.origin)), 3)
