"""Surfaces of panels against shapely's areas and manifold3d's solids."""

from __future__ import annotations

import math
from collections import Counter
from itertools import chain

import manifold3d
import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.geometry.panel_mesh import Mesh, panel_mesh, volume_and_centre


def box(x0: float, y0: float, x1: float, y1: float) -> Flat:
    return Flat(((x0, y0), (x1, y0), (x1, y1), (x0, y1)))


def disc(x: float, y: float, r: float, count: int = 120) -> Flat:
    turns = [2 * math.pi * each / count for each in range(count)]
    return Flat(tuple((x + r * math.cos(a), y + r * math.sin(a)) for a in turns))


def polygon(flat: Flat) -> shapely.Polygon:
    return shapely.Polygon(flat.outer, flat.openings)


PLATE = Flat(box(0, 0, 200, 100).outer, (box(20, 20, 60, 40).outer[::-1], disc(150, 50, 12).outer))
POCKETED = Panel(
    shape=PLATE,
    thickness=18.0,
    recesses=(
        Recess(box(70, 20, 110, 80), 6.0),
        Recess(box(90, 60, 130, 120), 9.0),  # overlaps the first and runs out over the edge
        Recess(box(110, 20, 130, 40), 6.0),  # touches the first
        Recess(disc(150, 50, 20), 4.0),  # a counterbore around the hole
    ),
)


def loose_sides(mesh: Mesh) -> list[tuple[int, int]]:
    """Return directed edges that are not met by as many the other way: holes of the surface."""
    sides = Counter(side for a, b, c in mesh.triangles for side in ((a, b), (b, c), (c, a)))
    return [side for side, count in sides.items() if count != sides[side[1], side[0]]]


def solid(panel: Panel) -> manifold3d.Manifold:
    """Return the panel built by manifold3d from its own extrusions and differences."""

    def block(flat: Flat, height: float) -> manifold3d.Manifold:
        rings = [np.array(each) for each in (flat.outer, *flat.openings)]
        section = manifold3d.CrossSection(rings, manifold3d.FillRule.EvenOdd)
        return manifold3d.Manifold.extrude(section, height)

    made = block(panel.shape, panel.thickness)
    for each in panel.recesses:
        made -= block(each.shape, each.depth + 1).translate((0, 0, panel.thickness - each.depth))
    return made


def read_by_manifold(mesh: Mesh) -> manifold3d.Manifold:
    points = np.array(mesh.points, dtype=np.float32)
    return manifold3d.Manifold(manifold3d.Mesh(points, np.array(mesh.triangles, dtype=np.uint32)))


def test_a_plain_board_is_a_box() -> None:
    mesh = panel_mesh(Panel(shape=box(0, 0, 300, 200), thickness=18.0))
    assert len(mesh.points) == 8
    assert len(mesh.triangles) == 12
    assert len(mesh.edges) == 12
    assert loose_sides(mesh) == []
    volume, centre = volume_and_centre(mesh)
    assert volume == pytest.approx(300 * 200 * 18)
    assert centre == pytest.approx((150, 100, 9))


def test_openings_and_recesses_come_out_as_manifold3d_cuts_them() -> None:
    exact = panel_mesh(POCKETED)
    assert loose_sides(exact) == []
    volume, _ = volume_and_centre(exact)
    assert volume == pytest.approx(solid(POCKETED).volume(), rel=1e-6)
    assert volume < polygon(PLATE).area * 18
    seen = read_by_manifold(exact)
    assert seen.status() == manifold3d.Error.NoError
    assert seen.volume() == pytest.approx(volume, rel=1e-6)
    assert seen.genus() == solid(POCKETED).genus() == 2


def test_the_show_face_looks_up_and_the_recess_has_its_floor() -> None:
    mesh = panel_mesh(POCKETED)
    area_at: Counter[float] = Counter()
    for a, b, c in mesh.triangles:
        (ax, ay, az), (bx, by, bz), (cx, cy, cz) = (mesh.points[each] for each in (a, b, c))
        if az == bz == cz:
            area_at[az] += ((bx - ax) * (cy - ay) - (cx - ax) * (by - ay)) / 2
    floor = polygon(box(90, 60, 130, 100)).area
    assert area_at[9.0] == pytest.approx(floor)
    whole = polygon(PLATE).area
    assert area_at[0.0] == pytest.approx(-whole, rel=1e-4)
    assert area_at[18.0] + area_at[12.0] + area_at[14.0] == pytest.approx(whole - floor, rel=1e-4)


def test_curves_are_not_inked_across() -> None:
    """A hole of 2 mm diameter in chords that stray by 0.05 mm has 10 of them."""
    hole = disc(20, 20, 1.0, 10)
    mesh = panel_mesh(Panel(shape=Flat(box(0, 0, 40, 40).outer, (hole.outer,)), thickness=6.0))
    uprights = [e for e in mesh.edges if mesh.points[e[0]][2] != mesh.points[e[1]][2]]
    assert len(uprights) == 4
    assert len(mesh.edges) == 4 + 2 * (4 + 10)


def test_corners_are_inked_and_seams_of_the_triangles_are_not() -> None:
    shape = Flat(((0, 0), (100, 0), (100, 60), (60, 60), (60, 20), (0, 20)))
    mesh = panel_mesh(Panel(shape=shape, thickness=12.0))
    assert len(mesh.edges) == 6 * 3


def test_a_recess_through_the_panel_is_an_opening() -> None:
    cut = Panel(shape=PLATE, thickness=12.0, recesses=(Recess(box(100, 30, 120, 70), 12.0),))
    opening = Flat(PLATE.outer, (*PLATE.openings, box(100, 30, 120, 70).outer))
    assert panel_mesh(cut) == panel_mesh(Panel(shape=opening, thickness=12.0))


def test_the_order_in_which_recesses_are_stated_does_not_matter() -> None:
    turned = Panel(shape=PLATE, thickness=18.0, recesses=POCKETED.recesses[::-1])
    assert panel_mesh(turned) == panel_mesh(POCKETED)


inside = st.integers(-20, 120).map(float)
size = st.integers(1, 60).map(float)
depth = st.sampled_from([2.0, 3.0, 5.0, 9.0])
rectangles = st.tuples(inside, inside, size, size).map(
    lambda r: box(r[0], r[1], r[0] + r[2], r[1] + r[3])
)
discs = st.tuples(inside, inside, st.integers(2, 25)).map(lambda d: disc(d[0], d[1], d[2], 40))


@settings(deadline=None)
@given(st.lists(st.tuples(st.one_of(rectangles, discs), depth), max_size=5))
def test_any_recesses_leave_a_closed_surface_of_the_right_volume(
    cuts: list[tuple[Flat, float]],
) -> None:
    """Overlapping, touching and overrunning recesses, on whole mm so that edges coincide often."""
    panel = Panel(
        shape=box(0, 0, 100, 100),
        thickness=9.5,
        recesses=tuple(Recess(shape, depth) for shape, depth in cuts),
    )
    mesh = panel_mesh(panel)
    assert loose_sides(mesh) == []
    left = polygon(panel.shape)
    expected = left.area * 9.5
    for level in sorted({depth for _, depth in cuts}):
        below = max((d for _, d in cuts if d < level), default=0.0)
        deep = shapely.union_all([polygon(flat) for flat, d in cuts if d >= level])
        expected -= shapely.intersection(left, deep).area * (level - below)
    volume, _ = volume_and_centre(mesh)
    assert volume == pytest.approx(expected, rel=1e-5)
    assert set(chain.from_iterable(mesh.triangles)) == set(range(len(mesh.points)))
