"""What an outside check is: a figure of another source, and how we make it of the same input."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

PUBLISHED = "published"
MEMORY = "from memory"
WORKED = "worked by hand"

AT_MOST, AT_LEAST = "at most", "at least"


@dataclass(frozen=True, slots=True, kw_only=True)
class OutsideCheck:
    """One figure: what it is, its source, the published value, how we make it, how near it lies.

    With a ``bound`` ours lies to one side of the value, and ``within`` says how far at most.
    A ``transcription`` compares what the program holds with what it was copied from, or its own
    formula with itself: it tells slips of the pen and nothing more.
    """

    what: str
    source: str
    standing: str
    unit: str
    value: float
    ours: Callable[[], float]
    within: float
    bound: str = ""
    transcription: bool = False

    @property
    def outside(self) -> bool:
        """Tell whether somebody else's figure, read where they say it, judges ours."""
        return self.standing == PUBLISHED and not self.transcription

    @property
    def range(self) -> tuple[float, float]:
        """What ours may be, the least and the most."""
        low = self.value if self.bound == AT_LEAST else self.value - self.within
        return low, self.value if self.bound == AT_MOST else self.value + self.within
