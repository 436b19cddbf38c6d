"""Features that may be measured from the wrong edge of their part: each as its mirror image."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import islice

from kerfolio.assembly.hypotheses import Hypothesis, Slip
from kerfolio.assembly.links import Link
from kerfolio.assembly.misses import as_drawn
from kerfolio.assembly.regular import body_box
from kerfolio.basis.said import Text, said, stated_name, strung
from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.contour import Point
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_MOST = 40
"""So many are made at most."""

_Spots = Mapping[str, Point]
"""Where features lie, by their names."""


def from_far_ends(links: Sequence[Link]) -> Iterator[Hypothesis]:
    """Yield each set in some joints as measured from the opposite edge, across or along."""
    sets = {
        (end.part.name, stated_name(feature.name)): end.part
        for link in links
        for end in (link.b, link.a)
        for feature in end.features
    }
    made = (
        _from_far_end(part, name, found)
        for (_, name), part in sets.items()
        for found in _reflected(part, name)
    )
    yield from islice(made, _MOST)


def _reflected(part: SettledPart, name: str) -> Iterator[_Spots]:
    """Yield where a set would lie, in each direction in which that is elsewhere than it lies."""
    mine = [each for each in part.features if stated_name(each.name) == name]
    (x0, y0), (x1, y1) = body_box(part)
    for axis, doubled in ((0, x0 + x1), (1, y0 + y1)):
        there = {each.name: _mirrored(each.at, axis, doubled) for each in mine}
        covered = all(any(_is_same(each.at, spot) for each in mine) for spot in there.values())
        if not covered and all(_may_lie(each, axis) for each in mine):
            yield there


def _mirrored(at: Point, axis: int, doubled: float) -> Point:
    return (doubled - at[0], at[1]) if axis == 0 else (at[0], doubled - at[1])


def _may_lie(feature: SettledFeature, axis: int) -> bool:
    """Tell whether a feature can lie elsewhere along an axis: on an edge only along that."""
    return not feature.kind.on_edge or abs(feature.direction[axis]) < SAME


def _is_same(one: Point, other: Point) -> bool:
    return abs(one[0] - other[0]) < SAME and abs(one[1] - other[1]) < SAME


def _from_far_end(part: SettledPart, name: str, spots: _Spots) -> Hypothesis:
    called = f"{part.name}.{name}"
    mine = [each for each in part.features if each.name in spots]
    (x, y), (u, v) = mine[0].at, spots[mine[0].name]
    words: Text = f"`{called}` are measured from the other end of `{part.name}`"
    cure = "Every joint agrees once all of them are measured from its opposite edge."
    if len(mine) == 1:
        words = said("`{}` is {}", called, strung(as_drawn((u - x, v - y, 0.0)), " and "))
        cure = f"Every joint agrees once it is measured from the opposite edge of `{part.name}`."
    return Hypothesis(
        slip=Slip.FAR_END,
        words=words,
        cure=cure,
        place=mine[0].place,
        subject=called,
        parts=frozenset((part.name,)),
        change=partial(_with_spots, part=part.name, spots=spots),
    )


def _with_spots(settled: SettledPlan, part: str, spots: _Spots) -> SettledPlan:
    """Return a plan with features of a part elsewhere.

    Only where they meet others is changed, not what is cut: their old openings stand.
    """

    def made(each: SettledPart) -> SettledPart:
        if each.name != part:
            return each
        moved = (replace(f, at=spots.get(f.name, f.at)) for f in each.features)
        return replace(each, features=tuple(moved))

    return replace(settled, parts=tuple(map(made, settled.parts)))
