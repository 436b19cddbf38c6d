"""Signs that a keyboard lacks: quotation marks that turn, feet and inches, times, firm blanks."""

from __future__ import annotations

import re
from collections.abc import Sequence

_QUOTES = {"de": "„“‚‘", "fr": "«»‹›", "da": "»«›‹", "sv": "””’’", "fi": "””’’"}
_ENGLISH = "“”‘’"
"""Opening and closing marks, double and single, by the language's first tag (BCP 47)."""

_UNITS = "mm|cm|m|in|ft|kg|g|lb|oz|N|h|min|s|W|kW|V|ml|l|°|%"
_NUMBER = r"(?<![^\W\dxX_])(?<![\d.])(?:\d(?:[\d.,/]*\d)?[″′½¼¾]?|[½¼¾])"
"""A number that no letter stands before, but for the x of another one."""
_TIMES = re.compile(rf"({_NUMBER}(?:[ \xa0]?(?:mm|cm|m|in))?[ \xa0]?)x(?=[ \xa0]?\d)")
_OFTEN = re.compile(r"(?<![\w.])(\d+)x(?= [^\W\d])")
_HEX = re.compile(r"(?<![\w.])0x(?=[\da-fA-F])")
_FIRM = re.compile(rf"(?<=\d) (?=(?:{_UNITS})(?![\w])|\d+/\d)")
_BEFORE_OPENING = " \xa0\t\n([{–—-/„“‚‘«‹"


def with_signs(
    texts: Sequence[str], language: str, plain: Sequence[bool] = (), *, firm: bool = True
) -> tuple[str, ...]:
    """Return the pieces of one line with the signs they mean; each keeps its length.

    Straight quotation marks become those of the language, after a number primes for inches and
    feet; an x between numbers becomes ×; the blank before a unit or a fraction no longer breaks,
    unless told otherwise. What is ``plain`` is typed so and stays, yet counts as what stands
    before and after the others.
    """
    whole = "".join(texts)
    signed = _times(_quoted(whole, language))
    if firm:
        signed = _firm(signed)
    pieces, at = [], 0
    for index, text in enumerate(texts):
        kept = index < len(plain) and plain[index]
        pieces.append(text if kept else signed[at : at + len(text)])
        at += len(text)
    return tuple(pieces)


def _times(text: str) -> str:
    hidden = _HEX.sub("0\0", text)
    return _OFTEN.sub("\\1×", _TIMES.sub("\\1×", hidden)).replace("\0", "x")


def _firm(text: str) -> str:
    return _FIRM.sub("\xa0", text)


def _quoted(text: str, language: str) -> str:
    if '"' not in text and "'" not in text:
        return text
    marks = _QUOTES.get(language.split("-", maxsplit=1)[0].lower(), _ENGLISH)
    made: list[str] = []
    opened = {'"': 0, "'": 0}
    for index, sign in enumerate(text):
        if sign not in opened:
            made.append(sign)
            continue
        before, after = text[index - 1 : index], text[index + 1 : index + 2]
        made.append(_mark(sign, before, after, marks, opened))
    return "".join(made)


def _mark(sign: str, before: str, after: str, marks: str, opened: dict[str, int]) -> str:
    """Return what a straight mark means where it stands, and count what is open."""
    double = sign == '"'
    opening, closing = (marks[0], marks[1]) if double else (marks[2], marks[3])
    if not double and before.isalpha() and (after.isalpha() or not opened[sign]):
        return "’"
    if before.isdigit() and not opened[sign] and not after.isalpha():
        return "″" if double else "′"
    if (
        (not before or before in _BEFORE_OPENING or before in "\"'")
        and not after.isspace()
        and after
    ):
        if not double and after.isdigit():
            return "’"
        opened[sign] += 1
        return opening
    if not double and not opened[sign]:
        return "’"
    opened[sign] = max(0, opened[sign] - 1)
    return closing
