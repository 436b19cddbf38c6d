"""Frames of features: where they lie and look, worked out on paper for a sheet of 18 mm."""

from __future__ import annotations

from dataclasses import replace
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.assembly.frames import (
    BACK,
    SHOW,
    corner_frames,
    crossed_frame,
    crossing_frame,
    entry_frame,
    lying_frame,
    middle,
    nominal_bottom,
    side_line,
    tab_frame,
    through_frame,
    towards,
    turned_to,
    upward,
)
from kerfolio.geometry.contour import Region
from kerfolio.geometry.rigid import Rigid, cross, dot
from kerfolio.geometry.shapes import circle
from tests.assembly.written import settled, text

T = 18.0


def close(one: Rigid, other: Rigid) -> bool:
    mine = (*one.origin, *one.x, *one.y, *one.z)
    return mine == pytest.approx((*other.origin, *other.x, *other.y, *other.z), abs=1e-12)


def test_a_tab_looks_out_of_its_edge_from_the_middle_of_its_root() -> None:
    made = tab_frame((200.0, 45.0), (1.0, 0.0), T)
    assert close(made, Rigid((200.0, 45.0, 9.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0)))


def test_a_slot_is_entered_from_the_back_upwards_and_from_the_show_face_downwards() -> None:
    back = entry_frame((100.0, 60.0), (0.0, 1.0), BACK, T)
    assert close(
        back, Rigid((100.0, 60.0, 0.0), (0.0, 1.0, 0.0), (-1.0, 0.0, 0.0), (0.0, 0.0, 1.0))
    )
    show = entry_frame((100.0, 60.0), (0.0, 1.0), SHOW, T)
    assert close(
        show, Rigid((100.0, 60.0, 18.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, -1.0))
    )


def test_a_wedge_lies_half_way_through() -> None:
    made = through_frame((100.0, 60.0), (1.0, 0.0), SHOW, T)
    assert made.origin == (100.0, 60.0, 9.0)
    assert made.z == (0.0, 0.0, -1.0)


def test_a_rail_in_a_slot_stands_square_on_the_side() -> None:
    """The rail's left tab goes into the back of a side, and its show face looks to the right.

    On paper: the rail's 0,0 is a root 60 mm up its left edge below the slot at 100, 60; its x
    points away from the side's back (-z), its y up (+y); its show face looks along x.
    """
    root = tab_frame((0.0, 60.0), (-1.0, 0.0), T)
    slot = entry_frame((100.0, 60.0), (0.0, -1.0), BACK, T)
    rail = slot.after(root.inverse)
    assert close(rail, Rigid((91.0, 0.0, 0.0), (0.0, 0.0, -1.0), (0.0, 1.0, 0.0), (1.0, 0.0, 0.0)))


def test_crossing_notches_put_one_board_over_the_other() -> None:
    """A board with a notch 40 deep from below goes over one with a notch 40 deep from above."""
    over = crossing_frame((50.0, 40.0), (0.0, -1.0), T)
    under = crossed_frame((200.0, 40.0), (0.0, 1.0), 1.0, T)
    board = under.after(over.inverse)
    # Its bottom comes to 200, 40, half way through; its top stays up. Its x runs along the lower
    # board's normal, so its show face looks along x cross y = the lower board's -x.
    assert close(
        board, Rigid((209.0, 0.0, -41.0), (0.0, 0.0, 1.0), (0.0, 1.0, 0.0), (-1.0, 0.0, 0.0))
    )


def test_a_corner_with_fingers_closes_two_outer_faces() -> None:
    a = ((300.0, 50.0), (1.0, 0.0), T)
    b = ((0.0, 50.0), (-1.0, 0.0), T)
    first, second = corner_frames(a, b, a_out=True, b_out=True)
    placed = first.after(second.inverse)
    # The second board's outer face is flush with the first one's end, and it runs to the rear.
    assert placed.point((0.0, 50.0, 18.0)) == pytest.approx((300.0, 50.0, 18.0))
    assert placed.x == pytest.approx((0.0, 0.0, -1.0))
    assert placed.z == pytest.approx((1.0, 0.0, 0.0))
    assert placed.y == pytest.approx((0.0, 1.0, 0.0))


