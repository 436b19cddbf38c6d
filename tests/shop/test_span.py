"""Spans of small plans against the beam formulas by hand, and the laws they keep."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.basis.finding import Severity
from kerfolio.basis.said import phrase
from kerfolio.shop.beam import G, buckling_load, rectangle_inertia
from kerfolio.shop.leg import LegResult
from kerfolio.shop.span import SagResult, Unreckoned, span_findings, span_results
from tests.shop.heard import heard
from tests.shop.spanned import Spanned

PLAN = """\
plan: Loaded
version: 1.0.0
summary: Shelves to load.
units: mm
sheets: {ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.7}}
boards: {batten: {stock: pine-45x45, length: 900, count: 1}}
parts:
  shelf: {sheet: ply, grain: along x, outline: {rectangle: [800, 300]}}
  crossed: {sheet: ply, grain: along y, outline: {rectangle: [800, 300]}}
  open: {sheet: ply, outline: {rectangle: [800, 300]}}
  holed:
    sheet: ply
    grain: along x
    outline: {rectangle: [800, 300]}
    features: {hole: {window: {at: [400, 150], rectangle: [100, 200]}}}
  housed:
    sheet: ply
    grain: along x
    outline: {rectangle: [800, 300]}
    features: {dish: {pocket: {at: [400, 150], rectangle: [700, 100], depth: 8}}}
  rail: {sheet: ply, grain: along x, outline: {rectangle: [800, 100]}}
  leg: {sheet: ply, grain: along y, outline: {rectangle: [60, 700]}}
  split:
    sheet: ply
    grain: along y
    outline:
      polygon: [[0, 0], [60, 0], [60, 50], [240, 50], [240, 0], [300, 0], [300, 700], [0, 700]]
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
INCHES = """\
plan: Loaded
version: 1.0.0
summary: A shelf of inches to load.
units: in
sizes: {inset: 1-1/2}
sheets: {ply: {stock: plywood-23-32, size: 96 x 48, published-for: 0.703}}
parts: {shelf: {sheet: ply, grain: along x, outline: {rectangle: [32, 12 + inset]}}}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
E_ALONG, E_ACROSS = 10_048, 7_452
"""Handbook of Finnish Plywood (2002/2007), birch 18 mm, mean values; from memory."""
G_FLAT, G_EDGE = 190, 620
"""The same, shear modulus of birch plywood: flat 170 to 210 by size, on edge 620; from memory."""
K_LASTING = 0.6
"""EN 1995-1-1, Table 3.1: plywood in a heated room under a permanent load."""
SPANNED = Spanned(PLAN)
settled, result, bent = SPANNED.settled, SPANNED.result, SPANNED.bent


def final(found: SagResult) -> float:
    """Return the sag that is held against the limit, mm."""
    first = found.sags[0]
    return first.first_day if first.long_term is None else first.long_term


def by_hand(width: float, stiffness: float, kg: float) -> float:
    """Return the first day's sag of an 800 mm shelf, kb W L3/(E I) + ks W L/(G A')."""
    force, inertia = kg * G, rectangle_inertia(width, 17.7)
    shear = G_FLAT * 5 / 6 * width * 17.7
    return 5 / 384 * force * 800**3 / (stiffness * inertia) + force * 800 / 8 / shear


def test_a_shelf_by_hand() -> None:
    found = bent("part: shelf, load: {kg-per-m: 30}")
    own = 0.8 * 0.3 * 0.0177 * 685
    assert found.length == pytest.approx(800)
    assert found.load == pytest.approx(24)
    assert found.own_weight == pytest.approx(own, rel=1e-6)
    first = found.sags[0]
    assert (first.ends, first.joined) == ("free", "")
    assert first.first_day == pytest.approx(by_hand(300, E_ALONG, 24 + own), rel=1e-4)
    # kdef 0.8 (European LVL handbook, Tables 4.2 and 4.3).
    assert first.long_term == pytest.approx(first.first_day * 1.8)
    moment = (24 + own) * G * 800 / 8
    assert first.stress == pytest.approx(moment / (300 * 17.7**2 / 6), rel=1e-4)
    assert first.strength == pytest.approx(40.2 * K_LASTING)
    assert (first.member, first.at) == ("shelf", pytest.approx(0.5, abs=0.01))


def test_clamped_ends_are_the_other_bound() -> None:
    free, clamped = bent("part: shelf, load: {kg: 24}").sags
    assert (free.ends, clamped.ends) == ("free", "clamped")
    # Five times in bending; the shear part, W L / (8 G A'), is the same for both.
    force = (24 + 0.8 * 0.3 * 0.0177 * 685) * G
    shear = force * 800 / 8 / (G_FLAT * 5 / 6 * 300 * 17.7)
    assert (free.first_day - shear) / (clamped.first_day - shear) == pytest.approx(5, rel=1e-3)
    assert free.stress / clamped.stress == pytest.approx(12 / 8)


def test_the_loads_are_those_that_just_reach_limit_and_strength() -> None:
    found = bent("part: shelf, load: {kg: 24}")
    at_limit = bent(f"part: shelf, load: {{kg: {found.load_for_limit:.3f}}}")
    assert final(at_limit) == pytest.approx(found.limit, rel=1e-3)
    assert found.load_for_strength is not None
    at_strength = bent(f"part: shelf, load: {{kg: {found.load_for_strength:.3f}}}")
    assert at_strength.sags[0].stress == pytest.approx(40.2 * K_LASTING / 3, rel=1e-3)
    assert found.greatest_load == min(found.load_for_limit, found.load_for_strength)


def test_the_grain_decides_the_stiffness() -> None:
    along, across, left_open = (
        bent(f"part: {part}, load: {{kg: 24}}").sags[0].first_day
        for part in ("shelf", "crossed", "open")
    )
    kg = 24 + 0.8 * 0.3 * 0.0177 * 685
    by_grain = by_hand(300, E_ACROSS, kg) / by_hand(300, E_ALONG, kg)
    assert across / along == pytest.approx(by_grain, rel=1e-4)
    assert left_open == pytest.approx(across)
    turned = bent("part: shelf, supports: [bottom, top], load: {kg: 24}")
    assert "across the grain" in heard(turned)[0].label


def test_an_opening_costs_more_than_nothing_and_less_than_its_width_all_along() -> None:
    whole, holed = (bent(f"part: {part}, load: {{kg: 24}}") for part in ("shelf", "holed"))
    assert whole.sags[0].first_day < holed.sags[0].first_day < 3 * whole.sags[0].first_day
    # The greatest stress is taken where 100 of 300 mm are left.
    assert holed.sags[0].stress == pytest.approx(3 * whole.sags[0].stress, rel=0.05)


def test_a_changing_section_by_the_unit_load_method() -> None:
    """Narrow in the middle eighth: the integral of M m / (E I) by hand, load at mid-span."""
    found = bent("part: holed, load: {kg: 24, at: middle}, lasting: no")
    force, wide = 24 * G, E_ALONG * rectangle_inertia(300, 17.7)
    narrow = wide / 3
    # Each half: M m = F x2 / 4 from the support; from 350 to 400 mm only 100 of 300 mm are left.
    bending = 2 * force / 4 * (350**3 / 3 / wide + (400**3 - 350**3) / 3 / narrow)
    rest = bent("part: holed, load: {kg: 0.001, at: middle}, lasting: no").sags[0].first_day
    # V v = F / 4 all along: 700 mm of 300 mm and 100 mm of 100 mm.
    shear = force / 4 * (700 / 300 + 100 / 100) / (G_FLAT * 5 / 6 * 17.7)
    assert found.sags[0].first_day - rest == pytest.approx(bending + shear, rel=2e-3)


def test_a_recess_counts_as_thinner_wood() -> None:
    plain, housed = (bent(f"part: {part}, load: {{kg: 24}}") for part in ("shelf", "housed"))
    share = (200 * 17.7**3 + 100 * 9.7**3) / (300 * 17.7**3)
    assert 1 < housed.sags[0].first_day / plain.sags[0].first_day < 1 / share


def test_on_edge_a_rail_hardly_sags() -> None:
    flat = bent("part: rail, load: {kg: 24}").sags[0]
    edge = bent("part: rail, as: rail, load: {kg: 24}").sags[0]
    assert edge.first_day < flat.first_day / 15
    assert "on edge" in heard(bent("part: rail, as: rail, load: {kg: 24}"))[0].label


def test_an_overhang_by_hand() -> None:
    found = bent("part: shelf, as: overhang, supports: [600, right], load: {kg: 10, at: end}")
    (sag,) = found.sags
    stiff = E_ALONG * rectangle_inertia(300, 17.7)
    own = found.own_weight * G
    bending = (10 * G / 3 + own / 8) * 200**3 / stiff
    assert found.length == pytest.approx(200)
    shear = (10 * G + own / 2) * 200 / (G_FLAT * 5 / 6 * 300 * 17.7)
    assert sag.first_day == pytest.approx(bending + shear, rel=1e-3)
    moment = (10 * G + own / 2) * 200
    assert sag.stress == pytest.approx(moment / (300 * 17.7**2 / 6), rel=1e-4)


def test_rails_under_a_shelf_carry_with_it() -> None:
    alone = bent("part: shelf, load: {kg: 24}")
    loose = bent("part: shelf, load: {kg: 24}, with: {part: rail, count: 2}")
    glued = bent("part: shelf, load: {kg: 24}, with: {part: rail, count: 2, joined: glued}")
    assert [(each.joined, each.ends) for each in loose.sags] == [
        ("loose", "free"),
        ("loose", "clamped"),
        ("glued", "free"),
        ("glued", "clamped"),
    ]
    assert glued.sags[0] == loose.sags[2]
    assert glued.sags[0].first_day < loose.sags[0].first_day < alone.sags[0].first_day
    on_edge = (E_ALONG + E_ACROSS) / 2
    together = E_ALONG * rectangle_inertia(300, 17.7) + on_edge * 2 * rectangle_inertia(17.7, 100)
    shear = (G_FLAT * 300 + G_EDGE * 200) * 17.7 * 5 / 6
    force = (24 + loose.own_weight) * G
    by_hand = 5 / 384 * force * 800**3 / together + force * 800 / 8 / shear
    assert loose.sags[0].first_day == pytest.approx(by_hand, rel=1e-3)


def test_a_board_carries_too() -> None:
    found = bent("board: batten, load: {kg: 10, at: middle}")
    assert found.length == pytest.approx(900)
    assert found.carrier == "batten"


def test_a_leg_by_hand() -> None:
    found = result("part: leg, as: leg, load: {kg: 50}")
    assert isinstance(found, LegResult)
    force = buckling_load(E_ALONG, rectangle_inertia(60, 17.7), 700)
    assert found.load_held == pytest.approx(force / G / 3, rel=1e-4)
    assert found.load_swaying == pytest.approx(found.load_held / 4)
    assert found.load_crushing == pytest.approx(60 * 17.7 * 40.2 * K_LASTING / 2 / G / 3, rel=1e-4)
    assert found.greatest_load == found.load_swaying


def test_two_feet_side_by_side_each_bend_by_themselves() -> None:
    found = result("part: split, as: leg, load: {kg: 50}")
    assert isinstance(found, LegResult)
    assert found.area == pytest.approx(120 * 17.7)
    force = buckling_load(E_ALONG, 2 * rectangle_inertia(60, 17.7), 700)
    assert found.load_held == pytest.approx(force / G / 3, rel=1e-4)


@settings(deadline=None, max_examples=20)
@given(st.integers(200, 780), st.floats(1.02, 1.5))
def test_a_longer_span_never_carries_more(length: int, by: float) -> None:
    other = min(800.0, length * by)
    short, long = (
        bent(f"part: shelf, supports: [0, {each:.2f}], load: {{kg: 5}}") for each in (length, other)
    )
    assert long.greatest_load <= short.greatest_load
    assert final(long) > final(short)


@settings(deadline=None, max_examples=20)
@given(st.floats(1, 100), st.floats(1.1, 3))
def test_more_load_sags_more_and_a_greater_factor_allows_less(kg: float, by: float) -> None:
    one = bent(f"part: shelf, load: {{kg: {kg:.2f}}}")
    more = bent(f"part: shelf, load: {{kg: {kg * by:.2f}}}")
    assert final(more) > final(one)
    assert more.greatest_load == pytest.approx(one.greatest_load)
    careful = bent(f"part: shelf, load: {{kg: {kg:.2f}}}, safety: {3 * by:.2f}")
    assert careful.load_for_strength is not None
    assert one.load_for_strength is not None
    assert careful.load_for_strength < one.load_for_strength


def test_a_load_that_does_not_stay_creeps_only_by_its_own_weight() -> None:
    found = bent("part: shelf, load: {kg: 24}, lasting: no")
    sag = found.sags[0]
    assert sag.long_term is not None
    assert sag.first_day < sag.long_term < sag.first_day * 1.2


def test_without_creep_or_strength_it_says_so() -> None:
    plan = settled("part: shelf, load: {kg: 24}")
    bare = tuple(
        replace(each, stock=replace(each.stock, creep=None, strength_along=None))
        for each in plan.sheets
    )
    (found,) = span_results(replace(plan, sheets=bare))
    assert isinstance(found, SagResult)
    assert found.load_for_strength is None
    assert found.sags[0].long_term is None
    assert found.greatest_load == found.load_for_limit
    told = {each.value for each in heard(found)}
    assert "not known: only the sag limits the load" in told
    assert "not known: the first day’s sag is held against the limit" in told


def test_without_stiffness_there_are_no_figures() -> None:
    plan = settled("part: shelf, load: {kg: 24}")
    bare = tuple(
        replace(each, stock=replace(each.stock, stiffness_along=None)) for each in plan.sheets
    )
    bare_plan = replace(plan, sheets=bare)
    assert span_results(bare_plan) == (
        Unreckoned(name="s", carrier="shelf", why=phrase("spans-no-stiffness")),
    )
    (finding,) = span_findings(bare_plan)
    assert (finding.rule, finding.severity) == ("span-unreckoned", Severity.NOTE)


@pytest.mark.parametrize(
    ("span", "rule", "message", "advice"),
    [
        (
            "part: shelv, load: {kg: 5}",
            "unknown-part",
            "no part `shelv`",
            "Did you mean `shelf`?",
        ),
        (
            "board: baten, load: {kg: 5}",
            "unknown-board",
            "no board `baten`",
            "Did you mean `batten`?",
        ),
        (
            "part: shelf, load: {kg: 5}, with: {part: rial}",
            "unknown-part",
            "no part `rial`",
            "Did you mean `rail`?",
        ),
        (
            "part: shelf, supports: [0, 900], load: {kg: 5}",
            "span-outside",
            "the support at 900 mm is not on the part",
            "Along x it reaches from 0 mm to 800 mm.",
        ),
        (
            "part: shelf, supports: [400, 400], load: {kg: 5}",
            "span-outside",
            "the supports of `s` are in one place",
            "A span needs two of them.",
        ),
        (
            "part: shelf, load: {kg: 500}",
            "span-overloaded",
            # 800/300 mm over 1.8 x (1.1264 + 0.0281) mm for 24 kg (worked by hand), less 2.9 kg of
            # its own.
            "`s` is reckoned for 27.9 kg, not 500 kg",
            "Shorten it, make it thicker, put a rail under it, or state less.",
        ),
    ],
)
def test_what_is_said_of_a_span(span: str, rule: str, message: str, advice: str) -> None:
    (finding,) = span_findings(settled(span))
    assert (finding.rule, finding.message, finding.advice) == (rule, message, advice)
    assert finding.place.line > 0


def test_a_sound_span_is_not_remarked_on() -> None:
    assert list(span_findings(settled("part: shelf, load: {kg: 10}"))) == []


def test_named_sizes_of_an_inch_plan_are_inches() -> None:
    found = Spanned(INCHES).bent("part: shelf, supports: [inset, 32 - 2*inset], load: {kg: 5}")
    assert found.length == pytest.approx(27.5 * 25.4)


def test_every_assumption_has_its_source() -> None:
    for span in (
        "part: shelf, load: {kg: 5}, with: {part: rail}",
        "part: leg, as: leg, load: {kg: 5}",
    ):
        found = result(span)
        assert not isinstance(found, Unreckoned)
        assert len(found.assumptions) >= 8
        assert all(each.label and each.value and each.source for each in heard(found))
