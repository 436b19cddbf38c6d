"""What is told of each sheet's layers, against the paths measured in its cut files."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.agreement.written import Written
from kerfolio.basis.finding import Finding
from kerfolio.drawing.path_count import PathCount, path_counts
from kerfolio.edition.names import PLAN, cut_sheet_name
from kerfolio.writing.read_back import UnreadableError

_SHARE = 1e-5
_LEAST = 0.01
"""Lengths agree within these, of themselves and in mm: what the rounding of many corners makes."""


def toolpaths(written: Written) -> Iterator[Finding]:
    """Yield the layers whose contours ``plan.json`` tells otherwise than they are in the files."""
    edition = written.edition
    told = {each["number"]: each["paths"] for each in written.facts["layout"]}
    for sheet in edition.layout.sheets:
        paths = {each["layer"]: each for each in told[sheet.number]}
        for format_ in edition.formats:
            fit = edition.settled.variant.label
            name = cut_sheet_name(fit, sheet.number, format_.ending)
            try:
                found = path_counts(format_.read(written.files[name]).layers)
            except UnreadableError:
                continue  # told where files are compared
            for layer in sorted(paths.keys() ^ {each.layer for each in found}):
                yield written.differ(f"`{PLAN}`", f"`{name}`", f"the paths on layer `{layer}`")
            for each in found:
                stated = paths.get(each.layer)
                if stated and not _agree(stated, each):
                    how = f"the paths on layer `{each.layer}`"
                    yield written.differ(f"`{PLAN}`", f"`{name}`", how)


def _agree(stated: dict[str, float], found: PathCount) -> bool:
    off = abs(stated["length"] - found.length)
    return stated["contours"] == found.contours and off <= _LEAST + _SHARE * found.length
