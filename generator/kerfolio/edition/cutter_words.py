"""Which cutter the files are drawn for and which others pass, for page and booklet alike."""

from __future__ import annotations

from kerfolio.basis.cutting_lengths import tool_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.basis.thickness import thickness_text
from kerfolio.edition.edition import Edition
from kerfolio.shop.tightest import tightest_inside


def cutter_words(edition: Edition) -> str:
    """Return a few sentences; nothing where nothing is cut from a sheet."""
    reader = edition.reader
    cutters = {sheet.cutter.name: sheet.cutter for sheet in edition.settled.sheets}
    if not cutters:
        return ""
    named = [
        say(reader, "cutterwords-wide", cutter=each.title, wide=tool_text(each.diameter, reader))
        for each in cutters.values()
    ]
    words = [say(reader, "cutterwords-drawn", cutters=listed(reader, named))]
    if edition.plan.relief.style != "none":
        words.append(say(reader, "cutterwords-opened"))
    tightest = tightest_inside(edition.settled)
    if tightest == 0:
        words.append(say(reader, "cutterwords-square"))
    elif tightest is not None:
        radius, most = (_told(each, reader) for each in (tightest, 2 * tightest))
        words.append(say(reader, "cutterwords-tightest", radius=radius, most=most))
    return " ".join(words)


def _told(mm: float, reader: Reader) -> str:
    """Return a radius or a width: of few figures in mm, in inches as cutters are sold."""
    return tool_text(mm, reader) if reader.unit == "in" else thickness_text(mm, reader)
