"""The figures of a written bundle against each other: lists read back beside ``plan.json``."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

from kerfolio.agreement.written import list_rows
from kerfolio.basis.figures import in_way_unit, way_unit
from kerfolio.basis.masses import in_mass_unit, mass_unit
from kerfolio.basis.reader import METRIC

Fault = tuple[str, str, str]
"""Two things that disagree, and how."""

_KG = 0.0006
_MINUTES = 0.002
_METRES = 0.0006
"""What rounding in the lists may make: of a mass, of each of a sheet's times, of a row of edges."""

_UNLISTED = ("square", "mask")
"""Treatments that take neither time nor material."""


def figure_faults(files: Mapping[str, bytes], facts: Mapping[str, Any]) -> Iterator[Fault]:
    """Yield what disagrees in masses, times, costs and lengths of edges."""
    yield from _masses(list_rows(files, "lists/parts.csv"), facts)
    yield from _times(list_rows(files, "lists/cutting.csv"), facts)
    yield from _costs(list_rows(files, "lists/costs.csv"), facts)
    yield from _edges(list_rows(files, "lists/edges.csv"), facts)


def _masses(rows: list[dict[str, str]], facts: Mapping[str, Any]) -> Iterator[Fault]:
    """Yield the parts whose mass in the list is not that of the variant the plan is drawn for."""
    drawn = next(each for each in facts["variants"] if each["fit"] == facts["drawn-for"])
    masses = {part["part"]: part["mass"] for part in drawn["parts"]}
    for row in rows:
        listed = next(
            float(row[head]) / in_mass_unit(1.0, unit)
            for unit in METRIC.both
            if (head := f"mass_{mass_unit(unit)}_each") in row
        )
        if abs(listed - masses.get(row["part"], 0.0)) > _KG:
            yield "`lists/parts.csv`", "`plan.json`", f"the mass of `{row['part']}`"


def _edges(rows: list[dict[str, str]], facts: Mapping[str, Any]) -> Iterator[Fault]:
    """Yield the treatments whose edges, all pieces counted, are not as long together as listed."""
    drawn = next(each for each in facts["variants"] if each["fit"] == facts["drawn-for"])
    stated, listed = defaultdict[str, float](float), defaultdict[str, float](float)
    for part in drawn["parts"]:
        for edge in part.get("edges", ()):
            stated[edge["treatment"]] += len(part["pieces"]) * edge["length"] / 1000
    for row in rows:
        ways = ((way_unit(unit), in_way_unit(1.0, unit)) for unit in METRIC.both)
        listed[row["treatment"]] += next(float(row[way]) / of for way, of in ways if way in row)
    for treatment in sorted({*stated, *listed} - set(_UNLISTED)):
        if abs(stated[treatment] - listed[treatment]) > _METRES * (len(rows) + 1):
            yield "`lists/edges.csv`", "`plan.json`", f"the metres of `{treatment}`"


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
        if sum(map(Decimal, totals), Decimal(0)) != Decimal(each["total"] or 0):
            yield "`lists/costs.csv`", "`plan.json`", f"what {copies} cost"
    for each in facts["costs"][:1]:
        if each["sheets"] != len(facts["layout"]):
            yield "`lists/costs.csv`", "the sheet layouts", "the count of sheets"
