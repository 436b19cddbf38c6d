"""How hard to look for a layout."""

from __future__ import annotations

from dataclasses import dataclass

_MOVES_A_SECOND = 2_500_000
"""Counted work that a common machine does in a second."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """``moves`` bounds the own search in counted work, ``seconds`` engines of other libraries.

    ``polish`` asks for a larger offcut by an engine that goes by the clock.
    """

    moves: int
    seconds: float
    seed: int = 0
    polish: bool = False


EFFORT = Effort(moves=25_000_000, seconds=8.0)
"""What a publish takes when there is no frozen layout: some ten seconds a material at most."""


def effort_for(seconds: float, seed: int) -> Effort:
    """Return the effort a person asks for, in seconds; the own search counts them as moves."""
    moves = round(seconds * _MOVES_A_SECOND)
    return Effort(moves=max(moves, 1), seconds=max(seconds, 1.0), seed=seed, polish=True)
