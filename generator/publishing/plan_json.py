"""``plan.json``: the settled plan for other programs, every length in mm with its reason."""

from __future__ import annotations

import json
from typing import Any

from generator.edition.edition import Edition
from generator.settling.settled import SettledFeature, SettledPart, SettledPlan, Sized

FORMAT = "kerfolio-plan/1"
_PLACES = 6  # a nanometre: full precision for machines without the noise of binary fractions


def _number(value: float) -> float:
    return round(value, _PLACES) + 0.0


def _sized(size: Sized | None) -> dict[str, Any] | None:
    return None if size is None else {"value": _number(size.value), "reason": size.reason}


def _feature(feature: SettledFeature) -> dict[str, Any]:
    return {
        "name": feature.name,
        "kind": feature.kind,
        "at": [_number(value) for value in feature.at],
        "direction": [_number(value) for value in feature.direction],
        "width": _sized(feature.width),
        "length": _sized(feature.length),
        "depth": _sized(feature.depth),
        "takes": feature.takes or None,
    }


def _part(part: SettledPart) -> dict[str, Any]:
    return {
        "part": part.name,
        "mark": part.mark,
        "sheet": part.sheet,
        "pieces": [{"label": piece.label, "mark": piece.mark} for piece in part.pieces],
        "grain": part.grain,
        "size": [_number(value) for value in part.size],
        "area": _number(part.area),
        "mass": _number(part.mass),
        "features": [_feature(feature) for feature in part.features],
    }


def _variant(settled: SettledPlan) -> dict[str, Any]:
    return {
        "fit": settled.variant.label,
        "sheets": {
            sheet.name: {
                "stock": sheet.stock.name,
                "thickness": _number(sheet.thickness),
                "fit": _number(sheet.fit),
                "size": [_number(value) for value in sheet.size],
                "cutter": sheet.cutter.name,
            }
            for sheet in settled.sheets
        },
        "sizes": {name: _sized(size) for name, size in settled.sizes},
        "parts": [_part(part) for part in settled.parts],
    }


def _layout(edition: Edition) -> list[dict[str, Any]]:
    return [
        {
            "number": sheet.number,
            "sheet": sheet.sheet,
            "size": [_number(value) for value in sheet.size],
            "pieces": [
                {
                    "piece": each.piece,
                    "part": each.part,
                    "at": [_number(each.x), _number(each.y)],
                    "turn": _number(each.turn),
                }
                for each in sheet.placements
            ],
        }
        for sheet in edition.layout.sheets
    ]


def plan_json(edition: Edition) -> bytes:
    """Return the whole worked-out plan as JSON; angles in degrees, masses in kg, areas in mm2."""
    plan = edition.plan
    content = {
        "format": FORMAT,
        "plan": plan.name,
        "title": plan.title,
        "version": plan.version,
        "summary": plan.summary,
        "licence": plan.licence or edition.identity.licence,
        "maker": edition.identity.maker,
        "unit": "mm",
        "drawn-for": edition.settled.variant.label,
        "variants": [_variant(settled) for settled in edition.variants],
        "layout": _layout(edition),
        "joints": [{"kind": j.kind, "a": j.a.name, "b": j.b.name} for j in plan.joints],
        "hardware": {row.item: row.count for row in edition.hardware},
        "boards": [
            {"name": row.name, "length": _number(row.length), "count": row.count}
            for row in edition.boards
        ],
        "steps": [
            {
                "title": step.title,
                "add": [piece.name for piece in step.add],
                "hardware": {use.item.name: use.count for use in step.hardware},
                "minutes": step.minutes,
            }
            for step in plan.steps
        ],
        "releases": [
            {
                "version": release.version,
                "date": release.date.isoformat(),
                "changed": release.changed,
                "errata": release.errata,
            }
            for release in plan.releases
        ],
    }
    return (json.dumps(content, indent=1, ensure_ascii=False) + "\n").encode()
