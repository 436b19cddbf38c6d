"""What a plan says of its drawing files: gathered from all parts before any file is read."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from kerfolio.basis.finding import Finding, error, warning
from kerfolio.model.statement import Named
from kerfolio.reading.nodes import Mapping, Node, Scalar, Sequence

MM_PER_UNIT = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8}
"""Units that ``unit`` may name, in mm; the foot is that of 0.3048 m."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidOfDrawing:
    """What a plan says of one drawing file, in whichever part: it holds wherever the file is used.

    ``unit`` is what the drawing's numbers are in, None where the file itself says so. ``guides``
    are layers, groups or elements that are drawn for the eye alone.
    """

    unit: Named | None = None
    guides: tuple[Named, ...] = ()


NOTHING_SAID = SaidOfDrawing()


def said_of_drawings(plan: Node) -> tuple[dict[str, SaidOfDrawing], tuple[Finding, ...]]:
    """Return what is said of each drawing file that a part is taken from, by its name.

    Parts that name two units for one file are told. What cannot be read is told by its form.
    """
    found: dict[str, SaidOfDrawing] = {}
    findings = []
    for drawing in _drawings(plan):
        file = drawing.get("file")
        if not isinstance(file, Scalar):
            continue
        name = file.text.strip()
        said = found.get(name, NOTHING_SAID)
        for unit in _names(drawing.get("unit")):
            if unit.name not in MM_PER_UNIT:
                continue
            if said.unit is not None and said.unit.name != unit.name:
                message = f"`{name}` is read in {said.unit.name} and in {unit.name}"
                advice = f"A drawing has one unit; the other stands on line {said.unit.place.line}."
                findings.append(error("two-units", message, unit.place, advice))
            said = replace(said, unit=said.unit or unit)
        found[name] = replace(said, guides=(*said.guides, *_names(drawing.get("guides"))))
    return found, tuple(findings)


def _drawings(plan: Node) -> Iterator[Mapping]:
    parts = plan.get("parts") if isinstance(plan, Mapping) else None
    for entry in parts.entries if isinstance(parts, Mapping) else ():
        drawing = entry.value.get("drawing") if isinstance(entry.value, Mapping) else None
        if isinstance(drawing, Mapping):
            yield drawing


def _names(node: Node | None) -> tuple[Named, ...]:
    items = node.items if isinstance(node, Sequence) else (node,)
    return tuple(
        Named(each.text.strip(), each.place)
        for each in items
        if isinstance(each, Scalar) and each.text.strip()
    )


def overruled(own: str, unit: Named) -> Finding:
    """Return the warning that a drawing's ``own`` unit is not the one the plan says it has."""
    message = f"the drawing says {own}, the plan `unit: {unit.name}`, which is taken"
    advice = "Remove `unit`, or set the unit right in the drawing program."
    return warning("unit-overruled", message, unit.place, advice)
