"""Findings as JSON: the words as they are told, in the plan's unit, with all quantities beside."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import asdict
from typing import Any

from kerfolio.basis.finding import Finding, Mark, Ring, Severity
from kerfolio.basis.place import Place
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Quantity, told


def findings_json(findings: Iterable[Finding]) -> list[dict[str, Any]]:
    """Return findings as plain values, from which ``findings_of`` makes ones that tell the same."""
    return [_json(each) for each in findings]


def findings_of(rows: Sequence[dict[str, Any]]) -> tuple[Finding, ...]:
    """Return the findings of such values."""
    return tuple(_finding(each) for each in rows)


def _json(each: Finding) -> dict[str, Any]:
    place = (each.place.file, each.place.line, each.place.column)
    return {
        "rule": each.rule,
        "words": each.message,
        "counsel": each.advice,
        "severity": str(each.severity),
        "place": place,
        "subject": each.subject,
        "more": [[fact.name, fact.value, fact.unit] for fact in each.facts],
        "mark": None if each.mark is None else _mark_json(each.mark, each.unit),
        "silenced": each.silenced,
        "count": each.count,
        "unit": each.unit,
    }


def _mark_json(mark: Mark, unit: str) -> dict[str, Any]:
    return asdict(mark) | {
        "rings": [[ring.x, ring.y, ring.r] for ring in mark.rings],
        "at": told(mark.at, Reader(unit=unit)),
    }


def _finding(row: dict[str, Any]) -> Finding:
    mark = row["mark"]
    rings = tuple(Ring(*ring) for ring in mark["rings"]) if mark else ()
    return Finding(
        **row
        | {
            "severity": Severity(row["severity"]),
            "place": Place(*row["place"]),
            "more": tuple(Quantity(*fact) for fact in row["more"]),
            "mark": Mark(**mark | {"rings": rings}) if mark else None,
        }
    )
