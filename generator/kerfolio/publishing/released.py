"""Looks whether releases are still what was published, and whether their days have come."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

from kerfolio.basis.finding import Finding, Severity, error, note
from kerfolio.basis.place import Place
from kerfolio.model.release_form import RECORDS
from kerfolio.publishing.plan_record import Proved

if TYPE_CHECKING:
    from kerfolio.model.plan import Plan


def changed_in(folder: Path, names: Iterable[str]) -> tuple[Finding, ...]:
    """Return the errors on those of some plans whose version is not what its record says."""
    asked = tuple(names)
    if not asked:
        return ()
    from kerfolio.publishing.still_released import changed_since  # which take long to load
    from kerfolio.reading.workshop import read_shared, with_plans
    from kerfolio.releasing.recording import corners_of

    shared, _ = read_shared(folder, pictures=False)
    assert shared is not None, "what plans share is read first, and has no errors"
    read = (with_plans(shared, (name,))[0] for name in asked)
    plans = [(found.plans[0], found.stock) for found in read if found and found.plans]
    return tuple(
        finding
        for plan, stock in plans
        if plan.record is not None
        for finding in changed_since(plan, corners_of(plan, stock))
    )


def recorded(folder: Path, names: Iterable[str]) -> Iterator[str]:
    """Yield those of some plans that have a record of any release."""
    return (name for name in names if any(_records(folder, name)))


def unrecorded(folder: Path, plans: Iterable[Proved]) -> Iterator[Finding]:
    """Yield a note for each plan of which no release has a record."""
    for each in plans:
        if each.newest[0] and not any(recorded(folder, (each.name,))):
            message = f"no release of `{each.name}` has a record: what changes later cannot be told"
            advice = f"`kerfolio release {each.name}` records the one that stands in the plan."
            yield note("no-record", message, each.place, advice, subject=each.name)


def newest_in(plans: Iterable[Proved]) -> Iterator[tuple[str, Place, tuple[str, str]]]:
    """Yield the name and the place of each plan with its newest release (see ``newest_of``)."""
    return ((each.name, each.place, each.newest) for each in plans)


def before_its_day(
    plans: Iterable[tuple[str, Place, tuple[str, str]]], today: date | None
) -> Iterator[Finding]:
    """Yield an error for each plan (see ``newest_in``) whose newest release is yet to come."""
    for name, place, (version, day) in plans:
        if today is not None and day > today.isoformat():
            message = f"release {version} is dated {day}, and today is {today.isoformat()}"
            advice = "Date it the day you publish it: readers would wait for it, or miss it."
            yield error("release-date", message, place, advice, subject=name)


def _records(folder: Path, plan: str) -> Iterator[Path]:
    return (folder / "plans" / plan / RECORDS).glob("*.json")


def newest_of(plan: Plan | None) -> tuple[str, str]:
    """Return the version of a plan's last release and its day, ISO 8601; empty without one."""
    last = max(plan.releases, key=lambda each: each.order, default=None) if plan else None
    return (last.version, last.date.isoformat()) if last else ("", "")


def as_note(finding: Finding) -> Finding:
    """Return a finding as a proof tells it, which refuses nothing for it."""
    return replace(finding, severity=Severity.NOTE)
