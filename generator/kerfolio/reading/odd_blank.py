"""Blanks that look like a plain one and are none: told by name, where they are in the way.

A no-break space comes into a file from a web page or a word processor. In prose it is welcome; in
an indentation, a key or a number it spoils what cannot be seen to be spoilt.
"""

from __future__ import annotations

import re
import unicodedata
from dataclasses import replace

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place
from kerfolio.reading.nodes import Scalar

RULE = "odd-blank"
_ODD = re.compile("[\u00a0\u00ad\u1680\u2000-\u200f\u2028\u2029\u202f\u205f\u2060\u3000\ufeff]")
"""The blanks of Unicode (its category Zs) and signs without width."""


def odd_blank(text: str) -> str:
    """Return the first odd blank of a text with its name: ``no-break space (U+00A0)``, or empty."""
    found = _ODD.search(text)
    if found is None:
        return ""
    name = unicodedata.name(found.group(), "blank of no name").lower()
    return f"{name} (U+{ord(found.group()):04X})"


def plain_blanks(text: str) -> str:
    """Return a text with plain blanks for its odd ones, and without the signs of no width."""
    return _ODD.sub(lambda odd: " " if odd.group().isspace() else "", text)


def blank_finding(node: Scalar, again: Complaint | None = None) -> Finding | None:
    """Return the finding for the odd blank in a short text that cannot be read; None without one.

    ``again`` is what is wrong even with plain blanks in their places.
    """
    found = _ODD.search(node.text)
    if found is None:
        return None
    at = found.start() + (1 if node.style in ("'", '"') else 0)
    place = replace(node.place, column=node.place.column + at) if node.place.column else node.place
    advice = again.advice if again is not None and again.advice else "Type a plain blank there."
    shown = quoted(plain_blanks(node.text), 20)
    return error(RULE, f"{shown} holds a {odd_blank(node.text)}", place, advice)


def blank_in_line(line: str, place: Place) -> Finding | None:
    """Return the finding for an odd blank that keeps a line from being a key; None without one.

    Only the blanks up to the colon and right after it count: behind them stands what may be prose.
    ``place`` is anywhere in the line.
    """
    head = re.match(r"[^:]*:?.?", line)
    found = _ODD.search(head.group()) if head else None
    if found is None:
        return None
    at = found.start()
    advice = "Indent with plain blanks." if not line[:at].strip() else "Type a plain blank there."
    start = replace(place, column=at + 1)
    return error(RULE, f"a {odd_blank(line[at])}", start, advice)
