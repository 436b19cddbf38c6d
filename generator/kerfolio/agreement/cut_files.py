"""Every cut file, of every format, against the settled plan: contours, words, thickness, datum."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import partial

from kerfolio.agreement.differences import differences
from kerfolio.agreement.meant import Meant, art_meant, coupon_meant, part_meant, sheet_meant
from kerfolio.agreement.same_contour import NEAR
from kerfolio.agreement.slot_widths import Slot, across, cuts_it, walled_slots
from kerfolio.agreement.written import SETTLED, Written
from kerfolio.basis.finding import Finding
from kerfolio.basis.measures import precise
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Measure, said
from kerfolio.basis.saying import say
from kerfolio.basis.tolerance import SAME
from kerfolio.drawing.cut_note import (
    CHECK_SQUARES,
    art_note,
    coupon_note,
    part_note,
    sheet_note,
)
from kerfolio.drawing.layer import NOTE
from kerfolio.edition.names import (
    art_name,
    coupon_name,
    cut_part_name,
    cut_sheet_name,
    other_sheet_name,
)
from kerfolio.geometry.contour import Contour
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.art import arts_of
from kerfolio.writing.read_back import ReadBack, UnreadableError


@dataclass(frozen=True, slots=True, kw_only=True)
class _File:
    """What the files of one name must hold, whatever their format; ``slots`` are measured there.

    ``zeroed`` tells that their own 0,0 matters to who cuts with them.
    """

    named: Callable[[str], str]
    meant: tuple[Meant, ...]
    note: tuple[str, ...]
    slots: tuple[Slot, ...] = ()
    thickness: float | None = None
    zeroed: bool = False


def cut_files(written: Written) -> Iterator[Finding]:
    """Yield where a cut file is not what the settled plan and its layout make it."""
    for file in _files(written):
        for each in written.edition.formats:
            name = file.named(each.ending)
            try:
                found = each.read(written.files[name])
            except UnreadableError as fault:
                yield written.differ(f"`{name}`", "its ending", str(fault))
                continue
            noted = replace(file, note=tuple(map(each.says, file.note)))
            yield from _compared(written, name, noted, found)


def _files(written: Written) -> Iterator[_File]:
    edition = written.edition
    for settled in edition.variants:
        yield from _of_variant(written, settled)
    for coupon in edition.settled.coupons:
        yield _File(
            named=partial(coupon_name, coupon.sheet),
            meant=coupon_meant(coupon),
            note=coupon_note(edition.settled, coupon, edition.reader),
        )
    for art in arts_of(edition.settled):
        yield _File(
            named=partial(art_name, art.file),
            meant=art_meant(art),
            note=art_note(edition.settled, art, edition.reader),
            zeroed=True,
        )


def _of_variant(written: Written, settled: SettledPlan) -> Iterator[_File]:
    fit, reader = settled.variant.label, written.edition.reader
    for part in settled.parts:
        yield _File(
            named=partial(cut_part_name, fit, part.name),
            meant=part_meant(part),
            note=part_note(settled, part, reader),
            slots=walled_slots(settled, part),
            thickness=settled.sheet(part.sheet).thickness,
        )
    for sheet in written.edition.layout.sheets:
        yield _File(
            named=partial(cut_sheet_name, fit, sheet.number),
            meant=sheet_meant(settled, sheet),
            note=sheet_note(settled, sheet, reader),
            thickness=settled.sheet(sheet.sheet).thickness,
            zeroed=True,
        )

    for other in written.edition.others:
        for sheet, what in other.sheets:
            yield _File(
                named=partial(other_sheet_name, other.sheet.label, fit, sheet.number),
                meant=sheet_meant(settled, sheet),
                note=sheet_note(settled, sheet, reader, what),
                thickness=settled.sheet(sheet.sheet).thickness,
                zeroed=True,
            )


def _compared(written: Written, name: str, file: _File, found: ReadBack) -> Iterator[Finding]:
    for what in found.strange:
        yield written.differ(f"`{name}`", SETTLED, f"it holds {what}")
    for how in differences(file.meant, found.layers):
        yield written.differ(f"`{name}`", SETTLED, how)
    for slot in file.slots:
        wide = across(slot, _cutting(slot, found))
        if not abs(wide - slot.meant) <= NEAR:
            yield written.differ(f"slot `{slot.name}`", f"`{name}`", slot.misfit(wide))
    for line in _misworded(file, found, written.edition.reader):
        yield written.differ(f"`{name}`", "what it is for", line)
    if file.zeroed and not any(abs(x) <= NEAR and abs(y) <= NEAR for x, y in found.zeros):
        yield written.differ(f"`{name}`", "its datum", "0,0 lies elsewhere")
    yield from _for_another(written, name, file, found)


def _cutting(slot: Slot, found: ReadBack) -> list[Contour]:
    layers = [contours for name, contours in found.layers.items() if cuts_it(slot, name)]
    return [contour for contours in layers for contour in contours]


def _misworded(file: _File, found: ReadBack, reader: Reader) -> Iterator[str]:
    measure = say(reader, "cutfile-measure")
    beside = (words for _, size in CHECK_SQUARES for words in (size, measure))
    meant = Counter((NOTE.name, line) for line in (*beside, *file.note))
    said_there = Counter((layer, line) for layer, lines in found.words.items() for line in lines)
    for _, line in (meant - said_there).elements():
        yield f"it does not say “{line}”"
    for layer, line in (said_there - meant).elements():
        yield f"it says “{line}” on layer `{layer}`"


def _for_another(written: Written, name: str, file: _File, found: ReadBack) -> Iterator[Finding]:
    """Compare the thickness that a file states as data."""
    one, other = found.thickness, file.thickness
    if one is None and other is None:
        return
    if one is None or other is None or abs(one - other) > SAME:
        how = said("it is for {}, the sheet is {}", _stated("stated", one), _stated("sheet", other))
        yield written.differ(f"`{name}`", "its own name", how)


def _stated(what: str, thickness: float | None) -> str | Measure:
    return "no thickness" if thickness is None else precise(what, thickness)
