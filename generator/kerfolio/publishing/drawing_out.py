"""``kerfolio draw``: all parts of a plan as one clean drawing, and changes in it read back.

Only a plan's drawn parts are read back: what is stated in figures stays as it is stated.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import partial
from pathlib import Path

from kerfolio.basis.finding import Finding, error, has_errors, in_unit, note, warning
from kerfolio.basis.names import begins, set_name
from kerfolio.basis.place import Place
from kerfolio.disk.put import put
from kerfolio.drawing.drawn_out import drawn_out
from kerfolio.geometry.boolean import difference, union
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.inside import point_inside
from kerfolio.geometry.measure import bounds, point_in
from kerfolio.geometry.nesting import off_shape
from kerfolio.geometry.transform import moved
from kerfolio.model.outline import Drawing, Drawn
from kerfolio.model.part import Part
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.reading.plan_folders import unknown_plan
from kerfolio.reading.workshop import read_shared, with_plans
from kerfolio.settling.drawn_choice import chosen, path_of
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.settling.variant import drawn_variant, variants
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.shapes_svg import shapes_svg
from kerfolio.writing.svg import svg_bytes

_SAME = 0.01
"""A line that strays no further, mm, was not changed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnOut:
    """The files written, and what was found."""

    files: tuple[Path, ...] = ()
    findings: tuple[Finding, ...] = ()


def draw_out(workshop: Path, name: str, out: Path | None = None) -> DrawnOut:
    """Write a plan's parts as SVG and DXF into ``out``, else the usual folder. Raises OSError."""
    plan, stock, findings = _plan(workshop, name)
    if plan is None or has_errors(findings):
        return DrawnOut(findings=findings)
    settled, faults = _as_drawn(plan, stock)
    if settled is None:
        return DrawnOut(findings=(*findings, *faults))
    folder = out or workshop / ".kerfolio" / "draw"
    drawing = drawn_out(settled)
    folder.mkdir(parents=True, exist_ok=True)
    files = {
        folder / f"{name}.svg": svg_bytes(drawing, decimals=4),
        folder / f"{name}.dxf": dxf_bytes(drawing),
    }
    for file, content in files.items():
        put(file, content)
    return DrawnOut(files=tuple(files), findings=findings)


def is_drawn_out(drawing: Drawing, plan: Plan) -> bool:
    """Tell whether a drawing was written by ``draw`` for a plan: its layers are called by parts."""
    names = {name for each in drawing.elements for name in each.names}
    return any(part.name in names for part in plan.parts)


def taken_back(drawing: Drawing, plan: Plan, stock: Stock, folder: Path) -> DrawnOut:
    """Write what was changed in a drawing into a plan's own drawings; ``folder`` is the plan's.

    Raises OSError when the disk refuses.
    """
    settled, faults = _as_drawn(plan, stock)
    if settled is None:
        return DrawnOut(findings=faults)
    files: dict[Path, bytes] = {}
    findings: list[Finding] = []
    by_layer = _by_layer(drawing)
    was = _by_part(settled)
    shared = [p.shape.file for p in plan.parts if isinstance(p.shape, Drawn)]
    for part in plan.parts:
        now = {n: c for n, c in by_layer.items() if begins(n, part.name)}
        if not now or not _is_changed(now, was.get(part.name, {}), part.name):
            continue
        if not isinstance(part.shape, Drawn):
            findings.append(_stated(part, folder.name))
        elif shared.count(part.shape.file) > 1 or not part.shape.file.endswith(".svg"):
            findings.append(_shared(part, part.shape, folder.name))
        else:
            made = next(each for each in settled.parts if each.name == part.name)
            shapes = dict(_shapes(part, part.shape, plan, _without_edges(part, made, now)))
            files[folder / part.shape.file] = shapes_svg(shapes)
    for file, content in files.items():
        put(file, content)
    if not files and not findings:
        findings.append(note("drawing-unchanged", "nothing was changed", Place(drawing.file), ""))
    return DrawnOut(files=tuple(files), findings=tuple(findings))


def _plan(workshop: Path, name: str) -> tuple[Plan | None, Stock, tuple[Finding, ...]]:
    shared, refused = read_shared(workshop, pictures=False)
    if shared is None:
        return None, Stock(), tuple(refused)
    if name not in shared.plans:
        return None, Stock(), (unknown_plan(name, shared.plans),)
    read, findings = with_plans(shared, [name])
    plan = read.plans[0] if read and read.plans else None
    return plan, shared.stock, tuple(findings)


