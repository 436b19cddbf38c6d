"""Quantities within sentences: found by the one form in which both units are told."""

from __future__ import annotations

import re
from collections.abc import Iterator

from kerfolio.document.words import Both, Inline, Words

_NUMBER = r"(?:about )?\d[\d.,/]*(?: \d+/\d+)?"
_NUMBERS = rf"(?:under )?{_NUMBER}(?:(?: × | to ){_NUMBER})*"
_UNIT = r"(?:mm|in|kg|lb|N|lbf|mm/min|in/min)\b(?: a metre| a foot)?"
_BOTH = re.compile(rf"(?P<first>{_NUMBERS} {_UNIT}) \((?P<other>{_NUMBERS} {_UNIT})\)")


def told(text: str) -> Words:
    """Return a text with each quantity told in both units as one piece.

    They are told as ``basis.lengths.both`` writes them: ``360 mm (14 3/16 in)``.
    """
    found = tuple(_pieces(text))
    return text if found == (text,) else found


def _pieces(text: str) -> Iterator[Inline]:
    end = 0
    for match in _BOTH.finditer(text):
        if match.start() > end:
            yield text[end : match.start()]
        yield Both(first=match["first"], other=match["other"])
        end = match.end()
    if end < len(text):
        yield text[end:]
