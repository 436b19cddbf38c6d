"""Reads pages of a PDF file again: every line in mm with its pen, every line of lettering."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from math import atan, cos, dist, hypot, inf, sin, tan
from typing import Any

from kerfolio.basis.digits import rounded
from kerfolio.geometry.contour import Contour, Point, Vertex
from kerfolio.writing.read_back import UnreadableError
from kerfolio.writing.typeface import MM_PER_POINT

Box = tuple[float, float, float, float]
Matrix = tuple[float, float, float, float, float, float]

_IDENTITY: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
_STRAY = 0.002
"""How far, mm, the handles of a curve may lie from those of an arc and still make it one."""
_INSTRUCTION = re.compile(
    rb"(?:\[([^\]]*)\]\s*(?:[0-9]+\s+)?|/([^\s<>\[\]/]+)\s+(?:[0-9.]+\s+)?|((?:[-+]?[0-9.]+\s+)*))"
    rb"(?<![/\w])(TJ|Tm|Tf|BT|ET|Do|cm|rg|RG|re|f\*|B\*|[wmlchqQSfWn])(?!\S)"
)
"""An array, a name with a size or numbers, then the operator (ISO 32000-1, 7.8.2); those of
structure, joins and dashes draw nothing themselves."""
_STRING = re.compile(rb"<([0-9a-f]+)>|\(([^()\\]*)\)")
"""A string of codes in a row, in hexadecimal digits or as they are."""
_CODE = re.compile(rb"<([0-9A-Fa-f]+)>\s*<([0-9A-Fa-f]{4,})>")


@dataclass(frozen=True, slots=True)
class Pen:
    """How a line is drawn: its width in mm, its colour and that of its ground, empty for none."""

    width: float
    ink: str
    fill: str


@dataclass(frozen=True, slots=True)
class Line:
    """A contour on a page, mm from its lower left corner, y up; curves that are no arcs have an
    endless bulge. ``inset`` tells whether it belongs to a drawing that is laid on the page.
    """

    contour: Contour
    pen: Pen
    inset: bool


@dataclass(frozen=True, slots=True)
class Lettering:
    """A line of lettering and where it begins on its baseline, mm."""

    text: str
    at: Point
    inset: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadPage:
    """A page: its size in mm, its lines and its lettering in the order of the file.

    ``clip`` is the window through which its drawing shows, None where nothing hides it.
    """

    size: tuple[float, float]
    lines: tuple[Line, ...]
    words: tuple[Lettering, ...]
    clip: Box | None


def read_pdf(content: bytes) -> tuple[ReadPage, ...]:
    """Return the pages of a PDF file. Raises UnreadableError for what is no PDF file."""
    import pikepdf  # takes long to load

    try:
        with pikepdf.open(io.BytesIO(content)) as document:
            return tuple(_page(each) for each in document.pages)
    except Exception as fault:  # a damaged file may break the library anywhere
        raise UnreadableError(f"it is no PDF file ({type(fault).__name__})") from fault


def _page(page: Any) -> ReadPage:
    unit = float(page.obj.get("/UserUnit", 1)) * MM_PER_POINT
    x0, y0, x1, y1 = (float(each) * unit for each in page.mediabox)
    page.contents_coalesce()
    reader = _Reader(unit=unit, corner=(x0, y0), fonts={}, forms={})
    _read(reader, page.Contents, page.Resources)
    return ReadPage(
        size=(x1 - x0, y1 - y0),
        lines=tuple(reader.lines),
        words=tuple(reader.words),
        clip=reader.clip,
    )


def _read(reader: _Reader, stream: Any, resources: Any) -> None:
    """Read a stream of operators with its own fonts and drawings (ISO 32000-1, 7.8.3)."""
    around = reader.fonts, reader.forms
    reader.fonts, reader.forms = _fonts(resources), _forms(resources)
    for row, name, numbers, operator in _INSTRUCTION.findall(stream.read_bytes()):
        _ACTS[operator](reader, row or name or numbers)
    reader.fonts, reader.forms = around


def _fonts(resources: Any) -> dict[bytes, bytes]:
    """Return the tables of what the codes of each font mean (ISO 32000-1, 9.10.3: ToUnicode)."""
    fonts = resources.get("/Font", {})
    return {name[1:].encode(): font.ToUnicode.read_bytes() for name, font in fonts.items()}


def _forms(resources: Any) -> dict[bytes, Any]:
    """Return the drawings that a stream may show (form XObjects, ISO 32000-1, 8.10)."""
    forms = resources.get("/XObject", {}).items()
    return {name[1:].encode(): form for name, form in forms if form.get("/Subtype") == "/Form"}


@lru_cache(maxsize=64)
def _meanings(table: bytes) -> dict[int, str]:
    rows = table[table.find(b"beginbfchar") :]
    return {
        int(code, 16): bytes.fromhex(text.decode()).decode("utf-16-be")
        for code, text in _CODE.findall(rows)
    }


@dataclass(slots=True)
class _Reader:
    """A page being read, operator by operator (ISO 32000-1, 8.2 and 9.4)."""

    unit: float
    corner: Point
    fonts: dict[bytes, bytes]
    forms: dict[bytes, Any]
    matrix: Matrix = _IDENTITY
    width: float = 1.0
    ink: str = "#000000"
    fill: str = "#000000"
    kept: list[tuple[Matrix, float, str, str]] = field(default_factory=list)
    vertices: list[Vertex] = field(default_factory=list)
    path: list[Contour] = field(default_factory=list)
    boxes: list[Box] = field(default_factory=list)
    lines: list[Line] = field(default_factory=list)
    words: list[Lettering] = field(default_factory=list)
    clip: Box | None = None
    font: bytes = b""
    text: str = ""
    at: Point = (0.0, 0.0)

    def spot(self, x: float, y: float) -> Point:
        """Return a point of the stream in mm on the page."""
        a, b, c, d, e, f = self.matrix
        return (
            (a * x + c * y + e) * self.unit - self.corner[0],
            (b * x + d * y + f) * self.unit - self.corner[1],
        )

    def end_part(self, *, closed: bool) -> None:
        """Put the part of the path that was drawn so far with the others."""
        if len(self.vertices) > 1:
            if closed and dist(self.vertices[0][:2], self.vertices[-1][:2]) < _STRAY / 100:
                self.vertices.pop()
            self.path.append(Contour(tuple(self.vertices), closed=closed))
        self.vertices = []


def _numbers(operands: bytes) -> Iterator[float]:
    return map(float, operands.split())


def _matrix(reader: _Reader, operands: bytes) -> None:
    a, b, c, d, e, f = _numbers(operands)
    p, q, r, s, t, u = reader.matrix
    reader.matrix = (
        *(a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s),
        *(e * p + f * r + t, e * q + f * s + u),
    )


def _keep(reader: _Reader, _: bytes) -> None:
    reader.kept.append((reader.matrix, reader.width, reader.ink, reader.fill))


def _bring_back(reader: _Reader, _: bytes) -> None:
    reader.matrix, reader.width, reader.ink, reader.fill = reader.kept.pop()


def _width(reader: _Reader, operands: bytes) -> None:
    reader.width = _wide(operands, hypot(*reader.matrix[:2]) * reader.unit)


def _ink(reader: _Reader, operands: bytes) -> None:
    reader.ink = _colour(operands)


def _fill(reader: _Reader, operands: bytes) -> None:
    reader.fill = _colour(operands)


@lru_cache(maxsize=256)
def _wide(operands: bytes, scale: float) -> float:
    return rounded(float(operands) * scale, 2)


@lru_cache(maxsize=256)
def _colour(operands: bytes) -> str:
    return "#" + bytes(int(rounded(each * 255, 0)) for each in _numbers(operands)).hex()


def _move(reader: _Reader, operands: bytes) -> None:
    reader.end_part(closed=False)
    _line(reader, operands)


def _line(reader: _Reader, operands: bytes) -> None:
    x, y = _numbers(operands)
    reader.vertices.append((*reader.spot(x, y), 0.0))


def _curve(reader: _Reader, operands: bytes) -> None:
    a, b, c, d, e, f = _numbers(operands)
    end = reader.spot(e, f)
    x, y, _ = reader.vertices[-1]
    bulge = curve_bulge((x, y), reader.spot(a, b), reader.spot(c, d), end)
    reader.vertices[-1] = (x, y, bulge)
    reader.vertices.append((*end, 0.0))


def curve_bulge(start: Point, first: Point, second: Point, end: Point) -> float:
    """Return the bulge of the arc that a cubic stands for, endless where it stands for none.

    An arc that turns by a has handles of 4/3 tan(a/4) radii along its tangents.
    """
    dx, dy = end[0] - start[0], end[1] - start[1]
    chord = hypot(dx, dy)
    if not chord:
        return inf
    # The middle of the curve stands off the chord by 3/8 of what both handles do.
    off = (dy * (first[0] - start[0]) - dx * (first[1] - start[1])) / chord
    off += (dy * (second[0] - start[0]) - dx * (second[1] - start[1])) / chord
    bulge = 2 * (3 / 8 * off) / chord
    if abs(bulge) < 1e-12:
        return inf
    turn = 4 * atan(bulge)
    reach = 4 / 3 * tan(turn / 4) * chord * (1 + bulge * bulge) / (4 * bulge)
    ux, uy = dx / chord * reach, dy / chord * reach
    c, s = cos(turn / 2), sin(turn / 2)
    away = (start[0] + c * ux + s * uy, start[1] + c * uy - s * ux)
    back = (end[0] - c * ux + s * uy, end[1] - c * uy - s * ux)
    return bulge if max(dist(away, first), dist(back, second)) < _STRAY else inf


def _close(reader: _Reader, _: bytes) -> None:
    reader.end_part(closed=True)


def _rectangle(reader: _Reader, operands: bytes) -> None:
    x, y, wide, high = _numbers(operands)
    reader.boxes.append((*reader.spot(x, y), *reader.spot(x + wide, y + high)))


def _paint(reader: _Reader, *, lined: bool, filled: bool) -> None:
    reader.end_part(closed=False)
    pen = Pen(reader.width * lined, reader.ink * lined, reader.fill * filled)
    reader.lines += [Line(each, pen, bool(reader.kept)) for each in reader.path]
    reader.path, reader.boxes = [], []


def _stroke(reader: _Reader, _: bytes) -> None:
    _paint(reader, lined=True, filled=False)


def _area(reader: _Reader, _: bytes) -> None:
    _paint(reader, lined=False, filled=True)


def _both(reader: _Reader, _: bytes) -> None:
    _paint(reader, lined=True, filled=True)


def _clip(reader: _Reader, _: bytes) -> None:
    reader.clip = reader.boxes[-1] if reader.boxes else None


def _end_path(reader: _Reader, _: bytes) -> None:
    reader.vertices, reader.path, reader.boxes = [], [], []


def _form(reader: _Reader, name: bytes) -> None:
    form = reader.forms.get(name)
    if form is not None:
        _read(reader, form, form.Resources)


def _begin_text(reader: _Reader, _: bytes) -> None:
    reader.text = ""


def _place_text(reader: _Reader, operands: bytes) -> None:
    *_, x, y = _numbers(operands)
    reader.at = reader.spot(x, y)


def _font(reader: _Reader, operands: bytes) -> None:
    reader.font = operands


def _show(reader: _Reader, operands: bytes) -> None:
    reader.text += _letters(reader.fonts[reader.font], operands)


@lru_cache(maxsize=4096)
def _letters(table: bytes, row: bytes) -> str:
    """Return the letters of a row of codes: the same words stand on many pages."""
    rows = _STRING.findall(row)
    codes = b"".join(bytes.fromhex(digits.decode()) or letters for digits, letters in rows)
    meanings = _meanings(table)
    return "".join(meanings[code] for code in codes)


def _end_text(reader: _Reader, _: bytes) -> None:
    reader.words.append(Lettering(reader.text, reader.at, bool(reader.kept)))


_ACTS = {
    b"q": _keep,
    b"Q": _bring_back,
    b"cm": _matrix,
    b"w": _width,
    b"RG": _ink,
    b"rg": _fill,
    b"m": _move,
    b"l": _line,
    b"c": _curve,
    b"h": _close,
    b"re": _rectangle,
    b"S": _stroke,
    b"f*": _area,
    b"f": _area,
    b"B*": _both,
    b"W": _clip,
    b"n": _end_path,
    b"BT": _begin_text,
    b"Tm": _place_text,
    b"Tf": _font,
    b"TJ": _show,
    b"ET": _end_text,
    b"Do": _form,
}
"""What each operator does."""
