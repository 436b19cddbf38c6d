"""Reading drawn parts from DXF files, in mm with y up."""

from __future__ import annotations

import logging
import math
from collections import Counter
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from kerfolio.basis.budgets import DRAWING_BYTES, NODES
from kerfolio.basis.finding import Finding, error, in_order, note, warning
from kerfolio.basis.measures import number
from kerfolio.basis.place import Place
from kerfolio.basis.said import said, written
from kerfolio.basis.unconfigured import unconfigured
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.transform import scaled
from kerfolio.model.outline import Drawing, DrawnElement, DrawnText
from kerfolio.model.statement import Named
from kerfolio.reading.drawn_chain import BeyondBudgetError, Gathered, finished
from kerfolio.reading.drawn_said import MM_PER_UNIT as MM_PER_UNIT_SAID
from kerfolio.reading.drawn_said import NOTHING_SAID, SaidOfDrawing, overruled
from kerfolio.reading.dxf_damage import Damage, damage_of
from kerfolio.reading.dxf_entity import TiltedError, entity_contour, is_path
from kerfolio.reading.dxf_lines import entity_count, entity_lines

with unconfigured():
    from ezdxf import filemanagement, recover, units
    from ezdxf.lldxf.const import DXFError

# What the library remarks on its own is told to the maker as findings, not printed.
logging.getLogger("ezdxf").addHandler(logging.NullHandler())

MM_PER_UNIT = {
    **{1: 25.4, 2: 304.8, 3: 1_609_344.0, 8: 25.4e-6, 9: 0.0254, 10: 914.4},
    **{4: 1.0, 5: 10.0, 6: 1e3, 7: 1e6, 11: 1e-7, 12: 1e-6, 13: 1e-3, 14: 1e2, 15: 1e4, 16: 1e5},
    **{21: 1.2e6 / 3937, 22: 1e5 / 3937, 23: 3.6e6 / 3937, 24: 6.336e9 / 3937},
}
"""mm for each value of $INSUNITS (DXF reference, header): inch units from the inch of 25.4 mm,
metric ones, and those of the US survey foot of 1200/3937 m. Astronomical units are left out."""
_LARGEST = 1e5
_SAY_UNIT = written(
    "unit: mm",
    "unit: in",
    "Write `{}`, or the unit it was drawn in, in the part's `drawing`.",
)


_WORDS = ("TEXT", "MTEXT", "ATTRIB")
"""Entities that say something."""


@dataclass(slots=True, kw_only=True)
class _Sheet(Gathered):
    """What has been read so far; ``scale`` is mm per drawing unit."""

    file: str
    scale: float
    lines: dict[str, int]
    hidden: frozenset[str]
    inserted: Counter[str] = field(default_factory=Counter)
    ignored: Counter[str] = field(default_factory=Counter)


def read_dxf(
    path: Path,
    file: str,
    *,
    art: bool = False,
    asked: SaidOfDrawing = NOTHING_SAID,
    named: bool = False,
) -> tuple[Drawing | None, tuple[Finding, ...]]:
    """Return the paths of a DXF file's model space, in mm with y up, and what is wrong in it.

    Layers and blocks are the elements' names; the second insert of block ``SIDE`` is ``SIDE.2``.
    Lines, arcs and other open paths of one layer are joined where their ends meet within 0.01 mm.
    Splines and ellipses become chords within 0.01 mm.
    ``art`` is for engravings, where open and crossing paths are fine and the size is that of the
    engraving. ``asked`` is what the plan says of the file. Where its words name parts (``named``),
    they are not told as ignored. The drawing is None when nothing can be read, or nobody says in
    which unit it is.
    """
    document, findings = _document(path, file)
    if document is None:
        return None, findings
    scale, told = _chosen(document, _unit(document, file), asked.unit)
    layers = (layer for layer in document.layers if layer.is_off() or layer.is_frozen())
    hidden = frozenset(layer.dxf.name.lower() for layer in layers)
    sheet = _Sheet(
        file=file,
        scale=scale or 1.0,
        lines=entity_lines(path),
        hidden=hidden,
        findings=[*findings, *told],
    )
    try:
        for entity in document.modelspace():
            _guarded(entity, (), "", sheet, 0)
    except BeyondBudgetError as beyond:
        return None, in_order((*sheet.findings, beyond.finding))
    _tell_ignored(sheet, named=named)
    if scale is None and not art and sheet.elements:
        return None, in_order((*sheet.findings, _unitless(sheet)))
    return finished(file, sheet, art=art, guides=asked.guides)


