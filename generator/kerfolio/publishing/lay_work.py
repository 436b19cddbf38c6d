"""The work of laying one plan out afresh: what runs side by side."""

from __future__ import annotations

from dataclasses import dataclass, replace
from pathlib import Path

from kerfolio.layouts.effort import EFFORT
from kerfolio.publishing.examine import examine_read
from kerfolio.publishing.fresh import proved_of
from kerfolio.publishing.say import Say, silent
from kerfolio.publishing.shared_once import shared_once
from kerfolio.reading.workshop import with_plans


@dataclass(frozen=True, slots=True, kw_only=True)
class LayOrder:
    """Which plan to lay out, from which seed; ``shared`` is the hash of what it shares."""

    folder: Path
    name: str
    shared: str
    seed: int


def lay_plan(order: LayOrder, say: Say = silent) -> str:
    """Return what came of reading, proving and laying out a plan, as ``Proved`` tells it."""
    shared = shared_once(order.folder, order.shared, pictures=False)
    workshop, read = with_plans(shared, (order.name,))
    assert workshop is not None, "what plans share is read first, and has no errors"
    effort = replace(EFFORT, seed=order.seed)
    examined = examine_read(workshop, read, say=say, afresh=True, effort=effort)
    return proved_of(order.name, examined).text()
