"""The plans of a workshop proved and drawn: taken from what is kept, made where nothing is."""

from __future__ import annotations

import errno
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date
from functools import partial
from pathlib import Path
from secrets import token_hex
from typing import TYPE_CHECKING

from kerfolio.basis.finding import Finding, has_errors
from kerfolio.keeping.program import key_of, program
from kerfolio.keeping.store import Store
from kerfolio.publishing.plan_record import Proved, Written, proved_from, written_from
from kerfolio.publishing.released import before_its_day, newest_of
from kerfolio.publishing.say import Say, Tally
from kerfolio.publishing.side_by_side import Made, Order, Workers, each_made, works_here
from kerfolio.publishing.sources import Sources
from kerfolio.publishing.way_out import HandingOut

if TYPE_CHECKING:
    from kerfolio.publishing.plan_work import PlanMade, PlanOrder


@dataclass(frozen=True, slots=True, kw_only=True)
class Renewing:
    """How plans are made anew: what they are made from, where they are kept, by whom, for whom."""

    sources: Sources
    store: Store
    workers: Workers
    say: Say
    tally: Tally
    handing: HandingOut = field(default_factory=HandingOut)

    def is_still(self, name: str, digest: str, without: str = "") -> bool:
        """Tell whether a plan and what it shares are as they were when they were looked at."""
        same = self.sources.of_plan(name, without=without) == digest
        return same and self.sources.are_still(self.store)


@dataclass(slots=True)
class Renewed:
    """What came of plans, by name. What is not ``written`` was not drawn."""

    proved: dict[str, Proved] = field(default_factory=dict)
    written: dict[str, Written] = field(default_factory=dict)

    @property
    def in_turn(self) -> tuple[Proved, ...]:
        """The plans by their names."""
        return tuple(self.proved[name] for name in sorted(self.proved))

    @property
    def fails(self) -> bool:
        """Whether a plan does not hold, so that none need be drawn."""
        return any(has_errors(each.findings) for each in self.proved.values())

    @property
    def findings(self) -> Iterator[Finding]:
        """All that was found; of what was drawn nothing where a plan does not hold."""
        for each in self.in_turn:
            yield from each.findings
        if not self.fails:
            for name in sorted(self.written):
                yield from self.written[name].findings


def kept_of(how: Renewing, digests: Mapping[str, str], *, draws: bool) -> Renewed:
    """Return what is kept of plans, of their drawing too where that is asked for.

    ``digests`` are those of the folders of these plans by their names (``Sources.of_plans``).
    """
    found, store = Renewed(), how.store
    for name, digest in digests.items():
        proved = store.get(_proved_key(how.sources, name, digest))
        if proved is None:
            continue
        found.proved[name] = proved_from(proved)
        kept = store.get(_written_key(how, found.proved[name], digest)) if draws else None
        written = None if kept is None else written_from(kept)
        if written is not None and store.holds(_pack_key(written)):
            found.written[name] = written
    return found


def renewed(how: Renewing, digests: Mapping[str, str], found: Renewed, *, draws: bool) -> Renewed:
    """Prove plans and, where all of them hold, draw them; only what is not ``found`` is made anew.

    ``digests`` as above.
    """
    waiting = [name for name in digests if _is_wanting(found, name, draws=draws)]
    done = len(digests) - len(waiting)
    how.tally(done, len(digests))
    for order, made in _made(how, waiting, found, draws=draws):
        proved_now = proved_from(made.proved)
        found.proved[order.name] = proved_now
        _keep(how, order.name, digests[order.name], made)
        if made.written:
            found.written[order.name] = written_from(made.written)
        done += 1
        how.tally(done, len(digests))
    return found


def unreadable(
    folder: Path, names: Sequence[str], today: date | None = None
) -> tuple[Finding, ...]:
    """Read plans of a workshop; return what was found where any has an error.

    A release that is dated after ``today`` is one, where that is said.
    """
    if not names:
        return ()
    from kerfolio.reading.workshop import read_shared, with_plans  # which take long to load

    shared, found = read_shared(folder, pictures=False)
    if shared is not None:
        read = [with_plans(shared, (name,)) for name in names]
        plans = (plan for workshop, _ in read if workshop for plan in workshop.plans)
        newest = ((plan.name, plan.place, newest_of(plan)) for plan in plans)
        told = (each for _, findings in read for each in findings)
        found = (*told, *before_its_day(newest, today))
    return found if has_errors(found) else ()


