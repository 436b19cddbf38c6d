"""The cut files of a settled plan, in every format, as named bytes."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache, partial

from kerfolio.basis.reader import Reader
from kerfolio.drawing.cut_sheet import cut_art, cut_coupon, cut_part, cut_sheet
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.names import (
    art_name,
    coupon_name,
    cut_part_name,
    cut_sheet_name,
    other_sheet_name,
)
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.other_layout import OtherLayout
from kerfolio.settling.settled import CENTRE, SettledPlan
from kerfolio.shop.art import arts_of
from kerfolio.writing.formats import CutFormat

Named = tuple[str, bytes]
Formats = Sequence[CutFormat]


@dataclass(frozen=True, slots=True, kw_only=True)
class CutFile:
    """A cut file in any format: its name by its ending, its drawing, whether that has its 0,0."""

    named: Callable[[str], str]
    drawn: Callable[[], Drawing]
    own_origin: bool = False


def files_of_sheets(settled: SettledPlan, layout: Layout, reader: Reader) -> Iterator[CutFile]:
    """Yield the files of every sheet of a layout, its pieces as one variant settles them."""
    for sheet in layout.sheets:
        yield CutFile(
            named=partial(cut_sheet_name, settled.variant.label, sheet.number),
            drawn=cache(partial(cut_sheet, settled, sheet, reader)),
            own_origin=settled.sheet(sheet.sheet).datum == CENTRE,
        )


def files_of_others(
    settled: SettledPlan, others: Iterable[OtherLayout], reader: Reader
) -> Iterator[CutFile]:
    """Yield the files of sheets for other sheets and beds: the same pieces, laid otherwise."""
    for other in others:
        label = other.sheet.label
        for sheet, what in other.sheets:
            yield CutFile(
                named=partial(other_sheet_name, label, settled.variant.label, sheet.number),
                drawn=cache(partial(cut_sheet, settled, sheet, reader, what)),
                own_origin=settled.sheet(sheet.sheet).datum == CENTRE,
            )


def files_of_parts(settled: SettledPlan, reader: Reader) -> Iterator[CutFile]:
    """Yield the files of every part alone, as one variant settles it."""
    for part in settled.parts:
        yield CutFile(
            named=partial(cut_part_name, settled.variant.label, part.name),
            drawn=cache(partial(cut_part, settled, part, reader)),
        )


def sheet_files(
    settled: SettledPlan, layout: Layout, formats: Formats, reader: Reader
) -> Iterator[Named]:
    """Yield the cut files of every sheet of a layout."""
    yield from written(files_of_sheets(settled, layout, reader), formats)


def part_files(settled: SettledPlan, formats: Formats, reader: Reader) -> Iterator[Named]:
    """Yield the cut files of every part."""
    yield from written(files_of_parts(settled, reader), formats)


def other_files(
    settled: SettledPlan, others: Iterable[OtherLayout], formats: Formats, reader: Reader
) -> Iterator[Named]:
    """Yield the cut files of sheets for other sheets and beds."""
    yield from written(files_of_others(settled, others, reader), formats)


def coupon_files(settled: SettledPlan, formats: Formats, reader: Reader) -> Iterator[Named]:
    """Yield the cut files of every fit coupon."""
    files = (
        CutFile(
            named=partial(coupon_name, coupon.sheet),
            drawn=cache(partial(cut_coupon, settled, coupon, reader)),
        )
        for coupon in settled.coupons
    )
    yield from written(files, formats)


def art_files(settled: SettledPlan, formats: Formats, reader: Reader) -> Iterator[Named]:
    """Yield the cut files of every engraving, its 0,0 at its middle."""
    files = (
        CutFile(
            named=partial(art_name, art.file),
            drawn=cache(partial(cut_art, settled, art, reader)),
            own_origin=True,
        )
        for art in arts_of(settled)
    )
    yield from written(files, formats)


def written(files: Iterable[CutFile], formats: Formats) -> Iterator[Named]:
    """Yield cut files in every format."""
    for file in files:
        for each in formats:
            yield file.named(each.ending), each.write(file.drawn(), own_origin=file.own_origin)
