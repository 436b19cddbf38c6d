"""How hard to look for a layout."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Effort:
    """How much work goes into each sheet material.

    ``moves`` bounds the own search in counted work; ``seconds`` engines of other libraries, which
    go by the clock and only run when asked for. ``seed`` starts another search.
    """

    moves: int
    seconds: float = 8.0
    seed: int = 0


EFFORT = Effort(moves=25_000_000)
"""What a publish takes when there is no frozen layout: some ten seconds a material at most."""
