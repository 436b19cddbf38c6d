"""What is chosen once for the layouts and setup sheets of a plan, and the files that follow."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial

from kerfolio.edition.edition import Edition
from kerfolio.edition.names import layout_name, papers_of, setup_name
from kerfolio.edition.setup import SetupSheet, setup_sheet
from kerfolio.edition.sheet_facts import Ranged, SheetFacts
from kerfolio.layouts.clamp_spots import clamp_spots
from kerfolio.layouts.layout import SheetLayout
from kerfolio.model.stock import PaperStock
from kerfolio.paper.held_picture import HeldPicture
from kerfolio.paper.layout_sheets import layout_pdf, layout_pictures, sizes_told
from kerfolio.paper.printed_file import PrintedFile
from kerfolio.paper.setup_sheets import SetupPage, setup_page, setup_pdf
from kerfolio.settling.point import point
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.settling.variant_name import label_of

Settle = Callable[[FitVariant], SettledPlan | None]


class SheetPapers:
    """Layouts and setup sheets on some papers, alike at every thickness and fit of the range.

    They are for the plan's own cutter, whoever cuts with another.
    """

    def __init__(
        self, edition: Edition, settle: Settle, papers: Mapping[str, PaperStock] | None = None
    ) -> None:
        """Choose for the whole range of an edition, whose ends ``settle`` settles.

        ``papers`` None: all that a bundle has.
        """
        self._edition, self._settle = edition, settle
        self._papers = papers or papers_of(edition)
        corners = edition.corners or (edition.settled,)
        self._ends = (*corners, *_with_fits(corners, settle))
        self._known: dict[object, Sequence[SheetFacts]] = {}
        self._spots = [
            clamp_spots(corners[0], each, *self._ends[1:]) for each in edition.layout.sheets
        ]
        drawn = self._told(corners[0])
        self._layouts: dict[str, tuple[HeldPicture, ...]] = {}
        self._pages: dict[str, tuple[SetupPage, ...]] = {}
        for name, paper in self._papers.items():
            self._layouts[name] = layout_pictures(edition, self._ends, paper)
            self._pages[name] = tuple(
                setup_page(edition, each, self._ends, paper) for each in drawn
            )

    def at(self, settled: SettledPlan) -> Iterator[PrintedFile]:
        """Yield the files of the plan at one point, cut with its own cutter."""
        settled = self._uncut(settled)
        edition, reader = self._edition, self._edition.reader
        label = label_of(settled.variant, settled.plan.units, self._ends[0].sheets)
        told = self._told(settled)
        sizes = sizes_told(settled, self._ends, reader)
        for name, paper in self._papers.items():
            yield PrintedFile(
                name=layout_name(label, name),
                write=partial(layout_pdf, edition, settled, self._layouts[name], sizes, paper),
            )
            sheets = tuple(zip(told, self._pages[name], strict=True))
            yield PrintedFile(
                name=setup_name(label, name),
                write=partial(setup_pdf, edition, settled, sheets, paper),
            )

    def _uncut(self, settled: SettledPlan) -> SettledPlan:
        variant = settled.variant
        if not variant.cutter and not variant.cut:
            return settled
        return self._settle(replace(variant, cutter=(), cut=())) or settled

    def _told(self, settled: SettledPlan) -> Sequence[SetupSheet]:
        """Return the setup of every sheet in words."""
        ends = zip(*(self._facts(each) for each in self._ends), strict=True)
        sheets, reader = self._edition.layout.sheets, self._edition.reader
        rows = zip(self._facts(settled), ends, sheets, self._spots, strict=True)
        return [
            setup_sheet(Ranged(here=here, ends=at_ends), layout, spots, reader)
            for here, at_ends, layout, spots in rows
        ]

    def _facts(self, settled: SettledPlan) -> Sequence[SheetFacts]:
        """Return the facts of every sheet, each point worked out once."""
        key = (settled.variant.thickness, settled.variant.fit)
        if key not in self._known:
            sheets: Sequence[SheetLayout] = self._edition.layout.sheets
            self._known[key] = [SheetFacts.of(settled, each) for each in sheets]
        return self._known[key]


def _with_fits(corners: Sequence[SettledPlan], settle: Settle) -> Iterator[SettledPlan]:
    """Yield the plan with its thinnest and its thickest sheets at both ends of chosen fits."""
    drawn = corners[0]
    fits = [(sheet.name, sheet.fits) for sheet in drawn.sheets if sheet.fits is not None]
    for thick in (False, True) if fits else ():
        thickness = {sheet.name: sheet.published[thick] for sheet in drawn.sheets}
        for wide in (False, True):
            variant = point(drawn, thickness, {name: ends[wide] for name, ends in fits})
            made = settle(variant)
            if made is not None:
                yield made
