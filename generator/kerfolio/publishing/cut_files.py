"""The cut files of a settled plan, in every format, as named bytes."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial

from kerfolio.drawing.cut_sheet import cut_art, cut_coupon, cut_part, cut_sheet
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.names import art_name, coupon_name, cut_part_name, cut_sheet_name
from kerfolio.layouts.layout import Layout
from kerfolio.settling.settled import CENTRE, SettledPlan
from kerfolio.shop.art import arts_of
from kerfolio.writing.formats import CutFormat

Named = tuple[str, bytes]
Formats = Sequence[CutFormat]


def sheet_files(
    settled: SettledPlan, layout: Layout, formats: Formats, first: str
) -> Iterator[Named]:
    """Yield the cut files of every sheet of a layout, its pieces as one variant settles them."""
    for sheet in layout.sheets:
        drawing = cut_sheet(settled, sheet, first)
        named = partial(cut_sheet_name, settled.variant.label, sheet.number)
        centred = settled.sheet(sheet.sheet).datum == CENTRE
        yield from _written(drawing, named, formats, own_origin=centred)


def part_files(settled: SettledPlan, formats: Formats, first: str) -> Iterator[Named]:
    """Yield the cut files of every part alone, as one variant settles it."""
    for part in settled.parts:
        named = partial(cut_part_name, settled.variant.label, part.name)
        yield from _written(cut_part(settled, part, first), named, formats)


def coupon_files(settled: SettledPlan, formats: Formats, first: str) -> Iterator[Named]:
    """Yield the cut files of every fit coupon."""
    for coupon in settled.coupons:
        drawing = cut_coupon(settled, coupon, first)
        yield from _written(drawing, partial(coupon_name, coupon.sheet), formats)


def art_files(settled: SettledPlan, formats: Formats, first: str) -> Iterator[Named]:
    """Yield the cut files of every engraving, its 0,0 at its middle."""
    for art in arts_of(settled):
        named = partial(art_name, art.file)
        yield from _written(cut_art(settled, art, first), named, formats, own_origin=True)


def _written(
    drawing: Drawing,
    named: Callable[[str], str],
    formats: Formats,
    *,
    own_origin: bool = False,
) -> Iterator[Named]:
    for each in formats:
        yield named(each.ending), each.write(drawing, own_origin=own_origin)
