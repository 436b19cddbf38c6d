"""For which other sheets and beds a plan is laid out, in words that both its pages share."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.saying import listed, say
from kerfolio.basis.sheet_size import sheet_text
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
    reader = edition.reader
    titles = {each.name: each.stock.title for each in edition.settled.sheets}
    found = []
    for other in edition.others:
        size, bed = sheet_text(other.sheet.size, reader), other.sheet.bed
        what = "blanks" if bed else "sheets"
        counts = sheets_used(other.layout).items()
        takes = listed(
            reader,
            [
                say(reader, f"othersheets-{what}", count=count, sheet=titles[name])
                for name, count in counts
            ],
        )
        title = say(reader, "othersheets-bed" if bed else "othersheets-size", size=size)
        found.append(OtherWords(title=title, takes=takes, folder=f"on-{other.sheet.label}"))
    return tuple(found)
