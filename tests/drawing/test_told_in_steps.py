"""What step pictures tell without words: turns, hands, overhangs, how often, what is hidden."""

from __future__ import annotations

from functools import cache

from kerfolio.basis.reader import METRIC
from kerfolio.drawing.balloons import Wanted, balloons
from kerfolio.drawing.build_views import build_drawings, set_drawings
from kerfolio.drawing.face import HIDDEN
from kerfolio.drawing.hand import HAND
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.vocabulary import Dimension, Drawing, Ink, Label, Stroke
from kerfolio.geometry.occupied import Occupied
from tests.drawing.built import shown, views
from tests.plans import altered, proved
from tests.sets import SET as PLAN


@cache
def picture(name: str, number: int) -> Drawing:
    (which,) = (n for n, each in enumerate(shown(name)) if each.step.number == number)
    return step_view(shown(name)[which], look=views(name)[which])


def words(drawing: Drawing) -> list[str]:
    return [each.text for each in drawing.items if isinstance(each, Label)]


def test_numbers_tell_the_turns_of_what_moves() -> None:
    """The bench: two groups one after the other; two arms, and a wedge into each."""
    for number, turns in ((7, ["1", "2"]), (12, ["1", "1", "2"]), (8, [])):
        found = [each for each in words(picture("potting-bench", number)) if each.isdecimal()]
        assert sorted(found) == turns
    told = picture("potting-bench", 7).description
    assert "Number 2: D1, D2, H." in told
    assert "Somebody holds B." in told


def test_a_hand_stands_in_the_balloon_of_what_is_held() -> None:
    """Only its leader, dot, rim and hand are drawn: it has no letters."""
    (balloon,) = balloons([Wanted(HAND, (50.0, 50.0))], (0, 0, 100, 100), Occupied([]))
    assert all(isinstance(each, Stroke) for each in balloon.items)
    _, _, _, palm, *fingers = balloon.items
    assert len(fingers) == 5
    x, y = balloon.centre
    for stroke in (palm, *fingers):
        assert isinstance(stroke, Stroke)
        for u, v, _ in stroke.contour.vertices:
            assert (u - x) ** 2 + (v - y) ** 2 < (balloon.radius - 0.5) ** 2


def test_the_housings_of_a_worktop_that_lies_face_down_are_dashed() -> None:
    """Three for the dividers and two for the lip, each a closed rim."""
    dashed = [
        each
        for each in picture("potting-bench", 2).items
        if isinstance(each, Stroke) and each.dash == HIDDEN and each.ink is Ink.NEW_LINE
    ]
    assert len(dashed) >= 5


def test_bolts_that_come_from_under_the_mat_are_drawn_from_below() -> None:
    drawing = picture("harbour-stool", 2)
    assert words(drawing).count("Seen from below") == 1
    assert "Drawn larger: Bolt M6 × 50 mm before its place." in drawing.description


@cache
def of_set(plan: str = PLAN) -> dict[str, Drawing]:
    proof = proved(plan)
    assert proof.together is not None
    found = {key: each for made in proof.made for key, each in build_drawings(made, METRIC).items()}
    return found | {**set_drawings(proof.together, proof.made, proof.plan, METRIC)}


def test_what_is_laid_down_has_its_overhang_drawn() -> None:
    """110 mm at either end, as the plan states."""
    sizes = [each.text for each in of_set()["step-2"].items if isinstance(each, Dimension)]
    assert sizes == ["110 mm", "110 mm"]
    assert "110 mm past what bears it, at the right." in of_set()["step-2"].description


def test_an_overhang_of_nothing_is_not_drawn() -> None:
    flush = altered(PLAN, ("[900, 300]", "[680, 300]"), (", overhang: 110", ""))
    assert not any(isinstance(each, Dimension) for each in of_set(flush)["step-2"].items)


def test_a_thing_made_twice_says_so_in_its_steps() -> None:
    once = altered(PLAN, ("foot: 2", "foot: 1"), ("overhang: 110", "overhang: 320"))
    assert {*words(of_set()["step-1"])} - {*words(of_set(once)["step-1"])} == {"2 ×", "Foot"}
