"""What an outside check is: a figure of another source, and how we make it of the same input."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

PUBLISHED = "published"
MEMORY = "from memory"
WORKED = "worked by hand"


@dataclass(frozen=True, slots=True, kw_only=True)
class OutsideCheck:
    """One figure: what it is, its source, the published value, how we make it, how near it lies."""

    what: str
    source: str
    standing: str
    unit: str
    value: float
    ours: Callable[[], float]
    within: float
