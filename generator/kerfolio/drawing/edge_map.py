"""The map of a part's edges: each treatment with a colour, a line of its own and a letter."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist

from kerfolio.basis.cutting_lengths import tool_text
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.extent import apart
from kerfolio.drawing.lettering import CAPITAL, Box, label_box, text_width, wrapped
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.arc import Edge, heading
from kerfolio.geometry.chain import chained
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.edge_runs import path_of
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import length, point_in
from kerfolio.model.edge_treatment import (
    BAND,
    EASE,
    EDGE_KINDS,
    MASK,
    ROUND_OVER,
    SQUARE,
    EdgeKind,
)
from kerfolio.settling.settled import SettledEdge, SettledPart


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """How the edges of a treatment are drawn: its ink, its dashes and its width, mm."""

    ink: Ink
    dash: tuple[float, ...]
    width: float


LINES: Mapping[EdgeKind, Line] = {
    SQUARE: Line(ink=Ink.SOFT, dash=(0.3, 1.8), width=0.8),
    EASE: Line(ink=Ink.ENGRAVE, dash=(2.0, 2.0), width=1.0),
    ROUND_OVER: Line(ink=Ink.OPENING, dash=(), width=1.3),
    BAND: Line(ink=Ink.POCKET, dash=(6.0, 2.4), width=1.5),
    MASK: Line(ink=Ink.HOLE, dash=(3.4, 1.9, 0.3, 1.9), width=1.0),
}
"""Told apart by dashes and letters too: no one needs to see the colours."""

_OFF = 1.1
"""How far a letter lies off its edge, mm."""
_ROOM = 5.0
"""The shortest stretch, mm on paper, that gets a letter of its own."""
_EVERY = 70.0
"""A longer stretch gets a letter about every so many mm."""
_SHARES = (0.5, 0.35, 0.65, 0.2, 0.8)
"""Where in its stretch a letter may stand, the best first."""
_SAMPLE = 13.0
_LEADING = 1.55
_PROBE = 0.3


def treatment_words(edge: SettledEdge, reader: Reader) -> str:
    """Return what is done to an edge: ``rounded over 3.0 mm (1/8 in), both faces``."""
    if edge.kind is ROUND_OVER:
        faces = say(reader, f"drawing-faces-{edge.faces}")
        return say(reader, "drawing-rounded", radius=tool_text(edge.radius, reader), faces=faces)
    if edge.kind is BAND:
        thick = f", {tool_text(edge.thickness, reader)}" if edge.thickness else ""
        return say(reader, "drawing-banded", band=f"{edge.of}{thick}")
    return say(reader, f"drawing-edge-{edge.kind.name}")


def letters(part: SettledPart, reader: Reader) -> dict[str, tuple[str, EdgeKind]]:
    """Return a letter for each treatment of a part, by its words; two of a kind are numbered."""
    in_order = sorted(part.edges, key=lambda each: EDGE_KINDS.index(each.kind))
    kinds = {treatment_words(edge, reader): edge.kind for edge in in_order}
    found: dict[str, tuple[str, EdgeKind]] = {}
    for words, kind in kinds.items():
        alike = [each for each, other in kinds.items() if other is kind]
        number = str(alike.index(words) + 1) if len(alike) > 1 else ""
        found[words] = (f"{kind.letter}{number}", kind)
    return found


def edge_strokes(part: SettledPart, seat: Seat) -> tuple[Stroke, ...]:
    """Return the lines along a part's edges that something is done to."""
    return tuple(
        Stroke(
            contour=path,
            ink=LINES[edge.kind].ink,
            width=LINES[edge.kind].width,
            dash=LINES[edge.kind].dash,
        )
        for edge in part.edges
        for path in _paths(edge, seat)
    )


