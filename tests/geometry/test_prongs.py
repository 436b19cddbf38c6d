"""What hangs on a shape by a narrow root; sizes follow from the drawn corners."""

from __future__ import annotations

import pytest

from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.prongs import prongs

TABLE = ((0, 0), (60, 0), (60, 200), (340, 200), (340, 0), (400, 0), (400, 300), (0, 300))
SLANTED = ((0, 0), (300, 0), (300, 200), (200, 200), (250, 300), (222, 314), (165, 200), (0, 200))


def shape(*corners: Point) -> Region:
    return Region(Contour(tuple((float(x), float(y), 0.0) for x, y in corners)), ())


def test_feet_hang_on_by_their_width() -> None:
    left, right = prongs(shape(*TABLE), (75.0,))
    assert left.root == pytest.approx((30, 200), abs=0.1)
    assert left.way == pytest.approx((0, -1), abs=1e-6)
    assert (left.width, left.reach) == pytest.approx((60, 200), abs=0.1)
    assert right.root == pytest.approx((370, 200), abs=0.1)


def test_what_is_wider_or_has_two_ends_is_no_prong() -> None:
    assert prongs(shape(*TABLE), (50.0,)) == ()
    web = ((0, 0), (200, 0), (200, 90), (300, 90), (300, 0), (500, 0), (500, 200), (300, 200),
           (300, 110), (200, 110), (200, 200), (0, 200))  # fmt: skip
    assert prongs(shape(*web), (75.0,)) == ()
    assert prongs(shape((0, 0), (300, 0), (300, 40), (0, 40)), (75.0,)) == ()


def test_a_slanted_arm_is_measured_along_its_way() -> None:
    (arm,) = prongs(shape(*SLANTED), (75.0,))
    assert arm.width == pytest.approx(35, abs=0.2)  # from 165 to 200 on the upper edge
    assert arm.way == pytest.approx((0, 1), abs=1e-3)
    assert arm.reach == pytest.approx(114, abs=0.2)


def test_a_shape_no_wider_than_asked_is_looked_at_with_the_next_width() -> None:
    found = prongs(shape(*TABLE), (100.0, 75.0))  # the rail between its feet is 100 wide
    assert found == prongs(shape(*TABLE), (75.0,))
    assert prongs(shape(*TABLE), (400.0,)) == ()
