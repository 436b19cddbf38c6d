"""Joints that may name the wrong one of two features alike: the other is in no joint at all."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial

from kerfolio.assembly.ends import End, pieces_of
from kerfolio.assembly.hypotheses import Hypothesis, Slip, numbers_shared, with_joints
from kerfolio.assembly.links import Link
from kerfolio.basis.said import stated_name
from kerfolio.model.joint import Joint
from kerfolio.model.statement import Named
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_MOST = 24
"""So many are made at most, those of features of the same name first."""

_LIKE = 1.0
"""Sizes nearer than this, mm, are alike: what is in no joint has not the fit of one."""

_Set = tuple[SettledPart, tuple[SettledFeature, ...]]
"""A part with features that are stated under one name."""


def to_other_ends(settled: SettledPlan, links: Sequence[Link]) -> Iterator[Hypothesis]:
    """Yield joints as if an end named a set alike that no joint names."""
    pieces = pieces_of(settled)
    met = {
        (end.piece, feature.name)
        for link in links
        for end in (link.a, link.b)
        for feature in end.features
    }
    idle = {
        f"{piece}.{name}": (part, features)
        for piece, part in pieces.items()
        for name, features in _sets(part).items()
        if met.isdisjoint((piece, each.name) for each in features)
    }
    found = [
        (name.rpartition(".")[2] != stated_name(end.features[0].name), link, end, name)
        for link in links
        for end in (link.a, link.b)
        for name in _alike(end, idle)
    ]
    for _, link, end, name in sorted(found, key=lambda each: each[0])[:_MOST]:
        yield _as_other(link, end, name, idle[name][0])


def _sets(part: SettledPart) -> dict[str, tuple[SettledFeature, ...]]:
    """Return the features of a part by the name they are stated under."""
    found: dict[str, tuple[SettledFeature, ...]] = {}
    for each in part.features:
        base = stated_name(each.name)
        found[base] = (*found.get(base, ()), each)
    return found


def _alike(end: End, idle: Mapping[str, _Set]) -> Iterator[str]:
    """Yield the idle sets that could stand in an end's place: as many, of its kind and size."""
    for name, (_, features) in idle.items():
        as_many = len(features) == len(end.features) > 0
        if as_many and all(map(_is_like, end.features, features)):
            yield name


def _is_like(one: SettledFeature, other: SettledFeature) -> bool:
    sizes = ((one.width, other.width), (one.length, other.length))
    return one.kind is other.kind and all(abs(a.value - b.value) < _LIKE for a, b in sizes)


def _as_other(link: Link, end: End, name: str, part: SettledPart) -> Hypothesis:
    stated = link.joint.stated
    first = end is link.a
    was = stated.a if first else stated.b
    other: Joint = replace(stated, a=Named(name)) if first else replace(stated, b=Named(name))
    key = stated.kind.name if first else stated.kind.other
    return Hypothesis(
        slip=Slip.ANOTHER,
        words=f"`{was}` stands where `{name}` is meant, which no joint names",
        cure=f"Write `{key}: {name}`.",
        place=stated.place,
        subject=was.name,
        parts=frozenset((link.a.part.name, link.b.part.name, part.name)),
        change=partial(with_joints, joints={stated: other}),
        alike=numbers_shared(other.a, other.b) - numbers_shared(stated.a, stated.b),
    )
