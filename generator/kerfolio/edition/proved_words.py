"""What a plan was proved for, and where: worded once, for page and booklet alike."""

from __future__ import annotations

from kerfolio.basis.cutting_lengths import chosen_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.thickness import sold_in, sold_range_in
from kerfolio.basis.words import counted, listed
from kerfolio.edition.edition import Edition
from kerfolio.settling.settled import SettledSheet
from kerfolio.settling.titles import sheet_title


def proved_words(edition: Edition) -> str:
    """Return a sentence: the range of every sheet, and the points that were looked at."""
    sheets, reader = edition.settled.sheets, edition.reader
    if not sheets or not edition.proved:
        return ""
    if len(edition.proved) == 1:
        known = [sold_in(each.thickness, reader) for each in sheets]
        return f"Proved at {listed(known)}."
    titles = {each.name: sheet_title(edition.settled, each.name) for each in sheets}
    many = len(sheets) > 1
    spans = listed([_span(each, reader, titles[each.name] if many else "") for each in sheets])
    looked = "at the thinnest and the thickest sheet"
    if len(sheets) > 1:
        looked = "with the thinnest and the thickest of every sheet"
    between = len(edition.proved) - len({each.variant.label for each in edition.corners})
    more = f" and at {counted(between, 'point')} between" if between else ""
    return f"Proved {spans}: {looked}, as drawn{more}."


def _span(sheet: SettledSheet, reader: Reader, title: str) -> str:
    span = sold_range_in(*sheet.published, reader)
    words = f"at {span}" if sheet.published[0] == sheet.published[1] else f"from {span}"
    if sheet.fits is not None and sheet.fits[0] != sheet.fits[1]:
        least, most = (chosen_in(each, reader) for each in sheet.fits)
        words = f"{words}, with fits from {least} to {most}"
    return f"{words} of {title}" if title else words
