"""The figures of a written bundle against each other: lists read back beside ``plan.json``."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

from kerfolio.agreement.written import list_rows
from kerfolio.basis.masses import in_mass_unit, mass_unit

Fault = tuple[str, str, str]
"""Two things that disagree, and how."""

_KG = 0.0006
_MINUTES = 0.002
"""What rounding in the lists may make: of a mass, and of each of a sheet's times."""


def figure_faults(files: Mapping[str, bytes], facts: Mapping[str, Any]) -> Iterator[Fault]:
    """Yield what disagrees in masses, times and costs."""
    yield from _masses(list_rows(files, "lists/parts.csv"), facts)
    yield from _times(list_rows(files, "lists/cutting.csv"), facts)
    yield from _costs(list_rows(files, "lists/costs.csv"), facts)


def _masses(rows: list[dict[str, str]], facts: Mapping[str, Any]) -> Iterator[Fault]:
    """Yield the parts whose mass in the list is not that of the variant the plan is drawn for."""
    drawn = next(each for each in facts["variants"] if each["fit"] == facts["drawn-for"])
    masses = {part["part"]: part["mass"] for part in drawn["parts"]}
    for row in rows:
        listed = next(
            float(row[head]) / in_mass_unit(1.0, unit)
            for unit in ("mm", "in")
            if (head := f"mass_{mass_unit(unit)}_each") in row
        )
        if abs(listed - masses.get(row["part"], 0.0)) > _KG:
            yield "`lists/parts.csv`", "`plan.json`", f"the mass of `{row['part']}`"


def _times(rows: list[dict[str, str]], facts: Mapping[str, Any]) -> Iterator[Fault]:
    for each in facts["cutting"]["sheets"]:
        sheet = str(each["sheet"])
        minutes = [float(row["minutes"]) for row in rows if row["sheet"] == sheet]
        if abs(sum(minutes) - each["minutes"]) > _MINUTES * len(minutes):
            yield "`lists/cutting.csv`", "`plan.json`", f"the time of sheet {sheet}"


def _costs(rows: list[dict[str, str]], facts: Mapping[str, Any]) -> Iterator[Fault]:
    for each in facts["costs"]:
        copies = str(each["copies"])
        totals = [row["total"] for row in rows if row["copies"] == copies and row["total"]]
        if sum(map(Decimal, totals), Decimal(0)) != Decimal(each["total"]):
            yield "`lists/costs.csv`", "`plan.json`", f"what {copies} cost"
    for each in facts["costs"][:1]:
        if each["sheets"] != len(facts["layout"]):
            yield "`lists/costs.csv`", "the sheet layouts", "the count of sheets"
