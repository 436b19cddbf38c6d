"""The grammar of SVG path data (SVG 2, section 9.3.9): a broken tail is told, not dropped."""

from __future__ import annotations

import re
from itertools import islice

from kerfolio.basis.budgets import PATH
from kerfolio.basis.complaint import Complaint
from kerfolio.basis.words import counted
from kerfolio.geometry.shape_error import ShapeError

_NUMBER = re.compile(r"[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?")
_FLAG = re.compile(r"[01]")
_GAP = re.compile(r"[ \t\n\f\r]*")
_COMMA = re.compile(r"[ \t\n\f\r]*,?[ \t\n\f\r]*")
_SIZES = {"M": 2, "L": 2, "H": 1, "V": 1, "C": 6, "S": 4, "Q": 4, "T": 2, "A": 7, "Z": 0}
_FLAGS = (3, 4)


def too_long(text: str) -> Complaint | None:
    """Return the complaint about path data of more numbers than are taken apart, or None."""
    found = islice(_NUMBER.finditer(text), PATH.most + 1)
    return PATH.beyond(sum(1 for _ in found))


def check(text: str) -> None:
    """Raise ShapeError quoting the first place where path data breaks its grammar."""
    position = _GAP.match(text, 0).end()  # type: ignore[union-attr]
    first = True
    while position < len(text):
        command = text[position]
        if command.upper() not in _SIZES:
            raise _broken(text, position, "a command letter is expected")
        if first and command not in "Mm":
            raise _broken(text, position, "a path begins with M")
        first = False
        position = _arguments(text, position + 1, command)


def _arguments(text: str, position: int, command: str) -> int:
    """Return the position after a command's arguments, given one or more times over."""
    size = _SIZES[command.upper()]
    position = _GAP.match(text, position).end()  # type: ignore[union-attr]
    if size == 0:
        return position
    count = 0
    while True:
        pattern = _FLAG if size == 7 and count % 7 in _FLAGS else _NUMBER
        start = _COMMA.match(text, position).end() if count else position  # type: ignore[union-attr]
        found = pattern.match(text, start)
        if not found:
            if count == 0 or count % size:
                raise _broken(text, start, f"{command} takes {counted(size, 'number')}")
            return _GAP.match(text, position).end()  # type: ignore[union-attr]
        position, count = found.end(), count + 1


def _broken(text: str, position: int, why: str) -> ShapeError:
    here = " ".join(text[position : position + 16].split()) or "the end"
    return ShapeError(f"path breaks off at `{here}` (character {position + 1}): {why}")
