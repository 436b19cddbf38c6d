"""Clamp spots, measured with shapely: no spot comes near a piece, all lie along an edge."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon, box

from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.geometry.transform import moved, turned
from kerfolio.layouts.clamp_spots import (
    DEPTHS,
    EDGES,
    LEAST_LONG,
    ClampSpot,
    clamp_spots,
    clear_of_pieces,
    free_spots,
)
from tests.plans import RACK, proved, small_layout, small_settled

SHEET = (2440.0, 1220.0)


def solid(shape: Region) -> Polygon:
    return Polygon(points(shape.outer, 0.0005))


def boxed(spot: ClampSpot) -> Polygon:
    return box(*spot.box)


def plate(x: float, y: float, wide: float, high: float, turn: float = 0.0) -> Region:
    return moved(turned(region(rectangle(0, 0, wide, high)), turn), x, y)


def of_edge(spots: tuple[ClampSpot, ...], edge: str) -> list[ClampSpot]:
    return [each for each in spots if each.edge == edge]


def test_an_empty_sheet_is_held_along_every_edge_but_at_its_datum() -> None:
    spots = free_spots(SHEET, (), 14.0)
    assert [each.edge for each in spots] == list(EDGES)
    bottom, top, left, right = spots
    assert bottom.box == (40.0, 0.0, 2440.0, 60.0)
    assert top.box == (0.0, 1160.0, 2440.0, 1220.0)
    assert left.box == pytest.approx((0.0, 74.0, 60.0, 1146.0), abs=0.1)
    assert right.along == pytest.approx((74.0, 1146.0), abs=0.1)


def test_a_piece_in_the_corner_is_kept_clear_of() -> None:
    # 500 mm from 10 mm on, and 14 mm clear: the lower edge is free from 524 mm on.
    spots = free_spots(SHEET, (plate(10, 10, 500, 300),), 14.0)
    assert of_edge(spots, "bottom")[0].along == pytest.approx((524, 2440), abs=0.1)
    assert of_edge(spots, "left")[0].along == pytest.approx((324, 1146), abs=0.1)


def test_a_sheet_full_to_its_margin_has_none() -> None:
    assert free_spots(SHEET, (plate(10, 10, 2420, 1200),), 14.0) == ()


def test_a_shallow_strip_is_taken_where_no_deep_one_is_free() -> None:
    spots = free_spots(SHEET, (plate(10, 50, 2420, 1160),), 14.0)
    assert {each.edge for each in spots} == {"bottom"}
    assert [each.depth for each in spots] == [30.0]


def test_a_window_in_a_piece_is_no_place_to_clamp() -> None:
    frame = region(rectangle(0, 0, 2440, 1220), (rectangle(5, 5, 2435, 1215),))
    assert free_spots(SHEET, (frame,), 0.0) == ()


PIECES = st.lists(
    st.tuples(
        st.floats(0, 2200),
        st.floats(0, 1000),
        st.floats(20, 900),
        st.floats(20, 600),
        st.floats(0, 360),
        st.booleans(),
    ),
    max_size=8,
)


@given(pieces=PIECES, clear=st.floats(0, 40), small=st.booleans())
@settings(max_examples=60, deadline=None)
def test_no_spot_comes_near_a_piece_or_another_spot(
    pieces: list[tuple[float, float, float, float, float, bool]], clear: float, small: bool
) -> None:
    size = (300.0, 45.0) if small else SHEET
    shapes = [
        region(circle((x, y), wide)) if is_round else plate(x, y, wide, high, turn)
        for x, y, wide, high, turn, is_round in pieces
    ]
    spots = free_spots(size, shapes, clear)
    sheet, solids = box(0, 0, *size), [solid(each) for each in shapes]
    for spot in spots:
        assert sheet.covers(boxed(spot))
        start, end = spot.along
        assert end - start >= LEAST_LONG
        assert min(abs(spot.depth - depth) for depth in DEPTHS) < 1e-6
        assert boxed(spot).distance(box(0, 0, 1, 1)) >= 39 - 1e-6 or min(size) < 40
        for each in solids:
            assert boxed(spot).distance(each) >= clear - 0.002
    for one, other in combinations(spots, 2):
        assert boxed(one).intersection(boxed(other)).area < 1e-6
    for edge in EDGES:
        assert len(of_edge(spots, edge)) <= 2


def test_spots_of_a_plan_keep_the_widest_cutter_and_the_gap() -> None:
    settled = small_settled()
    # 6 mm for the corners' cutter, a gap of 6 + 2 mm by default
    assert clear_of_pieces(settled, "ply") == pytest.approx(14.0)
    (layout,) = small_layout().sheets
    assert of_edge(clamp_spots(settled, layout), "right")
    cuts = "cuts: {big: {sheet: ply, cutter: v-60, feed: 3000 mm/min}}\n"
    found = proved(f"{RACK}relief: {{cutter: compression-6}}\n{cuts}").drawn
    assert found is not None
    assert clear_of_pieces(found, "ply") == pytest.approx(12.0 + 8.0)


def test_a_turned_piece_is_looked_at_as_it_lies() -> None:
    settled = small_settled()
    (layout,) = small_layout().sheets
    spots = clamp_spots(settled, layout)
    parts = {part.name: part for part in settled.parts}
    clear = clear_of_pieces(settled, "ply")
    for each in layout.placements:
        shape = moved(turned(parts[each.part].routed, each.turn), each.x, each.y)
        assert min(boxed(spot).distance(solid(shape)) for spot in spots) >= clear - 0.002
    away = replace(layout, placements=())
    assert len(clamp_spots(settled, away)) == 4


def test_clamps_that_the_plan_states_are_taken_as_stated() -> None:
    text = RACK.replace(
        "fit: 0.1}", "fit: 0.1, clamps: [{edge: right, at: [300, 900], width: 100, depth: 50}]}"
    )
    found = proved(text).drawn
    assert found is not None
    (layout,) = small_layout().sheets
    spots = clamp_spots(found, layout)
    assert [each.edge for each in spots] == ["right", "right"]
    # 300 - 100 / 2 to 300 + 100 / 2 up the right edge of 2440 mm, 50 mm deep
    assert spots[0].box == pytest.approx((2390, 250, 2440, 350))
    assert spots[1].along == pytest.approx((850, 950))
