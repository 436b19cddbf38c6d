"""Lines of code: as they were typed, on a tinted ground, indents as wide as figures."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.drawing.vocabulary import Ink
from kerfolio.paper.band import Band, Bands, baseline
from kerfolio.paper.type import CODE
from kerfolio.writing.page import Mark, Panel, Passage, Role, Run, Text
from kerfolio.writing.setting import width
from kerfolio.writing.typeface import MM_PER_POINT, advance

_STYLE = replace(CODE, points=8.8)
_LEADING = 12.0 * MM_PER_POINT
_SIDE = 2.6
_EDGE = 1.4
_BLANK = replace(_STYLE, tracking=advance(_STYLE.face, "0") - advance(_STYLE.face, " "))
"""What stands under each other by blanks alone nearly does so in a face without a fixed pitch."""
_SET_IN = 3
_OVERLAP = 0.15  # mm, so that no seam shows between the grounds of two lines
_ATOM = re.compile(r" +|[^ ]+")


def code_lines(lines: Sequence[str], measure: float) -> Bands:
    """Return the lines as bands; a line too long is broken, and what goes on is set in."""
    broken = [
        (part, index > 0) for line in lines for index, part in enumerate(_broken(line, measure))
    ]
    bands = [_band(part, measure, goes_on) for part, goes_on in broken]
    for index in {0, len(bands) - 2} & set(range(len(bands) - 1)):
        bands[index] = replace(bands[index], stick=True)
    edge = Band(height=_EDGE, passages=(_ground(measure, _EDGE),))
    bands[-1] = replace(bands[-1], stick=True)
    return (replace(edge, stick=True), *bands, edge)


def _runs(text: str) -> tuple[Run, ...]:
    return tuple(
        Run(found[0], _BLANK if _sets_in(found) else _STYLE) for found in _ATOM.finditer(text)
    )


def _sets_in(found: re.Match[str]) -> bool:
    return found[0].isspace() and (found.start() == 0 or len(found[0]) > 1)


def _broken(line: str, measure: float) -> Iterator[str]:
    """Yield a line in parts that fit: after a blank where there is one, else between letters."""
    room = measure - 2 * _SIDE
    margin = ""
    while width(_runs(margin + line)) > room:
        fit = _letters(margin + line, room) - len(margin)
        blank = line.rfind(" ", 1, fit + 1)
        cut = blank + 1 if line[:blank].strip() and blank > 0 else max(1, fit)
        yield margin + line[:cut].rstrip()
        line, margin = line[cut:], " " * _SET_IN
    yield margin + line


def _letters(text: str, room: float) -> int:
    """Return how many letters of a text fit."""
    low, high = 0, len(text)
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if width(_runs(text[:middle])) <= room else (low, middle - 1)
    return low


def _band(text: str, measure: float, goes_on: bool) -> Band:
    body = _runs(text)
    marks: tuple[Mark, ...] = (
        Text(x=_SIDE, y=-baseline(body or (Run("", _STYLE),), _LEADING), runs=body),
    )
    passage = Passage(marks=marks, continues=goes_on)
    return Band(height=_LEADING, passages=(_ground(measure, _LEADING), passage))


def _ground(measure: float, height: float) -> Passage:
    panel = Panel(x=0, y=-height, width=measure, height=height + _OVERLAP, ink=Ink.WASTE)
    return Passage(marks=(panel,), role=Role.DECORATION)
