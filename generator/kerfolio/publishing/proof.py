"""A workshop proved: plans that are as they were proved last are not proved again."""

from __future__ import annotations

from datetime import date
from pathlib import Path

from kerfolio.basis.finding import Finding, in_order
from kerfolio.publishing.released import before_its_day, newest_in
from kerfolio.publishing.renewing import Renewing, kept_of, renewed
from kerfolio.publishing.say import Say, Tally, silent, untold
from kerfolio.publishing.side_by_side import Workers
from kerfolio.publishing.sources import sources_of, store_of
from kerfolio.reading.plan_folders import titled_twice, unknown_plan


def proved_findings(
    folder: Path,
    only: str = "",
    workers: Workers | None = None,
    say: Say = silent,
    tally: Tally = untold,
    today: date | None = None,
) -> tuple[Finding, ...]:
    """Return all findings of a workshop, or of its plan ``only``, and what a publish will change.

    All findings of all files come in one run. Releases dated after ``today`` are errors, where that
    is said.
    """
    with store_of(folder) as store:
        sources = sources_of(folder, store)
        if sources is None:
            return _examined(folder, only, say)
        if only and only not in sources.plans:
            return in_order((*sources.findings, unknown_plan(only, sources.plans)))
        how = Renewing(
            sources=sources, store=store, workers=workers or Workers(), say=say, tally=tally
        )
        names = (only,) if only else sources.plans
        digests = sources.of_plans(names)
        found = renewed(how, digests, kept_of(how, digests, draws=False), draws=False)
    twice = titled_twice((each.name, each.title, each.place) for each in found.in_turn)
    told = (each for plan in found.in_turn for each in (*plan.findings, *plan.stale))
    early = before_its_day(newest_in(found.in_turn), today)
    return in_order((*sources.findings, *told, *twice, *early))


def _examined(folder: Path, only: str, say: Say) -> tuple[Finding, ...]:
    """Prove a workshop where what its plans share has errors, which every plan may follow from."""
    from kerfolio.publishing.examine import examine  # which takes long to load
    from kerfolio.publishing.fresh import foretold
    from kerfolio.publishing.swapping import with_swaps

    return foretold(with_swaps(examine(folder, only, say), say)).findings
