"""The work on one plan, from its folder to all that a site has of it: what runs side by side.

It reads the workshop by itself and answers in plain values, so that it may run in another process
or on another machine that sees the same disk.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path
from typing import NamedTuple

from kerfolio.basis.finding import has_errors
from kerfolio.basis.keeper import kept_by
from kerfolio.keeping.batch import batch_in
from kerfolio.keeping.kept import NOTHING_KEPT, Kept
from kerfolio.keeping.store import Store
from kerfolio.publishing.examine import examine_read
from kerfolio.publishing.fresh import proved_of
from kerfolio.publishing.say import Say, silent
from kerfolio.publishing.shared_once import shared_once
from kerfolio.publishing.swapping import with_swaps
from kerfolio.publishing.way_out import HandingOut
from kerfolio.reading.workshop import with_plans


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanOrder:
    """Which plan to work on; ``shared`` is the hash of what it shares with others.

    ``store`` is the folder where parts of its result may be kept; who does not see it makes all.
    Without ``draws`` it is proved and nothing more. ``handing`` decides how its bundle goes out.
    """

    folder: Path
    name: str
    shared: str
    store: Path
    draws: bool
    handing: HandingOut = field(default_factory=HandingOut)


class PlanMade(NamedTuple):
    """What came of an order: ``Proved`` and ``Written`` as texts, and the files it wrote, packed.

    The last two are empty where the plan was not drawn.
    """

    proved: str
    written: str
    pack: bytes


def make_plan(order: PlanOrder, say: Say = silent) -> PlanMade:
    """Read and prove a plan; where it holds, draw, bind and check all that a site has of it."""
    if not order.store.is_dir():
        return _made(order, NOTHING_KEPT, say)
    with batch_in(Store(order.store), order.name) as batch, kept_by(kept := Kept(batch)):
        return _made(order, kept, say)


def _made(order: PlanOrder, kept: Kept, say: Say) -> PlanMade:
    shared = shared_once(order.folder, order.shared)
    workshop, read = with_plans(shared, (order.name,))
    assert workshop is not None, "what plans share is read first, and has no errors"
    examined = with_swaps(examine_read(workshop, read, say=say), say)
    proved = proved_of(order.name, examined)
    if not order.draws or not examined.laid_out or has_errors(examined.findings):
        return PlanMade(proved.text(), "", b"")
    from kerfolio.publishing.plan_drawn import drawn  # which takes long to load

    way = order.handing.way_of(proved.access)
    written, pack = drawn(workshop, examined.laid_out[0], say, kept, way)
    return PlanMade(proved.text(), written.text(), pack)
