"""Panels to try, and the same panels as solids of a library for solids (manifold3d).

The solids are made here another way than the product does it: the outline pushed up to the whole
thickness, and each recess cut out of it.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import manifold3d
import numpy as np

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.geometry.panel_solid import Posed, solid_of
from kerfolio.geometry.rigid import Rigid, Vector

Ring = tuple[tuple[float, float], ...]
Random = np.random.Generator


def rectangle(x0: float, y0: float, x1: float, y1: float) -> Ring:
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def board(
    outer: Ring, *openings: Ring, thickness: float = 18.0, recesses: tuple[Recess, ...] = ()
) -> Panel:
    return Panel(shape=Flat(outer, openings), thickness=thickness, recesses=recesses)


def posed(
    panel: Panel,
    origin: Vector = (0.0, 0.0, 0.0),
    x: Vector = (1.0, 0.0, 0.0),
    y: Vector = (0.0, 1.0, 0.0),
) -> Posed:
    z = np.cross(x, y)
    return Posed(solid_of(panel), Rigid(origin, x, y, (float(z[0]), float(z[1]), float(z[2]))))


def reference(panel: Panel) -> Any:
    """Return the panel as a solid of manifold3d, made without the product."""
    solid = _cross_section(panel.shape).extrude(panel.thickness)
    for each in panel.recesses:
        cutter = _cross_section(each.shape).extrude(each.depth + 1)
        solid -= cutter.translate((0.0, 0.0, panel.thickness - each.depth))
    return solid


def put(solid: Any, pose: Rigid) -> Any:
    """Return a solid of manifold3d in its place."""
    return solid.transform(np.array([pose.x, pose.y, pose.z, pose.origin]).T)


def reference_sweep(panel: Panel, by: Vector) -> list[Any]:
    """Return what a panel sweeps, moved in its own frame, as overlapping solids of manifold3d.

    Cut into triangular prisms at each depth; each prism sweeps the hull of itself and its copy.
    """
    heights = sorted({0.0, panel.thickness, *(panel.thickness - r.depth for r in panel.recesses)})
    hulls = []
    for low, high in pairwise(heights):
        area = _cross_section(panel.shape)
        for each in panel.recesses:
            if panel.thickness - each.depth <= low + 1e-9:
                area -= _cross_section(each.shape)
        rings = area.to_polygons()
        points = np.vstack(rings)
        for corners in manifold3d.triangulate(rings):
            flat = points[corners]
            prism = np.vstack([np.column_stack([flat, np.full(3, z)]) for z in (low, high)])
            hulls.append(manifold3d.Manifold.hull_points(np.vstack([prism, prism + np.array(by)])))
    return hulls


def joined(solids: list[Any]) -> Any:
    """Return the union of solids of manifold3d."""
    return manifold3d.Manifold.batch_boolean(solids, manifold3d.OpType.Add)


def _cross_section(flat: Flat) -> Any:
    rings = [np.array(flat.outer), *(np.array(each) for each in flat.openings)]
    return manifold3d.CrossSection(rings, manifold3d.FillRule.EvenOdd)


def random_panel(rng: Random) -> Panel:
    """Return a notched board, or a star with deep corners; some with openings or pockets."""
    outer = _notched(rng) if rng.random() < 0.5 else _star(rng)
    openings = (_small(rng, 12),) if rng.random() < 0.5 else ()
    count = int(rng.integers(0, 3))
    recesses = tuple(Recess(Flat(_small(rng, 90)), float(rng.uniform(2, 9))) for _ in range(count))
    return board(outer, *openings, thickness=float(rng.uniform(10, 30)), recesses=recesses)


def _star(rng: Random) -> Ring:
    count = int(rng.integers(5, 14))
    angles = (np.arange(count) + rng.uniform(0, 0.9, count)) / count * 2 * np.pi
    radii = rng.uniform(0.35, 1, count) * rng.uniform(80, 300)
    return tuple(
        (float(r * np.cos(a)), float(r * np.sin(a))) for r, a in zip(radii, angles, strict=True)
    )


def _notched(rng: Random) -> Ring:
    wide, high = rng.uniform(60, 300, 2)
    left, right = sorted(rng.uniform(-0.9 * wide, 0.9 * wide, 2))
    floor, slant = float(rng.uniform(0.3, 0.9) * high), float(rng.uniform(-5, 5))
    corners = ((-wide, -high), (wide, -high), (wide, high), (right, high), (right + slant, floor))
    return tuple(
        (float(x), float(y)) for x, y in (*corners, (left, floor), (left, high), (-wide, high))
    )


def _small(rng: Random, most: float) -> Ring:
    (x, y), (w, h) = rng.uniform(-most / 3, most / 3, 2), rng.uniform(5, most, 2)
    return rectangle(float(x - w / 2), float(y - h / 2), float(x + w / 2), float(y + h / 2))


def random_frame(rng: Random, origin: Vector = (0.0, 0.0, 0.0)) -> Rigid:
    """Return a frame of any orientation."""
    axes, _ = np.linalg.qr(rng.normal(size=(3, 3)))
    x, y = axes[:, 0], axes[:, 1]
    return Rigid(origin, *(_vector(each) for each in (x, y, np.cross(x, y))))


def turned(angle: float) -> Rigid:
    """Return a turn about z, radians."""
    c, s = float(np.cos(angle)), float(np.sin(angle))
    return Rigid(x=(c, s, 0.0), y=(-s, c, 0.0))


UPRIGHT = Rigid(x=(1.0, 0.0, 0.0), y=(0.0, 0.0, 1.0), z=(0.0, -1.0, 0.0))
OVER = Rigid(x=(1.0, 0.0, 0.0), y=(0.0, -1.0, 0.0), z=(0.0, 0.0, -1.0))


def random_pair(rng: Random, kind: str, apart: float) -> tuple[Rigid, Rigid]:
    """Return places of two panels of any orientation: ``crossed``, ``parallel`` or ``oblique``."""
    first = random_frame(rng, _vector(rng.uniform(-500, 500, 3)))
    shift = rng.uniform(-apart, apart, 3)
    if kind == "parallel":
        shift[2] = rng.uniform(-15, 15)
    turn, spin = turned(rng.uniform(0, 6.28)), turned(rng.uniform(0, 6.28))
    between = {
        "crossed": turn.after(UPRIGHT).after(spin),
        "parallel": turn.after(OVER if rng.random() < 0.5 else Rigid()),
        "oblique": random_frame(rng),
    }[kind]
    return first, first.after(between.moved(_vector(shift)))


def _vector(given: Any) -> Vector:
    return float(given[0]), float(given[1]), float(given[2])
