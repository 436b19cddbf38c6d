"""The agreement check: reads back what a publish wrote and names any two files that disagree."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable

from kerfolio.agreement.contents import contents, sums
from kerfolio.agreement.cut_files import cut_files
from kerfolio.agreement.fitted_files import fitted_files
from kerfolio.agreement.lists import figures, hardware, pieces
from kerfolio.agreement.slot_widths import stated_widths
from kerfolio.agreement.templates import templates
from kerfolio.agreement.toolpaths import toolpaths
from kerfolio.agreement.written import Written
from kerfolio.basis.finding import Finding, in_unit
from kerfolio.basis.place import Place
from kerfolio.bundles.archive import unzipped
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import PLAN, bundle_stem

Check = Callable[[Written], Iterable[Finding]]
"""Yields a finding for every two things that disagree in what was written."""

Run = Callable[[Check, Written], Iterable[Finding]]
"""Returns what a check finds: runs it, or knows what it found of the same before."""


def run(check: Check, written: Written) -> Iterable[Finding]:
    """Return what a check finds."""
    return check(written)


def disagreements(
    edition: Edition, packed: bytes, fitted: str = "", run: Run = run
) -> tuple[Finding, ...]:
    """Return a finding for every pair of files in a packed bundle that disagree, else nothing.

    ``fitted`` are the plan's fitted files as JSON, empty where it has none; each check is ``run``.
    """
    stem = bundle_stem(edition.plan) + "/"
    files = {name.removeprefix(stem): data for name, data in unzipped(packed).items()}
    place = Place(f"plans/{edition.name}/plan.yaml")
    facts = json.loads(files.get(PLAN, b"{}"))
    written = Written(edition=edition, files=files, facts=facts, place=place, fitted=fitted)
    incomplete = tuple(contents(written))
    if incomplete:
        return incomplete
    found = (finding for check in CHECKS for finding in run(check, written))
    return in_unit(found, edition.plan.units)


CHECKS: tuple[Check, ...] = (
    sums,
    pieces,
    hardware,
    cut_files,
    fitted_files,
    stated_widths,
    templates,
    toolpaths,
    figures,
)
