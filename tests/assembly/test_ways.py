"""The ways two features can meet: how many, in which words, and where the second piece lies."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from kerfolio.assembly.links import Link, links_of
from kerfolio.assembly.ways import Way
from kerfolio.geometry.rigid import Rigid
from kerfolio.model.joint_kind import TAB_JOINT
from tests.assembly.written import changed, settled, text


def linked(plan: str) -> Mapping[tuple[str, str], Link]:
    links, findings = links_of(settled(plan))
    assert findings == ()
    return {(each.joint.stated.a.name, each.joint.stated.b.name): each for each in links}


def words(link: Link) -> list[tuple[str, str]]:
    return [way.words(link.kind) for way in link.ways]


def first_in_second(way: Way) -> Rigid:
    """Return where the first piece lies in the second part's frame."""
    first, second = way.pairs[0]
    return second.after(first.inverse)


def close(one: Rigid, other: Rigid) -> bool:
    mine = (*one.origin, *one.x, *one.y, *one.z)
    return mine == pytest.approx((*other.origin, *other.x, *other.y, *other.z), abs=1e-9)


RIGHT, UP, OUT = (1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)
LEFT, DOWN, IN = (-1.0, 0.0, 0.0), (0.0, -1.0, 0.0), (0.0, 0.0, -1.0)


def test_a_single_tab_goes_into_a_slot_four_ways() -> None:
    plan = changed("stool", ("side.left.low-slot, looking: right", "side.left.low-slot"))
    link = linked(plan)["stretcher.left-tab", "side.left.low-slot"]
    # Usual first: in from the back, so that the side's show face looks out, and upright.
    assert words(link) == [("back", "right"), ("back", "left"), ("show", "left"), ("show", "right")]


def test_words_leave_the_ways_they_allow() -> None:
    link = linked(text("stool"))["stretcher.left-tab", "side.left.low-slot"]
    assert words(link) == [("back", "right"), ("show", "right")]
    link = linked(text("stool"))["apron.front.left-tab", "side.left.slot-b"]
    assert words(link) == [("back", "right")]


def test_a_tab_stands_square_on_the_back() -> None:
    """On paper, at 17.9 mm: the slot's middle is 160, 110 of the side, the tab's root 40 up.

    The stretcher's 0,0 lies 40 below the slot's middle (70) and half a sheet behind it
    (160 - 8.95); its x leads away from the side's back.
    """
    link = linked(text("stool"))["stretcher.left-tab", "side.left.low-slot"]
    assert close(first_in_second(link.ways[0]), Rigid((151.05, 70.0, 0.0), IN, UP, RIGHT))


def test_a_slanted_slot_slants_what_goes_into_it() -> None:
    """The slot leans by 15 degrees: cos 15 = 0.9659258263, sin 15 = 0.2588190451."""
    link = linked(text("stool"))["apron.front.left-tab", "side.left.slot-b"]
    placed = first_in_second(link.ways[0])
    assert placed.y == pytest.approx((-0.2588190451, 0.9659258263, 0.0), abs=1e-9)
    assert placed.z == pytest.approx((0.9659258263, 0.2588190451, 0.0), abs=1e-9)
    # The tab's root is 35 up the apron's edge, half a sheet below its show face.
    middle = placed.point((0.0, 35.0, 8.95))
    assert middle == pytest.approx((230.0, 330.0, 0.0), abs=1e-9)


def test_housings_are_entered_where_the_cutter_made_them() -> None:
    link = linked(text("cupboard"))["shelf.left-tabs", "side-left.shelf-housings"]
    # Two tabs decide which way round; the recess decides the face.
    assert words(link) == [("show", "up")]
    assert len(link.ways[0].pairs) == 2
    # The first tab's middle is 60 from the front edge, the housing's 60 from the side's left one.
    assert close(first_in_second(link.ways[0]), Rigid((0.0, 371.1, 17.8), OUT, RIGHT, UP))


def test_a_tongue_in_a_longer_groove_may_slide_along_it() -> None:
    short = linked(text("cupboard"))["back.left-tongue", "side-left.back-groove"]
    assert not short.ways[0].slides
    plan = changed(
        "cupboard",
        (
            "groove: {from: [d - 40, low_z + t/2], to: [d - 40,",
            "groove: {from: [d - 40, 0], to: [d - 40,",
        ),
    )
    assert linked(plan)["back.left-tongue", "side-left.back-groove"].ways[0].slides


def test_notches_cross_so_that_either_show_face_may_look_either_way() -> None:
    plan = changed("cupboard", ("shelf.crossing, looking: right}", "shelf.crossing}"))
    link = linked(plan)["divider.crossing", "shelf.crossing"]
    assert words(link) == [("", "right"), ("", "left")]
    # The bottoms meet: 120 along the divider, 320 - 8.9 up; 120 into the shelf at its middle.
    for way in link.ways:
        at = first_in_second(way).point((120.0, 311.1, 8.9))
        assert at == pytest.approx((282.2, 120.0, 8.9), abs=1e-9)


