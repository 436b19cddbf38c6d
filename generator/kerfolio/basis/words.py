"""Small wordings that screens, papers and the command line share."""

from __future__ import annotations

from collections.abc import Sequence


def counted(count: int, one: str, many: str = "") -> str:
    """Return ``1 sheet`` or ``3 sheets``."""
    return f"{count} {one if count == 1 else many or one + 's'}"


def listed(items: Sequence[str], last: str = "and") -> str:
    """Return ``a``, ``a and b`` or ``a, b and c``, with ``last`` before the last; else nothing."""
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"
