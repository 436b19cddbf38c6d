"""The router of a workshop, as far as the maker says what it can do."""

from __future__ import annotations

from dataclasses import dataclass

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
