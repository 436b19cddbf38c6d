"""Small wordings that screens, papers and the command line share."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

_MONTHS = (
    *("January", "February", "March", "April", "May", "June", "July", "August"),
    *("September", "October", "November", "December"),
)


def day_text(when: date) -> str:
    """Return ``2 October 2026``; the words follow no machine's locale."""
    return f"{when.day} {_MONTHS[when.month - 1]} {when.year}"


def counted(count: int, one: str, many: str = "") -> str:
    """Return ``1 sheet`` or ``3 sheets``."""
    return f"{count} {one if count == 1 else many or one + 's'}"


def listed(items: Sequence[str], last: str = "and") -> str:
    """Return ``a``, ``a and b`` or ``a, b and c``, with ``last`` before the last; else nothing."""
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"
