"""Shapes laid beside one another: apart, in the room they have, the same each time."""

from __future__ import annotations

import random

import pytest
import shapely
from shapely import affinity

from kerfolio.geometry.arranged import arranged
from kerfolio.geometry.contour import Point

BAR = [(0.0, 0.0), (100.0, 30.0), (100.0, 40.0), (0.0, 10.0)]
"""A bar that rises as what lies along x does in most pictures."""


def laid(shapes: list[list[list[Point]]], room: Point, apart: float) -> list[shapely.Geometry]:
    moves = arranged(shapes, room, apart)
    return [
        affinity.translate(
            shapely.union_all([shapely.MultiPoint(p).convex_hull for p in each]), *by
        )
        for each, by in zip(shapes, moves, strict=True)
    ]


def size(shapes: list[shapely.Geometry]) -> tuple[float, float]:
    left, bottom, right, top = shapely.union_all(shapes).bounds
    return right - left, top - bottom


def test_slanting_bars_lie_close_under_one_another() -> None:
    """Boxes one under another would take 40 + 5 + 40 mm; bars 10 mm high need 5 mm and a little
    more across their slant: 10.44 + 5 mm and the rise of 30."""
    found = laid([[BAR], [BAR]], (120.0, 60.0), 5.0)
    wide, high = size(found)
    assert found[0].distance(found[1]) == pytest.approx(5.0, abs=0.2)
    assert high < 60
    assert min(120 / wide, 60 / high) > 0.99


def test_what_is_high_stands_beside() -> None:
    pole = [(0.0, 0.0), (8.0, 0.0), (8.0, 60.0), (0.0, 60.0)]
    wide, high = size(laid([[pole], [pole], [pole]], (120.0, 60.0), 4.0))
    assert high == pytest.approx(60, abs=0.5)
    assert wide == pytest.approx(3 * 8 + 2 * 4, abs=0.5)


@pytest.mark.parametrize("seed", range(6))
def test_nothing_stands_nearer_than_asked(seed: int) -> None:
    chance = random.Random(seed)
    shapes = [
        [[(chance.uniform(0, 80), chance.uniform(0, 30)) for _ in range(6)]] for _ in range(4)
    ]
    found = laid(shapes, (120.0, 56.0), 6.0)
    for number, one in enumerate(found):
        for other in found[number + 1 :]:
            assert one.distance(other) == pytest.approx(6.0, abs=0.15) or one.distance(other) > 6
    assert arranged(shapes, (120.0, 56.0), 6.0) == arranged(shapes, (120.0, 56.0), 6.0)


def test_one_alone_stays() -> None:
    assert arranged([[BAR]], (120.0, 60.0), 5.0) == [(0.0, 0.0)]
