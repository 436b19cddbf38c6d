"""The faces and edges of panels: closed, whole, and curves in few facets."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise
from math import cos, pi, sin, tau

import numpy as np
import pytest

from kerfolio.geometry.facets import thinned
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.geometry.panel_faces import panel_faces
from kerfolio.geometry.solid_faces import SolidFaces
from tests.geometry.panel_cases import board, random_panel, rectangle, reference


def ring(
    radius: float, count: int, x: float = 0.0, y: float = 0.0
) -> tuple[tuple[float, float], ...]:
    turns = (tau * each / count for each in range(count))
    return tuple((x + radius * cos(turn), y + radius * sin(turn)) for turn in turns)


def face_areas(faces: SolidFaces) -> np.ndarray:
    """Vector areas by Newell's formula: half the sum of p x q along the loops."""
    following = np.arange(1, len(faces.points) + 1)
    following[faces.loops[1:] - 1] = faces.loops[:-1]
    halves = np.cross(faces.points, faces.points[following]) / 2
    return np.add.reduceat(halves, faces.loops[faces.faces[:-1]])


def volume(faces: SolidFaces) -> float:
    """By the divergence theorem: a third of the sum of (a point of the face) . (its area)."""
    on = faces.points[faces.loops[faces.faces[:-1]]]
    return float(np.sum(on * face_areas(faces)) / 3)


def test_a_plain_board_has_six_faces_and_twelve_edges() -> None:
    faces = panel_faces(board(rectangle(0, 0, 100, 50)))
    assert len(faces.normals) == 6
    assert len(faces.ends) == 12
    assert volume(faces) == pytest.approx(100 * 50 * 18)
    assert not faces.smooth.any()


def test_a_pocket_adds_a_floor_and_four_walls() -> None:
    pocket = Recess(Flat(rectangle(20, 10, 40, 30)), 6.0)
    faces = panel_faces(board(rectangle(0, 0, 100, 50), recesses=(pocket,)))
    assert len(faces.normals) == 11
    assert len(faces.ends) == 24
    assert volume(faces) == pytest.approx(100 * 50 * 18 - 20 * 20 * 6)


def test_a_groove_that_runs_out_over_the_edge_opens_the_wall() -> None:
    groove = Recess(Flat(rectangle(40, -5, 60, 60)), 6.0)
    faces = panel_faces(board(rectangle(0, 0, 100, 50), recesses=(groove,)))
    assert volume(faces) == pytest.approx(100 * 50 * 18 - 20 * 50 * 6)
    levels = Counter(np.round(faces.points[:, 2], 6).tolist())
    assert set(levels) == {0.0, 12.0, 18.0}


@pytest.mark.parametrize("seed", range(60))
def test_faces_close_and_hold_the_panels_volume(seed: int) -> None:
    """Against the solids library; every edge is passed once each way by its two faces."""
    panel = random_panel(np.random.default_rng(seed))
    faces = panel_faces(panel)
    assert volume(faces) == pytest.approx(reference(panel).volume(), rel=1e-4)
    areas = face_areas(faces)
    assert areas.sum(axis=0) == pytest.approx([0.0, 0.0, 0.0], abs=1e-3)
    units = areas / np.linalg.norm(areas, axis=1)[:, None]
    assert units == pytest.approx(faces.normals, abs=1e-6)
    one, other = faces.sides.T
    assert (one != other).all()
    middles = faces.ends.mean(axis=1)
    for side in (one, other):
        start = faces.points[faces.loops[faces.faces[side]]]
        off = np.einsum("ij,ij->i", middles - start, faces.normals[side])
        assert np.abs(off).max() < 1e-6


def test_a_circle_keeps_few_facets_and_all_of_them_smooth() -> None:
    panel = Panel(shape=Flat(ring(40, 360), (ring(3, 90),)), thickness=18.0)
    faces = panel_faces(panel)
    walls = len(faces.normals) - 2
    assert 32 <= walls <= 90
    assert faces.smooth.sum() == walls
    assert volume(faces) == pytest.approx(pi * (40**2 - 3**2) * 18, rel=0.01)


def test_thinning_keeps_corners_and_stays_near() -> None:
    curve = [(50 * sin(t), 50 - 50 * cos(t)) for t in np.linspace(0, pi / 2, 60)]
    shape = [(-200.0, 0.0), *curve, (50.0, 200.0), (-200.0, 200.0)]
    kept = thinned(shape)
    assert set(kept) <= set(shape)
    assert {(-200.0, 0.0), (50.0, 200.0), (-200.0, 200.0)} <= set(kept)
    assert 10 < len(kept) < 25
    round_part = [(x, y) for x, y in kept if x > 0 and y < 50]
    for (ax, ay), (bx, by) in pairwise(round_part):
        middle = ((ax + bx) / 2, (ay + by) / 2)
        assert 50 - np.hypot(middle[0], middle[1] - 50) < 0.25


def test_a_square_is_not_thinned() -> None:
    assert thinned(rectangle(0, 0, 9, 9)) == list(rectangle(0, 0, 9, 9))
