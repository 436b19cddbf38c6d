"""Seen solids as strokes: tinted faces, contours thick and creases thin."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Sequence
from itertools import pairwise
from math import dist

from kerfolio.drawing.face import HIDDEN
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.vocabulary import Ink, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.hidden_lines import Seen, SeenLine
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.seen_areas import SeenArea
from kerfolio.geometry.view import View

APART = 0.12
"""Lines nearer together than this on paper, mm, would look like one heavy line."""
_LEAST = 0.25
"""Strokes shorter than this on paper, mm, are specks and left out."""

WIDTHS, SMALL_WIDTHS = (0.35, 0.18), (0.25, 0.13)
"""Contours and creases, mm, and those of pictures smaller than 1 to 8 (ISO 128 series, memory)."""
_SMALL = 1 / 8

STANDING = (Ink.FACE_LIGHT, Ink.FACE_MID, Ink.FACE_DARK)
NEW = (Ink.NEW_LIGHT, Ink.NEW_MID, Ink.NEW_DARK)
TOOLS = (Ink.PAPER, Ink.WASTE, Ink.FAINT)


def solid_strokes(
    seen: Seen, seat: PaperSeat, new: Collection[int], tools: Collection[int] = ()
) -> tuple[Stroke, ...]:
    """Return the strokes of a seen scene, back to front.

    ``new`` solids are in the accent, ``tools`` in greys, the rest look like wood.
    """
    creases = [each for each in seen.lines if not each.contour]
    contours = [each for each in seen.lines if each.contour]
    return (
        *(_area(each, seat, _tones(each.solid, new, tools)) for each in seen.areas),
        *_engraved(seen, seat, new),
        *_lines(creases, seat, new),
        *_lines(contours, seat, new),
    )


def _engraved(seen: Seen, seat: PaperSeat, new: Collection[int]) -> Iterator[Stroke]:
    width = (WIDTHS if seat.scale >= _SMALL else SMALL_WIDTHS)[1]
    for run in seen.engraved:
        if _length(run.points) * seat.scale < _LEAST:
            continue
        ink = Ink.NEW_LINE if run.solid in new else Ink.SOFT
        dash = HIDDEN if run.away else ()
        yield Stroke(contour=seat.path(run.points), ink=ink, width=width, dash=dash)


def tints(view: View) -> tuple[int, int, int]:
    """Return how dark faces along x, y and z are: 0 light, 1 mid, 2 dark.

    The light comes from above and from the left of the eye; what is seen from below is in shade.
    """
    right, eye = view.right, view.to_viewer
    x_looks_left = (right[0] if eye[0] > 0 else -right[0]) < 0
    left, other, level = (0, 1, 2) if view.from_below else (1, 2, 0)
    return (left, other, level) if x_looks_left else (other, left, level)


def _tones(solid: int, new: Collection[int], tools: Collection[int]) -> tuple[Ink, Ink, Ink]:
    if solid in tools:
        return TOOLS
    return NEW if solid in new else STANDING


def _area(area: SeenArea, seat: PaperSeat, tones: tuple[Ink, Ink, Ink]) -> Stroke:
    ink = tones[tints(seat.view)[area.axis]]
    outer, *holes = on_paper(area.shape, seat)
    return Stroke(contour=outer, holes=tuple(holes), width=None, fill=ink)


def on_paper(shape: Flat, seat: PaperSeat) -> list[Contour]:
    """Return the rings of a seen area on paper, the outer one first."""
    return [seat.path((*ring, ring[0])) for ring in (shape.outer, *shape.openings)]


def _length(points: Sequence[Point]) -> float:
    return math.fsum(dist(a, b) for a, b in pairwise(points))


def _lines(lines: list[SeenLine], seat: PaperSeat, new: Collection[int]) -> Iterator[Stroke]:
    contour, crease = WIDTHS if seat.scale >= _SMALL else SMALL_WIDTHS
    for each in sorted(lines, key=lambda line: line.solid in new):
        if _length(each.points) * seat.scale < _LEAST:
            continue
        yield Stroke(
            contour=seat.path(each.points),
            ink=Ink.NEW_LINE if each.solid in new else Ink.INK,
            width=contour if each.contour else crease,
        )
