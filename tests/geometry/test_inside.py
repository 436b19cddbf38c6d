"""Which paths lie in which: told by hand for squares and discs."""

from __future__ import annotations

import math

from kerfolio.geometry.contour import Contour
from kerfolio.geometry.inside import (
    enclosing,
    innermost_round,
    point_inside,
    reaching_into,
    surrounded,
)
from kerfolio.geometry.measure import point_in
from kerfolio.geometry.shapes import circle, rectangle

BIG, SMALL = rectangle(0, 0, 100, 100), rectangle(20, 20, 40, 40)
BESIDE, ACROSS = rectangle(100, 0, 120, 20), rectangle(90, 50, 110, 60)
DISC = circle((50, 50), 100)
IN_THE_CORNER = rectangle(1, 1, 9, 9)
LINE = Contour(((90, 90, 0.0), (140, 140, 0.0)), closed=False)


def test_what_only_touches_does_not_reach_in() -> None:
    paths = (SMALL, BESIDE, ACROSS, LINE, BIG)
    assert reaching_into(BIG, paths) == (True, False, True, True, True)


def test_boxes_alone_do_not_decide() -> None:
    """The disc's box holds the little square in its corner; the disc, of radius 50, does not."""
    assert math.dist((50, 50), (9, 9)) > 50
    assert reaching_into(DISC, (IN_THE_CORNER, SMALL)) == (False, True)
    assert surrounded((IN_THE_CORNER, SMALL), (DISC,)) == (False, True)


def test_nothing_surrounds_itself() -> None:
    paths = (SMALL, BIG, ACROSS, LINE)
    assert surrounded(paths, (BIG, SMALL, ACROSS)) == (True, False, False, False)
    assert surrounded(paths, ()) == (False,) * 4


def test_the_innermost_is_the_smallest_round_a_point() -> None:
    assert innermost_round((30, 30), (BIG, SMALL, BESIDE)) == 1
    assert innermost_round((80, 30), (BIG, SMALL, BESIDE)) == 0
    assert innermost_round((300, 30), (BIG, SMALL, BESIDE)) is None


def test_one_that_holds_all_the_others_encloses_them() -> None:
    assert enclosing((SMALL, BIG, DISC)) == 1
    assert enclosing((SMALL, BIG, ACROSS)) is None
    assert enclosing((LINE,)) is None


def test_a_point_inside_lies_inside_a_horseshoe() -> None:
    shoe = Contour(
        ((0, 0, 0.0), (30, 0, 0.0), (30, 1, 0.0), (1, 1, 0.0), (1, 30, 0.0), (0, 30, 0.0))
    )
    assert point_in(shoe, point_inside(shoe))


def test_a_flat_path_encloses_nothing() -> None:
    flat = Contour(((0, 0, 0.0), (50, 0, 0.0)))
    assert reaching_into(flat, (SMALL,)) == (False,)
    assert surrounded((SMALL,), (flat,)) == (False,)
