"""How deep something is cut, as a layer, a group or a word in it says: ``POCKET 6 mm``."""

from __future__ import annotations

import re
from collections.abc import Iterable

_DEEP = re.compile(
    r"(pocket|groove|housing|dado|rebate|rabbet|recess|blind|depth|deep|engrav|score|mark"
    r"|nut|tasche|tief|gravur|falz)",
    re.IGNORECASE,
)
"""Words of the trade for what does not go through."""

_SIZE = re.compile(
    r"(\d+[-_ ]\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?)\s*[-_]?\s*(mm|cm|in\b|inch|\")?", re.IGNORECASE
)
_MM = {"mm": 1.0, "cm": 10.0, "in": 25.4, "inch": 25.4, '"': 25.4}
_MOST = 40.0


def is_to_a_depth(names: Iterable[str]) -> bool:
    """Tell whether names say that something does not go through."""
    return any(_DEEP.search(each) for each in names)


def depth_of(names: Iterable[str], unit: float = 1.0) -> float | None:
    """Return the depth, mm, that names state; None where they state none.

    A number without a unit is in ``unit`` (mm).
    """
    for name in names:
        if not _DEEP.search(name):
            continue
        for number, told in _SIZE.findall(name):
            mm = _number(number) * _MM.get(told.lower(), unit)
            if 0 < mm <= _MOST:
                return mm
    return None


def _number(text: str) -> float:
    whole = re.fullmatch(r"(\d+)[-_ ](\d+)/(\d+)", text)
    if whole:
        return int(whole[1]) + int(whole[2]) / int(whole[3])
    if "/" in text:
        over, under = text.split("/")
        return int(over) / int(under) if int(under) else 0.0
    return float(text.replace(",", "."))
