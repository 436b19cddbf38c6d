"""How much play makes a joint tight, easy or loose: a named setting of the workshop."""

from __future__ import annotations

from dataclasses import dataclass
from math import inf

from kerfolio.basis.tolerance import NOISE

DRIVEN, TIGHT, PUSH, SLIDES, LOOSE = range(5)
"""What joints are like, the tightest first: places in ``Play.feels``, whose last one rattles."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Feel:
    """What a joint is like with up to ``most`` mm of play on each side.

    ``name`` is what it is called, ``verdict`` how a finding puts it.
    """

    name: str
    most: float
    verdict: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Play:
    """Up to how many mm on each side a joint counts as what the field is called.

    More than ``loose`` rattles. ``ends`` is the most that a tab may have at either end, where it
    only places. Common practice, no single source.
    """

    driven: float = 0.025
    tight: float = 0.075
    push: float = 0.125
    slides: float = 0.25
    loose: float = 0.5
    ends: float = 1.0

    @property
    def feels(self) -> tuple[Feel, ...]:
        """What joints are like, the tightest first; the last has no end."""
        return (
            Feel(name="driven", most=self.driven, verdict="too tight for hand"),
            Feel(name="tight", most=self.tight, verdict="hand-tight"),
            Feel(name="push", most=self.push, verdict="a push of the hand"),
            Feel(name="slides", most=self.slides, verdict="sliding"),
            Feel(name="loose", most=self.loose, verdict="loose"),
            Feel(name="rattles", most=inf, verdict="rattling"),
        )

    def step(self, mm: float) -> int:
        """Return which of the feels a joint with so much play on each side has, mm."""
        return next(n for n, each in enumerate(self.feels) if mm <= each.most + NOISE)

    def feel(self, mm: float) -> Feel:
        """Return what a joint is like with so much play on each side, mm."""
        return self.feels[self.step(mm)]
