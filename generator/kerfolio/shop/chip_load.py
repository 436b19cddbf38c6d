"""Chip load: what each edge of the cutter takes, and the ranges that tables publish."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise
from operator import itemgetter

from kerfolio.basis.tolerance import NOISE
from kerfolio.model.stock import MACHINES, ChipLoad, DepthRule, Stock

_NEAR = 0.25


def chip_of(feed_mm_per_min: float, speed_rpm: float, flutes: int) -> float:
    """Return the chip load in mm: feed / (turns a minute x edges) (definition)."""
    return feed_mm_per_min / (speed_rpm * flutes)


def depth_share(rules: Sequence[DepthRule], depth: float, diameter: float) -> float | None:
    """Return the share of a tabled chip load that is left at a depth of cut, mm.

    All of it up to the first rule, straight lines between rules; None beyond the last one.
    """
    deep = depth / diameter
    steps = sorted((each.diameters, each.share) for each in rules)
    if steps and deep <= steps[0][0]:
        return steps[0][1]
    for (low, share), (high, less) in pairwise(steps):
        if low <= deep <= high + NOISE and high > low:
            return share + (less - share) * (deep - low) / (high - low)
    return None


def chip_ranges(stock: Stock, family: str, diameter: float, machine: str) -> tuple[ChipLoad, ...]:
    """Return what each source publishes for a material, a cutter in mm and a machine class.

    Tables differ many times over, so no two are mixed. Between two diameters of a table the range
    is interpolated in a straight line; beyond its first and last diameter that row is taken as it
    is, for cutters within a quarter of it. A range for all small cutters serves where no row is
    near (common practice).
    """
    tables: dict[str, list[ChipLoad]] = {}
    for row in stock.chip_loads:
        if (row.family, row.machine) == (family, machine):
            tables.setdefault(row.source, []).append(row)
    found = (_read(tables[source], diameter) for source in sorted(tables))
    return tuple(each for each in found if each is not None)


def _read(table: Sequence[ChipLoad], diameter: float) -> ChipLoad | None:
    """Return one table's range at a diameter; a row for all small cutters comes last."""
    rows = sorted(
        ((row.diameter, row) for row in table if row.diameter is not None), key=itemgetter(0)
    )
    below = [each for each in rows if each[0] <= diameter + NOISE]
    above = [each for each in rows if each[0] >= diameter - NOISE]
    if below and above:
        return _between(below[-1], above[0], diameter)
    for size, row in rows:
        if abs(size - diameter) <= _NEAR * size:
            return row
    return next((row for row in table if row.diameter is None), None)


def _between(
    low: tuple[float, ChipLoad], high: tuple[float, ChipLoad], diameter: float
) -> ChipLoad:
    (first, row), (last, other) = low, high
    share = (diameter - first) / (last - first) if last - first > NOISE else 0.0
    return replace(
        row,
        diameter=diameter,
        least=row.least + share * (other.least - row.least),
        most=row.most + share * (other.most - row.most),
    )


USUAL_MACHINE = MACHINES[1]
"""The class of machine that is taken where a workshop states none."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Allowed:
    """What a class of machine may take off with an edge, mm, and the tables that say so.

    ``published`` are those of the class; ``least`` and ``most`` reach as far as those of the next
    lighter and the next heavier class leave a gap that none of them is about.
    """

    least: float
    most: float
    published: tuple[ChipLoad, ...]


def allowed_chips(stock: Stock, family: str, diameter: float, machine: str) -> Allowed | None:
    """Return the chip loads of a material and a cutter in mm for a class of machine.

    None where no table of that class has them; ``machine`` empty: all classes together. Tables of
    neighbouring classes do not touch: what lies between two of them is no fault on either machine.
    """
    every = [chip_ranges(stock, family, diameter, each) for each in MACHINES]
    if not machine:
        return _spanning([row for rows in every for row in rows])
    place = MACHINES.index(machine)
    own = _spanning(every[place])
    if own is None:
        return None
    lighter = [row.most for rows in every[max(0, place - 1) : place] for row in rows]
    heavier = [row.least for rows in every[place + 1 : place + 2] for row in rows]
    return replace(
        own,
        least=min((own.least, max(lighter, default=own.least))),
        most=max((own.most, min(heavier, default=own.most))),
    )


def _spanning(rows: Sequence[ChipLoad]) -> Allowed | None:
    if not rows:
        return None
    least, most = min(each.least for each in rows), max(each.most for each in rows)
    return Allowed(least=least, most=most, published=tuple(rows))
