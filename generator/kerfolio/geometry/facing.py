"""Posed solids as one view sees them: the faces that look towards the eye, and their edges."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypedDict

import numpy as np
from numpy.typing import NDArray

from kerfolio.geometry.contour import Point
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.panel_faces import panel_faces
from kerfolio.geometry.plated import Plated, plated_faces
from kerfolio.geometry.recess_rims import recess_rims
from kerfolio.geometry.rigid import Rigid
from kerfolio.geometry.solid_faces import Indices, Numbers, SolidFaces
from kerfolio.geometry.turned import Turned, turned_faces
from kerfolio.geometry.view import View

Flags = NDArray[np.bool_]
Run = tuple[Point, ...]

_LEAST_FACING = 2e-3
"""Faces seen more nearly edge-on than this (cosine) show no area; 18 mm of one are 0.04 mm."""

_LEAST_LENGTH = 1e-6

_LEAST_SHOWN = 0.15
"""What is engraved on a face seen more nearly edge-on than this (cosine) cannot be read."""


@dataclass(frozen=True, slots=True)
class PosedPanel:
    """A panel in its place."""

    panel: Panel
    pose: Rigid


@dataclass(frozen=True, slots=True)
class PosedTurned:
    """A turned solid in its place."""

    turned: Turned
    pose: Rigid


@dataclass(frozen=True, slots=True)
class PosedPlated:
    """A solid of plate in its place."""

    plated: Plated
    pose: Rigid


Posed = PosedPanel | PosedTurned | PosedPlated


def _faces(posed: Posed) -> SolidFaces:
    if isinstance(posed, PosedPanel):
        return panel_faces(posed.panel)
    return (
        turned_faces(posed.turned) if isinstance(posed, PosedTurned) else plated_faces(posed.plated)
    )


@dataclass(frozen=True, slots=True, eq=False)
class Solids:
    """All faces and edges of posed solids in the world, mm, ready for any view.

    ``walls`` (n, 2, 3) are the boundary segments of the faces in a row, those of face j from
    ``first[j]``. ``axis[j]`` is the world axis (0, 1, 2) it looks along most nearly. ``ends``
    (m, 2, 3) are the edges, ``sides`` (m, 2) the faces that meet there, ``smooth`` whether these
    are facets of one curve. ``solid`` and ``edge_solid`` say whose each is, in the given order.
    ``engraved`` (k, 2, 3) are the pieces of engraved lines, ``engraved_solid`` whose they are,
    ``sunk`` and ``sunk_solid`` the same of the rims of recesses. ``shows`` is the way each solid's
    show face looks, ``thick`` how thick it is.
    """

    walls: Numbers
    first: Indices
    normals: Numbers
    axis: Indices
    solid: Indices
    ends: Numbers
    sides: Indices
    smooth: Flags
    edge_solid: Indices
    engraved: Numbers
    engraved_solid: Indices
    sunk: Numbers
    sunk_solid: Indices
    shows: Numbers
    thick: Numbers

    def engraved_towards(
        self, view: View, through: Sequence[int] = ()
    ) -> tuple[Indices, Flags, Numbers]:
        """Return the engraved lines of the faces that a view sees, in its coordinates.

        Of the solids ``through`` which one looks, also those of the face turned away and the rims
        of its recesses, as they lie on the near face. They come as (whose each is, whether it is
        turned away, from and to).
        """
        way = in_view(self.shows, view)[:, 2]
        seen = way > _LEAST_SHOWN
        away = (way < -_LEAST_SHOWN) & np.isin(np.arange(len(way)), np.array([*through], dtype=int))
        some, sunk = (seen | away)[self.engraved_solid], away[self.sunk_solid]
        solid = np.concatenate([self.engraved_solid[some], self.sunk_solid[sunk]])
        lines = np.concatenate([self.engraved[some], self.sunk[sunk]])
        turned = away[solid]
        behind = (self.shows * self.thick[:, np.newaxis])[solid][:, np.newaxis, :]
        near = lines - np.where(turned[:, np.newaxis, np.newaxis], behind, 0.0)
        return solid, turned, in_view(near, view)


@dataclass(frozen=True, slots=True, eq=False)
class Facing:
    """The front faces of a scene in view coordinates (right, up, to the eye), mm.

    Face j of solid ``solid[j]`` lies in the plane depth = a u + b v + c with ``planes[j]`` =
    (a, b, c); its boundary is the segments ``walls[first[j]:first[j + 1]]``, each (u, v, u, v);
    ``boxes[j]`` is (left, bottom, right, top).
    """

    solid: Indices
    planes: Numbers
    walls: Numbers
    first: Indices
    boxes: Numbers
    axis: Indices


@dataclass(frozen=True, slots=True, eq=False)
class FacingEdges:
    """Edges with at least one front face, in view coordinates: ``ends`` (m, 2, 3), mm.

    ``contour`` where one face alone is seen; ``seam`` where both are facets of one curve;
    ``turns`` where the two faces look along different world axes.
    """

    solid: Indices
    ends: Numbers
    contour: Flags
    seam: Flags
    turns: Flags


def solids_of(posed: Sequence[Posed]) -> Solids:
    """Return the faces and edges of posed solids; raises ValueError when there is none."""
    made = [_faces(each) for each in posed]
    walls, normals, ends = [], [], []
    for each, faces in zip(posed, made, strict=True):
        axes = np.array([each.pose.x, each.pose.y, each.pose.z])
        origin = np.array(each.pose.origin)
        spots = faces.points @ axes + origin
        following = np.arange(1, len(spots) + 1)
        following[faces.loops[1:] - 1] = faces.loops[:-1]
        walls.append(np.stack([spots, spots[following]], axis=1))
        normals.append(faces.normals @ axes)
        ends.append(faces.ends @ axes + origin)
    counts = np.concatenate([np.diff(each.loops[each.faces]) for each in made])
    owned = [len(each.normals) for each in made]
    before: Indices = np.repeat(np.cumsum(owned) - owned, [len(each.ends) for each in made])
    every = np.concatenate(normals)
    return Solids(
        walls=np.concatenate(walls),
        first=np.concatenate(([0], np.cumsum(counts))),
        normals=every,
        axis=_nearest_axis(every),
        solid=np.repeat(np.arange(len(made)), owned),
        ends=np.concatenate(ends),
        sides=np.concatenate([each.sides for each in made]) + before[:, np.newaxis],
        smooth=np.concatenate([each.smooth for each in made]),
        edge_solid=np.repeat(np.arange(len(made)), [len(each.ends) for each in made]),
        **_engraved(posed),
    )


class _Engraved(TypedDict):
    engraved: Numbers
    engraved_solid: Indices
    sunk: Numbers
    sunk_solid: Indices
    shows: Numbers
    thick: Numbers


def _engraved(posed: Sequence[Posed]) -> _Engraved:
    """Return the pieces of all lines on show faces in the world, and the ways these look."""
    panels = [each.panel if isinstance(each, PosedPanel) else None for each in posed]
    engraved, engraved_solid = _on_faces(posed, [each.engraved if each else () for each in panels])
    sunk, sunk_solid = _on_faces(posed, [recess_rims(each) if each else () for each in panels])
    return {
        "engraved": engraved,
        "engraved_solid": engraved_solid,
        "sunk": sunk,
        "sunk_solid": sunk_solid,
        "shows": np.array([each.pose.z for each in posed]),
        "thick": np.array([panel.thickness if panel else 0.0 for panel in panels]),
    }


def _on_faces(posed: Sequence[Posed], runs: Sequence[Sequence[Run]]) -> tuple[Numbers, Indices]:
    """Return the pieces of lines on the show faces of solids in the world, and whose each is."""
    ends, owned = [np.zeros((0, 2, 3))], []
    for each, mine in zip(posed, runs, strict=True):
        flat = [np.stack([run[:-1], run[1:]], axis=1) for run in map(np.array, mine)]
        owned.append(sum(map(len, flat)))
        if flat and isinstance(each, PosedPanel):
            both = np.concatenate(flat)
            high = np.full((*both.shape[:2], 1), each.panel.thickness)
            axes = np.array([each.pose.x, each.pose.y, each.pose.z])
            ends.append(np.concatenate([both, high], axis=2) @ axes + np.array(each.pose.origin))
    return np.concatenate(ends), np.repeat(np.arange(len(posed)), owned)


def _nearest_axis(normals: Numbers) -> Indices:
    """Ties go to the later axis, by a hair, so that rounding does not decide."""
    lean: Indices = np.argmax(np.abs(normals) + np.array([0.0, 1e-6, 2e-6]), axis=1)
    return lean


def in_view(spots: Numbers, view: View) -> Numbers:
    """Return world coordinates (..., 3) as view coordinates: right, up, to the eye."""
    turned: Numbers = spots @ np.array([view.right, view.up, view.to_viewer]).T
    return turned


def extent_of(solids: Solids, view: View) -> tuple[float, float, float, float]:
    """Return the box (left, bottom, right, top) around solids in the picture plane, mm."""
    flat = in_view(solids.walls[:, 0], view)[:, :2]
    left, bottom = flat.min(axis=0).tolist()
    right, top = flat.max(axis=0).tolist()
    return left, bottom, right, top


def spots_of(solids: Solids, view: View) -> list[list[Point]]:
    """Return the corners of each solid in the picture plane, mm."""
    flat = in_view(solids.walls[:, 0], view)[:, :2]
    owner = np.repeat(solids.solid, np.diff(solids.first))
    return [[(float(x), float(y)) for x, y in flat[owner == each]] for each in np.unique(owner)]


def facing(solids: Solids, view: View) -> tuple[Facing, FacingEdges]:
    """Return what of the solids looks towards the eye."""
    normals = in_view(solids.normals, view)
    front = normals[:, 2] > _LEAST_FACING
    return _front_faces(solids, view, normals, front), _front_edges(solids, view, front)


def within(
    faces: Facing, edges: FacingEdges, window: tuple[float, float, float, float]
) -> tuple[Facing, FacingEdges]:
    """Return the faces and edges that reach into a box of the picture plane."""
    left, bottom, right, top = window
    low, high = faces.boxes[:, :2], faces.boxes[:, 2:]
    kept = np.all((low <= (right, top)) & (high >= (left, bottom)), axis=1)
    counts = np.diff(faces.first)
    flat = edges.ends[:, :, :2]
    near = np.all((flat.min(axis=1) <= (right, top)) & (flat.max(axis=1) >= (left, bottom)), axis=1)
    return (
        Facing(
            solid=faces.solid[kept],
            planes=faces.planes[kept],
            walls=faces.walls[np.repeat(kept, counts)],
            first=np.concatenate(([0], np.cumsum(counts[kept]))),
            boxes=faces.boxes[kept],
            axis=faces.axis[kept],
        ),
        FacingEdges(
            solid=edges.solid[near],
            ends=edges.ends[near],
            contour=edges.contour[near],
            seam=edges.seam[near],
            turns=edges.turns[near],
        ),
    )


def _front_faces(solids: Solids, view: View, normals: Numbers, front: Flags) -> Facing:
    counts = np.diff(solids.first)
    walls = in_view(solids.walls[np.repeat(front, counts)], view)
    counts, normals = counts[front], normals[front]
    first = np.concatenate(([0], np.cumsum(counts)))
    a, b = -normals[:, 0] / normals[:, 2], -normals[:, 1] / normals[:, 2]
    on = walls[first[:-1], 0]
    c = on[:, 2] - a * on[:, 0] - b * on[:, 1]
    flat = walls[:, :, :2]
    low = np.minimum.reduceat(flat[:, 0], first[:-1]) if len(counts) else np.zeros((0, 2))
    high = np.maximum.reduceat(flat[:, 0], first[:-1]) if len(counts) else np.zeros((0, 2))
    return Facing(
        solid=solids.solid[front],
        planes=np.stack([a, b, c]).T,
        walls=flat.reshape(-1, 4),
        first=first,
        boxes=np.hstack([low, high]),
        axis=solids.axis[front],
    )


def _front_edges(solids: Solids, view: View, front: Flags) -> FacingEdges:
    one, other = solids.sides.T
    some = np.flatnonzero(front[one] | front[other])
    ends = in_view(solids.ends[some], view)
    flat = ends[:, 1, :2] - ends[:, 0, :2]
    long = np.hypot(flat[:, 0], flat[:, 1]) > _LEAST_LENGTH
    some, ends = some[long], ends[long]
    one, other = one[some], other[some]
    contour = front[one] != front[other]
    return FacingEdges(
        solid=solids.edge_solid[some],
        ends=ends,
        contour=contour,
        seam=solids.smooth[some] & ~contour,
        turns=solids.axis[one] != solids.axis[other],
    )
