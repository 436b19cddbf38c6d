"""What each plan of a workshop is now, for its log; plans that did not change are not read."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import asdict
from typing import Any

from kerfolio.keeping.store import Store
from kerfolio.publishing.sources import LAYOUTS, Sources
from kerfolio.shop.outdated import PlanNow, now_of


def plans_now(sources: Sources, store: Store) -> tuple[PlanNow, ...]:
    """Return what all plans are now, those that can be read."""
    names = sources.plans
    keys = {name: sources.key("now", name, _content(sources, name)) for name in names}
    kept = {name: store.get(key) for name, key in keys.items()}
    found = {name: json.loads(text) for name, text in kept.items() if text is not None}
    missing = [name for name in names if name not in found]
    if missing:
        read = _read(sources, missing)
        if sources.are_still(store):
            for name in missing:
                store.put(keys[name], json.dumps(read[name]).encode())
        found |= read
    return tuple(_now(found[name]) for name in names if found[name] is not None)


def _content(sources: Sources, name: str) -> str:
    return sources.of_plan(name, without=LAYOUTS)


def _read(sources: Sources, names: list[str]) -> dict[str, Any]:
    """Read plans anew; what cannot be read is None."""
    from kerfolio.reading.workshop import read_shared, with_plans  # which take long to load

    shared, _ = read_shared(sources.folder, pictures=False)
    workshop = with_plans(shared, names)[0] if shared else None
    plans = {each.name: each for each in workshop.plans} if workshop else {}
    stock = workshop.stock if workshop else None
    return {
        name: asdict(now_of(plans[name], stock)) if stock and name in plans else None
        for name in names
    }


def _now(told: Mapping[str, Any]) -> PlanNow:
    sheets = tuple((name, least, most) for name, least, most in told["sheets"])
    return PlanNow(**{**told, "releases": tuple(told["releases"]), "sheets": sheets})
