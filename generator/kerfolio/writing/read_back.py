"""Reads our own SVG and DXF files again, so that what was written can be compared."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator, Mapping
from functools import lru_cache
from math import asin, copysign, dist
from typing import Any
from xml.etree import ElementTree

from kerfolio.basis.unconfigured import unconfigured
from kerfolio.geometry.arc import bulge_of
from kerfolio.geometry.contour import Contour, Point, Vertex
from kerfolio.geometry.shapes import circle
from kerfolio.writing.dxf import THICKNESS

with unconfigured():
    from ezdxf import filemanagement

_SVG = "{http://www.w3.org/2000/svg}"
_WORD = re.compile(r"([MLAZ])([^MLAZ]*)")

Layers = Mapping[str, tuple[Contour, ...]]
"""Contours in mm, y up, by the name of their layer, in the order of the file."""


def dxf_layers(content: bytes) -> Layers:
    """Return the contours of a DXF file by layer; layers without any are left out."""
    found: dict[str, list[Contour]] = {}
    for entity in _document(content).modelspace():
        if entity.dxftype() == "LWPOLYLINE":
            vertices = tuple((float(x), float(y), float(b)) for x, y, b in entity.get_points("xyb"))
            contour = Contour(vertices, closed=bool(entity.closed))
        elif entity.dxftype() == "CIRCLE":
            x, y, _ = entity.dxf.center
            contour = circle((float(x), float(y)), 2 * float(entity.dxf.radius))
        else:
            continue
        found.setdefault(entity.dxf.layer, []).append(contour)
    return {name: tuple(contours) for name, contours in found.items()}


def dxf_thickness(content: bytes) -> float | None:
    """Return the thickness in mm that a DXF file is for, None when it has none."""
    stated = _document(content).header.custom_vars.get(THICKNESS)
    return None if stated is None else float(stated)


@lru_cache(maxsize=1)  # layers and thickness of one file are asked for one after the other
def _document(content: bytes) -> Any:
    return filemanagement.read(io.StringIO(content.decode("utf-8")))


def svg_layers(content: bytes) -> Layers:
    """Return the contours of an SVG file that ``svg_bytes`` wrote, by group."""
    root = ElementTree.fromstring(content)
    back = _Way.of(root)
    found: dict[str, tuple[Contour, ...]] = {}
    for group in root.iter(f"{_SVG}g"):
        contours = tuple(contour for each in group for contour in _contours(each, back))
        if contours:
            found[group.get("id", "")] = contours
    return found


def svg_thickness(content: bytes) -> float | None:
    """Return the thickness in mm that an SVG file is for, None when it has none."""
    stated = ElementTree.fromstring(content).get("data-thickness")
    return None if stated is None else float(stated)


class _Way:
    """The way back from a file's coordinates to the drawing's."""

    def __init__(self, left: float, top: float) -> None:
        self.left, self.top = left, top

    @staticmethod
    def of(root: ElementTree.Element) -> _Way:
        left, bottom = map(float, root.get("data-origin", "0 0").split())
        x, y, _, height = map(float, root.get("viewBox", "0 0 0 0").split())
        return _Way(left - x, bottom + height + y)

    def point(self, x: float, y: float) -> Point:
        return x + self.left, self.top - y


def _contours(element: ElementTree.Element, back: _Way) -> Iterator[Contour]:
    if element.tag == f"{_SVG}circle":
        x, y, radius = (float(element.get(key, "0")) for key in ("cx", "cy", "r"))
        yield circle(back.point(x, y), 2 * radius)
    elif element.tag == f"{_SVG}path":
        for part in element.get("d", "").split("M")[1:]:
            yield _contour("M" + part, back)


def _contour(words: str, back: _Way) -> Contour:
    vertices: list[Vertex] = []
    closed = False
    for command, text in _WORD.findall(words):
        numbers = [float(each) for each in text.split()]
        if command == "Z":
            closed = True
            continue
        x, y = back.point(*numbers[-2:])
        if command == "A":
            start = vertices[-1]
            vertices[-1] = (start[0], start[1], _bulge(start[:2], (x, y), numbers))
        vertices.append((x, y, 0.0))
    if closed and vertices[0][:2] == vertices[-1][:2]:
        vertices.pop()
    return Contour(tuple(vertices), closed=closed)


def _bulge(start: Point, end: Point, numbers: list[float]) -> float:
    """Return the bulge of an elliptical-arc command of equal radii, never over a half turn."""
    radius, turn = numbers[0], numbers[4]
    sweep = 2 * asin(min(1.0, dist(start, end) / (2 * radius)))
    return copysign(bulge_of(sweep), -1.0 if turn else 1.0)
