"""Bundles unpacked and packed again with something wrong inside."""

from __future__ import annotations

from kerfolio.agreement.check import disagreements
from kerfolio.basis.finding import Finding
from kerfolio.bundles.archive import sums_text, unzipped, zip_bytes
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import SUMS, bundle_stem
from kerfolio.fitted.writing import fitted_json
from kerfolio.publishing.bundle import Bundle

Files = dict[str, bytes]


def files_of(packed: Bundle) -> Files:
    """Return a bundle's files by their names in it."""
    stem = bundle_stem(packed.edition.plan) + "/"
    return {name.removeprefix(stem): data for name, data in unzipped(packed.content).items()}


def repacked(edition: Edition, files: Files, *, summed: bool = True) -> Bundle:
    """Pack spoiled files as if the program had written them, sums and all."""
    rest = {name: data for name, data in files.items() if name != SUMS}
    if summed:
        files = {**rest, SUMS: sums_text(rest).encode()}
    plan = edition.plan
    content = zip_bytes(files, plan.released, bundle_stem(plan))
    return Bundle(edition=edition, name="spoiled.zip", content=content, pictures={})


def faults_of(packed: Bundle) -> tuple[Finding, ...]:
    """Return what the agreement check finds in a bundle."""
    fitted = "" if packed.fitted is None else fitted_json(packed.fitted)
    return disagreements(packed.edition, packed.content, fitted)
