"""What is left of a material's strength while a load stays, and of a mean value at its low end."""

from __future__ import annotations

from dataclasses import dataclass

_TABLE = "EN 1995-1-1, Table 3.1 (kmod), heated room"
_READ = f"{_TABLE}, as reproduced in an engineering manual"
_MEMORY = f"{_TABLE}; from memory"
_UNKNOWN = f"no figure for this material: the least of {_TABLE}"

SPREAD = 0.16
"""Coefficient of variation of bending strength (Wood Handbook FPL-GTR-190, Table 5-6; from memory:
clear wood)."""
LOW_END = 1 - 1.645 * SPREAD
"""What 19 of 20 pieces reach, over the mean (normal distribution)."""
LOW_END_SOURCE = (
    "what 19 of 20 pieces reach, with a spread of 16 % (clear wood, Wood Handbook FPL-GTR-190, "
    "Table 5-6; from memory)"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Duration:
    """Shares of the strength of a short test: under a ``lasting`` load, and one that passes.

    ``lasting`` is the class *permanent* (over ten years), ``passing`` *short-term* (under a week).
    """

    families: tuple[str, ...]
    lasting: float
    passing: float
    source: str

    def share(self, *, lasting: bool) -> float:
        """Return the share that counts."""
        return self.lasting if lasting else self.passing


def _row(families: tuple[str, ...], lasting: float, passing: float, source: str) -> Duration:
    return Duration(families=families, lasting=lasting, passing=passing, source=source)


_DURATIONS = (
    _row(("hardwood-plywood", "softwood-plywood"), 0.60, 0.90, _READ),
    _row(("mdf",), 0.20, 0.80, _READ),
    _row(("osb",), 0.40, 0.90, _READ),
    _row(("particleboard",), 0.30, 0.85, _READ),
    _row(("hardboard",), 0.30, 0.85, _MEMORY),
    _row(("hardwood", "softwood"), 0.60, 0.90, _MEMORY),
)
_LEAST = _row((), 0.20, 0.80, _UNKNOWN)


def duration_of(family: str) -> Duration:
    """Return the shares of a family of material; the least of all where the table has none."""
    return next((each for each in _DURATIONS if family in each.families), _LEAST)
