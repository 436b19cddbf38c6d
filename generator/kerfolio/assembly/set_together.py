"""A set put together: everything a plan makes side by side, what lies loose on what bears it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from kerfolio.assembly.assembled import Assembled, BuildOrder, BuildStep, Move, PosedPiece
from kerfolio.assembly.building import Build
from kerfolio.assembly.extent import box_around, size_of
from kerfolio.assembly.made import Made
from kerfolio.geometry.rigid import Vector
from kerfolio.model.plan import Assembly
from kerfolio.settling.making import labels_made

_BESIDE = 0.35
"""Air between things that stand beside each other, of the widest of them (tried on pictures)."""

_TOUCH = 1e-6  # mm

_DOWN = (0.0, 0.0, -1.0)

Spot = tuple[str, int]
"""An assembly's name and which of them, from 1."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SetTogether:
    """All that a plan makes in its place.

    ``order`` puts twins together step by step with one another; steps count over the whole plan.
    ``heights`` are those of what bears each lying thing, mm; ``crowded`` are those too short for
    what bears them.
    """

    assembled: Assembled
    order: BuildOrder
    heights: tuple[tuple[Assembly, tuple[float, ...]], ...]
    crowded: tuple[Assembly, ...]


def set_together(made: Sequence[Made], overhangs: Mapping[str, float]) -> SetTogether | None:
    """Place everything that a plan makes; None where some of it has no places of its own.

    Supports stand in a row from left to right under what lies on them, the outermost ``overhangs``
    (mm) inside its ends, the others evenly between; all else stands beside them.
    """
    builds = {each.stated.name: each.build for each in made if each.build is not None}
    if not made or len(builds) < len(made):
        return None
    sizes = {
        name: size_of(box_around(build.drawn.assembled.pieces)) for name, build in builds.items()
    }
    stated = {each.stated.name: each.stated for each in made}
    places = _places(stated, sizes, overhangs)
    lying = [(each, _supports(each, stated)) for each in stated.values() if each.lies_on]
    pieces = [piece for spot, at in places.items() for piece in _moved(spot, at, builds, stated)]
    return SetTogether(
        assembled=Assembled(variant=made[0].settled.variant, pieces=tuple(pieces), joints=()),
        order=_order(made),
        heights=tuple((each, tuple(sizes[n][2] for n, _ in on)) for each, on in lying),
        crowded=tuple(each for each, on in lying if _crowded(on, places, sizes)),
    )


def _crowded(
    supports: Sequence[Spot], places: Mapping[Spot, Vector], sizes: Mapping[str, Vector]
) -> bool:
    """Tell whether one of a row of supports stands in the next one."""
    return any(places[a][0] + sizes[a[0]][0] > places[b][0] + _TOUCH for a, b in pairwise(supports))


def _supports(assembly: Assembly, known: Mapping[str, Assembly]) -> tuple[Spot, ...]:
    """Return what an assembly lies on, each that is there once, in the order written."""
    found: dict[Spot, None] = {}
    for named in assembly.lies_on.supports if assembly.lies_on else ():
        name, _, number = named.name.partition(".")
        count = known[name].count if name in known else 0
        wanted = [int(number)] if number.isdigit() else [] if number else range(1, count + 1)
        found |= {(name, each): None for each in wanted if each <= count}
    return tuple(found)


def _places(
    stated: Mapping[str, Assembly], sizes: Mapping[str, Vector], overhangs: Mapping[str, float]
) -> dict[Spot, Vector]:
    """Return where the lower left front corner of each thing comes to stand."""
    places: dict[Spot, Vector] = {}
    beside = _BESIDE * max(size[0] for size in sizes.values())
    edge = 0.0
    for name, assembly in stated.items():
        for number in range(1, assembly.count + 1):
            under = [spot for spot in _supports(assembly, stated) if spot not in places]
            if not under:
                continue
            places |= _borne((name, number), under, sizes, edge, overhangs.get(name, 0.0))
            edge = _right_edge(places, sizes) + beside
    for name, assembly in stated.items():
        for number in range(1, assembly.count + 1):
            if (name, number) not in places:
                places[name, number] = (edge, -sizes[name][1] / 2, 0.0)
                edge += sizes[name][0] + beside
    return places


def _borne(
    lying: Spot, under: Sequence[Spot], sizes: Mapping[str, Vector], edge: float, overhang: float
) -> dict[Spot, Vector]:
    size = sizes[lying[0]]
    first = edge + overhang
    last = edge + size[0] - overhang - sizes[under[-1][0]][0]
    gaps = max(1, len(under) - 1)
    if len(under) == 1:
        first = last = edge + (size[0] - sizes[under[0][0]][0]) / 2
    places: dict[Spot, Vector] = {
        spot: (first + (last - first) * index / gaps, -sizes[spot[0]][1] / 2, 0.0)
        for index, spot in enumerate(under)
    }
    top = max(sizes[name][2] for name, _ in under)
    return {**places, lying: (edge, -size[1] / 2, top)}


def _right_edge(places: Mapping[Spot, Vector], sizes: Mapping[str, Vector]) -> float:
    return max(at[0] + sizes[name][0] for (name, _), at in places.items())


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
