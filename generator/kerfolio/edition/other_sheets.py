"""For which other sheets and beds a plan is laid out, in words that both its pages share."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.sheet_size import sheet_text
from kerfolio.basis.words import counted, listed
from kerfolio.edition.edition import Edition
from kerfolio.layouts.count import sheets_used


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherWords:
    """What it is for, how many sheets or blanks that takes, and the folder of its files."""

    title: str
    takes: str
    folder: str


def other_words(edition: Edition) -> tuple[OtherWords, ...]:
    """Return a line for each other sheet or bed; nothing for a plan that states none."""
    titles = {each.name: each.stock.title for each in edition.settled.sheets}
    found = []
    for other in edition.others:
        size, bed = sheet_text(other.sheet.size, edition.reader), other.sheet.bed
        what = "blank" if bed else "sheet"
        counts = sheets_used(other.layout).items()
        takes = listed([f"{counted(count, what)} of {titles[name]}" for name, count in counts])
        title = f"A bed of {size}" if bed else f"Sheets of {size}"
        found.append(OtherWords(title=title, takes=takes, folder=f"on-{other.sheet.label}"))
    return tuple(found)