def edge_letters(
    part: SettledPart, seat: Seat, height: float, reader: Reader, taken: Sequence[Box] = ()
) -> tuple[Label, ...]:
    """Return the letters beside these lines, none over another or what is ``taken``.

    They stand outside the outline, those of openings around them, in the wood. A treatment none of
    whose stretches has room for its letter is told by its line alone.
    """
    named, outer = letters(part, reader), seat.region(part.routed).outer
    made: list[Label] = []
    for edge in part.edges:
        letter, _ = named[treatment_words(edge, reader)]
        for path in _paths(edge, seat):
            for places in _places(path):
                beside = path if edge.openings else outer
                near = (_letter(letter, each, beside, height) for each in places)
                boxes = (*taken, *map(label_box, made))
                label = next((each for each in near if _is_free(each, boxes)), None)
                made += [label] if label else []
    return tuple(made)


def _is_free(label: Label, taken: Iterable[Box]) -> bool:
    return all(apart(label_box(label), each) for each in taken)


def edge_key(
    part: SettledPart, at: Point, height: float, wide: float, reader: Reader
) -> tuple[Item, ...]:
    """Return what the lines mean, a row each, down from ``at``; long words go on below.

    ``wide`` is the room in mm.
    """
    items: list[Item] = []
    x, y = at
    for words, (letter, kind) in letters(part, reader).items():
        line, middle = LINES[kind], y - height * CAPITAL / 2
        sample = Contour(((x, middle, 0.0), (x + _SAMPLE, middle, 0.0)), closed=False)
        items.append(Stroke(contour=sample, ink=line.ink, width=line.width, dash=line.dash))
        base = y - height * CAPITAL
        items.append(Label(text=letter, at=(x + _SAMPLE + 1.5, base), height=height, strong=True))
        indent = _SAMPLE + 1.5 + 2.2 * height
        for row in wrapped(words, height, max(wide - indent, 20.0)):
            items.append(
                Label(text=row, at=(x + indent, y - height * CAPITAL), height=height, ink=Ink.SOFT)
            )
            y -= height * _LEADING
    return tuple(items)


def _paths(edge: SettledEdge, seat: Seat) -> tuple[Contour, ...]:
    return tuple(
        each.contour for each in chained([seat.contour(path_of(run)) for run in edge.runs])
    )


def _places(path: Contour) -> list[list[Edge]]:
    """Return for each letter of a path where it may stand, as short lines, its best place first."""
    size = length(path)
    count = max(1, round(size / _EVERY)) if size >= _ROOM else 0
    return [
        [_line_at(path, (number + share) * size / count) for share in _SHARES]
        for number in range(count)
    ]


def _line_at(path: Contour, along: float) -> Edge:
    """Return the straight line, from a place so many mm along a path, to the end of its chord."""
    corners = points(path)
    corners = [*corners, corners[0]] if path.closed else corners
    walked = 0.0
    for start, end in pairwise(corners):
        far = dist(start, end)
        if far and walked + far > along:
            share = (along - walked) / far
            x, y = start[0] + share * (end[0] - start[0]), start[1] + share * (end[1] - start[1])
            return Edge((x, y), end)
        walked += far
    return Edge(corners[-2], corners[-1])


def _outward(edge: Edge, shape: Contour) -> Point:
    """Return the unit vector off an edge that leads out of a shape."""
    (x, y), (ux, uy) = edge.start, heading(edge)
    side = (uy, -ux)
    within = point_in(shape, (x + _PROBE * side[0], y + _PROBE * side[1]))
    return (-side[0], -side[1]) if within else side


def _letter(text: str, place: Edge, shape: Contour, height: float) -> Label:
    """Return a letter beside a place on the line of a shape, outside it."""
    (x, y), (ux, uy) = place.start, _outward(place, shape)
    reach = abs(ux) * text_width(text, height, strong=True) / 2 + abs(uy) * height * CAPITAL / 2
    off = _OFF + reach
    at = (x + off * ux, y + off * uy - height * CAPITAL / 2)
    return Label(text=text, at=at, height=height, anchor=Anchor.MIDDLE, strong=True)
