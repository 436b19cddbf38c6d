"""The lines of a maker's file that a finding, a part or a feature stands in."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

_BEFORE = 2
_MOST = 24
"""Lines shown at most."""
_WIDEST = 300
"""Signs of a line shown at most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line of a file by its number from 1; ``meant`` tells that it belongs to what is shown."""

    number: int
    text: str
    meant: bool


def excerpt(text: str, line: int) -> tuple[Line, ...]:
    """Return a line with what is indented below it, and the two lines before it.

    Nothing where the file has no such line.
    """
    lines = text.splitlines()
    if not 1 <= line <= len(lines):
        return ()
    first = max(1, line - _BEFORE)
    last = min(_last(lines, line), first + _MOST - 1)
    return tuple(
        Line(number=number, text=lines[number - 1][:_WIDEST], meant=number >= line)
        for number in range(first, last + 1)
    )


def _last(lines: list[str], line: int) -> int:
    """Return the number of the last line that is indented further than a line, or belongs to it."""
    deep, last = _indent(lines[line - 1]), line
    for number, text in _after(lines, line):
        if text.strip() and _indent(text) <= deep:
            break
        last = number if text.strip() else last
    return last


def _after(lines: list[str], line: int) -> Iterator[tuple[int, str]]:
    yield from enumerate(lines[line:], start=line + 1)


def _indent(text: str) -> int:
    """Return how far a line is indented; the dash of an entry counts as room for what follows."""
    return len(text) - len(text.lstrip())
