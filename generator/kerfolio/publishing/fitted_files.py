"""The fitted files of a plan: its cut files for every thickness, fit and cutter it is meant for."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from functools import cache, partial
from typing import overload

from kerfolio.basis.digits import rounded
from kerfolio.basis.reader import Reader
from kerfolio.fitted.fill import fill
from kerfolio.fitted.finding import CellsError, Draw, find
from kerfolio.fitted.form import Fitted, Number, Point
from kerfolio.fitted.joining import joined
from kerfolio.fitted.recorder import Draft, Recorder, recorded_words
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.other_layout import OtherLayout
from kerfolio.paper.printed_file import PrintedFile
from kerfolio.publishing.cut_files import (
    CutFile,
    Formats,
    files_of_others,
    files_of_parts,
    files_of_sheets,
)
from kerfolio.publishing.cutter_range import CutterRange, cutter_ranges
from kerfolio.settling.built_in import MOST_CUT
from kerfolio.settling.making import set_of
from kerfolio.settling.point import point
from kerfolio.settling.settle import Settler
from kerfolio.settling.settled import FitVariant, SettledPlan, SettledSheet
from kerfolio.settling.variant_name import labelled
from kerfolio.writing.formats import CutFormat

_THICKNESS, _FIT, _CUTTER, CUT = "thickness", "fit", "cutter", "cut"


class Settling:
    """Settles a plan at its points, each once; it begins with those that were settled before."""

    def __init__(self, drawn: SettledPlan, known: Iterable[SettledPlan] = ()) -> None:
        """Begin with the plan as it is drawn, and at the points ``known``."""
        self.drawn = drawn
        self._settler = Settler(drawn.plan, drawn.stock)
        self._made: dict[FitVariant, SettledPlan | None] = {
            each.variant: each for each in (*known, drawn)
        }

    def at(self, variant: FitVariant) -> SettledPlan | None:
        """Return the plan with all the pieces it makes, None where it does not settle."""
        if variant.cut:
            return self._built_in(variant)
        if variant not in self._made:
            made, _ = self._settler.at(variant)
            self._made[variant] = None if made is None else set_of(made)
        found = self._made[variant]
        return found and replace(found, variant=variant)  # its label may know more figures

    def _built_in(self, variant: FitVariant) -> SettledPlan | None:
        """Return the plan with true cuts built in, which change nothing else of it."""
        cuts, own = dict(variant.cut), self.drawn
        bare = labelled(replace(variant, cut=()), own.plan.units, own.sheets)
        found = self.at(bare)
        if found is None:
            return None
        sheets = tuple(replace(each, cut=cuts.get(each.name, 0.0)) for each in found.sheets)
        return replace(found, variant=variant, sheets=sheets)


Printed = Callable[[SettledPlan], Iterable[PrintedFile]]
"""Returns files to print of a plan at a point, in the same order at all of them."""


def with_printed(fitted: Fitted, settling: Settling, printed: Printed) -> Fitted:
    """Return fitted files and those to print, which follow no cutter.

    Where they do not follow the numbers of the other files there are none of them.
    """
    found = fitted_to_print(fitted.numbers, settling, printed)
    return fitted if found is None else joined(fitted, found)


def fitted_to_print(
    numbers: Iterable[Number], settling: Settling, printed: Printed
) -> Fitted | None:
    """Return files to print by those of some numbers that are no cutter's; None as above."""
    cutting = (f"{_CUTTER}.", f"{CUT}.")
    own = tuple(each for each in numbers if not each.name.startswith(cutting))
    try:
        return find(own, _drawing(settling, lambda there: printed_drafts(printed(there))))
    except CellsError:
        return None


def fitted_files(
    settling: Settling,
    layout: Layout,
    formats: Formats,
    reader: Reader,
    others: Sequence[OtherLayout] = (),
) -> Fitted | None:
    """Return the fitted files of all sheets of a layout and all parts, in every format.

    Those of sheets for ``others`` come besides.

    Where files do not follow the cutter they are for the plan's own, where they do not follow the
    fit for its own fit; None where they do not follow the sheets either. A true cut is built in
    where they follow cutters.
    """
    drawn = settling.drawn
    draw = _drawing(settling, lambda there: drafts(there, layout, formats, reader, others))
    own = {each.name: _own(each) for each in drawn.sheets}
    for cutters, chosen in ((cutter_ranges(drawn, settling.at), True), (own, True), (own, False)):
        with suppress(CellsError):
            return find(tuple(_numbers(drawn, cutters, chosen=chosen)), draw)
    return None


def _drawing(settling: Settling, files: Callable[[SettledPlan], Sequence[Draft]]) -> Draw:
    """Return what draws files of a plan at a point; it raises CellsError where nothing settles."""

    def draw(at: Point) -> Sequence[Draft]:
        there = settling.at(variant_at(settling.drawn, at))
        if there is None:
            raise CellsError("the plan does not settle within its range")
        return files(there)

    return draw


