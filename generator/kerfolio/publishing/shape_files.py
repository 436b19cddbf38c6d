"""What of an edition's files hangs on shapes and sheets alone, kept under the hash of those."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from functools import cached_property

from kerfolio.agreement.check import Check
from kerfolio.agreement.templates import templates
from kerfolio.agreement.written import Written
from kerfolio.basis.finding import Finding, in_unit
from kerfolio.edition.edition import Edition
from kerfolio.edition.names import PAPERS, ROLL, template_name
from kerfolio.fitted.form import Fitted, Number
from kerfolio.fitted.joining import joined
from kerfolio.fitted.reading import read_fitted
from kerfolio.fitted.writing import fitted_json
from kerfolio.keeping.absent import AbsentError
from kerfolio.keeping.findings import findings_json, findings_of
from kerfolio.keeping.kept import NOTHING_KEPT, Kept
from kerfolio.paper.sheet_choices import SheetPapers
from kerfolio.paper.template_choices import Templates
from kerfolio.publishing.bare import bare, of_all, without_names
from kerfolio.publishing.cut_files import Named
from kerfolio.publishing.fitted_files import Settling, fitted_files, fitted_to_print
from kerfolio.publishing.rescue_fitted import rescue_fitted
from kerfolio.publishing.sheet_papers import sheet_papers
from kerfolio.publishing.template_files import template_files


class Workbench:
    """What several files of an edition are made with, each made when it is first asked for."""

    def __init__(self, edition: Edition) -> None:
        """Make nothing yet."""
        self._edition = edition

    @cached_property
    def settling(self) -> Settling:
        """Settles the plan at its points."""
        return Settling(self._edition.settled, self._edition.corners)

    @cached_property
    def templates(self) -> Templates:
        """What is chosen for templates."""
        return Templates.of(self._edition)

    @cached_property
    def papers(self) -> SheetPapers:
        """What is chosen for layouts and setup sheets."""
        return SheetPapers(self._edition, self.settling.at)


Make = Callable[..., bytes]


class ShapeFiles:
    """Files of an edition made from its shapes and sheets, and whether they agree with those."""

    def __init__(self, edition: Edition, kept: Kept = NOTHING_KEPT) -> None:
        """Make nothing yet; ``kept`` is where files are looked for first."""
        self._edition, self._kept = edition, kept
        self._apart = {_templates, _papers}
        self._bare = bare(edition)
        self._bare_cuts = without_names(self._bare)
        self._bench, self._whole = Workbench(self._bare), Workbench(edition)

    @cached_property
    def fitted(self) -> Fitted | None:
        """The fitted files of sheets and parts, with those to print where these follow, too.

        None where they follow no rule.
        """
        fitted = _read(self._made(_cut, self._bare_cuts))
        if fitted is None:
            return None
        for make in (_templates, _papers):
            found = _read(self._made(make, self._bare, fitted.numbers))
            if found is not None:
                fitted = joined(fitted, found)
                self._apart.remove(make)
        return fitted

    def printed_apart(self) -> Iterator[Named]:
        """Yield the files to print that are not among the fitted ones."""
        if _templates in self._apart:
            yield from template_files(self._edition, self._whole.templates)
        if _papers in self._apart:
            yield from sheet_papers(self._edition, self._whole.papers)

    def rescue(self, numbers: Sequence[Number]) -> Fitted | None:
        """Return the fitted files that open pieces wider, None where there are none."""
        return _read(self._made(_rescue, self._bare_cuts, tuple(numbers)))

    def checked(self, check: Check, written: Written) -> Iterable[Finding]:
        """Return what a check finds; that of the templates, which takes long, may be kept."""
        if check is not templates:
            return check(written)
        labels = [each.variant.label for each in self._bare.variants]
        names = [template_name(each, on) for each in labels for on in (*PAPERS, ROLL)]
        files = {name: written.files[name] for name in names if name in written.files}
        own = replace(written, edition=self._bare, files=files, facts={}, fitted="")
        try:
            found = self._kept.of(_disagreeing, own, helped_by=(self._bench,))
        except AbsentError:
            return check(written)
        return findings_of(json.loads(found))

    def _made(self, make: Make, edition: Edition, *more: object) -> bytes:
        try:
            return self._kept.of(make, edition, *more, helped_by=(self._bench,))
        except AbsentError:
            return of_all(make, self._edition, *more, self._whole)


def _cut(edition: Edition, bench: Workbench) -> bytes:
    files = fitted_files(
        bench.settling, edition.layout, edition.formats, edition.reader, edition.others
    )
    return _written(files)


def _templates(_: Edition, numbers: Iterable[Number], bench: Workbench) -> bytes:
    return _written(fitted_to_print(numbers, bench.settling, bench.templates.at))


def _papers(_: Edition, numbers: Iterable[Number], bench: Workbench) -> bytes:
    return _written(fitted_to_print(numbers, bench.settling, bench.papers.at))


def _rescue(edition: Edition, numbers: Sequence[Number], bench: Workbench) -> bytes:
    return _written(rescue_fitted(bench.settling, numbers, edition.formats, edition.reader))


def _disagreeing(written: Written, bench: Workbench) -> bytes:
    found = templates(replace(written, templates=bench.templates))
    return json.dumps(findings_json(in_unit(found, written.edition.plan.units))).encode()


def _written(fitted: Fitted | None) -> bytes:
    return b"" if fitted is None else fitted_json(fitted).encode()


def _read(content: bytes) -> Fitted | None:
    return read_fitted(content.decode()) if content else None
