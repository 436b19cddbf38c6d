"""``plan.json``: the settled plan for other programs, every length in mm with its reason."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from kerfolio.basis.digits import RATIO_DECIMALS
from kerfolio.basis.json_text import json_text, number
from kerfolio.basis.reader import Reader
from kerfolio.basis.said import told
from kerfolio.drawing.cut_sheet import cut_sheet
from kerfolio.drawing.path_count import PathCount, drawn_counts
from kerfolio.edition.edition import Edition
from kerfolio.model.edge_treatment import BAND, ROUND_OVER
from kerfolio.model.plan import Assembly, Step
from kerfolio.publishing.plan_fastenings import fastenings, wedges
from kerfolio.publishing.plan_figures import figures
from kerfolio.settling.bridges import butted_sides
from kerfolio.settling.clearance import Clearance
from kerfolio.settling.making import labels_made
from kerfolio.settling.marked import name_marked
from kerfolio.settling.moisture import Swelling
from kerfolio.settling.settled import (
    SettledBridge,
    SettledEdge,
    SettledFeature,
    SettledPart,
    SettledPlan,
    Sized,
)
from kerfolio.settling.titles import called
from kerfolio.shop.mass import part_mass
from kerfolio.shop.rounding import largest

FORMAT = "kerfolio-plan/1"


_MOST = 1e8


def _sized(size: Sized | None, reader: Reader) -> dict[str, Any] | None:
    if size is None:
        return None
    # A named size may be a square or a cube of lengths: beyond all digits it is written as it is.
    value = number(size.value) if abs(size.value) <= _MOST else size.value
    return {"value": value, "reason": told(size.reason, reader)}


def _feature(feature: SettledFeature, reader: Reader) -> dict[str, Any]:
    return {
        "name": feature.name,
        "kind": feature.kind.name,
        "at": [number(value) for value in feature.at],
        "direction": [number(value, RATIO_DECIMALS) for value in feature.direction],
        "width": _sized(feature.width, reader),
        "length": _sized(feature.length, reader),
        "depth": _sized(feature.depth, reader),
        "takes": feature.takes or None,
        **_room(feature.room),
        **({"level": _sized(feature.level, reader)} if feature.level else {}),
    }


def _room(room: Clearance | None) -> dict[str, Any]:
    """Return the clearance that joints or damp ask for; nothing where a fit alone counts."""
    if room is None or not (room.asked or any(room.allowed)):
        return {}
    purpose = room.purpose.name if room.purpose else None
    found = {"width": number(room.width), "ends": number(room.ends), "purpose": purpose}
    return {"clearance": {**found, **_allowed(room)}}


def _allowed(room: Clearance) -> dict[str, Any]:
    """Return what of a clearance is for finish and damp; nothing where there is none."""
    if not any(room.allowed):
        return {}
    needs = room.needs
    return {
        "fit": number(room.fit),
        "film": number(needs.film),
        "sanded": number(needs.sanded),
        "swelling": number(needs.swelling),
    }


def _surroundings(settled: SettledPlan) -> dict[str, Any]:
    """Return where the thing lives and what is put on it; nothing where the plan says neither."""
    found, plan = settled.surroundings, settled.plan
    if found is None:
        return {}
    finish, place = plan.finish, plan.climate
    return {
        "place": place.name if place else None,
        "finish": None
        if finish is None
        else {
            "of": finish.of.name,
            "coats": finish.coats,
            "when": finish.when,
            "film": number(found.coat),
            "sanded": number(found.sanded),
        },
        "swelling": {sheet.name: _swelling(found.swelling(sheet.stock)) for sheet in settled.sheets}
        if place
        else {},
    }


def _swelling(found: Swelling) -> dict[str, Any]:
    """Return moistures in per cent, and by which shares of its sizes a sheet grows."""
    return {
        "moisture": [number(found.least), number(found.most)],
        "bought": number(found.bought),
        "thickness": number(found.thickness, 6),
        "plane": number(found.plane, 6),
    }


def _bridge(bridge: SettledBridge) -> dict[str, Any]:
    return {
        "at": [number(value) for value in bridge.at],
        "direction": [number(value, RATIO_DECIMALS) for value in bridge.direction],
        "width": number(bridge.width),
        "height": number(bridge.height),
        "of": bridge.operation.value,
    }


def _edges(part: SettledPart, sides: Mapping[str, frozenset[str]]) -> dict[str, Any]:
    """Return what is done to a part's edges; nothing where nothing is stated."""
    butting = sides.get(part.name, frozenset())
    return {"edges": [_edge(each, part, butting) for each in part.edges]} if part.edges else {}


