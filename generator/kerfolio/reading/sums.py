"""Sums, differences and products of expressions as written: text made from text.

Plain numbers are worked out; everything else stays a text that the plan's sizes give a value.
"""

from __future__ import annotations

import re
from decimal import Decimal

_NUMBER = re.compile(r"-?[0-9]{1,9}(?:\.[0-9]{1,9})?")
_FACTOR = re.compile(r"[0-9.]+|[a-z][a-z0-9_]*")


def plus(a: str, b: str) -> str:
    """Return a sum."""
    if "0" in (a, b):
        return b if a == "0" else a
    if _are_numbers(a, b):
        return _told(Decimal(a) + Decimal(b))
    return f"{a} - {b[1:]}" if _is_below_zero(b) else f"{a} + {_factor(b)}"


def minus(a: str, b: str) -> str:
    """Return a difference."""
    if a == b:
        return "0"
    if "0" in (a, b):
        return a if b == "0" else negative(b)
    if _are_numbers(a, b):
        return _told(Decimal(a) - Decimal(b))
    return f"{a} + {b[1:]}" if _is_below_zero(b) else f"{a} - {_factor(b)}"


def negative(a: str) -> str:
    """Return the opposite."""
    return _told(-Decimal(a)) if _are_numbers(a) else f"-{_factor(a)}"


def half(a: str) -> str:
    """Return the half."""
    return _told(Decimal(a) / 2) if _are_numbers(a) else f"{_factor(a)}/2"


def times(a: str, b: str) -> str:
    """Return a product."""
    if "0" in (a, b):
        return "0"
    if _are_numbers(a, b):
        return _told(Decimal(a) * Decimal(b))
    for one, other in ((a, b), (b, a)):
        if one in ("1", "-1"):
            return other if one == "1" else negative(other)
    return f"{_factor(a)}*{_factor(b)}"


def _are_numbers(*texts: str) -> bool:
    return all(_NUMBER.fullmatch(each) for each in texts)


def _is_below_zero(text: str) -> bool:
    return text.startswith("-") and _are_numbers(text)


def _told(value: Decimal) -> str:
    text = f"{value:f}"
    text = text.rstrip("0").rstrip(".") if "." in text else text
    return "0" if text == "-0" else text


def _factor(text: str) -> str:
    return text if _FACTOR.fullmatch(text) else f"({text})"
