"""What each plan of a workshop is now, for its log; plans that did not change are not read."""

from __future__ import annotations

from kerfolio.keeping.store import Store
from kerfolio.keeping.values import value_bytes, value_of
from kerfolio.model.workshop import Workshop
from kerfolio.publishing.sources import LAYOUTS, Sources
from kerfolio.shop.outdated import PlanNow, now_of


def plans_now(sources: Sources, store: Store) -> tuple[PlanNow, ...]:
    """Return what all plans are now, those that can be read."""
    names = sources.plans
    keys = {name: sources.key("now", name, _content(sources, name)) for name in names}
    kept = {name: store.get(key) for name, key in keys.items()}
    found = {name: value_of(text) for name, text in kept.items() if text is not None}
    missing = [name for name in names if name not in found]
    if missing:
        read = _read(sources, missing)
        if sources.are_still(store):
            for name in missing:
                store.put(keys[name], value_bytes(read[name]))
        found |= read
    return tuple(now for name in names if (now := found[name]) is not None)


def _content(sources: Sources, name: str) -> str:
    return sources.of_plan(name, without=LAYOUTS)


def _read(sources: Sources, names: list[str]) -> dict[str, PlanNow | None]:
    """Read plans anew; what cannot be read is None."""
    from kerfolio.reading.workshop import read_shared, with_plans  # which take long to load

    shared, _ = read_shared(sources.folder, pictures=False)
    workshop = with_plans(shared, names)[0] if shared else None
    now = {each.name: each for each in now_in(workshop)} if workshop else {}
    return {name: now.get(name) for name in names}


def now_in(workshop: Workshop) -> tuple[PlanNow, ...]:
    """Return what the plans of a workshop are now."""
    from kerfolio.releasing.recut import cut_since  # which takes long to load

    stock = workshop.stock
    return tuple(now_of(each, stock, cut_since(each.records)) for each in workshop.plans)
