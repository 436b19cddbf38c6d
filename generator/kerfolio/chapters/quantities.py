"""Quantities within sentences: found by the one form in which both units are told."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from kerfolio.basis.catalogue import languages
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.document.words import Both, Inline, Words

_UNIT = r"(?:mm|in|kg|lb|N|lbf|mm/min|in/min)\b"
_EACH = r"(?: [^\W\d_]+){1,2}"
"""What a load is spread over, in whatever language: ``a metre``."""
_PLACE = "\0"


def told(text: str) -> Words:
    """Return a text with each quantity told in both units as one piece.

    They are told as ``basis.lengths.both`` writes them: ``360 mm (14 3/16 in)``, with the words of
    any language of the catalogue: ``17,2 bis 18,6 mm (0,677 bis 0,732 in)``.
    """
    found = tuple(_pieces(text))
    return text if found == (text,) else found


def _pieces(text: str) -> Iterator[Inline]:
    end = 0
    for match in _both().finditer(text):
        if match.start() > end:
            yield text[end : match.start()]
        yield Both(first=match["first"], other=match["other"])
        end = match.end()
    if end < len(text):
        yield text[end:]


@cache
def _both() -> re.Pattern[str]:
    """Return the pattern of a quantity in both units, the words of all languages in it."""
    readers = [Reader(language=each) for each in languages()]
    about = _either(say(each, "figures-about", figure=_PLACE) for each in readers)
    under = _either(say(each, "figures-under", figure=_PLACE) for each in readers)
    to = _either(say(each, "figures-to", least=_PLACE, most=_PLACE) for each in readers)
    number = rf"(?:{about})?\d[\d.,/]*(?: \d+/\d+)?"
    size = rf"(?:{under})?{number}(?:(?: × |{to}){number})* {_UNIT}"
    return re.compile(rf"(?P<first>{size}(?P<each>{_EACH})?) \((?P<other>{size}(?(each){_EACH}))\)")


def _either(told: Iterator[str]) -> str:
    """Return a pattern of the words that stand with a figure, or between two."""
    return "|".join(re.escape(each.replace(_PLACE, "")) for each in told)
