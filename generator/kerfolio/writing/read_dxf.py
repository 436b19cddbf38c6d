"""Reads a DXF file of this program again: contours, lettering, thickness, the unit it states."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any

from kerfolio.basis.unconfigured import unconfigured
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.shapes import circle
from kerfolio.writing.dxf import THICKNESS
from kerfolio.writing.read_back import ReadBack, UnreadableError

with unconfigured():
    from ezdxf import filemanagement
    from ezdxf.units import conversion_factor

_MILLIMETRES = 4
_UPRIGHT = (0.0, 0.0, 1.0)


def read_dxf(content: bytes) -> ReadBack:
    """Return what a DXF file holds. Raises UnreadableError for what is no DXF file.

    A coordinate counts as many mm as ``$INSUNITS`` says.
    """
    document = _document(content)
    scale = _mm_per_unit(document)
    layers: dict[str, list[Contour]] = {}
    words: dict[str, list[str]] = {}
    strange: list[str] = [] if scale else ["no unit"]
    for entity in document.modelspace():
        strange += _strange(entity)
        if entity.dxftype() == "TEXT":
            words.setdefault(entity.dxf.layer, []).append(str(entity.dxf.text))
        else:
            layers.setdefault(entity.dxf.layer, []).extend(_contours(entity, scale or 1.0))
    return ReadBack(
        layers={name: tuple(found) for name, found in layers.items() if found},
        words={name: tuple(found) for name, found in words.items()},
        thickness=_thickness(document),
        strange=tuple(strange),
    )


def _document(content: bytes) -> Any:
    try:
        return filemanagement.read(io.StringIO(content.decode("utf-8")))
    except Exception as fault:  # a damaged file may break the library anywhere
        raise UnreadableError(f"it is no DXF file ({type(fault).__name__})") from fault


def _mm_per_unit(document: Any) -> float:
    """Return how many mm a unit of the file is, 0 where it states none."""
    unit = int(document.header.get("$INSUNITS", 0))
    if unit == _MILLIMETRES:
        return 1.0
    return float(conversion_factor(unit, _MILLIMETRES)) if unit else 0.0  # type: ignore[arg-type] # takes numbers too


def _thickness(document: Any) -> float | None:
    stated = document.header.custom_vars.get(THICKNESS)
    try:
        return None if stated is None else float(stated)
    except ValueError as fault:
        raise UnreadableError(f"its thickness is `{stated}`") from fault


def _strange(entity: Any) -> Iterator[str]:
    kind = entity.dxftype()
    if kind not in ("LWPOLYLINE", "CIRCLE", "TEXT"):
        yield f"a {kind}"
    elif tuple(entity.dxf.extrusion) != _UPRIGHT:
        yield f"a {kind} seen from behind"


def _contours(entity: Any, scale: float) -> Iterator[Contour]:
    if entity.dxftype() == "LWPOLYLINE":
        corners = entity.get_points("xyb")
        vertices = tuple((float(x) * scale, float(y) * scale, float(b)) for x, y, b in corners)
        yield Contour(vertices, closed=bool(entity.closed))
    elif entity.dxftype() == "CIRCLE":
        x, y, _ = entity.dxf.center
        middle = (float(x) * scale, float(y) * scale)
        yield circle(middle, 2 * float(entity.dxf.radius) * scale)
