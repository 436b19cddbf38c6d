"""Steps as they lie: the work turned as a maker says, and what is made apart by itself."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, Move, PosedPiece
from kerfolio.assembly.extent import box_around
from kerfolio.assembly.fitting import Fitting
from kerfolio.assembly.turns import in_turns
from kerfolio.assembly.wall import Wall
from kerfolio.geometry.rigid import HERE, WAYS, Rigid, Vector, between, cross, dot, length, scaled
from kerfolio.model.lying import BACK, FACE_DOWN, FACE_UP, FRONT, INNER, LEFT, OUTER, OVER, RIGHT
from kerfolio.model.plan import Step

_DOWN = WAYS["down"]
_UNDER: Mapping[str, Vector] = {
    LEFT: WAYS["left"],
    RIGHT: WAYS["right"],
    FRONT: WAYS["front"],
    BACK: WAYS["back"],
    OVER: WAYS["up"],
}
"""Which side of the finished whole a word of lying puts under, as a direction of the world."""

_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A step as its picture shows it, with the whole ``assembled`` turned as the work lies.

    ``turn`` is how it is turned from the way it stands when finished. ``lying`` is the piece that
    lies on the bench, empty where the maker does not say; ``lay`` is how what stands in the step
    was turned in the picture before, None where it lay as it does now. ``people`` is how many it
    takes, ``held`` the pieces that somebody holds meanwhile. ``fittings`` are the hardware and
    boards that are new in it or there before. ``wall`` is the one that it is fixed to.
    """

    assembled: Assembled
    step: BuildStep
    turn: Rigid = HERE
    lying: str = ""
    lay: Rigid | None = None
    people: int = 1
    held: tuple[str, ...] = ()
    fittings: tuple[Fitting, ...] = ()
    wall: Wall | None = None

    @property
    def turned(self) -> bool:
        """Whether what stands lay otherwise in the picture before."""
        return self.lay is not None


def shown_steps(
    assembled: Assembled,
    order: BuildOrder,
    stated: Sequence[Step],
    fittings: Sequence[Fitting] = (),
    wall: Wall | None = None,
) -> tuple[Shown, ...]:
    """Return each step of an order as it is to be shown; ``stated`` are the plan's own steps.

    Steps of an order that the program found lie in no way, as nobody says how. ``fittings`` are all
    the hardware and boards of the plan, at home; a step that adds nothing else is shown, too. A
    ``wall`` is shown from the step on that fixes something to it.
    """
    found: list[Shown] = []
    lay: dict[str, Rigid] = {}
    for step in _with_hardware_alone(order, fittings):
        said = None if order.found or step.number > len(stated) else stated[step.number - 1]
        shown = _shown(assembled, step, said)
        before = (lay[each] for each in shown.step.standing if each in lay)
        other = next((each for each in before if _differ(each, shown.turn)), None)
        lay |= dict.fromkeys((*shown.step.standing, *shown.step.added), shown.turn)
        there = {*shown.step.standing, *shown.step.added}
        mounted = tuple(
            each.turned(shown.turn)
            for each in fittings
            if each.step <= step.number and there.issuperset(each.pieces)
        )
        behind = wall if wall and 0 < wall.since <= step.number and _stands(shown, step) else None
        found.append(replace(shown, lay=other, fittings=mounted, wall=behind))
    return tuple(found)


def _stands(shown: Shown, step: BuildStep) -> bool:
    """Tell whether a step shows the whole as it stands, with all that is there."""
    return not shown.lying and shown.step.standing == step.standing


def shown_at(assembled: Assembled, order: BuildOrder, stated: Sequence[Step], number: int) -> Shown:
    """Return any step of the plan as it is to be shown; one that adds nothing has what stands."""
    step = next((each for each in order.steps if each.number == number), None)
    if step is None:
        before = [each for each in order.steps if each.number < number]
        there = (*before[-1].standing, *before[-1].added) if before else ()
        step = BuildStep(number=number, standing=there, added=(), moves=())
    return _shown(assembled, step, stated[number - 1])


def _with_hardware_alone(order: BuildOrder, fittings: Sequence[Fitting]) -> Iterator[BuildStep]:
    """Yield the steps of an order, and among them those that add nothing but hardware."""
    adding = {step.number for step in order.steps}
    alone = {each.step for each in fittings} - adding - {0}
    steps = {step.number: step for step in order.steps}
    there: tuple[str, ...] = ()
    for number in sorted(adding | alone):
        step = steps.get(number)
        if step is None:
            yield BuildStep(number=number, standing=there, added=(), moves=())
        else:
            yield step
            there = (*step.standing, *step.added)


