"""A drawing in parallel projection with hidden lines removed, exact, of posed panels."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from kerfolio.geometry.contour import Point
from kerfolio.geometry.facing import Facing, FacingEdges, Solids, facing, in_view, within
from kerfolio.geometry.piercing import piercing_lines
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.seen_areas import SeenArea, seen_areas
from kerfolio.geometry.sight import Sight
from kerfolio.geometry.solid_faces import Indices, Numbers
from kerfolio.geometry.strokes import joined, without_doubles
from kerfolio.geometry.view import View

Box = tuple[float, float, float, float]

_LEGIBLE = 12.0
"""Engravings no larger than so many times ``apart`` are left out: on paper, 1.4 mm."""

_STRAY = 0.1
"""Points are left out where the way strays by less than this share of ``apart``."""


@dataclass(frozen=True, slots=True)
class SeenLine:
    """A stroke of a solid's edges: a contour, beyond which it ends, or a crease of its surface.

    A closed stroke repeats its first point.
    """

    solid: int
    contour: bool
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class SeenRun:
    """A stretch of an engraved line; ``away`` where it is on the far face and looked through to."""

    solid: int
    away: bool
    points: tuple[Point, ...]


@dataclass(frozen=True, slots=True)
class Seen:
    """What is seen of a scene, in view coordinates, mm of the world.

    ``extra`` are the seen stretches of lines that were asked about: number, from, to. ``engraved``
    are those of engraved lines.
    """

    lines: tuple[SeenLine, ...]
    areas: tuple[SeenArea, ...]
    extra: tuple[tuple[int, Point, Point], ...] = ()
    engraved: tuple[SeenRun, ...] = ()


def seen(
    solids: Solids,
    view: View,
    *,
    apart: float = 1.0,
    least: float = 0.0,
    first: Sequence[int] = (),
    extra: Sequence[tuple[Vector, Vector]] = (),
    window: Box | None = None,
) -> Seen:
    """Return the seen lines and areas of solids, numbered in order, and of ``extra`` lines.

    Lines nearer together than ``apart`` mm are drawn as one (a contour before a crease, those of
    the solids named ``first`` before others), strokes shorter than ``least`` mm are left out. What
    is engraved on the far face of these is told, too.
    Given a ``window``, a box of the picture plane, what does not reach into it is left out.
    Where solids run through one another their faces' crossing is a crease.
    """
    faces, edges = facing(solids, view)
    if window:
        faces, edges = within(faces, edges, window)
    sight = Sight(faces)
    edges = _with_crossings(faces, edges)
    bounding = ~edges.seam | edges.turns
    number, ends = _seen_parts(sight, edges, np.flatnonzero(bounding))
    frame = _sides(window) if window else np.zeros((0, 2, 2))
    areas = seen_areas(sight, np.concatenate([ends, frame]), apart, _STRAY * apart)
    drawn = ~edges.seam[number]
    lines = _lines(edges, number[drawn], ends[drawn], apart, least, first)
    return Seen(lines, areas, _extra(sight, view, extra), _runs(sight, solids, view, apart, first))


def _sides(box: Box) -> Numbers:
    """Return the sides of a box as segments; they close the areas that reach out of it."""
    left, bottom, right, top = box
    corners = np.array([[left, bottom], [right, bottom], [right, top], [left, top]])
    return np.stack([corners, np.roll(corners, -1, axis=0)], axis=1)


def _runs(
    sight: Sight, solids: Solids, view: View, apart: float, first: Sequence[int]
) -> tuple[SeenRun, ...]:
    """Return the engraved lines that are seen; none of a figure that would look like a speck."""
    solid, away, ends = solids.engraved_towards(view, first)
    if not len(solid):
        return ()
    large = np.zeros(len(solid), dtype=np.bool_)
    for each in np.unique(solid):
        mine = solid == each
        flat = ends[mine][:, :, :2].reshape(-1, 2)
        large[mine] = np.ptp(flat, axis=0).max() >= _LEGIBLE * apart
    solid, away, ends = solid[large], away[large], ends[large]
    number, spans = sight.seen(ends)
    left = _stretches(ends, number, spans)
    strokes = joined(left, 2 * solid[number] + away[number], 0.0, _STRAY * apart)
    return tuple(SeenRun(which // 2, which % 2 == 1, tuple(points)) for which, points in strokes)


def _extra(
    sight: Sight, view: View, lines: Sequence[tuple[Vector, Vector]]
) -> tuple[tuple[int, Point, Point], ...]:
    if not lines:
        return ()
    ends = in_view(np.array(lines), view)
    number, spans = sight.seen(ends)
    return tuple(
        (which, (a, b), (c, d))
        for which, ((a, b), (c, d)) in zip(
            number.tolist(), _stretches(ends, number, spans).tolist(), strict=True
        )
    )


def _with_crossings(faces: Facing, edges: FacingEdges) -> FacingEdges:
    """Return the edges and, as creases, the lines in which solids run through one another."""
    solid, ends = piercing_lines(faces)
    no = np.zeros(len(solid), dtype=np.bool_)
    return FacingEdges(
        solid=np.concatenate([edges.solid, solid]),
        ends=np.concatenate([edges.ends, ends]),
        contour=np.concatenate([edges.contour, no]),
        seam=np.concatenate([edges.seam, no]),
        turns=np.concatenate([edges.turns, no]),
    )


def _seen_parts(sight: Sight, edges: FacingEdges, which: Indices) -> tuple[Indices, Numbers]:
    number, spans = sight.seen(edges.ends[which])
    number = which[number]
    return number, _stretches(edges.ends, number, spans)


def _stretches(ends: Numbers, number: Indices, spans: Numbers) -> Numbers:
    flat = ends[number, :, :2]
    along = flat[:, 1] - flat[:, 0]
    start, end = (flat[:, 0] + along * spans[:, side : side + 1] for side in (0, 1))
    return np.stack([start, end], axis=1)


def _lines(
    edges: FacingEdges,
    number: Indices,
    ends: Numbers,
    apart: float,
    least: float,
    first: Sequence[int],
) -> tuple[SeenLine, ...]:
    solid, crease = edges.solid[number], ~edges.contour[number]
    later = ~np.isin(solid, np.array(first, dtype=np.int64))
    kept, left = without_doubles(ends, 2 * crease + later, apart)
    group = 2 * solid[kept] + crease[kept]
    strokes = joined(left, group, least, _STRAY * apart)
    return tuple(SeenLine(which // 2, which % 2 == 0, tuple(points)) for which, points in strokes)