def _document(path: Path, file: str) -> tuple[Any, tuple[Finding, ...]]:
    whole = Place(file)
    try:
        large = DRAWING_BYTES.fault(path.stat().st_size)
        large = large or NODES.fault(entity_count(path.read_bytes()))
        if large is not None:
            return None, (error("drawing-too-large", str(large), whole, large.advice),)
        return filemanagement.readfile(path), ()
    except FileNotFoundError:
        return None, (error("missing-file", f"no drawing `{file}`", whole, "Check its name."),)
    # A damaged file makes the library fail in many ways; each of them means the same to a maker.
    except Exception:
        return _mended(path, file)


def _mended(path: Path, file: str) -> tuple[Any, tuple[Finding, ...]]:
    """Return a damaged document as far as the library can mend it, with a warning of the damage.

    Where that may concern what is to be cut nothing is mended: a guess would be cut in wood.
    """
    unknown = Damage(message="not a sound DXF file", place=Place(file))
    damage = damage_of(path.read_bytes(), file) or replace(unknown, grave=False)
    if not damage.grave:
        try:
            document, _ = recover.readfile(path)
        except Exception:
            damage = replace(damage, grave=True)
        else:
            found = warning("mended-drawing", damage.message, damage.place, damage.advice)
            return document, (found,)
    return None, (error("unreadable-drawing", damage.message, damage.place, damage.advice),)


def _unit(document: Any, file: str) -> tuple[float | None, tuple[Finding, ...]]:
    """Return mm per drawing unit by $INSUNITS, None where the file does not say it."""
    try:
        unit = int(document.header.get("$INSUNITS", 0) or 0)
    except (ValueError, TypeError, OverflowError):
        unit = -1
    if unit == 0 or unit in MM_PER_UNIT:
        return MM_PER_UNIT.get(unit), ()
    message = f"unit number {unit} is not read here"
    return 1.0, (error("missing-unit", message, Place(file), _SAY_UNIT),)


def _chosen(
    document: Any, own: tuple[float | None, tuple[Finding, ...]], stated: Named | None
) -> tuple[float | None, tuple[Finding, ...]]:
    """Return mm per drawing unit: as the plan states it, else the drawing's ``own``."""
    if stated is None:
        return own
    scale, (faulty, told) = MM_PER_UNIT_SAID[stated.name], own
    if faulty is None or told or math.isclose(faulty, scale, rel_tol=1e-5):
        return scale, ()
    return scale, (overruled(units.unit_name(document.units).lower(), stated),)


def _unitless(sheet: _Sheet) -> Finding:
    """Return the error that nobody says what the drawing's numbers are in."""
    boxes = [bounds(Contour(each.vertices)) for _, each in sheet.elements]
    wide = max(box.x1 for box in boxes) - min(box.x0 for box in boxes)
    high = max(box.y1 for box in boxes) - min(box.y0 for box in boxes)
    sides = number("width", wide), number("height", high)
    message = said("no unit stated: the drawing is {} x {} units", *sides)
    return error("missing-unit", message, Place(sheet.file), _SAY_UNIT)


def _guarded(entity: Any, groups: tuple[str, ...], layer: str, sheet: _Sheet, depth: int) -> None:
    """Read one entity; what is wrong in it becomes a finding that names it.

    Raises BeyondBudgetError.
    """
    own = _attribute(entity, "layer") or "0"
    own = layer if layer and own == "0" else own
    if own.lower() in sheet.hidden:
        sheet.ignored["entity on a hidden layer"] += 1
        return
    name, place = _name(entity, own, sheet)
    sheet.visit(place, depth)
    names = (name, own, *groups)
    try:
        _read(entity, (own, groups, name, place), sheet, depth)
    except BeyondBudgetError:
        raise
    except TiltedError:
        message = f"`{name}` does not lie flat"
        advice = "Draw it in the plane seen from above."
        sheet.leave_out(error("not-flat", message, place, advice), names)
    except ShapeError as problem:
        broken = error("broken-path", f"`{name}`: {problem}", place, "Draw it anew.")
        sheet.leave_out(broken, names)
    # An entity of a damaged file makes the library fail in many ways.
    except Exception:
        message = f"`{name}` cannot be read"
        sheet.leave_out(error("broken-path", message, place, "Draw it anew."), names)


