"""Small wordings that several pages share."""

from __future__ import annotations

from collections.abc import Sequence

_MOST_MARKS = 8


def marks_text(marks: Sequence[str]) -> str:
    """Return the marks of pieces, or the first and the last of many."""
    return " ".join(marks) if len(marks) <= _MOST_MARKS else f"{marks[0]} to {marks[-1]}"
