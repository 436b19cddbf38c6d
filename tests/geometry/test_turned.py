"""Solids with an axis: closed, of the right volume, every edge between two faces."""

from __future__ import annotations

from collections import Counter
from math import pi, sin

import numpy as np
import pytest

from kerfolio.geometry.facing import PosedTurned, extent_of, solids_of
from kerfolio.geometry.panel_mesh import volume_and_centre
from kerfolio.geometry.rigid import Rigid
from kerfolio.geometry.turned import (
    ROUND,
    Frustum,
    Thread,
    Turned,
    Well,
    turned_faces,
    turned_mesh,
)
from kerfolio.geometry.view import View

PIN = Turned((Frustum(0.0, 20.0, 4.0, 4.0),))
CONE = Turned((Frustum(0.0, 9.0, 4.0, 0.0),))
RIM = Turned((Frustum(0.0, 2.0, 6.0, 6.0),), Well(0.0, 2.0, 3.0))
BOLT = Turned(
    (Frustum(-6.0, 0.0, 5.0, 5.0), Frustum(0.0, 20.0, 3.0, 3.0)),
    Well(-6.0, -3.0, 2.5, 6),
    Thread(5.0, 20.0, 3.0, 1.0),
)
NUT = Turned((Frustum(0.0, 5.0, 6.0, 6.0, 6),), Well(0.0, 5.0, 3.0))
ALL = (PIN, CONE, RIM, BOLT, NUT)


def polygon(radius: float, sides: int = ROUND) -> float:
    """The area of a regular polygon by its corners' radius (geometry)."""
    return sides / 2 * radius**2 * sin(2 * pi / sides)


@pytest.mark.parametrize(
    ("solid", "volume"),
    [
        (PIN, polygon(4) * 20),
        (CONE, polygon(4) * 9 / 3),
        (RIM, (polygon(6) - polygon(3)) * 2),
        (BOLT, polygon(5) * 6 + polygon(3) * 20 - polygon(2.5, 6) * 3),
        (NUT, (polygon(6, 6) - polygon(3)) * 5),
    ],
)
def test_the_surface_is_closed_and_encloses_what_it_should(solid: Turned, volume: float) -> None:
    mesh = turned_mesh(solid)
    found, _ = volume_and_centre(mesh)
    assert found == pytest.approx(volume, rel=1e-6)
    sides = Counter(pair for a, b, c in mesh.triangles for pair in ((a, b), (b, c), (c, a)))
    assert all(sides[b, a] == count == 1 for (a, b), count in sides.items())


@pytest.mark.parametrize("solid", ALL)
def test_every_side_of_a_face_is_an_edge_to_another(solid: Turned) -> None:
    faces = turned_faces(solid)
    between = faces.sides[:, 0] != faces.sides[:, 1]
    assert 2 * between.sum() == len(faces.points)
    normals = np.linalg.norm(faces.normals, axis=1)
    assert normals == pytest.approx(1.0)


@pytest.mark.parametrize("solid", ALL)
def test_faces_look_outward(solid: Turned) -> None:
    """By the divergence theorem over plane faces: the sum of area vectors of a closed body is 0."""
    faces = turned_faces(solid)
    total = np.zeros(3)
    for number, normal in enumerate(faces.normals):
        area = np.zeros(3)
        for which in range(faces.faces[number], faces.faces[number + 1]):
            spots = faces.points[faces.loops[which] : faces.loops[which + 1]]
            area += (
                sum(np.cross(a, b) for a, b in zip(spots, np.roll(spots, -1, 0), strict=True)) / 2
            )
        assert np.dot(area, normal) == pytest.approx(np.linalg.norm(area))
        total += area
    assert np.linalg.norm(total) < 1e-6


def test_a_view_square_to_the_axis_shows_the_true_width() -> None:
    lying = Rigid(x=(0.0, 0.0, 1.0), y=(0.0, 1.0, 0.0), z=(-1.0, 0.0, 0.0))
    left, bottom, right, top = extent_of(solids_of([PosedTurned(BOLT, lying)]), View(0.0, 0.0))
    assert right - left == pytest.approx(26.0)
    assert top - bottom == pytest.approx(10.0)


def test_thread_and_cross_hole_are_lines_on_the_surface() -> None:
    faces = turned_faces(BOLT)
    marks = faces.sides[:, 0] == faces.sides[:, 1]
    ends = faces.ends[marks]
    assert len(ends) == 15 * ROUND
    rise = ends[:, 1, 2] - ends[:, 0, 2]
    assert rise == pytest.approx(1.0 / ROUND)
    assert np.hypot(ends[..., 0], ends[..., 1]) == pytest.approx(3.0)
    nut = turned_faces(Turned((Frustum(-7.0, 7.0, 5.0, 5.0),), across=3.0))
    rims = nut.ends[nut.sides[:, 0] == nut.sides[:, 1]]
    assert np.hypot(rims[..., 1], rims[..., 2]) == pytest.approx(3.0, abs=0.02)
    assert {float(np.sign(x)) for x in rims[..., 0].ravel()} == {1.0, -1.0}