def _shown(assembled: Assembled, step: BuildStep, said: Step | None) -> Shown:
    order = [each.name for each in said.order] if said else []
    if (said and said.beside) or is_apart(assembled, step):
        step = replace(step, standing=())
    lies = said.lies if said else None
    there = {*step.standing, *step.added} & {each.label for each in assembled.pieces}
    held = tuple(each.name for each in said.holds if each.name in there) if said else ()
    shown = Shown(assembled=assembled, step=step, people=said.people if said else 1, held=held)
    if lies is None or lies.piece.name not in there:
        return replace(shown, step=in_turns(assembled, step, order))
    piece = assembled.piece(lies.piece.name)
    turn = turned_down(_under(assembled, piece, lies.way))
    turned = _turned(assembled, turn)
    resting = in_turns(turned, _resting(step, piece.label, turn), order)
    return replace(shown, assembled=turned, step=resting, turn=turn, lying=piece.label)


def is_apart(assembled: Assembled, step: BuildStep) -> bool:
    """Tell whether a step begins a lot of its own: no joint holds it to what stands.

    Something that is brought there, and only lies on what stands, is not apart from it.
    """
    moved = {label for move in step.moves for label in move.pieces}
    if not step.standing or moved >= {*step.added} or moved & {*step.standing}:
        return False
    ends = [{each.a, each.b} for each in assembled.joints]
    return not any(pair & {*step.added} and pair & {*step.standing} for pair in ends)


def turned_down(way: Vector) -> Rigid:
    """Return the shortest turn that makes a direction (unit) look down.

    Where it looks up, the work is turned over towards the reader: its front comes to the rear.
    """
    share = dot(way, _DOWN)
    if share > 1 - _SAME:
        return HERE
    if share < -1 + _SAME:
        return Rigid(y=(0.0, -1.0, 0.0), z=(0.0, 0.0, -1.0))
    raw = cross(way, _DOWN)
    axis, angle = scaled(raw, 1 / length(raw)), math.acos(share)
    unit: tuple[Vector, ...] = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))
    x, y, z = (_about(axis, angle, each) for each in unit)
    return Rigid(x=x, y=y, z=z)


def _about(axis: Vector, angle: float, at: Vector) -> Vector:
    """Turn a vector about an axis (Rodrigues' formula)."""
    c, s, along = math.cos(angle), math.sin(angle), dot(axis, at) * (1 - math.cos(angle))
    across = cross(axis, at)
    x, y, z = (at[i] * c + across[i] * s + axis[i] * along for i in range(3))
    return x, y, z


def _under(assembled: Assembled, piece: PosedPiece, way: str) -> Vector:
    """Return the direction of the world that is to look down."""
    show = piece.pose.z
    if way in _UNDER:
        return _UNDER[way]
    if way in (FACE_DOWN, FACE_UP):
        return show if way == FACE_DOWN else scaled(show, -1.0)
    assert way in (OUTER, INNER), "words of lying are read from a list"
    out = dot(between(_middle(assembled.pieces), _middle([piece])), show) >= 0
    return show if out == (way == OUTER) else scaled(show, -1.0)


def _middle(pieces: Sequence[PosedPiece]) -> Vector:
    low, high = box_around(pieces)
    return (low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2


def _turned(assembled: Assembled, turn: Rigid) -> Assembled:
    pieces = (replace(each, pose=turn.after(each.pose)) for each in assembled.pieces)
    joints = (replace(each, frame=turn.after(each.frame)) for each in assembled.joints)
    return replace(assembled, pieces=tuple(pieces), joints=tuple(joints))


def _resting(step: BuildStep, lying: str, turn: Rigid) -> BuildStep:
    """Return a step turned, in which what lies stays and everything else comes to it."""
    there = (*step.standing, *step.added)
    moves = []
    for move in step.moves:
        way = turn.vector(move.direction)
        if lying not in move.pieces:
            moves.append(replace(move, direction=way))
            continue
        others = tuple(each for each in there if each not in move.pieces)
        moves.append(Move(pieces=others, direction=scaled(way, -1.0), travel=move.travel))
    return replace(step, moves=tuple(moves))


def _differ(one: Rigid, other: Rigid) -> bool:
    pairs = ((one.x, other.x), (one.y, other.y), (one.z, other.z))
    return any(length(between(a, b)) > _SAME for a, b in pairs)
