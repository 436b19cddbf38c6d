"""Patches of surfaces: their hatching lies on them, and where two solids meet is found."""

from __future__ import annotations

import math

import pytest

from kerfolio.geometry.contact import contacts, faces_of
from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.patch import Patch, hatching
from kerfolio.geometry.rigid import Rigid, Vector, between, dot, length
from kerfolio.geometry.view import View

LOOK = View(-32.0, 28.0)
SQUARE: tuple[Vector, ...] = (
    (0.0, 0.0, 5.0),
    (80.0, 0.0, 5.0),
    (80.0, 50.0, 5.0),
    (0.0, 50.0, 5.0),
)
HOLE: tuple[Vector, ...] = (
    (20.0, 10.0, 5.0),
    (20.0, 30.0, 5.0),
    (60.0, 30.0, 5.0),
    (60.0, 10.0, 5.0),
)


def board(wide: float, high: float, thick: float) -> Panel:
    return Panel(shape=Flat(((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))), thickness=thick)


def test_hatching_lies_in_the_plane_within_the_rim_and_off_the_openings() -> None:
    patch = Patch((SQUARE, HOLE), (0.0, 0.0, 1.0))
    lines = hatching(patch, LOOK, 2.0)
    for (ax, ay, az), (bx, by, bz) in lines:
        assert az == pytest.approx(5.0, abs=1e-6) == bz
        for share in (0.001, 0.3, 0.7, 0.999):
            x, y = ax + share * (bx - ax), ay + share * (by - ay)
            assert -1e-6 < x < 80 + 1e-6
            assert -1e-6 < y < 50 + 1e-6
            assert not (20.01 < x < 59.99 and 10.01 < y < 29.99)


def test_hatching_fills_an_area_evenly() -> None:
    """Lines ``apart`` from each other have area / ``apart`` in all (Cavalieri's principle)."""
    patch = Patch((SQUARE, HOLE), (0.0, 0.0, 1.0))
    apart = 0.25
    drawn = math.fsum(
        math.dist(LOOK.spot(a), LOOK.spot(b)) for a, b in hatching(patch, LOOK, apart)
    )
    shown = (80 * 50 - 40 * 20) * math.sin(math.radians(28))
    assert patch.area == pytest.approx(80 * 50 - 40 * 20)
    assert drawn * apart == pytest.approx(shown, rel=0.01)


def test_what_looks_away_has_no_hatching() -> None:
    assert hatching(Patch((SQUARE[::-1],), (0.0, 0.0, -1.0)), LOOK, 2.0) == ()


def test_two_boards_meet_where_one_stands_on_the_other() -> None:
    """A board 40 × 18 mm on end, 12 mm over the rim of another: 28 × 18 mm of both meet."""
    floor = PosedPanel(board(200.0, 100.0, 18.0), Rigid())
    upright = Rigid((172.0, 60.0, 18.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, -1.0, 0.0))
    wall = PosedPanel(board(40.0, 70.0, 18.0), upright)
    ((below, above),) = contacts(faces_of(floor), faces_of(wall), 0.5)
    assert below.area == pytest.approx(28 * 18) == above.area
    assert below.normal == pytest.approx((0.0, 0.0, 1.0))
    assert above.normal == pytest.approx((0.0, 0.0, -1.0))


@pytest.mark.parametrize(("gap", "met"), [(0.0, 1), (0.4, 1), (0.6, 0), (-0.1, 1), (-0.5, 0)])
def test_faces_meet_over_no_more_than_the_play(gap: float, met: int) -> None:
    floor = faces_of(PosedPanel(board(200.0, 100.0, 18.0), Rigid()))
    lid = faces_of(PosedPanel(board(50.0, 50.0, 9.0), Rigid((20.0, 20.0, 18.0 + gap))))
    found = [*contacts(floor, lid, 0.5)]
    assert len(found) == met
    for one, other in found:
        assert dot(between(one.loops[0][0], other.loops[0][0]), one.normal) == pytest.approx(gap)
        assert length(one.normal) == pytest.approx(1.0)
