"""Lines that version control leaves in a file where two versions of it could not be merged."""

from __future__ import annotations

import re

from kerfolio.basis.complaint import quoted
from kerfolio.basis.finding import Finding, error
from kerfolio.basis.place import Place

RULE = "merge-mark"
_MARK = re.compile(r"(?:<{7}|>{7}|\|{7})(?: .*)?$")
_MIDDLE = "=" * 7
_ADVICE = "Keep one of the two versions, and delete the lines of `<`, `=` and `>`."


def merge_marks(text: str, file: str) -> tuple[Finding, ...]:
    """Return a finding for the first line of each conflict: git's and its kin's marks of seven.

    A line of ``=======`` alone may be the underline of a heading in prose: see ``is_merge_mark``.
    """
    found: list[Finding] = []
    inside = False
    for number, line in enumerate(text.split("\n"), start=1):
        if _MARK.match(line):
            if not inside:
                found.append(merge_mark(line, Place(file, number, 1)))
            inside = not line.startswith(">")
    return tuple(found)


def is_merge_mark(line: str) -> bool:
    """Tell whether a line that cannot be read is such a mark, ``=======`` among them."""
    return line.rstrip() == _MIDDLE or bool(_MARK.match(line))


def merge_mark(line: str, place: Place) -> Finding:
    """Return the finding for one such line."""
    return error(RULE, f"{quoted(line)} is left over from a merge", place, _ADVICE)
