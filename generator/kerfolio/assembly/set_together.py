"""A set put together: everything a plan makes side by side, what lies loose on what bears it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, Move
from kerfolio.assembly.building import Build
from kerfolio.assembly.extent import box_around, size_of
from kerfolio.assembly.in_use import in_use_of
from kerfolio.assembly.made import Made
from kerfolio.assembly.set_in_use import Laid, UsedThing, laid_in_use, laid_on
from kerfolio.assembly.set_places import Row, Spot, rows_of, set_places
from kerfolio.geometry.rigid import Vector
from kerfolio.model.plan import Assembly, Plan
from kerfolio.settling.making import labels_made
from kerfolio.settling.settled import SettledPlan

_DOWN = (0.0, 0.0, -1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class SetTogether:
    """All that a plan makes in its place.

    ``order`` puts twins together step by step with one another; steps count over the whole plan.
    ``rows`` are what lies, each with what bears it, ``overhangs`` what each is stated to overhang,
    mm. ``laid`` is each that lies, with what bears it, ``in_use`` what each does under a person.
    ``stood`` is each by itself, in its place.
    """

    plan: Plan
    assembled: Assembled
    order: BuildOrder
    rows: tuple[Row, ...]
    overhangs: Mapping[str, float]
    laid: tuple[Laid, ...]
    in_use: tuple[UsedThing, ...]
    stood: Mapping[Spot, Assembled]


def set_together(made: Sequence[Made], drawn: SettledPlan) -> SetTogether | None:
    """Place everything that a plan makes; None where some of it has no places of its own.

    ``drawn`` is the plan at the thickness it is drawn for, with one of each piece.
    """
    builds = {each.stated.name: each.build for each in made if each.build is not None}
    if not made or len(builds) < len(made):
        return None
    sizes = {
        name: size_of(box_around(build.drawn.assembled.pieces)) for name, build in builds.items()
    }
    stated = {each.stated.name: each.stated for each in made}
    overhangs = dict(drawn.overhangs)
    places = set_places(stated, sizes, overhangs)
    stood = {spot: _moved(spot, at, builds, stated) for spot, at in places.items()}
    pieces = [piece for each in stood.values() for piece in each.pieces]
    rows = rows_of(stated, sizes, places)
    laid = tuple(_laid(rows, stood))
    return SetTogether(
        plan=drawn.plan,
        assembled=Assembled(variant=made[0].settled.variant, pieces=tuple(pieces), joints=()),
        order=_order(made),
        rows=rows,
        overhangs=overhangs,
        laid=laid,
        in_use=tuple(_in_use(made, laid, rows, drawn)),
        stood=stood,
    )


def _in_use(
    made: Sequence[Made], laid: Sequence[Laid], rows: Sequence[Row], drawn: SettledPlan
) -> Iterator[UsedThing]:
    """Yield what each thing does in use, what lies on others with them; one of twins.

    A single piece that neither lies on anything nor bears it is in no use by itself.
    """
    first = {each.stated.name: each for each in reversed(laid)}
    on = {row.lying.name: tuple(name for name, _ in row.supports) for row in rows}
    bearing = {name for names in on.values() for name in names}
    for each in made:
        name, build = each.stated.name, each.build
        assert build is not None, "asked for by the caller"
        if name in first:
            found = laid_in_use(drawn, first[name])
        elif each.is_single:
            continue
        else:
            bare = name in bearing
            found = in_use_of(each.settled, build.drawn.assembled, build.stability, bare=bare)
        if found is not None:
            under = on.get(name, ())
            yield UsedThing(stated=each.stated, on=under, bears=name in bearing, found=found)


def _laid(rows: Sequence[Row], stood: Mapping[Spot, Assembled]) -> Iterator[Laid]:
    """Yield each thing that lies, twins one by one, with what bears it."""
    for row in rows:
        supports = [stood[spot] for spot in row.supports]
        for (name, _), lying in stood.items():
            if name == row.lying.name:
                yield laid_on(row.lying, lying, supports)


def _moved(
    spot: Spot, at: Vector, builds: Mapping[str, Build], stated: Mapping[str, Assembly]
) -> Assembled:
    name, number = spot
    found = builds[name].drawn.assembled
    low, _ = box_around(found.pieces)
    by = (at[0] - low[0], at[1] - low[1], at[2] - low[2])

    def named(label: str) -> str:
        return labels_made(label, stated[name])[number - 1]

    pieces = (
        replace(piece, label=named(piece.label), mark=named(piece.mark), pose=piece.pose.moved(by))
        for piece in found.pieces
    )
    joints = (
        replace(
            joint,
            a=named(joint.a),
            b=named(joint.b),
            ends=(named(joint.ends[0]), named(joint.ends[1])),
            frame=joint.frame.moved(by),
        )
        for joint in found.joints
    )
    return replace(found, pieces=tuple(pieces), joints=tuple(joints))


def _order(made: Sequence[Made]) -> BuildOrder:
    steps: list[BuildStep] = []
    before: tuple[str, ...] = ()
    for each in made:
        assert each.build is not None, "asked for by the caller"
        for step in each.build.order.steps:
            added = _all(step.added, each.stated)
            moves = tuple(
                replace(move, pieces=pieces)
                for move in step.moves
                for pieces in _twins(move.pieces, each.stated)
            )
            if each.lies_alone:
                lots = _twins(step.added, each.stated)
                moves = tuple(Move(pieces=lot, direction=_DOWN, travel=0.0) for lot in lots)
            number = each.first_step + step.number - 1
            steps.append(BuildStep(number=number, standing=before, added=added, moves=moves))
            before = (*before, *added)
    return BuildOrder(steps=tuple(steps))


def _all(labels: Sequence[str], stated: Assembly) -> tuple[str, ...]:
    return tuple(label for lot in _twins(labels, stated) for label in lot)


def _twins(labels: Sequence[str], stated: Assembly) -> tuple[tuple[str, ...], ...]:
    return tuple(zip(*(labels_made(label, stated) for label in labels), strict=True))
