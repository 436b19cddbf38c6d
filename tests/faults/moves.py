"""Features of plans moved one at a time: what is said first when only one thing was changed.

A move adds a length to every place of one feature: along the edge it is counted on, or to x or to y
on the face. Only features that a joint or a fastening names are moved, and sizes in a row of
a plan's text; what is drawn, or stands over several lines, is left alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

_PARTS = re.compile(r"^parts:\n(.*?)^\S", re.MULTILINE | re.DOTALL)
_PART = re.compile(r"^  ([\w-]+):$")
_FEATURE = re.compile(r"^      ([\w-]+): \{(\w+): \{(.*)\}$")
_PLACE = re.compile(r"\b(?:at|zero|from|to): ")
_ON_EDGE = ("tabs", "notch", "notches", "bore")
_MOVED = (*_ON_EDGE, "slot", "slots", "pocket", "housings", "groove", "grooves", "hole", "holes")


@dataclass(frozen=True, kw_only=True)
class Move:
    """A feature that is moved along ``axis``; ``row`` is the line of the plan that states it."""

    part: str
    feature: str
    axis: str
    row: int

    @property
    def name(self) -> str:
        """What must be accused."""
        return f"{self.part}.{self.feature}"

    def made(self, text: str, by: str) -> str:
        """Return the plan's text with the feature moved by a length in the plan's words."""
        lines = text.splitlines(keepends=True)
        lines[self.row] = _moved(lines[self.row], self.axis, by)
        return "".join(lines)


def moves(text: str) -> Iterator[Move]:
    """Yield the moves of a plan: each feature along its edge, or along x and along y."""
    found = _PARTS.search(text)
    assert found is not None
    part, first = "", text[: found.start(1)].count("\n")
    for row, line in enumerate(found[1].splitlines(), first):
        named, stated = _PART.match(line), _FEATURE.match(line.split(" #")[0].rstrip())
        if named:
            part = named[1]
        elif stated and stated[2] in _MOVED and _PLACE.search(line):
            feature, kind = stated[1], stated[2]
            if _is_met(text, part, feature):
                for axis in ("edge",) if kind in _ON_EDGE or "edge:" in line else ("x", "y"):
                    yield Move(part=part, feature=feature, axis=axis, row=row)


def _is_met(text: str, part: str, feature: str) -> bool:
    """Tell whether a joint or a fastening names a feature, or it follows its mate."""
    named = re.compile(rf"[ \[]{part}(?:\.[\w-]+)?\.{feature}\b(?!-)")
    follows = re.compile(rf"^      {feature}: \{{\w+: \{{of: ", re.MULTILINE)
    return bool(named.search(text) or follows.search(text))


def _moved(line: str, axis: str, by: str) -> str:
    """Return a row with its places moved: ``at: [x, y]``, ``from`` and ``to``, or along an edge."""
    at = 0
    while (place := _PLACE.search(line, at)) is not None:
        start = place.end()
        end = _end(line, start)
        value = _shifted(line[start:end], axis, by)
        line = line[:start] + value + line[end:]
        at = start + len(value)
    return line


def _shifted(value: str, axis: str, by: str) -> str:
    if not value.startswith("["):
        return f"{value} + {by}"
    items = list(_items(value[1:-1]))
    if items[0].startswith("["):
        return f"[{', '.join(_shifted(each, axis, by) for each in items)}]"
    if axis == "edge":
        return f"[{', '.join(f'{each} + {by}' for each in items)}]"
    items["xy".index(axis)] += f" + {by}"
    return f"[{', '.join(items)}]"


def _items(text: str) -> Iterator[str]:
    start = 0
    while start < len(text):
        end = _end(text, start)
        yield text[start:end].strip()
        start = end + 1


def _end(text: str, start: int) -> int:
    """Return where a value ends: at a comma or a bracket that it did not open."""
    depth = 0
    for index in range(start, len(text)):
        if text[index] in "[({":
            depth += 1
        elif text[index] in "])}":
            if depth == 0:
                return index
            depth -= 1
        elif text[index] == "," and depth == 0:
            return index
    return len(text)
