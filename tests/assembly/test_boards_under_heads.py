"""Boards that heads bear on, and boards in things of a set: in their place, drawn, proved."""

from __future__ import annotations

from functools import cache

import pytest

from kerfolio.assembly.boards import PosedBoard, posed_boards
from kerfolio.assembly.extent import box_of
from kerfolio.assembly.fastened import PosedFastening, posed_fastenings
from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.fitting import Fitting, fittings_in
from kerfolio.assembly.lying import shown_steps
from kerfolio.assembly.set_fittings import set_fittings
from kerfolio.basis.reader import METRIC
from kerfolio.drawing.build_views import set_drawings
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.vocabulary import Label
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.view import View
from tests.boards_plan import RACK
from tests.plans import altered, proved
from tests.sets import SET

HOLES = "      screws: {hole: {at: [[150, 250], [350, 250], [550, 250]], diameter: 5.5}}\n"
BOARD = "{stock: pine-21x45, length: 600, count: 1}"
CLEAT = altered(
    RACK,
    (f"  batten: {BOARD}", f"  cleat: {BOARD}"),
    (HOLES, "      pilots: {hole: {at: [[150, 250], [550, 250]], pilot: screw-5x30}}\n"),
    ("joins: [back.screws, batten], step: Hang it", "joins: [cleat, back.pilots]"),
    ("placed: wall\n", ""),
    ("  - {title: Hang it, text: Screw it to the batten on the wall.}\n", ""),
)
"""A cleat on the front of the back: screws of 30 mm through its 21 mm into pilot holes."""


def lying(where: str, plan: str = CLEAT) -> str:
    return altered(plan, (BOARD, BOARD.replace("}", f", lies: {{{where}}}}}")))


BEHIND = lying("on: back.back, at: [350, 250]")
ON_EDGE = lying(
    "on: back.show, at: [350, 250], on-edge: yes", CLEAT.replace("screw-5x30", "screw-5x60")
)


@cache
def placed(plan: str) -> tuple[tuple[PosedFastening, ...], dict[str, PosedBoard], Vector]:
    """The fastenings and boards of a plan, and where the back's lower left front corner is."""
    (made,) = proved(plan).made
    assert made.build is not None
    assembled = made.build.drawn.assembled
    fastenings = posed_fastenings(made.settled, assembled)
    boards = posed_boards(made.settled, assembled, fastenings)
    corner = assembled.piece("back").pose.point((0.0, 0.0, 17.8))
    return fastenings, {each.board.use.name: each for each in boards}, corner


def box(plan: str) -> list[tuple[float, ...]]:
    _, boards, corner = placed(plan)
    ends = box_of(boards["cleat"].corners)
    return [tuple(round(a - b, 2) for a, b in zip(end, corner, strict=True)) for end in ends]


@pytest.mark.parametrize(
    ("plan", "deep", "ends"),
    [
        (CLEAT, (-21.0, 0.0), (227.5, 272.5)),
        (BEHIND, (17.8, 38.8), (227.5, 272.5)),
        (ON_EDGE, (-45.0, 0.0), (239.5, 260.5)),
    ],
)
def test_a_board_lies_under_the_heads_that_bear_on_it(
    plan: str, deep: tuple[float, float], ends: tuple[float, float]
) -> None:
    """Round 350, 250: 600 x 45 x 21 mm on the front, behind 17.8 mm, or on its edge in front."""
    assert box(plan) == [(50.0, deep[0], ends[0]), (650.0, deep[1], ends[1])]


@pytest.mark.parametrize(
    ("plan", "at", "way"), [(CLEAT, -21.0, 1.0), (BEHIND, 38.8, -1.0), (ON_EDGE, -45.0, 1.0)]
)
def test_heads_bear_on_the_far_face_of_the_board(plan: str, at: float, way: float) -> None:
    fastenings, _, (x, y, z) = placed(plan)
    heads = [tuple(round(v, 6) for v in each.frame.origin) for each in fastenings]
    wanted = [(x + along, y + at, z + 250) for along in (150, 550)]
    assert heads == [tuple(round(v, 6) for v in each) for each in wanted]
    assert {each.direction[1] for each in fastenings} == {way}
    depth = 45.0 if plan == ON_EDGE else 21.0
    assert [each.entries[0].along for each in fastenings] == pytest.approx([depth, depth])


