"""Brackets and clamps in their place: in a corner of two faces, on the faces they press on."""

from __future__ import annotations

import pytest

from kerfolio.assembly.fastened import PosedFastening, posed_fastenings
from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.fitting import fittings_in
from kerfolio.assembly.plates import bracket_plate, clamp_plate
from kerfolio.basis.place import NOWHERE
from kerfolio.geometry.plated import Plated
from kerfolio.geometry.rigid import Rigid, Vector, dot
from kerfolio.publishing.bare import bare
from tests.brackets_plan import LEDGE
from tests.plans import proved

UNDER = 100 - 17.8 / 2
"""The underside of the ledge over the back's lower edge, mm."""


def posed(plan: str = LEDGE) -> tuple[tuple[PosedFastening, ...], Rigid]:
    """The fastenings of a plan, and where the lower left of the back's show face is."""
    (made,) = proved(plan).made
    assert made.build is not None
    assembled = made.build.drawn.assembled
    back = assembled.piece("back")
    corner = back.pose.point((0.0, 0.0, back.panel.thickness))
    return posed_fastenings(made.settled, assembled), Rigid(corner)


def seen_from(origin: Rigid, at: Vector) -> tuple[float, ...]:
    return tuple(round(each, 3) for each in origin.inverse.point(at))


def test_a_bracket_lies_in_the_corner_under_the_ledge() -> None:
    """Its corner where both faces meet, 150 and 550 along; one leg down the back, one forward."""
    found, corner = posed()
    brackets = [each.bracket for each in found if each.bracket]
    assert len(brackets) == 4  # each of two holes in either leg
    for place, bracket in zip((150.0, 550.0), (brackets[0], brackets[2]), strict=True):
        assert seen_from(corner, bracket.frame.origin) == (place, 0.0, round(UNDER, 3))
        assert tuple(round(each, 6) for each in bracket.frame.x) == (0.0, 0.0, -1.0)
        assert tuple(round(each, 6) for each in bracket.frame.y) == (0.0, -1.0, 0.0)
        down, forward = bracket.legs
        assert down.hole(12.0) == pytest.approx((place, UNDER - 12))
        assert forward.hole(30.0) == pytest.approx((place - 100, 130.0))


def test_holes_above_put_the_bracket_on_the_ledge() -> None:
    """The same holes over the ledge: then it lies on the other faces of the ledge."""
    above = LEDGE.replace("under - 12", "over + 12").replace("under - 30", "over + 30")
    above = above.replace("under: 100 - t/2", "over: 100 + t/2")
    found, corner = posed(above)
    bracket = next(each.bracket for each in found if each.bracket)
    assert seen_from(corner, bracket.frame.origin) == (150.0, 0.0, 108.9)
    assert tuple(round(each, 6) for each in bracket.frame.x) == (0.0, 0.0, 1.0)


def test_its_screws_stand_in_its_holes_on_the_metal() -> None:
    """Their heads lie in the outer face of 2 mm of metal, and point into the wood."""
    found, corner = posed()
    screws = [body for each in found[:2] for body in each.bodies if body.role is Role.SHANK]
    assert [seen_from(corner, each.frame.origin) for each in screws] == [
        (150.0, -2.0, round(UNDER - 12, 3)),
        (150.0, -12.0, round(UNDER - 2, 3)),
        (150.0, -2.0, round(UNDER - 30, 3)),
        (150.0, -30.0, round(UNDER - 2, 3)),
    ]
    assert [tuple(round(v, 6) for v in each.frame.z) for each in screws[:2]] == [
        (0.0, 1.0, 0.0),
        (0.0, 0.0, 1.0),
    ]


def test_a_bracket_is_drawn_once_and_its_screws_past_the_other_leg() -> None:
    """Out of the corner along its bisector; 16 mm screws from beyond the 40 mm of the legs."""
    (made,) = proved(LEDGE).made
    assert made.build is not None
    found = fittings_in(made.settled, made.build.drawn.assembled, made.build.order)
    new = [each for each in found if each.step == 2]
    brackets = [each for each in new if each.role is Role.FITTING]
    assert (len(brackets), len(new)) == (2, 10)
    assert len({each.number for each in new}) == 2
    bracket, *screws = (each for each in new if each.number == new[0].number)
    assert isinstance(bracket.shape, Plated)
    assert dot(bracket.out, bracket.frame.x) == pytest.approx(0.5**0.5)
    assert bracket.far == 40.0 + 12.0
    for each in screws:
        past = -dot(each.drawn_out((0.0, 0.0, 0.0)), each.frame.z)
        assert past == pytest.approx(52 * 0.5**0.5 + 16 + 52)


def test_a_clamp_spans_what_it_is_named_for() -> None:
    """Lip and ledge are 35.6 mm; 30 mm from the front edge is the nearest way for its bar."""
    found, _ = posed()
    clamp = found[-1].clamp
    assert clamp is not None
    assert clamp.grip == pytest.approx(2 * 17.8)
    assert clamp.deep == pytest.approx(30.0)
    assert tuple(round(each, 6) for each in clamp.frame.y) == (0.0, 0.0, -1.0)
    assert tuple(round(each, 6) for each in clamp.frame.x) == (0.0, -1.0, 0.0)
    assert [each.role for each in found[-1].bodies] == [Role.FITTING] * 2


def test_a_clamp_without_a_place_presses_over_the_middle_of_the_other_face() -> None:
    """Of the ledge with its tab, half of 177.8 mm from its front; of the lip, of 17.8."""
    found, _ = posed(LEDGE.replace(", at: [150, 30]", ""))
    clamp = found[-1].clamp
    assert clamp is not None
    assert (clamp.grip, clamp.deep) == (pytest.approx(35.6), pytest.approx(88.9))
    across = LEDGE.replace(
        "joins: [lip.show, ledge.back], at: [150, 30]", "joins: [lip.left, lip.right]"
    )
    clamp = posed(across)[0][-1].clamp
    assert clamp is not None
    assert (clamp.grip, clamp.deep) == (pytest.approx(300.0), pytest.approx(8.9))


def test_plates_have_the_measures_of_the_stock() -> None:
    (made,) = proved(LEDGE).made
    stock = made.settled.stock
    bracket, clamp = stock.item("bracket-40"), stock.item("clamp-160")
    assert bracket is not None
    assert clamp is not None
    plate = bracket_plate(bracket)
    assert plate is not None
    assert (max(plate.profile), plate.wide) == ((40.0, 2.0), 20.0)
    assert [each.radius for each in plate.holes] == [2.25] * 4
    held = clamp_plate(clamp, 35.6)
    assert held is not None
    jaws = sorted({y for x, y in held.profile if x < 80.0})
    assert jaws[1:3] == [0.0, pytest.approx(35.6 + 0.3 * 80)]
    bolt = stock.item("bolt-m6x50")
    assert bolt is not None
    assert (bracket_plate(bolt), clamp_plate(bolt, 10.0)) == (None, None)


def test_fittings_are_the_same_where_no_statement_has_a_place_in_a_file() -> None:
    """Drawings are kept by what they are made from, places in files left out."""
    (made,) = proved(LEDGE).made
    assert made.build is not None
    assembled, order = made.build.drawn.assembled, made.build.order
    placeless = bare(made.settled)
    assert isinstance(placeless, type(made.settled))
    assert placeless.plan.fastenings[0].place == NOWHERE != made.settled.plan.fastenings[0].place
    with_them, without = (
        [(each.item.name, each.frame, each.number) for each in fittings_in(plan, assembled, order)]
        for plan in (made.settled, placeless)
    )
    assert with_them == without