def _is_wanting(found: Renewed, name: str, *, draws: bool) -> bool:
    return name not in found.proved or (draws and not found.fails and name not in found.written)


def _made(
    how: Renewing, names: Sequence[str], found: Renewed, *, draws: bool
) -> Iterator[tuple[PlanOrder, PlanMade]]:
    """Yield what is made of plans; once one does not hold, the others are only proved."""
    if not names:
        return
    from kerfolio.publishing.plan_work import make_plan  # which takes long to load

    orders = (_order(how, name, draws=draws and not found.fails) for name in names)
    yield from made_of(how, make_plan, orders, len(names), _ready_for_site if draws else None)


def _ready_for_site() -> None:
    """Load what writes the site, and cut its fonts down, while others make the plans."""
    import kerfolio.publishing.site  # noqa: F401 - which takes long to load
    from kerfolio.writing.webfont import web_fonts

    web_fonts()


def _order(how: Renewing, name: str, *, draws: bool) -> PlanOrder:
    from kerfolio.publishing.plan_work import PlanOrder

    return PlanOrder(
        folder=how.sources.folder.absolute(),
        name=name,
        shared=how.sources.whole,
        store=how.store.folder.absolute(),
        draws=draws,
        handing=how.handing,
    )


def made_of(
    how: Renewing,
    work: Callable[..., Made],
    orders: Iterable[Order],
    most: int,
    meanwhile: Callable[[], None] | None = None,
) -> Iterator[tuple[Order, Made]]:
    """Yield every order with what was made of it; whoever works in this process tells of it.

    ``meanwhile`` is done here while others work.
    """
    if works_here(how.workers, most):
        return each_made(partial(work, say=how.say), orders, how.workers, most)
    how.say(f"working on {most} plans side by side")
    if how.workers.address:
        work = partial(work_alike, work, program())
    return each_made(work, orders, how.workers, most, meanwhile)


def work_alike(work: Callable[[Order], Made], by: str, order: Order) -> Made:
    """Do the work of an order that came from another machine.

    Raises OSError where another program would do it: what it makes might be something else.
    """
    if program() != by:
        words = "a worker has another release of the program, of a library or of Python"
        raise OSError(errno.EPERM, f"{words}: install the same ones everywhere")
    return work(order)


def _keep(how: Renewing, name: str, digest: str, made: PlanMade) -> None:
    """Keep what was made of a plan.

    Where its sources changed meanwhile it serves this run alone, under a key that nobody asks for.
    """
    salt = () if how.is_still(name, digest) else (token_hex(8),)
    if made.written:
        how.store.put(_pack_key(written_from(made.written)), made.pack)
        key = _written_key(how, proved_from(made.proved), digest, *salt)
        how.store.put(key, made.written.encode())
    how.store.put(_proved_key(how.sources, name, digest, *salt), made.proved.encode())


def keep_frozen(how: Renewing, found: Renewed) -> None:
    """Keep what was made of plans for their sources as they are now that layouts were frozen.

    A frozen layout is kept as it was computed, so that nothing else changes.
    """
    for name, written in found.written.items():
        proved = found.proved[name]
        if proved.layouts and proved.quiet:
            digest = how.sources.of_plan(name)
            frozen = replace(proved, stale=(), layouts=())
            how.store.put(_written_key(how, frozen, digest), written.text().encode())
            how.store.put(_proved_key(how.sources, name, digest), frozen.text().encode())


def pack_of(how: Renewing, name: str, written: Written) -> bytes:
    """Return the files of a plan, packed; made once more where they were lost meanwhile."""
    key = _pack_key(written)
    found = how.store.get(key)
    if found is not None:
        return found
    from kerfolio.publishing.plan_work import make_plan

    made = make_plan(_order(how, name, draws=True), how.say)
    if not made.written or written_from(made.written).pack != written.pack:
        raise RuntimeError(f"the plan `{name}` changed while it was published")
    how.store.put(key, made.pack)
    return made.pack


def _proved_key(sources: Sources, name: str, digest: str, *salt: str) -> str:
    return sources.key("proved", name, digest, *salt)


def _written_key(how: Renewing, proved: Proved, digest: str, *salt: str) -> str:
    way = how.handing.way_of(proved.access)
    return how.sources.key("written", proved.name, digest, how.sources.menu, way, *salt)


def _pack_key(written: Written) -> str:
    return key_of("pack", written.pack)
