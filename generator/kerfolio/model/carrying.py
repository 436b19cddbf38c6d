"""What a builder can carry home: a setting of the workshop, since cars and backs differ."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Carries:
    """The largest blank that a car takes, both sides in mm, and the heaviest that is lifted, kg.

    An estate car with its seats folded, and what one person lifts close to the body (common
    practice, no single source).
    """

    size: tuple[float, float] = (1700.0, 1000.0)
    kg: float = 25.0