def _name(entity: Any, layer: str, sheet: _Sheet) -> tuple[str, Place]:
    """Return what an entity is called in findings, and its place where the file tells it."""
    line = sheet.lines.get(_attribute(entity, "handle").upper(), 0)
    name = f"{entity.dxftype()} on layer {layer}"
    return name, Place(sheet.file, line, 1 if line else 0)


def _attribute(entity: Any, name: str) -> str:
    """Return an attribute as text; empty where the entity has none, or is of no known kind."""
    try:
        return str(entity.dxf.get(name, None) or "")
    except DXFError:
        return ""


_Known = tuple[str, tuple[str, ...], str, Place]
"""An entity's layer, the inserts around it (each by its number, then as its block), its name and
its place."""


def _read(entity: Any, known: _Known, sheet: _Sheet, depth: int) -> None:
    layer, groups, name, place = known
    if entity.dxftype() == "INSERT":
        if entity.block() is None:
            message = f"block `{entity.dxf.name}` is not in the drawing"
            missing = error("unknown-reference", message, place, "Draw it anew.")
            sheet.leave_out(missing, (name, layer, *groups, str(entity.dxf.name)))
            return
        # Its rows and columns are counted before the first of them is made.
        sheet.visit(place, depth, entity.mcount)
        block = str(entity.dxf.name)
        for attribute in entity.attribs:
            _text(attribute, place, sheet)
        for single in entity.multi_insert() if entity.mcount > 1 else (entity,):
            sheet.inserted[block] += 1
            inner = (f"{block}.{sheet.inserted[block]}", block, *groups)
            for part in single.virtual_entities():
                _guarded(part, inner, layer, sheet, depth + 1)
        return
    if not is_path(entity):
        sheet.ignored[entity.dxftype()] += 1
        _text(entity, place, sheet)
        return
    contour = _in_mm(entity_contour(entity, 0.005 / sheet.scale), sheet.scale)
    element = DrawnElement(
        name=name,
        names=tuple(dict.fromkeys((layer, *groups[1::2]))),
        vertices=contour.vertices,
        closed=contour.closed,
        inserts=groups[::2],
        place=place,
    )
    sheet.add((layer, *groups), element)


def _text(entity: Any, place: Place, sheet: _Sheet) -> None:
    """Keep what a text says and where it begins."""
    if entity.dxftype() not in _WORDS:
        return
    long = entity.dxftype() == "MTEXT"
    words = " ".join(str(entity.plain_text() if long else entity.dxf.text).split())
    at = entity.dxf.insert
    if words and max(abs(at.x), abs(at.y)) * sheet.scale < _LARGEST:
        spot = (at.x * sheet.scale, at.y * sheet.scale)
        sheet.texts.append(DrawnText(text=words, at=spot, place=place))


def _in_mm(contour: Contour, scale: float) -> Contour:
    """Return a contour in mm; ShapeError when it is not a sound one.

    A path that ends within 0.01 mm of its start is closed.
    """
    if len(contour.vertices) < 2:
        raise ShapeError("it has no points")
    result = scaled(contour, scale)
    for x, y, bulge in result.vertices:
        if not (abs(x) < _LARGEST and abs(y) < _LARGEST and math.isfinite(bulge)):
            raise ShapeError("a coordinate is too large (beyond 100 m)")
    vertices = result.vertices
    if len(vertices) > 2 and math.dist(vertices[0][:2], vertices[-1][:2]) <= 0.01:
        return Contour(vertices[:-1], closed=True)
    return result


def _tell_ignored(sheet: _Sheet, *, named: bool) -> None:
    for kind, count in sorted(sheet.ignored.items()):
        if named and kind in _WORDS:
            continue
        message = f"{kind} is ignored" + (f" ({count} times)" if count > 1 else "")
        advice = "Turn it into lines and arcs to have it cut."
        sheet.findings.append(note("ignored-element", message, Place(sheet.file), advice))