def _edge(edge: SettledEdge, part: SettledPart, butting: frozenset[str]) -> dict[str, Any]:
    """Return an edge; of a rounding the largest radius, too, that spares sheet and joints."""
    found: dict[str, Any] = {"treatment": edge.kind.name, "length": number(edge.length)}
    if edge.openings:
        found["rims-of"] = list(edge.openings)
    elif edge.side:
        found["side"] = edge.side
    elif edge.ends:
        found["from"], found["to"] = ([number(value) for value in each] for each in edge.ends)
    else:
        found["side"] = "all"
    if edge.kind is ROUND_OVER:
        most = largest(edge, part, butting).radius
        found |= {"radius": number(edge.radius), "faces": edge.faces, "largest": number(most)}
    if edge.kind is BAND:
        thick = None if edge.thickness is None else number(edge.thickness)
        found |= {"of": edge.of, "thickness": thick}
    return found


def _part(part: SettledPart, reader: Reader, sides: Mapping[str, frozenset[str]]) -> dict[str, Any]:
    weighed = part_mass(part)
    return {
        "part": part.name,
        "mark": part.mark,
        "sheet": part.sheet,
        "pieces": [{"label": piece.label, "mark": piece.mark} for piece in part.pieces],
        "grain": part.grain,
        "size": [number(value) for value in part.size],
        "area": number(part.area),
        "mass": number(part.mass),
        "centre-of-gravity": [number(value) for value in (weighed.x, weighed.y, weighed.z)],
        "features": [_feature(feature, reader) for feature in part.features],
        "bridges": [_bridge(bridge) for bridge in part.bridges],
        **_edges(part, sides),
    }


def _variant(settled: SettledPlan, reader: Reader) -> dict[str, Any]:
    sides = butted_sides(settled.plan.joints, settled.plan.parts)
    return {
        "fit": settled.variant.label,
        "sheets": {
            sheet.name: {
                "stock": sheet.stock.name,
                "thickness": number(sheet.thickness),
                "fit": number(sheet.fit),
                "size": [number(value) for value in sheet.size],
                "cutter": sheet.cutter.name,
            }
            for sheet in settled.sheets
        },
        "sizes": {name: _sized(size, reader) for name, size in settled.sizes},
        "parts": [_part(part, reader, sides) for part in settled.parts],
    }


def _path(each: PathCount) -> dict[str, Any]:
    return {
        "layer": each.layer,
        "contours": each.contours,
        "length": number(each.length),
        "area": number(each.area),
        "holes": [{"diameter": number(wide), "count": count} for wide, count in each.diameters],
    }


def _layout(edition: Edition) -> list[dict[str, Any]]:
    return [
        {
            "number": sheet.number,
            "sheet": sheet.sheet,
            "size": [number(value) for value in sheet.size],
            "pieces": [
                {
                    "piece": each.piece,
                    "part": each.part,
                    "at": [number(each.x), number(each.y)],
                    "turn": number(each.turn),
                }
                for each in sheet.placements
            ],
            "paths": [_path(each) for each in drawn_counts(cut_sheet(edition.settled, sheet))],
        }
        for sheet in edition.layout.sheets
    ]


