"""Sets of notches or tabs that may be stated on the wrong edge of their part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import islice

from kerfolio.assembly.amended import settled_as
from kerfolio.assembly.hypotheses import Hypothesis, Slip
from kerfolio.assembly.links import Link
from kerfolio.basis.said import stated_name
from kerfolio.basis.tolerance import SAME
from kerfolio.model.feature import Feature, Notch, Tabs
from kerfolio.model.feature_kind import NOTCH, TAB
from kerfolio.settling.settled import SettledFeature, SettledPlan

_MOST = 8
"""So many are made at most: each is settled for."""

_OPPOSITE = {"top": "bottom", "bottom": "top", "left": "right", "right": "left"}


def from_other_edges(settled: SettledPlan, links: Sequence[Link]) -> Iterator[Hypothesis]:
    """Yield sets in some joints as stated on the opposite edge."""
    yield from islice(_from_other_edges(settled, links), _MOST)


def side_of(settled: SettledPlan, part: str, name: str) -> str:
    """Return the side that a set of notches or tabs is stated on; empty where it is on none."""
    feature = _stated(settled, part, name)
    return _side(feature) if feature else ""


def _stated(settled: SettledPlan, part: str, name: str) -> Feature | None:
    """Return a feature of a part as the plan states it."""
    parts = (each for each in settled.plan.parts if each.name == part)
    return next((f for each in parts for f in each.features if f.name == name), None)


def _side(feature: Feature) -> str:
    cutting = feature.cutting
    return cutting.edge.side if isinstance(cutting, (Notch, Tabs)) else ""


def _from_other_edges(settled: SettledPlan, links: Sequence[Link]) -> Iterator[Hypothesis]:
    """Yield each set of notches or tabs in a joint as stated on the opposite edge."""
    known: set[tuple[str, str]] = set()
    for link in links:
        for end in (link.a, link.b):
            base = stated_name(end.features[0].name) if end.features else ""
            if not base or (end.part.name, base) in known:
                continue
            known.add((end.part.name, base))
            feature = _stated(settled, end.part.name, base)
            if feature and (side := _side(feature)) in _OPPOSITE:
                yield _from_other_edge(end.part.name, feature, side)


def _from_other_edge(part: str, feature: Feature, side: str) -> Hypothesis:
    return Hypothesis(
        slip=Slip.EDGE,
        words=f"`{part}.{feature.name}` are stated on the wrong edge: `edge: {side}`",
        cure=f"Write `edge: {_OPPOSITE[side]}`.",
        place=feature.place,
        subject=f"{part}.{feature.name}",
        parts=frozenset((part,)),
        change=partial(_with_edge, part=part, feature=feature, side=_OPPOSITE[side]),
    )


def _with_edge(settled: SettledPlan, part: str, feature: Feature, side: str) -> SettledPlan:
    cutting = feature.cutting
    assert isinstance(cutting, (Notch, Tabs)), "asked for by the caller"
    there = replace(feature, cutting=replace(cutting, edge=replace(cutting.edge, side=side)))
    parts = tuple(
        replace(p, features=tuple(there if f.name == feature.name else f for f in p.features))
        if p.name == part
        else p
        for p in settled.plan.parts
    )
    made = settled_as(settled, replace(settled.plan, parts=parts))
    return settled if made is None or _is_taken(made, part, feature.name) else made


def _is_taken(settled: SettledPlan, part: str, name: str) -> bool:
    """Tell whether others on the edge are in the way of what is stated there."""
    mine = next(each for each in settled.parts if each.name == part)
    edged = [each for each in mine.features if each.kind in (NOTCH, TAB)]
    there = [each for each in edged if stated_name(each.name) == name]
    others = [each for each in edged if stated_name(each.name) != name]
    return any(_overlap(one, other) for one in there for other in others)


def _overlap(one: SettledFeature, other: SettledFeature) -> bool:
    """Tell whether two features on edges take up the same stretch of one edge."""
    (x, y), (u, v) = one.direction, other.direction
    dx, dy = other.at[0] - one.at[0], other.at[1] - one.at[1]
    along, outward = abs(dy * x - dx * y), abs(dx * x + dy * y)
    beside = along >= (one.width.value + other.width.value) / 2 - SAME
    apart = outward > max(one.length.value, other.length.value)  # another edge that looks so
    return x * u + y * v > 1 - SAME and not beside and not apart
