"""How saw sheets are read, and what to mind at the saw: worded once, for papers and pages alike.

That blades are guarded and fence and mitre gauge never used for one cut is common practice, no
single source.
"""

from __future__ import annotations

from kerfolio.basis.lengths import both_text
from kerfolio.edition.edition import Edition

HOW = (
    "Set the fence once for all cuts of a row, then make them in order. Lay pieces as they lie in "
    "the picture: a rip is measured from the lower edge, a cross-cut from the left one, and the "
    "kerf is taken beyond the size. A trim takes its size off the edge, the kerf in it."
)
CAUTION = (
    "Guard and riving knife on, push sticks at hand; never the fence and the mitre gauge for one "
    "cut. Cut large sheets with a track and with help, and short or narrow pieces with a sled or "
    "by hand. The manual of the saw, local rules and licensed practice come first."
)


def spare_words(edition: Edition) -> str:
    """Return what blanks of shaped parts have to spare; empty where every part is sawn to size."""
    shaped = [
        max(blank.blank.grown) for sheet in edition.saw for blank in sheet.blanks if blank.blank
    ]
    if not any(shaped):
        return ""
    spare = both_text(max(shaped), edition.reader)
    return f"Shaped parts are sawn as blanks with {spare} to spare, and shaped by their templates."
