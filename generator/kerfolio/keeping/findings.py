"""Findings as JSON: the words as they are told, in the plan's unit, with all quantities beside."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import asdict
from typing import Any

from kerfolio.basis.finding import (
    Axial,
    Finding,
    Mark,
    Measured,
    Meeting,
    Ring,
    Run,
    Severity,
    Sketch,
)
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
        "sketch": None if each.sketch is None else asdict(each.sketch),
        "meeting": None if each.meeting is None else asdict(each.meeting),
        "axial": None if each.axial is None else asdict(each.axial),
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
            "sketch": _sketch(row["sketch"]) if row["sketch"] else None,
            "meeting": _meeting(row["meeting"]) if row["meeting"] else None,
            "axial": _axial(row["axial"]) if row["axial"] else None,
        }
    )


def _sketch(row: dict[str, Any]) -> Sketch:
    return Sketch(
        part=row["part"],
        outline=_run(row["outline"]),
        wrong=tuple(map(_run, row["wrong"])),
        beside=tuple(map(_run, row["beside"])),
        spots=_run(row["spots"]),
    )


def _run(points: Iterable[Sequence[float]]) -> Run:
    return tuple((x, y) for x, y in points)


def _meeting(row: dict[str, Any]) -> Meeting:
    return Meeting(
        **row
        | {
            "pieces": tuple(row["pieces"]),
            "others": tuple(row["others"]),
            "way": _vector(row["way"]),
            "measured": _measured(row["measured"]),
        }
    )


def _axial(row: dict[str, Any]) -> Axial:
    return Axial(
        **row
        | {
            "place": Place(**row["place"]),
            "measured": _measured(row["measured"]),
            "aside": _vector(row["aside"]),
            "others": tuple(row["others"]),
        }
    )


def _measured(row: dict[str, Any] | None) -> Measured | None:
    return Measured(a=tuple(row["a"]), b=tuple(row["b"]), word=row["word"]) if row else None


def _vector(row: Sequence[float] | None) -> tuple[float, float, float] | None:
    return None if row is None else (row[0], row[1], row[2])
