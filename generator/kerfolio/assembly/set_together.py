"""A set put together: everything a plan makes side by side, what lies loose on what bears it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, Move, PosedPiece
from kerfolio.assembly.building import Build
from kerfolio.assembly.extent import box_around, size_of
from kerfolio.assembly.made import Made
from kerfolio.assembly.set_places import Row, Spot, rows_of, set_places
from kerfolio.geometry.rigid import Vector
from kerfolio.model.plan import Assembly
from kerfolio.settling.making import labels_made

_DOWN = (0.0, 0.0, -1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class SetTogether:
    """All that a plan makes in its place.

    ``order`` puts twins together step by step with one another; steps count over the whole plan.
    ``rows`` are what lies, each with what bears it; ``sizes`` of one of each thing, and what each
    is stated to overhang, in mm.
    """

    assembled: Assembled
    order: BuildOrder
    rows: tuple[Row, ...]
    sizes: Mapping[str, Vector]
    overhangs: Mapping[str, float]


def set_together(made: Sequence[Made], overhangs: Mapping[str, float]) -> SetTogether | None:
    """Place everything that a plan makes; None where some of it has no places of its own.

    What lies on others overhangs the outermost of them by its ``overhangs``, mm.
    """
    builds = {each.stated.name: each.build for each in made if each.build is not None}
    if not made or len(builds) < len(made):
        return None
    sizes = {
        name: size_of(box_around(build.drawn.assembled.pieces)) for name, build in builds.items()
    }
    stated = {each.stated.name: each.stated for each in made}
    places = set_places(stated, sizes, overhangs)
    pieces = [piece for spot, at in places.items() for piece in _moved(spot, at, builds, stated)]
    return SetTogether(
        assembled=Assembled(variant=made[0].settled.variant, pieces=tuple(pieces), joints=()),
        order=_order(made),
        rows=rows_of(stated, sizes, places),
        sizes=sizes,
        overhangs=overhangs,
    )


def _moved(
    spot: Spot, at: Vector, builds: Mapping[str, Build], stated: Mapping[str, Assembly]
) -> Iterable[PosedPiece]:
    name, number = spot
    pieces = builds[name].drawn.assembled.pieces
    low, _ = box_around(pieces)
    by = (at[0] - low[0], at[1] - low[1], at[2] - low[2])
    for piece in pieces:
        yield replace(
            piece,
            label=labels_made(piece.label, stated[name])[number - 1],
            mark=labels_made(piece.mark, stated[name])[number - 1],
            pose=piece.pose.moved(by),
        )


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
