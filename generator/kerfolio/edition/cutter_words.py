"""Which cutter the files are drawn for and which others pass, for page and booklet alike."""

from __future__ import annotations

from kerfolio.basis.cutting_lengths import tool_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.thickness import thickness_text
from kerfolio.basis.words import listed
from kerfolio.edition.edition import Edition
from kerfolio.shop.tightest import tightest_inside


def cutter_words(edition: Edition) -> str:
    """Return a few sentences; nothing where nothing is cut from a sheet."""
    reader = edition.reader
    cutters = {sheet.cutter.name: sheet.cutter for sheet in edition.settled.sheets}
    if not cutters:
        return ""
    named = listed(
        [f"{each.title}, {tool_text(each.diameter, reader)} wide" for each in cutters.values()]
    )
    words = [f"The cut files are drawn for {named}."]
    if edition.plan.relief.style != "none":
        words.append(
            "Inside corners are opened a little wider than it, since many toolpath programs drop "
            "arcs of exactly the cutter’s radius; a smaller cutter works too, a larger one leaves "
            "the corners too full."
        )
    tightest = tightest_inside(edition.settled)
    if tightest == 0:
        words.append("Some inside corners are drawn square: what the cutter leaves is cut by hand.")
    elif tightest is not None:
        words.append(
            f"The tightest inside curve has a radius of {_told(tightest, reader)}: no "
            f"cutter wider than {_told(2 * tightest, reader)} follows it."
        )
    return " ".join(words)


def _told(mm: float, reader: Reader) -> str:
    """Return a radius or a width: of few figures in mm, in inches as cutters are sold."""
    return tool_text(mm, reader) if reader.unit == "in" else thickness_text(mm, reader)
