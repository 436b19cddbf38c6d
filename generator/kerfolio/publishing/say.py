"""Telling a person what is being done."""

from __future__ import annotations

from collections.abc import Callable

Say = Callable[[str], None]
"""Tells a person what is being done, a line at a time."""

Tally = Callable[[int, int], None]
"""Tells how many plans are done, and of how many."""


def silent(_: str) -> None:
    """Say nothing."""


def untold(_: int, __: int) -> None:
    """Tell nothing."""
