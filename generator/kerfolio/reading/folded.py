"""Lines that YAML folds into one: what is lost of a text that was written in lists or tables."""

from __future__ import annotations

import re
from collections.abc import Sequence

from kerfolio.basis.place import Place
from kerfolio.reading.nodes import Folded

_MARKS: tuple[tuple[str, re.Pattern[str]], ...] = (
    ("a list", re.compile(r"[-+*] +\S|1[.)] +\S")),
    ("a table", re.compile(r"\|.*\|")),
    ("code", re.compile(r"```|~~~")),
    ("a heading", re.compile(r"#{1,6} +\S")),
    ("a quotation", re.compile(r"> +\S")),
)
"""What begins a block of Markdown, though words stand right above it (CommonMark 0.31)."""

_NUMBERED = re.compile(r"\d{1,9}[.)] +\S")


def folded_mark(lines: Sequence[str], start: Place, *, deeper_stay: bool) -> Folded | None:
    """Return the first line that begins a block and is folded into the line above it, or None.

    ``start`` is where the first line begins. A line below an empty one stays a line; where
    ``deeper_stay``, so does one that is set in further than the first, and the one below that.
    """
    indents = [len(line) - len(line.lstrip()) for line in lines]
    base = next((n for n, line in zip(indents, lines, strict=True) if line.strip()), 0)
    for row in range(1, len(lines)):
        above, line = lines[row - 1].strip(), lines[row].strip()
        stays = deeper_stay and max(indents[row - 1], indents[row]) > base
        what = _begun(line, above)
        if above and what and not stays:
            return Folded(what=what, place=Place(start.file, start.line + row, indents[row] + 1))
    return None


def _begun(line: str, above: str) -> str:
    """Return what a line begins; a number above 1 goes on with a list and begins none."""
    if _NUMBERED.match(line) and _NUMBERED.match(above):
        return "a list"
    return next((what for what, mark in _MARKS if mark.match(line)), "")
