"""What is left of a material's strength while a load stays, and of a mean value at its low end.

Damp wood bears less and creeps more: the tables go by service class, which is the plan's place.
"""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.said import Words, phrase
from kerfolio.model.climate import OUTDOORS, SHED, Climate

_READ = phrase("grounds-kmod-read")
_MEMORY = phrase("grounds-kmod-memory")
_UNKNOWN = phrase("grounds-kmod-unknown")

SPREAD = 0.16
"""Coefficient of variation of bending strength (Wood Handbook FPL-GTR-190, Table 5-6; from memory:
clear wood)."""
LOW_END = 1 - 1.645 * SPREAD
"""What 19 of 20 pieces reach, over the mean (normal distribution)."""
LOW_END_SOURCE = phrase("grounds-low-end-source")


@dataclass(frozen=True, slots=True, kw_only=True)
class Duration:
    """Shares of the strength of a short test: under a ``lasting`` load, and one that passes.

    ``lasting`` is the class *permanent* (over ten years), ``passing`` *short-term* (under a week);
    None where the table has none, since the material is not for such a place. ``creep`` is how many
    times kdef is that of a heated room, None likewise.
    """

    families: tuple[str, ...]
    lasting: float | None
    passing: float | None
    source: Words
    creep: float | None = 1.0

    @property
    def is_damp(self) -> bool:
        """Tell whether it is that of a place damper than a heated room."""
        return self.creep != 1.0

    def share(self, *, lasting: bool) -> float | None:
        """Return the share that counts."""
        return self.lasting if lasting else self.passing


def _row(
    families: tuple[str, ...],
    lasting: float | None,
    passing: float | None,
    source: Words,
    creep: float | None = 1.0,
) -> Duration:
    return Duration(families=families, lasting=lasting, passing=passing, source=source, creep=creep)


_DURATIONS = (
    _row(("hardwood-plywood", "softwood-plywood"), 0.60, 0.90, _READ),
    _row(("mdf",), 0.20, 0.80, _READ),
    _row(("osb",), 0.40, 0.90, _READ),
    _row(("particleboard",), 0.30, 0.85, _READ),
    _row(("hardboard",), 0.30, 0.85, _MEMORY),
    _row(("hardwood", "softwood"), 0.60, 0.90, _MEMORY),
)
_LEAST = _row((), 0.20, 0.80, _UNKNOWN)


_SOLID, _PLY = ("hardwood", "softwood"), ("hardwood-plywood", "softwood-plywood")
_IN_A_SHED = phrase("grounds-kmod-class", number=2)
_OUTDOORS = phrase("grounds-kmod-class", number=3)
_DAMP: dict[Climate, tuple[Duration, ...]] = {
    SHED: (
        _row(_PLY, 0.60, 0.90, _IN_A_SHED, 1.0 / 0.8),
        _row(_SOLID, 0.60, 0.90, _IN_A_SHED, 0.8 / 0.6),
        _row(("osb",), 0.30, 0.70, _IN_A_SHED, 2.25 / 1.5),
        _row(("particleboard", "hardboard"), 0.20, 0.60, _IN_A_SHED, 3.0 / 2.25),
        _row(("mdf",), None, 0.45, _IN_A_SHED, 3.0 / 2.25),
        _row((), None, None, _IN_A_SHED, None),
    ),
    OUTDOORS: (
        _row(_PLY, 0.50, 0.70, _OUTDOORS, 2.5 / 0.8),
        _row(_SOLID, 0.50, 0.70, _OUTDOORS, 2.0 / 0.6),
        _row((), None, None, _OUTDOORS, None),
    ),
}


def duration_of(family: str, climate: Climate | None = None) -> Duration:
    """Return the shares of a family of material in a place, a heated room where none is stated.

    There it is the least of all where the table has none; in a damper one it is not known.
    """
    rows = _DAMP.get(climate, (*_DURATIONS, _LEAST)) if climate else (*_DURATIONS, _LEAST)
    return next(each for each in rows if family in each.families or not each.families)


def is_unfit(family: str, climate: Climate) -> bool:
    """Tell whether the table has no strength of a family for a load that stays in a place."""
    known = any(family in each.families for each in _DURATIONS)
    return known and duration_of(family, climate).lasting is None