def _as_drawn(plan: Plan, stock: Stock) -> tuple[SettledPlan | None, tuple[Finding, ...]]:
    """Return a plan settled as drawn, without fit."""
    drawn = drawn_variant(plan, stock)
    if drawn is None:
        return None, in_unit(variants(plan, stock)[1], plan.units)
    still = replace(drawn, fit=tuple((sheet, 0.0) for sheet, _ in drawn.thickness))
    return settle(plan, stock, still)


def _by_layer(drawing: Drawing) -> dict[str, list[Contour]]:
    found: dict[str, list[Contour]] = {}
    for each in drawing.elements:
        for name in each.names[-1:] or each.names:
            found.setdefault(name, []).append(path_of(each))
    return found


def _by_part(settled: SettledPlan) -> dict[str, dict[str, list[Contour]]]:
    found: dict[str, dict[str, list[Contour]]] = {}
    for item in drawn_out(settled).items:
        contour = getattr(item, "contour", None)
        if contour is not None:
            part = item.layer.split(".")[0]
            found.setdefault(part, {}).setdefault(item.layer, []).append(contour)
    return found


def _is_changed(
    now: Mapping[str, list[Contour]], was: Mapping[str, list[Contour]], part: str
) -> bool:
    """Tell whether a part's lines differ from what was written, wherever it lies on the sheet."""
    if {n: len(c) for n, c in now.items()} != {n: len(c) for n, c in was.items()}:
        return True
    if part not in now or part not in was:
        return True
    here, there = bounds(now[part][0]), bounds(was[part][0])
    dx, dy = there.x0 - here.x0, there.y0 - here.y0
    for name, contours in now.items():
        left = list(was[name])
        for contour in contours:
            at = moved(contour, dx, dy)
            near = min(left, key=partial(off_shape, at))
            if off_shape(at, near) > _SAME:
                return True
            left.remove(near)
    return False


def _without_edges(
    part: Part, made: SettledPart, now: Mapping[str, list[Contour]]
) -> dict[str, list[Contour]]:
    """Return a part's lines with an outline that its stated tabs, notches and fingers are not in.

    They lie where they lay in what was written, measured from the outline's lower left corner.
    """
    outline = Region(now[part.name][0])
    here, there = bounds(outline), bounds(made.plain.outer)
    dx, dy = here.x0 - there.x0, here.y0 - there.y0
    stated = {each.name for each in part.features}
    for feature in made.features:
        if feature.kind.on_edge and set_name(feature.name) in stated:
            for shape in feature.shape:
                at = moved(shape, dx, dy)
                is_wood = point_in(made.plain.outer, point_inside(shape))
                outline = difference(outline, [at]) if is_wood else union(outline, [at])
    return {**now, part.name: [outline.outer]}


def _shapes(
    part: Part, drawn: Drawn, plan: Plan, now: Mapping[str, list[Contour]]
) -> Iterator[tuple[str, tuple[Contour, ...]]]:
    """Yield the elements of a part's own drawing, by the names that its plan has for them."""
    outline = now[part.name][0]
    box = bounds(outline)
    yield drawn.outline.name, (moved(outline, -box.x0, -box.y0),)
    own = next(each for each in plan.drawings if each.file == drawn.file)
    known = {rule.element.name: found for rule, found in chosen(drawn, own, plan.units).features}
    stated = {each.name for each in part.features}
    for name, contours in now.items():
        feature = name.partition(".")[2]
        if feature and feature not in stated:
            yield feature, tuple(moved(each, -box.x0, -box.y0) for each in contours)
            known.pop(feature, None)
    for name, elements in known.items():
        if f"{part.name}.{name}" not in now:
            yield name, tuple(path_of(each) for each in elements)


def _stated(part: Part, plan: str) -> Finding:
    advice = "Change its sizes in the plan, or give it a `drawing`."
    message = f"`{part.name}` was changed in the drawing, and is stated in figures in the plan"
    return warning("stated-not-drawn", message, Place(f"plans/{plan}/plan.yaml"), advice)


def _shared(part: Part, drawn: Drawn, plan: str) -> Finding:
    advice = f"Give it a drawing of its own: `file: drawings/{part.name}.svg`."
    message = f"`{part.name}` was changed, and comes from `{drawn.file}`"
    return error("drawing-not-own", message, Place(f"plans/{plan}/plan.yaml"), advice)
