"""The router of a workshop, as far as the maker says what it can do."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.tolerance import NOISE

USUAL_SPEED = (6_000.0, 30_000.0)
"""What routers turn at, a minute (common practice, no single source)."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Router:
    """What a workshop's router can do; what is not stated is empty or None.

    ``kind`` is its class (``MACHINES`` of the stock), ``speed`` the least and the most turns a
    minute, ``feed`` the most mm/min, ``deepest`` the most that one pass takes, mm.
    """

    kind: str = ""
    speed: tuple[float, float] | None = None
    feed: float | None = None
    deepest: float | None = None

    def turns(self, rpm: float) -> bool:
        """Tell whether its spindle does a speed: any router's where the workshop states none."""
        least, most = self.speed or USUAL_SPEED
        return least - NOISE <= rpm <= most + NOISE

    def feeds(self, mm_per_min: float) -> bool:
        """Tell whether it goes so fast, as far as the workshop says."""
        return self.feed is None or mm_per_min <= self.feed + NOISE

    def reaches(self, mm: float) -> bool:
        """Tell whether it takes so deep a pass, as far as the workshop says."""
        return self.deepest is None or mm <= self.deepest + NOISE
