"""How long a day a level of noise is borne, by the body that says so."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class NoiseRule:
    """``level`` dBA for eight hours; every ``exchange`` dB more halve the time."""

    body: str
    level: float
    exchange: float


NIOSH = NoiseRule(body="NIOSH (US), recommended", level=85, exchange=3)
OSHA = NoiseRule(body="OSHA (US), limit", level=90, exchange=5)


def bearable_minutes(level: float, rule: NoiseRule) -> float:
    """Return the minutes a day at a level in dBA: 480 / 2^((L - L0) / q)."""
    return 480 / 2 ** ((level - rule.level) / rule.exchange)
