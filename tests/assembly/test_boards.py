"""Boards in their place: on a face, on a side, behind what is screwed to them."""

from __future__ import annotations

import pytest

from kerfolio.assembly.boards import PosedBoard, board_under, met_at, posed_boards
from kerfolio.assembly.extent import box_of
from kerfolio.assembly.fastened import posed_fastenings
from kerfolio.assembly.fitting import Fitting, fittings_in
from kerfolio.assembly.wall import board_on_wall, wall_behind
from kerfolio.geometry.rigid import Vector
from tests.boards_plan import RACK, STRAIGHT
from tests.plans import proved

BATTEN = "{stock: pine-21x45, length: 600, count: 1}"


def boards(plan: str = RACK) -> dict[str, PosedBoard]:
    (made,) = proved(plan).made
    assert made.build is not None
    assembled = made.build.drawn.assembled
    fastenings = posed_fastenings(made.settled, assembled)
    found = posed_boards(made.settled, assembled, fastenings)
    return {f"{each.board.use.name}.{each.number}": each for each in found}


def box(board: PosedBoard) -> tuple[Vector, Vector]:
    """The box round a board, from the back's lower left front corner; to 0.01 mm."""
    (made,) = proved(RACK).made
    assert made.build is not None
    x, y, z = made.build.drawn.assembled.piece("back").pose.point((0.0, 0.0, 17.8))
    low, high = box_of(board.corners)
    return tuple((round(a - x, 2), round(b - y, 2), round(c - z, 2)) for a, b, c in (low, high))  # type: ignore[return-value]


def test_screws_put_a_board_on_the_face_they_come_out_of() -> None:
    """Holes at 150 to 550, 250 up: 600 x 45 mm round 350, 250, 21 mm deep behind 17.8 mm."""
    assert box(boards()["batten.1"]) == ((50.0, 17.8, 227.5), (650.0, 38.8, 272.5))


def test_a_board_lies_where_it_is_stated() -> None:
    """200 mm upright and 45 mm wide round 60, 150, 18 mm deep before the back."""
    assert box(boards()["post.1"]) == ((37.5, -18.0, 50.0), (82.5, 0.0, 250.0))


@pytest.mark.parametrize(
    ("lies", "wanted"),
    [
        ("{on: back.back}", ((50.0, 17.8, 127.5), (650.0, 38.8, 172.5))),  # in the middle
        ("{on: back.back, on-edge: yes}", ((50.0, 17.8, 139.5), (650.0, 62.8, 160.5))),
        # on the upper side, half way through 17.8 mm: 45 mm wide, 21 mm high
        ("{on: back.top}", ((50.0, -13.6, 300.0), (650.0, 31.4, 321.0))),
        # at the left, 100 up it and 5 mm from the back face, 12.8 mm from the front
        ("{on: back.left, at: [100, 5]}", ((-21.0, -9.7, -200.0), (0.0, 35.3, 400.0))),
    ],
)
def test_faces_and_sides_tell_which_way_a_board_lies(
    lies: str, wanted: tuple[Vector, Vector]
) -> None:
    stated = BATTEN.replace("}", f", lies: {lies}}}")
    assert box(boards(RACK.replace(BATTEN, stated))["batten.1"]) == wanted


def test_several_boards_have_a_place_each() -> None:
    two = BATTEN.replace("count: 1}", "count: 2, lies: [{on: back.back}, {on: back.top}]}")
    found = boards(RACK.replace(BATTEN, two))
    assert list(found) == ["batten.1", "batten.2", "post.1"]
    statements = (
        "  - {screw: screw-5x30, joins: [back.screws.1, batten]}\n"
        "  - {screw: screw-5x30, joins: [back.screws.3, batten]}"
    )
    apart = RACK.replace(
        "  - {screw: screw-5x30, joins: [back.screws, batten], step: Hang it}", statements
    ).replace(BATTEN, BATTEN.replace("count: 1", "count: 2"))
    found = boards(apart)
    assert [box(each)[0][0] for each in found.values()] == [-150.0, 250.0, 37.5]


def test_a_board_joins_in_the_step_that_screws_it() -> None:
    (made,) = proved(RACK).made
    assert made.build is not None
    fittings = fittings_in(made.settled, made.build.drawn.assembled, made.build.order)
    timber = [each for each in fittings if each.name]
    assert [(each.name, each.step, each.length) for each in timber] == [
        ("batten", 2, 600.0),
        ("post", 1, 200.0),
    ]
    assert [each.out for each in timber] == [(0.0, 1.0, 0.0), (0.0, -1.0, 0.0)]


def test_screws_are_told_the_board_they_meet_and_where() -> None:
    (made,) = proved(RACK).made
    assert made.build is not None
    fastenings = posed_fastenings(made.settled, made.build.drawn.assembled)
    known = tuple(boards().values())
    met = [board_under(each, known) for each in fastenings]
    assert [each.board.use.name for each in met if each] == ["batten"] * 3
    along = [round(met_at(each, known[0])[0], 6) for each in fastenings]
    assert sorted(along) == [-200.0, 0.0, 200.0]


def fitted(plan: str) -> tuple[Fitting, ...]:
    (made,) = proved(plan).made
    assert made.build is not None
    return fittings_in(made.settled, made.build.drawn.assembled, made.build.order)


def test_the_wall_is_behind_all_of_it() -> None:
    """The batten stands 21 mm behind the back; without it the wall is at the back itself."""
    (made,) = proved(RACK).made
    assert made.build is not None
    assembled = made.build.drawn.assembled
    wall = wall_behind(made.settled, assembled)
    assert wall is not None
    rear = assembled.piece("back").pose.origin[1]
    assert round(wall.at - rear, 6) == 21.0
    assert (wall.since, board_on_wall(made.settled, assembled)) == (2, "batten")

    (bare,) = proved(STRAIGHT).made
    assert bare.build is not None
    assembled = bare.build.drawn.assembled
    wall = wall_behind(bare.settled, assembled)
    assert wall is not None
    assert round(wall.at - assembled.piece("back").pose.origin[1], 6) == 0.0
    assert (wall.since, board_on_wall(bare.settled, assembled)) == (2, "")
    screws = [each for each in fitted(STRAIGHT) if each.step == 2]
    assert [each.item.name for each in screws] == ["screw-5x30"] * 3


def test_a_plan_that_stands_free_has_no_wall() -> None:
    (made,) = proved(RACK.replace("placed: wall", "placed: free-standing")).made
    assert made.build is not None
    assert wall_behind(made.settled, made.build.drawn.assembled) is None
