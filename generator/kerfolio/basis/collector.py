"""How often Python looks for what is unused but refers to itself."""

from __future__ import annotations

import gc

_FRESH = 100_000
"""Objects made and not yet given up, after which the youngest are looked through. A publish keeps
hundreds of thousands for good: at Python's 700 it spends a twelfth of its time looking at them."""


def collect_seldom() -> None:
    """Let this process look for unused cycles seldom; it then takes some per cent more memory."""
    gc.set_threshold(_FRESH, *gc.get_threshold()[1:])
