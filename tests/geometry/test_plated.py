"""Solids of plate: closed, as heavy as the metal that they are bent from, holes on their sides."""

from __future__ import annotations

from collections import Counter
from math import pi, sin

import pytest

from kerfolio.geometry.panel_mesh import volume_and_centre
from kerfolio.geometry.plated import Plated, PlateHole, plated_faces, plated_mesh

L = ((0.0, 0.0), (40.0, 0.0), (40.0, 2.0), (2.0, 2.0), (2.0, 50.0), (0.0, 50.0))
HOLES = (PlateHole(0, 2, 12.0, 2.25), PlateHole(5, 3, 20.0, 2.25))


@pytest.mark.parametrize("holes", [(), HOLES], ids=["whole", "bored"])
def test_a_bent_plate_weighs_what_its_metal_does(holes: tuple[PlateHole, ...]) -> None:
    """Two legs of 40 and 48 mm by 2 by 20 mm, less the area of polygons with 16 corners."""
    volume, (x, y, z) = volume_and_centre(plated_mesh(Plated(L, 20.0, holes)))
    polygon = 16 / 2 * 2.25**2 * sin(2 * pi / 16)
    assert volume == pytest.approx((40 + 48) * 2 * 20 - len(holes) * polygon * 2, abs=1e-6)
    assert z == pytest.approx(0.0, abs=1e-9)
    if not holes:  # the centre of two rectangles
        assert x == pytest.approx((80 * 20 + 96 * 1) / 176)
        assert y == pytest.approx((80 * 1 + 96 * 26) / 176)


def test_its_surface_is_closed() -> None:
    sides = Counter(
        side
        for a, b, c in plated_mesh(Plated(L, 20.0, HOLES)).triangles
        for side in ((a, b), (b, c), (c, a))
    )
    assert {*sides.values()} == {1}
    assert all((b, a) in sides for a, b in sides)


def test_every_edge_joins_two_faces_and_holes_are_smooth() -> None:
    """18 edges of the bent plate; a hole has two rims and as many seams as it has facets."""
    whole, bored = (plated_faces(Plated(L, 20.0, holes)) for holes in ((), HOLES))
    assert (len(whole.normals), len(whole.ends)) == (8, 18)
    assert (len(bored.normals), len(bored.ends)) == (8 + 2 * 16, 18 + 2 * 3 * 16)
    assert int(bored.smooth.sum()) == 2 * 16
    assert int(whole.smooth.sum()) == 0
