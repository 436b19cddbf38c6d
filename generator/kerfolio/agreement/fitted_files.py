"""The fitted files against the cut files of each set that is made ready: the same bytes."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.agreement.written import Written
from kerfolio.basis.finding import Finding
from kerfolio.fitted.fill import PointError, fill
from kerfolio.fitted.form import Fitted
from kerfolio.fitted.reading import FittedError, read_fitted
from kerfolio.settling.settled import FitVariant

_FITTED = "the fitted files"


def fitted_files(written: Written) -> Iterator[Finding]:
    """Yield where a cut file is not what the fitted files give for its thickness."""
    if not written.fitted:
        return
    try:
        fitted = read_fitted(written.fitted)
        for settled in written.edition.variants:
            yield from _filled(written, fitted, settled.variant)
    except (FittedError, PointError) as fault:
        yield written.differ(_FITTED, "the cut files", str(fault))


def _filled(written: Written, fitted: Fitted, variant: FitVariant) -> Iterator[Finding]:
    at = {f"thickness.{sheet}": mm for sheet, mm in variant.thickness}
    for name, text in fill(fitted, at):
        if written.files.get(name) != text.encode():
            yield written.differ(f"`{name}`", _FITTED, "they give another file of this name")
