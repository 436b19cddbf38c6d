"""Decimal commas in lists: ``[120,5, 30]`` is three entries to YAML and two to its writer."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import pairwise
from typing import TypeGuard

from kerfolio.basis.finding import warning
from kerfolio.reading.desk import Desk
from kerfolio.reading.nodes import Node, Scalar, Sequence

RULE = "decimal-comma"
_DIGITS = re.compile("[0-9]+")
_DECIMALS = re.compile("[0-9]+ ?(?:mm|cm|m|in|ft)?")


def refused_commas(node: Sequence, wanted: int, desk: Desk) -> bool:
    """Refuse a list of too many entries that has ``wanted`` with its decimal commas as points."""
    found = tuple(_tight(node))
    if not found or len(node.items) - len(found) != wanted:
        return False
    for first, second in found:
        message = f"`{first.text},{second.text}` has a comma"
        advice = f"Write a point: `{first.text}.{second.text}`; a comma parts entries."
        desk.refuse(RULE, message, first.place, advice)
    return True


def warn_of_commas(node: Sequence, desk: Desk) -> None:
    """Warn of commas without a blank between digits, in a list that has commas with one, too."""
    found = tuple(_tight(node))
    if len(found) == len(node.items) - 1:
        return
    for first, second in found:
        message = f"`{first.text},{second.text}` is read as two entries"
        one = f"`{first.text}.{second.text}`"
        advice = f"Write {one} for one, `{first.text}, {second.text}` for two."
        desk.findings.append(warning(RULE, message, first.place, advice))


def _tight(node: Sequence) -> Iterator[tuple[Scalar, Scalar]]:
    """Yield the neighbours that nothing but a comma parts, as in ``120,5``."""
    if node.flow:
        for first, second in pairwise(node.items):
            if _is(first, _DIGITS) and _is(second, _DECIMALS) and _touch(first, second):
                yield first, second


def _is(node: Node, pattern: re.Pattern[str]) -> TypeGuard[Scalar]:
    return isinstance(node, Scalar) and not node.style and bool(pattern.fullmatch(node.text))


def _touch(first: Scalar, second: Scalar) -> bool:
    after = first.place.column + len(first.text) + 1
    return first.place.line == second.place.line and second.place.column == after
