"""Which drills a plan's round holes take: one for each diameter and what it is for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from kerfolio.basis.digits import rounded
from kerfolio.basis.said import stated_name
from kerfolio.model.feature import EdgeBore, Hole
from kerfolio.model.feature_kind import HOLE
from kerfolio.settling.bored import bores_of_part
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Drilled:
    """A hole of a part as a drill makes it, mm: its middle from the part's 0,0, how wide, how deep.

    ``depth`` is None where it goes through. ``item`` names what of the stock it is for, empty where
    its size is just stated; ``pilot`` that a thread is cut into it, ``bore`` that it is the wide
    one which a head sinks into, ``edge`` that it goes into an edge, from its mouth ``at``.
    """

    at: tuple[float, float]
    diameter: float
    depth: float | None
    item: str = ""
    pilot: bool = False
    bore: bool = False
    edge: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Drill:
    """A drill and what it bores: ``count`` holes on all pieces of the parts named, mm.

    ``items`` are what they are for, by their names in the stock, as far as the plan says so.
    """

    diameter: float
    depth: float | None
    items: tuple[str, ...]
    pilot: bool
    bore: bool
    edge: bool
    count: int
    parts: tuple[str, ...]


def holes_of(settled: SettledPlan, part: SettledPart) -> tuple[Drilled, ...]:
    """Return the holes of a part in the order of its features, wide bores before what they meet."""
    stated = _stated(settled, part.name)
    return tuple(
        hole
        for feature in part.features
        if feature.kind is HOLE
        for hole in (*_bores(feature), _hole(feature, stated.get(stated_name(feature.name))))
    )


def edge_bores_of(settled: SettledPlan, part: SettledPart) -> tuple[Drilled, ...]:
    """Return the bores into the edges of a part in the order of its features."""
    stated = _stated(settled, part.name)
    return tuple(
        replace(_hole(feature, stated.get(stated_name(feature.name))), edge=True)
        for feature in bores_of_part(part)
    )


def _stated(settled: SettledPlan, part: str) -> Mapping[str, Hole | EdgeBore]:
    """Return the holes that the plan states of a part by their names; drawn ones are not there."""
    owner = next((each for each in settled.plan.parts if each.name == part), None)
    features = owner.features if owner else ()
    return {
        each.name: each.cutting for each in features if isinstance(each.cutting, Hole | EdgeBore)
    }


def _hole(feature: SettledFeature, stated: Hole | EdgeBore | None) -> Drilled:
    named = (stated.pilot or stated.for_) if stated else None
    return Drilled(
        at=feature.at,
        diameter=feature.width.value,
        depth=feature.depth.value if feature.depth else None,
        item=named.name if named else "",
        pilot=stated is not None and stated.pilot is not None,
    )


def _bores(feature: SettledFeature) -> Iterator[Drilled]:
    """Yield the wide bore that a head sinks into, where there is one."""
    if feature.counterbore is not None:
        wide, deep = feature.counterbore
        yield Drilled(at=feature.at, diameter=wide.value, depth=deep.value, bore=True)


def drills_of(settled: SettledPlan) -> tuple[Drill, ...]:
    """Return the drills of a plan, narrow before wide; holes alike in all but place count as one.

    Holes of one width for bolts of several lengths take one drill.
    """
    found: dict[tuple[float, float, bool, bool, bool], list[tuple[Drilled, SettledPart]]] = {}
    for part in settled.parts:
        for hole in (*holes_of(settled, part), *edge_bores_of(settled, part)):
            deep = 0.0 if hole.depth is None else rounded(hole.depth, 2)
            key = (rounded(hole.diameter, 2), deep, hole.bore, hole.pilot, hole.edge)
            found.setdefault(key, []).append((hole, part))
    return tuple(_drill(found[key]) for key in sorted(found))


def _drill(holes: list[tuple[Drilled, SettledPart]]) -> Drill:
    one = holes[0][0]
    return Drill(
        diameter=one.diameter,
        depth=one.depth,
        items=tuple(dict.fromkeys(hole.item for hole, _ in holes if hole.item)),
        pilot=one.pilot,
        bore=one.bore,
        edge=one.edge,
        count=sum(len(part.pieces) for _, part in holes),
        parts=tuple(dict.fromkeys(part.name for _, part in holes)),
    )
