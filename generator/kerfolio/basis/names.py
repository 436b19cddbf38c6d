"""Names: the nearest known one, and names fit for files and addresses."""

from __future__ import annotations

import re
from collections.abc import Iterable
from difflib import get_close_matches

NAME = re.compile(r"[a-z][a-z0-9]*(?:[-_][a-z0-9]+)*")
"""A maker's name for a part, sheet, size or feature: lower case, digits, inner hyphens."""


def nearest(name: str, known: Iterable[str]) -> str | None:
    """Return the known name most like ``name``, or None when none is close."""
    found = get_close_matches(name, sorted(known), n=1, cutoff=0.6)
    return found[0] if found else None


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """Return advice naming the nearest known name, else all of them."""
    names = sorted(known)
    close = nearest(name, names)
    if close:
        return f"Did you mean `{close}`?"
    if not names:
        return "None is known here."
    return "Known here: " + ", ".join(f"`{each}`" for each in names) + "."
