"""JSON whose numbers are written by the one rule for digits."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from typing import Any

from kerfolio.basis.digits import LENGTH_DECIMALS, digits


class Number(str):
    """A number in its digits, which ``json_text`` writes bare."""


def number(value: float, decimals: int = LENGTH_DECIMALS) -> Number:
    """Return a number for ``json_text``, at most so many decimals. Raises as ``digits``."""
    return Number(digits(value, decimals))


def json_text(value: Any, indent: int | None = None) -> str:
    """Return a tree as JSON: on one line without blanks, or one entry a line, indented.

    It holds mappings, lists or tuples, texts, whole numbers, true, false, None and ``Number``. A
    float raises TypeError, since nothing says how many of its decimals count.
    """
    if isinstance(value, Number):
        return value
    if isinstance(value, Mapping):
        colon = ":" if indent is None else ": "
        entries = (f"{_word(key)}{colon}{json_text(each, indent)}" for key, each in value.items())
        return _bracketed("{}", entries, indent)
    if isinstance(value, list | tuple):
        return _bracketed("[]", (json_text(each, indent) for each in value), indent)
    return _word(value)


def _word(value: Any) -> str:
    if value is None or isinstance(value, str | int):
        return json.dumps(value, ensure_ascii=False)
    raise TypeError(f"{type(value).__name__} cannot be written as JSON")


def _bracketed(brackets: str, entries: Iterable[str], indent: int | None) -> str:
    told = list(entries)
    if indent is None or not told:
        return f"{brackets[0]}{','.join(told)}{brackets[1]}"
    margin = "\n" + " " * indent
    inside = ",\n".join(told).replace("\n", margin)
    return f"{brackets[0]}{margin}{inside}\n{brackets[1]}"
