"""Small wordings that several pages share."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say

_MOST_MARKS = 8


def marks_text(marks: Sequence[str], reader: Reader) -> str:
    """Return the marks of pieces, or the first and the last of many."""
    if len(marks) <= _MOST_MARKS:
        return " ".join(marks)
    return say(reader, "figures-to", least=marks[0], most=marks[-1])


def release_told(version: str, reader: Reader) -> str:
    """Return what stands behind a plan's title: `` · release 1.0.0``."""
    return f" · {say(reader, 'printed-release', version=version)}"
