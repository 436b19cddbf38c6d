"""Entries of the log that a plan has gone past: another sheet now, or another release."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.model.trial import Trial
from kerfolio.settling.scope import SettlingError
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.variant import published_range

_FAR = 0.5
"""mm; a sheet that lies this far beyond what a plan is published for is another one: sheets sold
alike differ by less from the range (common practice, no single source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutSince:
    """What of a release, ``version``, the newest one that has a record, ``by``, cuts as it did.

    ``parts`` are the names of those parts then, ``sheets`` the names in the stock of those of which
    the same pieces are cut.
    """

    version: str
    by: str
    parts: tuple[str, ...] = ()
    sheets: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanNow:
    """What a plan is now, as far as entries of the log hang on it.

    ``sheets`` are a stock's name with the thinnest and the thickest published, mm; ``releases`` are
    versions, the oldest first, ``since`` what is known of those that have a record.
    """

    name: str
    title: str
    version: str
    releases: tuple[str, ...]
    sheets: tuple[tuple[str, float, float], ...]
    since: tuple[CutSince, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Outdated:
    """Why an entry no longer matches its plan.

    ``sheet`` is the stock's name that the plan is no longer cut from; ``thick`` what was cut, mm,
    where that lies outside of ``now``, what the plan is published for. ``gone`` is the entry's
    release where the plan has none of that version. ``otherwise`` is the newer release that cuts
    the entry's part or sheet otherwise, ``since`` are those that came after it and of which no
    record tells that.
    """

    sheet: str = ""
    thick: float | None = None
    now: tuple[float, float] | None = None
    gone: str = ""
    otherwise: str = ""
    since: tuple[str, ...] = ()

    @property
    def of_another_sheet(self) -> bool:
        """Whether the sheet is another: nothing that was cut says anything of the plan then."""
        return bool(self.sheet) or self.thick is not None

    def __bool__(self) -> bool:
        return self != Outdated()


def now_of(plan: Plan, stock: Stock, since: tuple[CutSince, ...] = ()) -> PlanNow:
    """Return what a plan is now; a sheet whose range cannot be read is left out.

    ``since`` is what its records tell (``releasing.recut.cut_since``).
    """
    sheets = []
    for use in plan.sheets:
        found = stock.sheet(use.stock.name)
        if found is None:
            continue
        try:
            sheets.append((found.name, *published_range(use, found, plan.units)))
        except SettlingError:
            continue
    return _now(plan, sheets, since)


def now_settled(settled: SettledPlan, since: tuple[CutSince, ...] = ()) -> PlanNow:
    """Return what a settled plan is; ``since`` is what its records tell."""
    return _now(settled.plan, [(e.stock.name, *e.published) for e in settled.sheets], since)


def _now(
    plan: Plan, sheets: Iterable[tuple[str, float, float]], since: tuple[CutSince, ...]
) -> PlanNow:
    return PlanNow(
        name=plan.name,
        title=plan.title,
        version=plan.version,
        releases=tuple(e.version for e in sorted(plan.releases, key=lambda each: each.order)),
        sheets=tuple(sheets),
        since=since,
    )


def outdated(trial: Trial, now: PlanNow) -> Outdated:
    """Return why an entry of a plan no longer matches it; false where it does."""
    sheet, thick, ends = _sheet(trial, now)
    return replace(_release(trial, now), sheet=sheet, thick=thick, now=ends)


def _sheet(trial: Trial, now: PlanNow) -> tuple[str, float | None, tuple[float, float] | None]:
    named = trial.stock.name if trial.stock else ""
    uses = [each for each in now.sheets if not named or each[0] == named]
    if not uses:
        return (named, None, None) if named and now.sheets else ("", None, None)
    thick = trial.thick
    if thick is None or any(a - _FAR <= thick <= b + _FAR for _, a, b in uses):
        return "", None, None
    _, least, most = min(uses, key=lambda each: abs(each[1] - thick))
    return "", thick, (least, most)


def _release(trial: Trial, now: PlanNow) -> Outdated:
    """Return what became of the release that was cut: the part's or the sheet's shapes count."""
    if not trial.release or (trial.release == now.version and now.version not in now.releases):
        return Outdated()
    if trial.release not in now.releases:
        return Outdated(gone=trial.release)
    recorded = next((each for each in now.since if each.version == trial.release), None)
    last = recorded.by if recorded else trial.release
    later = now.releases[now.releases.index(last) + 1 :]
    if recorded is None or _stays(trial, recorded, now):
        return Outdated(since=later)
    return Outdated(otherwise=recorded.by, since=later)


def _stays(trial: Trial, since: CutSince, now: PlanNow) -> bool:
    """Tell whether what an entry is about is still cut so: its part, else its sheet, else all."""
    if trial.part is not None:
        return trial.part.name in since.parts
    if trial.stock is not None:
        return trial.stock.name in since.sheets
    return all(name in since.sheets for name, _, _ in now.sheets)


def outdated_of(trials: Iterable[Trial], now: PlanNow) -> tuple[tuple[Trial, Outdated], ...]:
    """Return the entries of a plan that no longer match it, each with the reason."""
    own = (each for each in trials if each.plan and each.plan.name == now.name)
    found = ((each, outdated(each, now)) for each in own)
    return tuple((trial, why) for trial, why in found if why)