def _step(step: Step, assembly: Assembly) -> dict[str, Any]:
    """Return a step as often as it is done: all its pieces and hardware, the minutes of once."""
    return {
        "title": step.title,
        "times": assembly.count,
        "add": [label for each in step.add for label in labels_made(each.name, assembly)],
        "hardware": {use.item.name: assembly.count * use.count for use in step.uses},
        "minutes": None if step.minutes is None else number(step.minutes),
        **_work(step),
    }


def _work(step: Step) -> dict[str, Any]:
    """Return the work by hand that a step states, by its kind; nothing of a step without any."""
    stated = {
        "marks": [name_marked(each).name for each in step.marks],
        "bores": [each.name for each in step.bores],
        "sands": [each.name for each in step.sands.of] if step.sands else [],
        "glues": [each.name for each in step.glues.of] if step.glues else [],
    }
    work: dict[str, Any] = {kind: names for kind, names in stated.items() if names}
    if step.clamps:
        minutes = step.clamps.minutes
        work["clamps"] = {
            "of": [each.name for each in step.clamps.of],
            "count": step.clamps.count,
            "minutes": None if minutes is None else number(minutes),
        }
    return {"work": work} if work else {}


def _assembly(assembly: Assembly, overhangs: Mapping[str, float]) -> dict[str, Any]:
    laid = assembly.lies_on
    return {
        "name": assembly.name,
        "title": called(assembly),
        "count": assembly.count,
        "pieces": [each.name for each in assembly.pieces],
        "lies-on": [each.name for each in laid.supports] if laid else [],
        "overhang": number(overhangs.get(assembly.name, 0.0)) if laid else None,
        "held": laid.held if laid else None,
    }


def _proved(edition: Edition) -> dict[str, Any]:
    """Return the range that the plan was proved for, and the points that were looked at."""
    return {
        "sheets": {
            each.name: {
                "thickness": [number(mm) for mm in each.published],
                "fit": [number(mm) for mm in each.fits or (each.fit, each.fit)],
            }
            for each in edition.settled.sheets
        },
        "points": [each.label for each in edition.proved],
    }


def plan_json(edition: Edition) -> bytes:
    """Return the whole worked-out plan as JSON; angles in degrees, masses in kg, areas in mm2.

    Keys and words that programs go by are English; what is told to people (reasons, assumptions,
    sentences) is in the ``language`` stated. Numbers have four decimals at most, directions eight.

    Named sizes that are no lengths are areas in mm2, or numbers as they are.

    Places are in the part's frame; a centre of gravity counts z from the rear face.
    """
    plan = edition.plan
    reader = replace(edition.reader, unit=plan.units)  # a reason has lengths as the plan does
    content = {
        "format": FORMAT,
        "plan": plan.name,
        "title": plan.title,
        "version": plan.version,
        "summary": plan.summary,
        "licence": plan.licence or edition.identity.licence,
        "maker": edition.identity.maker,
        "language": edition.reader.language,
        "unit": "mm",
        "drawn-for": edition.settled.variant.label,
        **_surroundings(edition.settled),
        "proved": _proved(edition),
        "variants": [_variant(settled, reader) for settled in edition.variants],
        "layout": _layout(edition),
        "makes": [_assembly(each, dict(edition.settled.overhangs)) for each in plan.assemblies],
        "joints": [{"kind": j.kind.name, "a": j.a.name, "b": j.b.name} for j in plan.joints],
        "fastenings": [each for thing in edition.made for each in fastenings(thing)],
        "wedges": [each for thing in edition.made for each in wedges(thing)],
        "hardware": {row.item: row.count for row in edition.hardware},
        "boards": [
            {"name": row.name, "length": number(row.length), "count": row.count}
            for row in edition.boards
        ],
        **figures(edition),
        "steps": [_step(step, assembly) for assembly in plan.made for step in assembly.steps],
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
    return (json_text(content, 1) + "\n").encode()
