"""The faces of the house and how wide a text runs in them, pair kerning included."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from functools import cache
from importlib import resources
from itertools import pairwise
from pathlib import Path
from typing import Any

from fontTools.ttLib import TTFont

from kerfolio.basis.figured import Figure, Figured
from kerfolio.basis.style import Rule, told_as
from kerfolio.drawing.vocabulary import Ink
from kerfolio.geometry.letters import as_printed, sans_file

MM_PER_POINT = 25.4 / 72
"""The point of PDF and of desktop type: 1/72 in."""


class Face(StrEnum):
    """A cut of a family: serif for reading, sans for labels and tables."""

    SERIF = "SourceSerifPro-Regular"
    SERIF_STRONG = "SourceSerifPro-Semibold"
    SANS = "SourceSansPro-Regular"
    SANS_STRONG = "SourceSansPro-Semibold"


_PACKAGES = {"SourceSerifPro": "font_source_serif_pro", "SourceSansPro": "font_source_sans_pro"}
_FALLBACK = Face.SANS  # it has the wider range of letters and signs
_MISSING = "?"


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """How text is set: ``points`` its size, ``tracking`` extra space a letter in 1/1000 em."""

    face: Face = Face.SERIF
    points: float = 10.0
    ink: Ink = Ink.INK
    tracking: float = 0.0

    @property
    def em(self) -> float:
        """The size in mm."""
        return self.points * MM_PER_POINT


@dataclass(frozen=True, slots=True)
class _Metrics:
    glyphs: dict[int, str]
    advances: dict[str, int]
    pairs: tuple[Any, ...]
    units: int


def font_file(face: Face) -> Path:
    """Return the TrueType file of a face, from the package that carries it."""
    if face is Face.SANS:
        return sans_file()
    package = _PACKAGES[face.value.split("-", maxsplit=1)[0]]
    return Path(str(resources.files(package).joinpath("files", f"{face.value}.ttf")))


@cache
def _metrics(face: Face) -> _Metrics:
    font = TTFont(font_file(face), lazy=True)
    advances = {name: advance for name, (advance, _) in font["hmtx"].metrics.items()}
    return _Metrics(
        font.getBestCmap(), advances, tuple(_pair_tables(font)), font["head"].unitsPerEm
    )


def _pair_tables(font: TTFont) -> Iterator[Any]:
    """Yield the pair tables behind the font's ``kern`` feature (OpenType GPOS, lookup type 2)."""
    table = font["GPOS"].table
    wanted = {
        index
        for record in table.FeatureList.FeatureRecord
        if record.FeatureTag == "kern"
        for index in record.Feature.LookupListIndex
    }
    for index in sorted(wanted):
        lookup = table.LookupList.Lookup[index]
        if lookup.LookupType == 2:
            yield from lookup.SubTable


def _advance(value: Any) -> int:
    return getattr(value, "XAdvance", 0) or 0 if value is not None else 0


def _pair_value(table: Any, left: str, right: str) -> int | None:
    """Return the adjustment of one table, or None when it says nothing of the pair."""
    if left not in table.Coverage.glyphs:
        return None
    if table.Format == 2:
        row = table.Class1Record[table.ClassDef1.classDefs.get(left, 0)]
        return _advance(row.Class2Record[table.ClassDef2.classDefs.get(right, 0)].Value1)
    records = table.PairSet[table.Coverage.glyphs.index(left)].PairValueRecord
    for record in records:
        if record.SecondGlyph == right:
            return _advance(record.Value1)
    return None


@cache
def kern(face: Face, left: str, right: str) -> float:
    """Return the space between two characters in 1/1000 em, negative to draw them together.

    The first table of the font that covers the pair decides (OpenType, GPOS pair adjustment).
    """
    metrics = _metrics(face)
    first, second = metrics.glyphs.get(ord(left)), metrics.glyphs.get(ord(right))
    if first is None or second is None:
        return 0.0
    for table in metrics.pairs:
        value = _pair_value(table, first, second)
        if value is not None:
            return value * 1000 / metrics.units
    return 0.0


@cache
def advance(face: Face, character: str) -> float:
    """Return how far a character carries the pen, in 1/1000 em."""
    metrics = _metrics(face)
    name = metrics.glyphs.get(ord(" " if character == "\N{NO-BREAK SPACE}" else character))
    return metrics.advances[name] * 1000 / metrics.units if name else 0.0


def _has(face: Face, character: str) -> bool:
    return character == "\N{NO-BREAK SPACE}" or ord(character) in _metrics(face).glyphs


@cache
def in_faces(face: Face, text: str) -> tuple[tuple[Face, str], ...]:
    """Split a text by the face that has its letters: the one asked for, else the sans.

    What the sans cannot print becomes a question mark, so that nothing vanishes unseen; proving
    has told of it.
    """
    parts: list[tuple[Face, str]] = []
    for used, shown in (_shown(face, letter) for letter in text):
        if parts and parts[-1][0] is used:
            parts[-1] = (used, parts[-1][1] + shown)
        elif shown:
            parts.append((used, shown))
    return tuple(parts)


@cache
def _shown(face: Face, letter: str) -> tuple[Face, str]:
    """Return what is set for a letter, and the face that has it."""
    printed = as_printed(letter)
    shown = letter if printed != "" and _has(face, letter) else printed
    if shown is None:
        return _FALLBACK, _MISSING
    return (face if all(_has(face, each) for each in shown) else _FALLBACK), shown


def kerns(face: Face, text: str) -> list[float]:
    """Return the kerning after each character in 1/1000 em; the last has none."""
    return [kern(face, left, right) for left, right in pairwise(text)] + [0.0]


@cache
def _thousandths(face: Face, text: str) -> float:
    return math.fsum(
        math.fsum(advance(used, character) for character in part) + math.fsum(kerns(used, part))
        for used, part in in_faces(face, text)
    )


def width_of(text: str, style: Style) -> float:
    """Return the width of a text in mm.

    Its figures are not kerned, all digits are as wide, and a blank before them keeps the room of
    one: what is told anew in as many signs is as wide.
    """
    if isinstance(text, Figured):
        return math.fsum(_part_width(each, style) for each in text.parts)
    letters = sum(len(part) for _, part in in_faces(style.face, text))
    return (_thousandths(style.face, text) + style.tracking * letters) / 1000 * style.em


def _part_width(part: str | Figure, style: Style) -> float:
    if isinstance(part, str):
        return width_of(part, style)
    told = told_as(part.value, part.style)
    if part.style.rule is Rule.PADDED:
        told = told.replace(" ", "0")
    return math.fsum(width_of(each, style) for each in told)
