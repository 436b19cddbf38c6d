"""The agreement check: reads back what a publish wrote and names any two files that disagree."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator

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
from kerfolio.paper.template_choices import Templates


def disagreements(
    edition: Edition, packed: bytes, fitted: str = "", chosen: Templates | None = None
) -> tuple[Finding, ...]:
    """Return a finding for every pair of files in a packed bundle that disagree, else nothing.

    ``fitted`` are the plan's fitted files as JSON, empty where it has none; ``chosen`` what was
    chosen for its templates, where that is known.
    """
    stem = bundle_stem(edition.plan) + "/"
    files = {name.removeprefix(stem): data for name, data in unzipped(packed).items()}
    place = Place(f"plans/{edition.name}/plan.yaml")
    facts = json.loads(files.get(PLAN, b"{}"))
    written = Written(
        edition=edition, files=files, facts=facts, place=place, fitted=fitted, templates=chosen
    )
    incomplete = tuple(contents(written))
    if incomplete:
        return incomplete
    found = (finding for check in CHECKS for finding in check(written))
    return in_unit(found, edition.plan.units)


CHECKS: tuple[Callable[[Written], Iterator[Finding]], ...] = (
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
