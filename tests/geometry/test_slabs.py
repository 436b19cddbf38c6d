"""Sliding by slabs agrees with shapely's own answer about overlap."""

from __future__ import annotations

import math
import random

import numpy as np
import pytest
import shapely
from shapely import affinity

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.slabs import NO_SLABS, first_free, slabs_of

SQUARE = Flat(((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)))
WINDOW = Flat(
    ((0.0, 0.0), (40.0, 0.0), (40.0, 40.0), (0.0, 40.0)),
    (((5.0, 5.0), (5.0, 35.0), (35.0, 35.0), (35.0, 5.0)),),
)


def solid(flat: Flat) -> shapely.Polygon:
    return shapely.Polygon(flat.outer, flat.openings)


def star(chance: random.Random, points: int) -> Flat:
    """Return a shape with hollows, its box beginning at 0,0."""
    reach = [(chance.uniform(5, 40), 2 * math.pi * step / points) for step in range(points)]
    ring = [(r * math.cos(a), r * math.sin(a)) for r, a in reach]
    x0, y0 = min(x for x, _ in ring), min(y for _, y in ring)
    return Flat(tuple((x - x0, y - y0) for x, y in ring))


def test_a_rectangle_is_one_slab() -> None:
    assert slabs_of(SQUARE).table.T.tolist() == [[0, 10, 0, 0, 10, 10]]


def test_a_window_splits_its_slab() -> None:
    assert slabs_of(WINDOW).table.shape == (6, 4)


@pytest.mark.parametrize("seed", range(12))
def test_slabs_cover_the_shapes_area(seed: int) -> None:
    flat = star(random.Random(seed), 9)
    bottom, top, left0, left1, right0, right1 = slabs_of(flat).table
    area = ((top - bottom) * ((right0 - left0) + (right1 - left1)) / 2).sum()
    assert area == pytest.approx(solid(flat).area, rel=1e-6)


def test_an_empty_sheet_is_free_at_its_left_edge() -> None:
    found, _ = first_free(NO_SLABS, slabs_of(SQUARE), np.array([0.0, 5.0]), 90.0)
    assert found.tolist() == [0.0, 0.0]


def test_a_touch_is_free_and_a_full_row_is_not() -> None:
    taken = slabs_of(SQUARE).joined(slabs_of(SQUARE).moved(20.0, 0.0))
    heights = np.array([0.0, 5.0, 10.0])
    found, _ = first_free(taken, slabs_of(SQUARE), heights, 90.0)
    assert found.tolist() == [10.0, 10.0, 0.0]
    found, _ = first_free(taken, slabs_of(SQUARE), heights, 9.0)
    assert found.tolist() == [math.inf, math.inf, 0.0]


def test_a_window_takes_what_fits_it() -> None:
    found, _ = first_free(slabs_of(WINDOW), slabs_of(SQUARE), np.array([0.0, 5.0, 25.0]), 90.0)
    assert found.tolist() == [40.0, 5.0, 5.0]


@pytest.mark.parametrize("seed", range(20))
def test_the_first_free_place_is_free_and_none_before_it_is(seed: int) -> None:
    chance = random.Random(seed)
    shapes = [(star(chance, chance.randint(4, 11)), chance.uniform(0, 120)) for _ in range(4)]
    taken, lying = NO_SLABS, []
    for flat, x in shapes:
        y = chance.uniform(-20, 20)
        taken = taken.joined(slabs_of(flat).moved(x, y))
        lying.append(affinity.translate(solid(flat), x, y))
    piece, heights = star(chance, 7), np.sort([chance.uniform(-30, 30) for _ in range(5)])
    found, work = first_free(taken, slabs_of(piece), heights, 400.0)
    assert work > 0
    covered = shapely.union_all(lying)
    for x, y in zip(found.tolist(), heights.tolist(), strict=True):
        placed = affinity.translate(solid(piece), x, y)
        assert placed.intersection(covered).area < 1e-3
        for before in np.arange(0.0, x - 0.25, 0.5).tolist():
            earlier = affinity.translate(solid(piece), before, y)
            assert earlier.intersection(covered).area > 0
