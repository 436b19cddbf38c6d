"""Words for the formats of cut files, the same on page and paper."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import listed, say
from kerfolio.writing.formats import CutFormat


@dataclass(frozen=True, slots=True, kw_only=True)
class FormatWords:
    """What readers are told of the formats.

    ``each``: ``one SVG and one DXF``; ``units``: ``in millimetres``; ``coming``: ``as SVG and as
    DXF, both in millimetres``; ``sent``: what a shop that cuts for others is sent, ``DXF``.
    """

    each: str
    units: str
    coming: str
    sent: str


def format_words(formats: Sequence[CutFormat], reader: Reader) -> FormatWords:
    """Return the words for some formats, at least one."""
    titles = [_title(each, reader) for each in formats]
    inches = sum(each.unit == "in" for each in formats)
    coming = listed(reader, [say(reader, "formatwords-as", format=each) for each in titles])
    return FormatWords(
        each=listed(reader, [say(reader, "formatwords-one", format=each) for each in titles]),
        units=say(reader, "formatwords-units", inches=inches),
        coming=say(reader, "formatwords-coming", formats=coming, count=len(formats), inches=inches),
        sent=listed(reader, [_title(each, reader) for each in formats if each.sent], "or"),
    )


def _title(form: CutFormat, reader: Reader) -> str:
    inches = form.unit == "in"
    return say(reader, "formatwords-in-inches", format=form.title) if inches else form.title