def test_a_notch_can_be_hung_on_either_end_of_a_slot() -> None:
    plan = changed(
        "cupboard",
        (
            "crossing: {notch: {edge: bottom, at: body/2, depth: 120, takes: ply}}",
            "crossing: {slot: {at: [body/2, 125], length: 120, angle: 90, takes: ply}}",
        ),
        ("shelf.crossing, looking: right}", "shelf.crossing}"),
    )
    link = linked(plan)["divider.crossing", "shelf.crossing"]
    assert len(link.ways) == 4
    ends = {round(first_in_second(way).point((120.0, 311.1, 8.9))[1], 6) for way in link.ways}
    assert ends == {65.0, 185.0}


def test_fingers_meet_where_one_row_has_gaps_and_the_other_fingers() -> None:
    link = linked(text("workshop-table"))["end.1.right-corner", "wall.2.left-corner"]
    # Both show faces out, in, or one of each: five fingers and gaps are the same from either end.
    assert len(link.ways) == 4
    placed = first_in_second(link.ways[0])
    # Show faces out: the end's outer face lies in the line of the wall's left edge, and its right
    # edge in the wall's outer face.
    assert placed.point((400.0, 0.0, 12.0)) == pytest.approx((0.0, 0.0, 12.0), abs=1e-9)
    assert placed.z == pytest.approx(LEFT)
    assert placed.x == pytest.approx(OUT)


def test_holes_place_a_piece_on_a_face() -> None:
    link = linked(text("workshop-table"))["foot.front-left.holes", "leg.front-left.foot-holes"]
    assert words(link) == [("back", "away")]
    # Back on back, the foot is drawn mirrored: its x runs to the leg's left.
    assert close(first_in_second(link.ways[0]), Rigid((100.0, 0.0, 0.0), LEFT, UP, IN))


def test_a_point_and_a_turn_place_a_piece_on_a_face() -> None:
    link = linked(text("workshop-table"))["plate", "backboard"]
    # On the back at 800, 100, turned by 90 degrees: its x points up, its y to the right as the
    # show face of the backboard is drawn, since it looks the other way.
    assert close(first_in_second(link.ways[0]), Rigid((800.0, 100.0, 0.0), UP, RIGHT, IN))


def test_an_edge_lies_on_the_line_of_its_holes() -> None:
    link = linked(text("workshop-table"))["tool-shelf.top", "backboard.shelf-holes"]
    assert words(link) == [("show", "up")]
    # The middle of the shelf's rear edge lies on the middle of the holes, on the show face.
    placed = first_in_second(link.ways[0])
    assert placed.point((600.0, 150.0, 8.9)) == pytest.approx((700.0, 200.0, 17.8), abs=1e-9)
    assert close(placed, Rigid((100.0, 191.1, 167.8), RIGHT, IN, UP))


def test_a_single_hole_leaves_open_along_which_line_an_edge_lies() -> None:
    plan = changed(
        "workshop-table",
        ("[[200, 200], [700, 200], [1200, 200]]", "[700, 200]"),
        ("shelf-holes, show: in, looking: up}", "shelf-holes, show: in}"),
    )
    link = linked(plan)["tool-shelf.top", "backboard.shelf-holes"]
    assert sorted({word for _, word in words(link)}) == ["down", "left", "right", "up"]


def test_a_wedge_lies_in_its_slot_by_the_point_that_is_stated() -> None:
    link = linked(text("workshop-table"))["wedge.left", "stretcher.left-wedge-slot"]
    assert words(link) == [("show", "up")]
    placed = first_in_second(link.ways[0])
    # The slot's middle is 13 outside the end rail of 17.8, half way up the stretcher of 70.
    assert placed.point((13.0, 70.0, 8.9)) == pytest.approx((-30.8, 35.0, 8.9), abs=1e-9)
    # It is driven in from the show face: its tip (y = 0) is behind.
    assert placed.y == pytest.approx(OUT)
    assert placed.x == pytest.approx(LEFT)


def test_ways_keep_their_numbers_when_some_are_ruled_out() -> None:
    free = changed("stool", ("side.left.low-slot, looking: right", "side.left.low-slot"))
    every = linked(free)["stretcher.left-tab", "side.left.low-slot"]
    allowed = linked(text("stool"))["stretcher.left-tab", "side.left.low-slot"]
    numbers = {way.words(TAB_JOINT): way.number for way in every.ways}
    assert {way.words(TAB_JOINT): way.number for way in allowed.ways}.items() <= numbers.items()
