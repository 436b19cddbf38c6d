"""Edges that went into housings and tusks into slots are tabs for good, all others edges again."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from kerfolio.adopting.meeting import Meet
from kerfolio.adopting.recognised import Tab
from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.together import Arrangement
from kerfolio.model.feature_kind import TAB


def with_own_tongues(
    parts: Sequence[PartPlan], arranged: Arrangement
) -> tuple[tuple[PartPlan, ...], Arrangement]:
    """Return parts with those tongues that go into a housing, and what meets by their new numbers.

    A piece between two housings has tongues as deep as it is drawn long: what it is short of both
    is shared out evenly.
    """
    made, numbers = [], dict[tuple[int, int], int]()
    for part in parts:
        kept = [
            i
            for i, tab in enumerate(part.made.tabs)
            if (tab.stretch and tab.sure) or _goes_in(part, i, arranged)
        ]
        tabs = [part.made.tabs[i] for i in kept]
        depths = [_depth(part, i, arranged) for i in kept]
        for place, old in enumerate(kept):
            numbers |= {(piece, old): place for piece in part.numbers}
        evened = tuple(
            _evened(tab, depth, tabs, depths) for tab, depth in zip(tabs, depths, strict=True)
        )
        made.append(replace(part, made=replace(part.made, tabs=evened)))
    meets = tuple(
        replace(each, first=numbers[each.one, each.first]) if each.kind is TAB else each
        for each in arranged.meets
        if each.kind is not TAB or (each.one, each.first) in numbers
    )
    owner = {piece: part for part in made for piece in part.numbers}
    bodies = {n: replace(body, part=owner[n].made) for n, body in arranged.bodies.items()}
    return tuple(made), replace(arranged, meets=meets, bodies=bodies)


def _goes_in(part: PartPlan, tab: int, arranged: Arrangement) -> bool:
    """Tell whether a tongue meets a housing in every piece of its part that has a place."""
    placed = [piece for piece in part.numbers if piece in arranged.poses]
    met = {meet.one for meet in arranged.meets if meet.kind is TAB and meet.first == tab}
    return bool(placed) and met.issuperset(placed)


def _depth(part: PartPlan, tab: int, arranged: Arrangement) -> float:
    """Return how far a tab goes in where its piece lies: a tongue no further than its housing."""
    own = part.made.tabs[tab]
    meet = next((m for m in arranged.meets if _is_of(m, part, tab)), None)
    if own.stretch or meet is None:
        return own.depth
    other = arranged.bodies[meet.other]
    onto = arranged.poses[meet.other].inverse.after(arranged.poses[meet.one])
    _, _, z = onto.point((*own.at, part.thickness / 2))
    return own.depth - (z - other.thickness)


def _is_of(meet: Meet, part: PartPlan, tab: int) -> bool:
    return meet.kind is TAB and meet.one in part.numbers and meet.first == tab


def _evened(tab: Tab, depth: float, tabs: Sequence[Tab], depths: Sequence[float]) -> Tab:
    """Return a tongue as deep as it and the one opposite are on average."""
    if tab.stretch:
        return tab
    both = [depth]
    for other, own in zip(tabs, depths, strict=True):
        across = tab.out[0] * other.out[0] + tab.out[1] * other.out[1]
        if not other.stretch and across < -0.999:
            both.append(own)
    deep = sum(both) / len(both)
    (x, y), (ux, uy) = tab.at, tab.out
    off = tab.depth - deep
    return replace(tab, at=(x + ux * off, y + uy * off), depth=deep)
