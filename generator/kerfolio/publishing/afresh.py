"""Layouts computed afresh because a person asks for it, by whom and for how long they say."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from pathlib import Path

from kerfolio.basis.finding import Finding, in_order
from kerfolio.layouts.best import ENGINES, BestPlacer
from kerfolio.layouts.effort import EFFORT, Effort
from kerfolio.layouts.engine import Engine
from kerfolio.publishing.examine import examine
from kerfolio.publishing.freeze import Fresh, Frozen, freeze_layouts
from kerfolio.publishing.fresh import fresh_layouts
from kerfolio.publishing.lay_work import LayOrder, lay_plan
from kerfolio.publishing.plan_record import Proved, proved_from
from kerfolio.publishing.renewing import Renewing, made_of
from kerfolio.publishing.say import Say, Tally, silent, untold
from kerfolio.publishing.side_by_side import Workers
from kerfolio.publishing.sources import LAYOUTS, sources_of, store_of
from kerfolio.reading.plan_folders import titled_twice, unknown_plan


@dataclass(frozen=True, slots=True, kw_only=True)
class LayoutRequest:
    """Which plans to lay out: all, or the one named ``only``.

    ``engine`` names an engine of another library to ask besides, ``seconds`` is how long it may
    take. With seconds and no name all that are installed are asked; without either, none.
    """

    folder: Path
    only: str = ""
    engine: str = ""
    seconds: float | None = None
    seed: int = 0
    workers: Workers = field(default_factory=Workers)


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidAfresh:
    """The layouts written, and all findings."""

    frozen: tuple[Frozen, ...]
    findings: tuple[Finding, ...]


def engine_fault(request: LayoutRequest) -> str:
    """Return what is wrong with the engine asked for, in words; empty where it is there."""
    name = request.engine
    there = [each.library for each in ENGINES if each.present]
    if name in there or (not name and (there or request.seconds is None)):
        return ""
    shown = "installed: " + (", ".join(there) or "none")
    if not name:
        return f"--seconds is for engines of other libraries; {shown}"
    known = any(name == each.library for each in ENGINES)
    return f"`{name}` is {'not installed' if known else 'no engine'}; {shown}"


def lay_out_afresh(request: LayoutRequest, say: Say = silent, tally: Tally = untold) -> LaidAfresh:
    """Lay out and freeze, whatever was frozen before. Raises OSError when the disk refuses.

    Without an engine the same plan has the same layout, so that one that is kept is taken.
    """
    found = None if _asks(request) else _kept(request, say, tally)
    layouts, findings = found or _laid_out(request, say)
    return LaidAfresh(frozen=freeze_layouts(request.folder, layouts), findings=findings)


_Laid = tuple[tuple[Fresh, ...], tuple[Finding, ...]]


def _kept(request: LayoutRequest, say: Say, tally: Tally) -> _Laid | None:
    """Lay out those plans of which no layout is kept; None where what plans share is unreadable."""
    with store_of(request.folder) as store:
        sources = sources_of(request.folder, store)
        if sources is None:
            return None
        if request.only and request.only not in sources.plans:
            return (), in_order((*sources.findings, unknown_plan(request.only, sources.plans)))
        how = Renewing(sources=sources, store=store, workers=request.workers, say=say, tally=tally)
        names = (request.only,) if request.only else sources.plans
        laid = _laid_plans(how, names, request.seed)
    twice = titled_twice((each.name, each.title, each.place) for each in laid)
    findings = (*sources.findings, *(f for each in laid for f in each.findings), *twice)
    return tuple(fresh for each in laid for fresh in each.layouts), in_order(findings)


def _laid_plans(how: Renewing, names: Iterable[str], seed: int) -> tuple[Proved, ...]:
    """Return plans proved, with their layouts computed afresh; only what changed is worked on."""
    sources, store = how.sources, how.store
    digests = {name: sources.of_plan(name, without=LAYOUTS) for name in names}
    keys = {name: sources.key("laid", name, each, str(seed)) for name, each in digests.items()}
    kept = {name: store.get(key) for name, key in keys.items()}
    found = {name: proved_from(each) for name, each in kept.items() if each is not None}
    waiting = [name for name in keys if name not in found]
    how.tally(len(found), len(keys))
    orders = (
        LayOrder(folder=sources.folder.absolute(), name=name, shared=sources.whole, seed=seed)
        for name in waiting
    )
    for order, made in made_of(how, lay_plan, orders, len(waiting)):
        found[order.name] = proved_from(made)
        if how.is_still(order.name, digests[order.name], LAYOUTS):
            store.put(keys[order.name], made.encode())
        how.tally(len(found), len(keys))
    return tuple(found[name] for name in keys)


def _laid_out(request: LayoutRequest, say: Say) -> _Laid:
    examined = examine(
        *(request.folder, request.only, say),
        pictures=False,
        afresh=True,
        effort=_effort(request),
        engine=_engine(request),
    )
    return fresh_layouts(examined.laid_out), examined.findings


def _effort(request: LayoutRequest) -> Effort:
    seconds = EFFORT.seconds if request.seconds is None else request.seconds
    return replace(EFFORT, seed=request.seed, seconds=seconds)


def _asks(request: LayoutRequest) -> bool:
    return bool(request.engine) or request.seconds is not None


def _engine(request: LayoutRequest) -> Engine | None:
    if not _asks(request):
        return None
    wanted = (request.engine,) if request.engine else [each.library for each in ENGINES]
    return BestPlacer([each for each in ENGINES if each.library in wanted and each.present])