@pytest.mark.parametrize(
    ("away", "face", "z", "level"),
    [
        (True, SHOW, (0.0, 0.0, 1.0), 18.0),
        (False, SHOW, (0.0, 0.0, -1.0), 30.0),
        (True, BACK, (0.0, 0.0, -1.0), 0.0),
        (False, BACK, (0.0, 0.0, 1.0), -12.0),
    ],
)
def test_a_board_of_12_lies_on_a_face_of_one_of_18(
    away: bool, face: str, z: tuple[float, float, float], level: float
) -> None:
    lying = lying_frame((0.0, 0.0), (1.0, 0.0), away, 12.0)
    on = entry_frame((70.0, 20.0), (1.0, 0.0), face, T)
    placed = on.after(lying.inverse)
    assert placed.z == pytest.approx(z)
    assert placed.x == pytest.approx((1.0, 0.0, 0.0))
    assert placed.origin == pytest.approx((70.0, 20.0, level))


def test_small_directions() -> None:
    assert upward((0.0, -1.0)) == (-0.0, 1.0)
    assert upward((-1.0, 0.0)) == (1.0, -0.0)
    assert upward((1.0, 0.0)) == (1.0, 0.0)
    assert towards((10.0, 10.0), (13.0, 14.0)) == pytest.approx((0.6, 0.8))
    assert towards((1.0, 1.0), (1.0, 1.0)) == (1.0, 0.0)
    assert turned_to(45.0) == pytest.approx((sqrt(0.5), sqrt(0.5)))
    assert middle([(0.0, 0.0), (4.0, 2.0)]) == (2.0, 1.0)


def test_bottoms_of_notches_meet_where_they_are_stated_and_not_where_the_fit_ends() -> None:
    """Stated 120 deep from the right edge at 240, with 0.15 mm of fit: cut to 119.85, meets 120."""
    divider = next(p for p in settled(text("cupboard")).parts if p.name == "divider")
    notch = next(f for f in divider.features if f.name == "crossing")
    assert notch.at == pytest.approx((119.85, 380.0 - 60.0 - 8.9))
    assert nominal_bottom(notch) == pytest.approx((120.0, 380.0 - 60.0 - 8.9))


def test_the_side_of_a_part_is_where_its_outline_touches_its_box() -> None:
    parts = {p.name: p for p in settled(text("workshop-table")).parts}
    # The bracket: a board of 120 by 120 with its lower left corner cut off from 0, 90 to 120, 0.
    assert side_line(parts["bracket"], "right") == ((120.0, 60.0), (1.0, 0.0), 120.0)
    assert side_line(parts["bracket"], "left") == ((0.0, 105.0), (-1.0, 0.0), 30.0)
    assert side_line(parts["tool-shelf"], "top") == ((600.0, 150.0), (0.0, 1.0), 1200.0)
    assert side_line(parts["tool-shelf"], "bottom") == ((600.0, 0.0), (0.0, -1.0), 1200.0)


def test_a_side_without_a_corner_is_met_in_its_middle() -> None:
    bracket = next(p for p in settled(text("workshop-table")).parts if p.name == "bracket")
    disc = replace(bracket, plain=Region(circle((70.0, 20.0), 60.0)))
    assert side_line(disc, "top") == ((70.0, 50.0), (0.0, 1.0), 0.0)


angles = st.floats(0.0, 360.0)
spots = st.tuples(st.floats(-500.0, 500.0), st.floats(-500.0, 500.0))


@given(spots, angles, st.sampled_from([SHOW, BACK]), st.sampled_from([1.0, -1.0]))
def test_every_frame_is_right_handed_and_unit(
    at: tuple[float, float], angle: float, face: str, sign: float
) -> None:
    along = turned_to(angle)
    frames = [
        tab_frame(at, along, T),
        entry_frame(at, along, face, T),
        through_frame(at, along, face, T),
        crossing_frame(at, along, T),
        crossed_frame(at, along, sign, T),
        lying_frame(at, along, face == SHOW, T),
        *corner_frames((at, along, T), (at, turned_to(angle + 70), T), sign > 0, face == SHOW),
    ]
    for each in frames:
        assert cross(each.x, each.y) == pytest.approx(each.z, abs=1e-12)
        for axis in (each.x, each.y, each.z):
            assert dot(axis, axis) == pytest.approx(1.0)