@cache
def fitted(plan: str) -> tuple[Fitting, ...]:
    (made,) = proved(plan).made
    assert made.build is not None
    return fittings_in(made.settled, made.build.drawn.assembled, made.build.order)


def test_screws_are_drawn_out_past_the_board_they_go_through() -> None:
    screws = [each for each in fitted(CLEAT) if each.role is Role.SHANK]
    (board,) = (each for each in fitted(CLEAT) if each.name == "cleat")
    assert len(screws) == 2
    assert {each.follows for each in (*screws, board)} == {"back"}
    assert all(each.out == board.out for each in screws)
    assert all(each.far >= board.far + each.length for each in screws)


def test_the_step_shows_both() -> None:
    (made,) = proved(CLEAT).made
    assert made.build is not None
    assembled, order = made.build.drawn.assembled, made.build.order
    (shown,) = shown_steps(assembled, order, made.settled.plan.steps, fitted(CLEAT))
    drawing = step_view(shown, look=View(-32.0, 28.0), hardware=[("Wood screw", 2), ("Cleat", 1)])
    assert "New from boards: Cleat and Post." in drawing.description
    assert "Cleat" in {each.text for each in drawing.items if isinstance(each, Label)}


def rules(plan: str) -> list[str]:
    return [each.rule for each in proved(plan).findings]


def test_what_goes_through_a_board_is_proved_as_all_others() -> None:
    """9 mm of a 30 mm screw are left for the back; a short one bites too little, a long one comes
    out, and one near the end of the board splits it."""
    told = {*rules(CLEAT)}
    assert not told & {"screw-bites-little", "screw-out", "screw-misses-board"}
    longer = CLEAT.replace("screw-5x30", "screw-5x60")
    assert "screw-out" in rules(longer)
    short = CLEAT.replace("length: 600", "length: 405")
    assert "screw-misses-board" in rules(short)


FOOTED = altered(
    SET,
    ("      crossing: {notch: {edge: top, at: 130, depth: 110, takes: ply}}\n",
     "      crossing: {notch: {edge: top, at: 130, depth: 110, takes: ply}}\n"
     "      pilots: {hole: {at: [[30, 20], [100, 20]], pilot: screw-5x30}}\n"),
    ("makes: {foot: 2, board: 1}\n",
     "makes: {foot: 2, board: 1}\n"
     "boards: {skid: {stock: pine-21x45, length: 100, count: 2}}\n"),
    ("    steps:\n      - title: Cross",
     "    fastenings: [{screw: screw-5x30, joins: [skid, lower.pilots]}]\n"
     "    steps:\n      - title: Cross"),
)  # fmt: skip
"""Two feet with a skid each, which nothing but its screws puts there."""


def test_a_board_of_a_thing_made_twice_is_in_both() -> None:
    proof = proved(FOOTED)
    assert proof.together is not None
    found = set_fittings(proof.made, proof.together)
    skids = [each for each in found if each.name == "skid"]
    assert [each.follows for each in skids] == ["1/lower", "2/lower"]
    (ax, ay, az), (bx, by, bz) = (each.frame.origin for each in skids)
    assert (round(bx - ax, 6), round(by - ay, 6), round(bz - az, 6)) == (420.0, 0.0, 0.0)
    assert [len(each.settled.boards) for each in proof.made] == [1, 0]
    assert proof.drawn is not None
    assert [each.use.count for each in proof.drawn.boards] == [2]


def test_boards_that_cannot_be_shared_evenly_have_no_place() -> None:
    odd = proved(FOOTED.replace("length: 100, count: 2", "length: 100, count: 3"))
    assert [len(each.settled.boards) for each in odd.made] == [0, 0]


def test_the_set_is_drawn_with_its_boards() -> None:
    bare = altered(FOOTED, ("joins: [skid, lower.pilots]", "joins: [lower.pilots]"))
    drawn = []
    for plan in (FOOTED, bare):
        proof = proved(plan)
        assert proof.together is not None
        drawn.append(set_drawings(proof.together, proof.made, proof.plan, METRIC)["set"])
    assert len(drawn[0].items) > len(drawn[1].items)
