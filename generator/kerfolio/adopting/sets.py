"""Features that meet the same piece, as sets in the order of what they meet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kerfolio.adopting.edge_key import row_key
from kerfolio.adopting.meeting import Meet
from kerfolio.adopting.recognised import Recognised, Tab
from kerfolio.adopting.together import Arrangement
from kerfolio.model.feature_kind import TAB, FeatureKind


@dataclass(frozen=True, slots=True, kw_only=True)
class PartPlan:
    """A part: what it is called, its pieces' labels and numbers, its sheet, what it is made of."""

    name: str
    labels: tuple[str, ...]
    numbers: tuple[int, ...]
    sheet: str
    thickness: float
    made: Recognised


_Key = tuple[tuple[int, int] | None, ...]
"""For each piece of a part the mate of its slots: a piece, and the number of its set of tabs."""


@dataclass(frozen=True, slots=True)
class TabSet:
    """Tabs on one edge that meet one piece, in the order they are stated; their numbers."""

    part: int
    tabs: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class SlotSet:
    """Slots that one set of tabs meets, in that set's order; for each piece of the part, whose.

    ``mates`` are the mate's piece and its set, None for a piece that none meets.
    """

    part: int
    slots: tuple[int, ...]
    mates: tuple[tuple[int, TabSet] | None, ...]


def tab_sets(parts: Sequence[PartPlan], arranged: Arrangement) -> tuple[TabSet, ...]:
    """Return the tabs of each part in sets: on one edge, of one size, into the same pieces."""
    met = {(m.one, m.first): m.other for m in arranged.meets if m.kind is TAB}
    found = []
    for number, part in enumerate(parts):
        groups: dict[tuple[object, ...], list[int]] = {}
        for index, tab in enumerate(part.made.tabs):
            theirs = tuple(met.get((piece, index)) for piece in part.numbers)
            groups.setdefault((row_key(tab), theirs), []).append(index)
        for members in groups.values():
            along = sorted((_along(part.made.tabs[index]), index) for index in members)
            found.append(TabSet(number, tuple(index for _, index in along)))
    return tuple(found)


def _along(tab: Tab) -> float:
    """Return where a tab lies along its edge: rightwards, or upwards."""
    (ax, ay) = tab.along
    sign = 1.0 if (ax + ay if abs(ax + ay) > 1e-9 else ax) > 0 else -1.0
    return sign * (tab.at[0] * ax + tab.at[1] * ay)


def slot_sets(
    parts: Sequence[PartPlan], sets: Sequence[TabSet], arranged: Arrangement
) -> tuple[tuple[TabSet, ...], tuple[SlotSet, ...]]:
    """Return the sets of tabs, some turned round, and the sets of slots that they meet.

    Slots are one set where in every piece of their part one set of tabs meets them, in one order.
    A set of tabs is turned round where that brings it in the order of its slots.
    """
    owner = {piece: number for number, part in enumerate(parts) for piece in part.numbers}
    set_of = {(each.part, tab): k for k, each in enumerate(sets) for tab in each.tabs}
    into: dict[tuple[int, int], tuple[int, int]] = {
        (m.other, m.second): (m.one, m.first) for m in arranged.meets if m.kind is TAB
    }
    turned = dict.fromkeys(range(len(sets)), 1)
    rows: list[tuple[int, list[int], _Key]] = []
    for number, part in enumerate(parts):
        groups: dict[_Key, list[int]] = {}
        for index in range(len(part.made.slots)):
            tabs = [into.get((piece, index)) for piece in part.numbers]
            theirs = tuple(tab and (tab[0], set_of[owner[tab[0]], tab[1]]) for tab in tabs)
            groups.setdefault(theirs, []).append(index)
        rows += [(number, each, key) for key, each in groups.items() if any(key)]
    _turn(rows, parts, sets, into, turned)
    put = tuple(
        each if turned[k] > 0 else TabSet(each.part, each.tabs[::-1]) for k, each in enumerate(sets)
    )
    found = []
    for number, members, key in rows:
        order = _order(parts[number], members, key, put, into)
        mates = tuple(None if each is None else (each[0], put[each[1]]) for each in key)
        found.append(SlotSet(number, tuple(order), mates))
    return put, tuple(found)


def _order(
    part: PartPlan,
    members: Sequence[int],
    key: _Key,
    sets: Sequence[TabSet],
    into: Mapping[tuple[int, int], tuple[int, int]],
    piece: int | None = None,
) -> list[int]:
    """Return slots in the order of the tabs that meet them in a piece, by default the first."""
    index = piece if piece is not None else next(i for i, each in enumerate(key) if each)
    mate = key[index]
    assert mate is not None, "a piece with a mate is asked for"
    tabs = sets[mate[1]].tabs
    return sorted(members, key=lambda slot: tabs.index(into[part.numbers[index], slot][1]))


def _turn(
    rows: Sequence[tuple[int, list[int], _Key]],
    parts: Sequence[PartPlan],
    sets: Sequence[TabSet],
    into: Mapping[tuple[int, int], tuple[int, int]],
    turned: dict[int, int],
) -> None:
    """Turn sets of tabs round so that all the mates of a set of slots are in one order."""
    links: dict[int, list[tuple[int, int]]] = {}
    for number, members, key in rows:
        if len(members) < 2:
            continue
        own = [i for i, each in enumerate(key) if each is not None]
        first = _order(parts[number], members, key, sets, into, own[0])
        for index in own[1:]:
            here = _order(parts[number], members, key, sets, into, index)
            sign = 1 if here == first else -1
            one, other = (mate[1] for mate in (key[own[0]], key[index]) if mate)
            links.setdefault(one, []).append((other, sign))
            links.setdefault(other, []).append((one, sign))
    seen: set[int] = set()
    for start in links:
        waiting = [start]
        while waiting:
            known = waiting.pop()
            seen.add(known)
            for each, sign in links[known]:
                if each not in seen:
                    turned[each] = turned[known] * sign
                    waiting.append(each)


def of_kind(meets: Sequence[Meet], kind: FeatureKind) -> tuple[Meet, ...]:
    """Return the meetings of one kind."""
    return tuple(each for each in meets if each.kind == kind)
