"""Pieces that overlap a little are parted exactly, and drawn together without overlap."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
import shapely
from shapely import affinity

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.slabs import NO_SLABS, Slabs, box_slab, slabs_of
from kerfolio.layouts.easing import eased, snug
from kerfolio.layouts.pose import Pose
from kerfolio.layouts.room import Room

BOARD = Flat(((0, 0), (100, 0), (100, 50), (0, 50)))
HOOK = Flat(((0, 0), (90, 0), (90, 25), (30, 25), (30, 70), (0, 70)))


def pose_of(flat: Flat) -> Pose:
    x0, y0, x1, y1 = flat.box
    return Pose(turn=0.0, slabs=slabs_of(flat), width=x1 - x0, height=y1 - y0, corner=(x0, y0))


def room_of(width: float, height: float, barred: Slabs = NO_SLABS) -> Room:
    return Room(
        stack=0,
        width=width,
        height=height,
        worth=1.0,
        zones=(),
        barred=barred,
        area=width * height,
    )


def lying(flats: list[Flat], places: np.ndarray) -> list[shapely.Polygon]:
    return [
        affinity.translate(shapely.Polygon(flat.outer), *place)
        for flat, place in zip(flats, places.tolist(), strict=True)
    ]


def shared(solids: list[shapely.Polygon]) -> float:
    return max(a.intersection(b).area for a, b in combinations(solids, 2))


def test_boards_as_wide_as_the_room_are_parted_to_the_hair() -> None:
    # Four boards of 100 mm are a room of 400 mm: only one arrangement in this order is free.
    places = np.array([[3.0, 0.0], [95.0, 0.0], [204.0, 0.0], [298.0, 0.0]])
    result = eased([pose_of(BOARD)] * 4, places, room_of(400.0, 50.0), 10.0)
    assert result.missing == ()
    assert result.places[:, 0].tolist() == pytest.approx([0.0, 100.0, 200.0, 300.0], abs=1e-4)


def test_what_cannot_be_parted_is_said() -> None:
    places = np.array([[0.0, 0.0], [90.0, 0.0]])
    result = eased([pose_of(BOARD)] * 2, places, room_of(190.0, 50.0), 10.0)
    assert [(a, b) for a, b, _ in result.missing] == [(0, 1)]
    assert result.missing[0][2] == pytest.approx(10.0)


def test_hooks_part_into_each_other() -> None:
    flats = [HOOK, HOOK, BOARD]
    places = np.array([[0.0, 0.0], [36.0, 22.0], [4.0, 90.0]])
    result = eased([pose_of(each) for each in flats], places, room_of(200.0, 160.0), 10.0)
    assert result.missing == ()
    assert shared(lying(flats, result.places)) < 1e-3


def test_barred_zones_stay_where_they_are() -> None:
    room = room_of(200.0, 50.0, box_slab(0.0, 0.0, 30.0, 50.0))
    result = eased([pose_of(BOARD)], np.array([[22.0, 0.0]]), room, 10.0)
    assert result.missing == ()
    assert result.places[0, 0] >= 30.0 - 1e-6


def test_pieces_are_drawn_to_the_corner() -> None:
    flats = [BOARD, HOOK]
    places = np.array([[40.0, 120.0], [60.0, 20.0]])
    drawn = snug([pose_of(each) for each in flats], places, room_of(400.0, 200.0), 40.0)
    solids = lying(flats, drawn)
    assert shared(solids) < 1e-3
    assert max(each.bounds[2] for each in solids) == pytest.approx(100.0, abs=1e-4)
    assert min(each.bounds[0] for each in solids) == pytest.approx(0.0, abs=1e-4)
