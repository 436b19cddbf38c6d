"""Which folders of a workshop are plans, and what is remarked on several together."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from pathlib import Path

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error, warning
from kerfolio.basis.names import did_you_mean
from kerfolio.basis.place import Place


def plan_folders(workshop: Path) -> tuple[str, ...]:
    """Return the names of plans; folders that begin with `.` or `_` are passed over."""
    root = workshop / "plans"
    if not root.is_dir():
        return ()
    with os.scandir(root) as entries:  # of a thousand it is asked once for each plan made
        names = sorted(each.name for each in entries if _is_folder(each))
    return tuple(name for name in names if not name.startswith((".", "_")))


def _is_folder(entry: os.DirEntry[str]) -> bool:
    """Tell whether it is a folder; a link is followed, one that leads nowhere is none."""
    return Path(entry).is_dir() if entry.is_symlink() else entry.is_dir()


def unknown_plan(name: str, known: Iterable[str]) -> Finding:
    """Return the finding about a plan that the workshop has not."""
    return error("unknown-plan", f"no plan `{name}`", Place("plans"), did_you_mean(name, known))


def titled_twice(plans: Iterable[tuple[str, str, Place]]) -> Iterator[Finding]:
    """Yield a warning for each plan of a title that one before it has: readers see the title.

    A plan is its name, its title and its place.
    """
    first: dict[str, str] = {}
    for name, title, place in plans:
        known = first.setdefault(title.casefold(), name)
        if title and known != name:
            message = f"{quoted(title)} is the title of `{known}`, too"
            advice = "Readers know a plan by its title: give each its own."
            yield warning("doubled-title", message, place, advice)


def concerns(finding: Finding, plan: str) -> bool:
    """Tell whether a finding bears on one plan: it lies in its folder or in no plan's folder."""
    return not finding.place.file.startswith("plans/") or lies_in(finding, plan)


def lies_in(finding: Finding, plan: str) -> bool:
    """Tell whether a finding lies in a plan's own folder, or is on that folder itself."""
    return f"{finding.place.file}/".startswith(f"plans/{plan}/")