def _own(sheet: SettledSheet) -> CutterRange:
    return CutterRange(least=sheet.cutter.diameter, most=sheet.cutter.diameter, none=False)


def variant_at(drawn: SettledPlan, at: Point) -> FitVariant:
    """Return the variant at a point of fitted files. Raises KeyError for a number it has not."""
    kinds: dict[str, dict[str, float | None]] = {
        kind: {} for kind in (_THICKNESS, _FIT, _CUTTER, CUT)
    }
    for name, value in at.items():
        kind, _, sheet = name.partition(".")
        kinds[kind][sheet] = value
    there = {
        kind: {sheet: value for sheet, value in each.items() if value is not None}
        for kind, each in kinds.items()
    }
    return point(drawn, there[_THICKNESS], there[_FIT], kinds[_CUTTER], there[CUT])


def filled_at(fitted: Fitted, variant: FitVariant) -> dict[str, bytes]:
    """Return the files of a point by name. Raises PointError for one they are not made for."""
    at: dict[str, float | None] = {f"{_THICKNESS}.{sheet}": mm for sheet, mm in variant.thickness}
    at |= {f"{_FIT}.{sheet}": mm for sheet, mm in variant.fit}
    at |= {f"{_CUTTER}.{sheet}": mm for sheet, mm in variant.cutter}
    at |= {f"{CUT}.{sheet}": mm for sheet, mm in variant.cut}
    return {name: text.encode() for name, text in fill(fitted, at)}


def _numbers(
    drawn: SettledPlan, cutters: Mapping[str, CutterRange], *, chosen: bool
) -> Iterator[Number]:
    """Yield the numbers of a plan, sheet by sheet: thickness, fit where it is chosen, cutter."""
    for sheet in drawn.sheets:
        least, most = sheet.published
        yield Number(
            name=f"{_THICKNESS}.{sheet.name}",
            least=least,
            most=most,
            drawn=dict(drawn.variant.thickness)[sheet.name],
            decimals=2,
        )
        if chosen and sheet.fits is not None:
            yield Number(
                name=f"{_FIT}.{sheet.name}",
                least=rounded(sheet.fits[0], 3),
                most=rounded(sheet.fits[1], 3),
                drawn=sheet.fit,
                decimals=3,
            )
        found = cutters[sheet.name]
        yield Number(
            name=f"{_CUTTER}.{sheet.name}",
            least=found.least,
            most=found.most,
            drawn=sheet.cutter.diameter,
            decimals=3,
            none=found.none,
            below=found.below,
            above=found.above,
        )
        if found.least < found.most:
            yield Number(
                name=f"{CUT}.{sheet.name}", least=-MOST_CUT, most=MOST_CUT, drawn=0.0, decimals=3
            )


class _Drafts(Sequence[Draft]):
    """Files at a point, each drawn when it is first asked for."""

    def __init__(self, waiting: Iterable[Callable[[], Draft]]) -> None:
        self._drafts = [cache(each) for each in waiting]

    def __len__(self) -> int:
        return len(self._drafts)

    @overload
    def __getitem__(self, place: int) -> Draft: ...
    @overload
    def __getitem__(self, place: slice) -> Sequence[Draft]: ...
    def __getitem__(self, place: int | slice) -> Draft | Sequence[Draft]:
        if isinstance(place, slice):
            return [each() for each in self._drafts[place]]
        return self._drafts[place]()


def drafts(
    settled: SettledPlan,
    layout: Layout,
    formats: Formats,
    reader: Reader,
    others: Sequence[OtherLayout] = (),
) -> Sequence[Draft]:
    """Return the files of all sheets and parts, recorded, in the same order for any point."""
    files = (
        *files_of_sheets(settled, layout, reader),
        *files_of_others(settled, others, reader),
        *files_of_parts(settled, reader),
    )
    return _Drafts(partial(draft_of, file, each) for file in files for each in formats)


def draft_of(file: CutFile, form: CutFormat) -> Draft:
    """Return a cut file in a format, recorded."""
    recorder = Recorder()
    content = form.write(file.drawn(), own_origin=file.own_origin, numbers=recorder)
    name = recorded_words(file.named(form.ending))
    return Draft(name=name, text=recorder.recorded(content.decode()))


def printed_drafts(files: Iterable[PrintedFile]) -> Sequence[Draft]:
    """Return files to print, recorded."""
    return _Drafts(partial(_printed_draft, each) for each in files)


def _printed_draft(file: PrintedFile) -> Draft:
    recorder = Recorder()
    content = file.write(recorder)
    return Draft(name=recorded_words(file.name), text=recorder.recorded(content.decode()))
