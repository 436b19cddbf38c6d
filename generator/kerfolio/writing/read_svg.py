"""Reads an SVG file of this program again: contours, lettering, thickness, the unit it states."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from math import asin, copysign, dist
from xml.etree import ElementTree

from kerfolio.geometry.arc import bulge_of
from kerfolio.geometry.contour import Contour, Point, Vertex
from kerfolio.geometry.shapes import circle
from kerfolio.writing.read_back import ReadBack, UnreadableError

_SVG = "{http://www.w3.org/2000/svg}"
_WORD = re.compile(r"([MLAZ])([^MLAZ]*)")
_LENGTH = re.compile(r"([0-9.]+)(mm|cm|in|pt|px|)")
_MM = {"mm": 1.0, "cm": 10.0, "in": 25.4, "pt": 25.4 / 72, "px": 25.4 / 96, "": 25.4 / 96}
"""How long the units of CSS are, mm (CSS Values and Units, level 3: 96 px are 1 in)."""
_SHAPES = {f"{_SVG}{each}" for each in ("path", "circle")}
_KNOWN = _SHAPES | {f"{_SVG}{each}" for each in ("svg", "title", "desc", "g", "text")}
_EVEN = 1e-6


def read_svg(content: bytes) -> ReadBack:
    """Return what an SVG file of ``svg_bytes`` holds. Raises UnreadableError for another file.

    A user unit counts as many mm as width and height say; layers are groups.
    """
    try:
        root = ElementTree.fromstring(content)
        back = _Way.of(root)
        groups = list(root.iter(f"{_SVG}g"))
        layers = {_name(g): tuple(c for each in g for c in _contours(each, back)) for g in groups}
        words = {_name(g): tuple(t.text or "" for t in g.iter(f"{_SVG}text")) for g in groups}
        thickness = root.get("data-thickness")
        stated = None if thickness is None else float(thickness)
    except (ElementTree.ParseError, ValueError, IndexError, KeyError, ZeroDivisionError) as fault:
        raise UnreadableError(f"it is no SVG file of this program ({fault})") from fault
    return ReadBack(
        layers={name: found for name, found in layers.items() if found},
        words={name: found for name, found in words.items() if found},
        thickness=stated,
        zeros=(back.point(0.0, 0.0), back.corner),
        strange=tuple(_strange(root, back)),
    )


def _name(group: ElementTree.Element) -> str:
    return group.get("id", "")


@dataclass(frozen=True, slots=True)
class _Way:
    """The way back from a file's coordinates to the drawing's; ``corner`` is its lower left."""

    x: float
    y: float
    wide: float
    high: float
    corner: Point
    top: float

    @staticmethod
    def of(root: ElementTree.Element) -> _Way:
        x, y, width, height = map(float, root.get("viewBox", "").split())
        wide = _millimetres(root.get("width", f"{width}")) / width
        high = _millimetres(root.get("height", f"{height}")) / height
        left, bottom = map(float, root.get("data-origin", "0 0").split())
        corner = left * wide, bottom * high
        return _Way(x, y, wide, high, corner, corner[1] + height * high)

    def point(self, x: float, y: float) -> Point:
        return (x - self.x) * self.wide + self.corner[0], self.top - (y - self.y) * self.high


def _millimetres(text: str) -> float:
    found = _LENGTH.fullmatch(text)
    if not found:
        raise ValueError(f"`{text}` is no length")
    return float(found[1]) * _MM[found[2]]


def _strange(root: ElementTree.Element, back: _Way) -> Iterator[str]:
    if abs(back.wide - back.high) > _EVEN:
        yield "another scale across than up"
    for each in root.iter():
        name = each.tag.removeprefix(_SVG)
        if each.tag not in _KNOWN:
            yield f"a `{name}`"
        elif each.get("transform") and each.tag != f"{_SVG}text":
            yield f"a `{name}` that is moved"
    for each in root:
        if each.tag in _SHAPES:
            yield "a line on no layer"


def _contours(element: ElementTree.Element, back: _Way) -> Iterator[Contour]:
    if element.tag == f"{_SVG}circle":
        x, y, radius = (float(element.get(key, "")) for key in ("cx", "cy", "r"))
        yield circle(back.point(x, y), 2 * radius * back.wide)
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
            bulge = _bulge(start[:2], (x, y), numbers[0] * back.wide, numbers[4])
            vertices[-1] = (start[0], start[1], bulge)
        vertices.append((x, y, 0.0))
    if closed and vertices[0][:2] == vertices[-1][:2]:
        vertices.pop()
    return Contour(tuple(vertices), closed=closed)


def _bulge(start: Point, end: Point, radius: float, turn: float) -> float:
    """Return the bulge of an elliptical-arc command of equal radii, never over a half turn."""
    sweep = 2 * asin(min(1.0, dist(start, end) / (2 * radius)))
    return copysign(bulge_of(sweep), -1.0 if turn else 1.0)
