"""How saw sheets are read, and what to mind at the saw: worded once, for papers and pages alike.

That blades are guarded and fence and mitre gauge never used for one cut is common practice, no
single source.
"""

from __future__ import annotations

from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.edition.edition import Edition


def saw_how(reader: Reader) -> str:
    """Return how saw sheets are read."""
    return say(reader, "sawwords-how")


def saw_caution(reader: Reader) -> str:
    """Return what to mind at the saw."""
    return say(reader, "sawwords-caution")


def spare_words(edition: Edition) -> str:
    """Return what blanks of shaped parts have to spare; empty where every part is sawn to size."""
    shaped = [
        max(blank.blank.grown) for sheet in edition.saw for blank in sheet.blanks if blank.blank
    ]
    if not any(shaped):
        return ""
    spare = both_text(max(shaped), edition.reader)
    return say(edition.reader, "sawwords-spare", spare=spare)
