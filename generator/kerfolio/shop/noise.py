"""How long a day a level of noise is borne, by the body that says so."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class NoiseRule:
    """``level`` dBA for eight hours; every ``exchange`` dB more halve the time."""

    body: str
    level: float
    exchange: float


NIOSH = NoiseRule(body="NIOSH", level=85, exchange=3)
"""What the US institute recommends (Criteria for a Recommended Standard: Occupational
Noise Exposure, 1998)."""


def bearable_minutes(level: float, rule: NoiseRule) -> float:
    """Return the minutes a day at a level in dBA: 480 / 2^((L - L0) / q)."""
    return 480 / 2 ** ((level - rule.level) / rule.exchange)
