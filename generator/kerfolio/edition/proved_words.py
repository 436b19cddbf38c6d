"""What a plan was proved for, and where: worded once, for page and booklet alike."""

from __future__ import annotations

from kerfolio.basis.cutting_lengths import chosen_in
from kerfolio.basis.saying import listed, say
from kerfolio.basis.thickness import sold_in, sold_range_in
from kerfolio.edition.edition import Edition
from kerfolio.settling.settled import SettledSheet
from kerfolio.settling.titles import sheet_title


def proved_words(edition: Edition) -> str:
    """Return a sentence: the range of every sheet, and the points that were looked at."""
    sheets, reader = edition.settled.sheets, edition.reader
    if not sheets or not edition.proved:
        return ""
    if len(edition.proved) == 1:
        known = listed(reader, [sold_in(each.thickness, reader) for each in sheets])
        return say(reader, "provedwords-at", thickness=known)
    spans = listed(reader, [_span(edition, each) for each in sheets])
    between = len(edition.proved) - len({each.variant.label for each in edition.corners})
    return say(reader, "provedwords-range", spans=spans, sheets=len(sheets), points=between)


def _span(edition: Edition, sheet: SettledSheet) -> str:
    """Return the range of a sheet, with that of its fits; named where there are several."""
    reader, fixed = edition.reader, sheet.published[0] == sheet.published[1]
    span = sold_range_in(*sheet.published, reader)
    words = say(reader, "provedwords-span-at" if fixed else "provedwords-span-from", span=span)
    if sheet.fits is not None and sheet.fits[0] != sheet.fits[1]:
        least, most = (chosen_in(each, reader) for each in sheet.fits)
        words = say(reader, "provedwords-fits", span=words, least=least, most=most)
    if len(edition.settled.sheets) < 2:
        return words
    title = sheet_title(edition.settled, sheet.name)
    return say(reader, "provedwords-of", span=words, sheet=title)
