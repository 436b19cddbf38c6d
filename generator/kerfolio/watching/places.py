"""The places of the maker's files that the pages list: no others are shown or opened."""

from __future__ import annotations

from collections.abc import Iterator
from urllib.parse import quote

from kerfolio.basis.place import Place
from kerfolio.watching.seen import PlanSeen, Seen


def key_of(place: Place) -> str:
    """Return what a place is asked for by: ``plans/stool/plan.yaml:14:3``; empty for none."""
    return f"{place.file}:{place.line}:{place.column}" if place.file and place.line else ""


def href_of(place: Place) -> str:
    """Return the link to a place's lines, empty where it has none."""
    key = key_of(place)
    return f"/lines?at={quote(key, safe='')}" if key else ""


def listed(seen: Seen) -> dict[str, Place]:
    """Return every place that the page of a workshop links to, by its key."""
    found = (each for each in _places(seen) if key_of(each))
    return {key_of(each): each for each in found}


def _places(seen: Seen) -> Iterator[Place]:
    yield from (each.place for each in seen.findings)
    for plan in seen.plans:
        yield from _of_plan(plan)


def _of_plan(plan: PlanSeen) -> Iterator[Place]:
    yield from (each.place for each in (*plan.findings, *plan.waiting))
    if plan.sight is not None:
        yield plan.sight.plan.place
    for part in plan.settled.parts if plan.settled else ():
        yield part.place
        yield from (each.place for each in part.features)
