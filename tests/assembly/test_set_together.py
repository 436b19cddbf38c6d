"""A set in its places: rows of supports, what lies on them, and twins step by step."""

from __future__ import annotations

from math import isclose

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.extent import box_around, corners, size_of
from kerfolio.assembly.made import made_of
from kerfolio.assembly.set_together import set_together
from kerfolio.geometry.rigid import between, length
from tests.assembly.scenes import settled
from tests.plans import proved
from tests.sets import SET, changed
from tests.tools.sample_poses import SETS


def reach(assembled: Assembled, label: str, axis: int) -> tuple[float, float]:
    """Return how far a piece reaches along an axis of the world, mm."""
    along = [corner[axis] for corner in corners(assembled.piece(label))]
    return min(along), max(along)


def assembled(text: str) -> Assembled:
    """Return a set's text in its places."""
    together = proved(text).together
    assert together is not None
    return together.assembled


def test_feet_stand_in_from_the_ends_of_what_lies_on_them() -> None:
    # By hand: the board is 900 long, a foot 260; 110 in from either end it spans 110 to 370 and
    # 530 to 790; the board lies on 220 and is 12 thick.
    found = assembled(SET)
    start = reach(found, "board", 0)[0]
    for label, low, high in (("1/lower", 110, 370), ("2/lower", 530, 790), ("board", 0, 900)):
        a, b = reach(found, label, 0)
        assert isclose(a - start, low, abs_tol=0.01)
        assert isclose(b - start, high, abs_tol=0.01)
    assert reach(found, "board", 2) == (220.0, 232.0)
    assert all(
        isclose(one, other, abs_tol=0.01)
        for one, other in zip(size_of(box_around(found.pieces)), (900, 300, 232), strict=True)
    )


def test_a_third_foot_stands_in_the_middle() -> None:
    text = changed(("foot: 2", "foot: 3"), ("[900, 300]", "[1000, 300]"))
    found = assembled(text)
    middles = [sum(reach(found, f"{number}/lower", 0)) / 2 for number in (1, 2, 3)]
    assert isclose(middles[1] - middles[0], middles[2] - middles[1], abs_tol=0.01)
    board = reach(found, "board", 0)
    assert isclose(middles[1], sum(board) / 2, abs_tol=0.01)


def test_a_thing_on_one_support_lies_over_its_middle() -> None:
    text = changed(("supports: [foot]", "supports: [foot.2]"))
    found = assembled(text)
    middle = sum(reach(found, "2/lower", 0)) / 2
    assert isclose(middle, sum(reach(found, "board", 0)) / 2, abs_tol=0.01)
    apart = reach(found, "1/lower", 0)[0] - reach(found, "board", 0)[1]
    assert apart > 0, "what bears nothing stands beside"


def test_two_that_lie_on_the_same_feet_lie_side_by_side() -> None:
    # By hand: two boards of 300 from front to back are 600 deep, both on the feet's 220.
    found = assembled(changed(("board: 1", "board: 2")))
    assert [reach(found, f"{number}/board", 1) for number in (1, 2)] == [(-300, 0), (0, 300)]
    for number in (1, 2):
        assert reach(found, f"{number}/board", 2) == (220.0, 232.0)
        assert reach(found, f"{number}/board", 0) == (0, 900)
        assert isclose(sum(reach(found, f"{number}/lower", 1)), 0, abs_tol=0.01)


TRAY = """\
  tray:
    sheet: ply
    outline: {rectangle: [TRAY, 200]}
  board:
    sheet"""
ON_FEET = """\
  tray:
    pieces: [tray]
    lies-on: {supports: [SUPPORTS]OVERHANG}
    steps: [{title: Lay the tray on, add: [tray], text: So.}]
  board:
    pieces"""


def trayed(wide: int, supports: str, overhang: str = "", feet: int = 2) -> str:
    """Return the set with a tray, told before the board, on some of the feet."""
    said = ON_FEET.replace("SUPPORTS", supports).replace("OVERHANG", overhang)
    return changed(
        ("  board:\n    sheet", TRAY.replace("TRAY", str(wide))),
        ("  board:\n    pieces", said),
        ("makes: {foot: 2, board: 1}", f"makes: {{foot: {feet}, tray: 1, board: 1}}"),
    )


def test_a_second_thing_lies_over_the_middle_of_the_same_feet() -> None:
    # The tray, 900 long with 110 beyond, says where both feet stand; the board is as long.
    found = assembled(trayed(900, "foot", ", overhang: 110"))
    assert reach(found, "tray", 1) == (-250, -50)
    assert reach(found, "board", 1) == (-50, 250)
    assert reach(found, "tray", 0) == reach(found, "board", 0)


def test_things_that_share_one_foot_go_on_along_the_row() -> None:
    # The tray on feet 1 and 2 spans 680 of them and 20 either side; the board on 2 and 3 begins
    # 110 before foot 2, which begins at 20 + 680 - 260 = 440, and foot 3 ends 110 inside its end.
    text = trayed(720, "foot.1, foot.2", ", overhang: 20", feet=3)
    found = assembled(text.replace("supports: [foot],", "supports: [foot.2, foot.3],"))
    assert reach(found, "2/lower", 0) == (440, 700)
    assert reach(found, "board", 0) == (330, 1230)
    assert reach(found, "3/lower", 0) == (860, 1120)
    assert reach(found, "tray", 1)[1] <= reach(found, "board", 1)[0]


def test_shared_feet_that_stand_otherwise_are_told() -> None:
    """The tray says that the feet reach over 680 of its 720; the board's 900 are 110 beyond."""
    found = proved(trayed(720, "foot", ", overhang: 30")).findings
    told = [(each.rule, each.message) for each in found if each.rule == "lies-otherwise"]
    assert told == [("lies-otherwise", "`board` reaches 120 mm past its supports, not 110 mm")]
    wide = proved(trayed(900, "foot", ", overhang: 110")).findings
    assert not [each for each in wide if each.rule == "lies-otherwise"]


def test_twins_are_put_together_with_one_another_and_the_board_comes_down_last() -> None:
    together = proved(SET).together
    assert together is not None
    first, last = together.order.steps
    assert set(first.added) == {"1/lower", "2/lower", "1/upper", "2/upper"}
    assert [move.pieces for move in first.moves] == [("1/upper",), ("2/upper",)]
    assert (last.number, last.added) == (2, ("board",))
    assert [(move.pieces, move.direction) for move in last.moves] == [
        (("board",), (0.0, 0.0, -1.0))
    ]
    assert set(last.standing) == set(first.added)


def test_the_sample_set_stands_as_the_draughtsman_put_it() -> None:
    (name,) = SETS
    drawn = settled(name)
    table = SETS[name](drawn).poses
    together = set_together(made_of(drawn, [drawn]), drawn)
    assert together is not None
    pieces = together.assembled.pieces
    assert {each.label for each in pieces} == set(table)
    first = together.assembled.piece("board")
    shift = between(first.pose.origin, table["board"].origin)
    for each in pieces:
        at = each.pose.moved(shift)
        stated = table[each.label]
        for one, other in ((at.origin, stated.origin), (at.x, stated.x), (at.y, stated.y)):
            assert length(between(one, other)) < 1e-6, each.label
