"""Beams as they are: members under one another, ends on tabs, time, slant; each by hand statics.

Formulas: sigma = M z / I, built-up sections by parallel axes, 1.5 R / A in a rectangle (any
statics textbook); shares of strength over time EN 1995-1-1, Table 3.1; birch 18 mm by the Handbook
of Finnish Plywood (2002/2007), from memory.
"""

from __future__ import annotations

import math

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.model.climate import HEATED, OUTDOORS, SHED, Climate
from kerfolio.shop.beam import G
from kerfolio.shop.duration import LOW_END, duration_of
from kerfolio.shop.leg import LegResult
from kerfolio.shop.span import SagResult, span_findings, span_results
from tests.plans import proved
from tests.shop.heard import heard
from tests.shop.spanned import Spanned

PLAN = """\
plan: Loaded
version: 1.0.0
summary: Beams as they are.
units: mm
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.7}
  mdf: {stock: mdf-18, size: 2440 x 1220, published-for: 18}
  thin: {stock: mdf-6, size: 2440 x 1220, published-for: 6}
boards: {batten: {stock: pine-1x4, length: 900, count: 1}}
parts:
  panel: {sheet: ply, grain: along x, outline: {rectangle: [1000, 300]}}
  tabbed:
    sheet: ply
    grain: along x
    outline: {rectangle: [1000, 300]}
    features:
      left: {tabs: {edge: left, at: [40, 200], width: 60, depth: 17.7}}
      right: {tabs: {edge: right, at: [40, 200], width: 60, depth: 17.7}}
      front: {tabs: {edge: bottom, at: [460], width: 80, depth: 17.7}}
  web:
    sheet: ply
    grain: along x
    outline: {rectangle: [1000, 100]}
    features:
      top: {tabs: {edge: top, at: [100, 460, 820], width: 80, depth: 17.7}}
  hung:
    sheet: ply
    grain: along x
    outline:
      polygon:
        [[0, 60], [150, 60], [150, 0], [850, 0], [850, 60], [1000, 60], [1000, 100], [0, 100]]
  short:
    sheet: ply
    grain: along x
    outline: {rectangle: [700, 100]}
  flange: {sheet: ply, grain: along x, outline: {rectangle: [1000, 200]}}
  fibre: {sheet: mdf, outline: {rectangle: [1000, 300]}}
  limp: {sheet: thin, outline: {rectangle: [1000, 300]}}
  upright: {sheet: ply, grain: along y, outline: {polygon: [[0, 0], [60, 0], [60, 700], [0, 700]]}}
  slanted:
    sheet: ply
    grain: along y
    outline: {polygon: [[0, 0], [60, 0], [460, 700], [400, 700]]}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
E_ALONG, E_ACROSS = 10_048, 7_452
EDGE = (E_ALONG + E_ACROSS) / 2
T = 17.7
K_LASTING = 0.6
SPANNED = Spanned(PLAN)
settled, result, bent = SPANNED.settled, SPANNED.result, SPANNED.bent


def box(width: float, height: float) -> float:
    return width * height**3 / 12


def test_end_tabs_are_not_blamed_for_the_middle() -> None:
    """120 mm of tabs at the ends see next to no moment; 300 mm in the middle see all of it."""
    found = bent("part: tabbed, supports: [left, right], load: {kg: 100}")
    length = 1000 + 2 * T
    own = found.own_weight
    strength = 40.2 * K_LASTING / 3
    # M = (W + own) g L / 8 = strength b t2 / 6 in the middle, its front tab no part of it
    by_hand = strength * 300 * T**2 / 6 * 8 / length / G - own
    assert found.load_for_strength == pytest.approx(by_hand, rel=2e-3)
    assert (found.weakest.member, found.weakest.at) == ("tabbed", pytest.approx(0.5, abs=0.01))
    blamed = strength * 120 * T**2 / 6 * 8 / length / G - own
    assert found.load_for_strength is not None
    assert found.load_for_strength > 2.4 * blamed


def test_the_tabs_own_shear_and_bearing_are_reckoned() -> None:
    found = bent("part: tabbed, supports: [0, 1000], load: {kg: 100}, lasting: no")
    (tabs,) = found.tabs
    assert (tabs.member, tabs.count, tabs.width) == ("tabbed", 2, pytest.approx(120))
    # R = (W + own) g / 2; 1.5 R / (120 t) = 2.3 x 0.9 / 3; R / (120 x 17.7) = 6.7 x 0.9 / 3.
    sheared = 2 * 120 * T * 2.3 * 0.9 / 3 / 1.5 / G - found.own_weight
    pressed = 2 * 120 * T * 6.7 * 0.9 / 3 / G - found.own_weight
    assert tabs.load_shear == pytest.approx(sheared, rel=1e-4)
    assert tabs.load_bearing == pytest.approx(pressed, rel=1e-4)
    assert bent("part: tabbed, supports: [60, 940], load: {kg: 100}").tabs == ()


def test_weak_tabs_are_named() -> None:
    span = "part: tabbed, supports: [0, 1000], load: {kg: 900}, limit: span/1"
    found = bent(span)
    (tabs,) = found.tabs
    assert found.greatest_load == min(found.load_for_strength or 0, tabs.load_shear or 0)
    narrow = PLAN.replace("at: [40, 200], width: 60", "at: [40, 200], width: 8")
    plan = proved(f"{narrow}spans:\n  s: {{{span}}}\n").drawn
    assert plan is not None
    (finding,) = span_findings(plan)
    assert finding.rule == "span-overloaded"
    assert finding.advice == (
        "The tabs of `tabbed` give way first: make them wider, or put more of them."
    )


def test_web_and_flange_under_a_panel_by_the_parallel_axes() -> None:
    found = bent(
        "part: panel, load: {kg: 100}, with: [{part: short, joined: glued}, "
        "{part: flange, lies: flat, joined: glued}], supports: [150, 850]"
    )
    parts = (  # E, b, h, its middle's height above the flange's underside
        (E_ALONG, 200, T, T / 2),
        (EDGE, T, 100, T + 50),
        (E_ALONG, 300, T, T + 100 + T / 2),
    )
    weight = math.fsum(e * b * h for e, b, h, _ in parts)
    axis = math.fsum(e * b * h * y for e, b, h, y in parts) / weight
    rigid = math.fsum(e * (box(b, h) + b * h * (y - axis) ** 2) for e, b, h, y in parts)
    force = (100 + found.own_weight) * G
    shear = 5 / 6 * (190 * 500 * T + 620 * 100 * T)
    by_hand = 5 / 384 * force * 700**3 / rigid + force * 700 / 8 / shear
    assert found.sags[0].joined == "glued"
    assert found.sags[0].first_day == pytest.approx(by_hand, rel=1e-3)
    # The stress is greatest where E z is: at the far side of the panel or of the flange.
    far = max(T + 100 + T - axis, axis)
    moment = force * 700 / 8
    assert found.sags[0].stress == pytest.approx(moment * E_ALONG * far / rigid, rel=1e-3)


def test_glued_above_and_loose_below_is_a_bound_of_its_own() -> None:
    found = bent(
        "part: panel, load: {kg: 100}, with: [{part: web, joined: glued}, {part: flange, "
        "lies: flat}]"
    )
    assert [each.joined for each in found.sags[::2]] == ["stated", "loose", "glued"]
    stated, loose, glued = (each.first_day for each in found.sags[::2])
    assert glued < stated < loose
    axis = (EDGE * T * 100 * 50 + E_ALONG * 300 * T * (100 + T / 2)) / (
        EDGE * T * 100 + E_ALONG * 300 * T
    )
    tee = EDGE * (box(T, 100) + T * 100 * (50 - axis) ** 2) + E_ALONG * (
        box(300, T) + 300 * T * (100 + T / 2 - axis) ** 2
    )
    rigid = tee + E_ALONG * box(200, T)
    force = (100 + found.own_weight) * G
    shear = 5 / 6 * (190 * 500 * T + 620 * 100 * T)
    by_hand = 5 / 384 * force * 1000**3 / rigid + force * 1000 / 8 / shear
    assert stated == pytest.approx(by_hand, rel=1e-3)


def test_a_tabbed_rail_counts_to_its_shoulder() -> None:
    found = bent("part: web, as: rail, load: {kg: 50}")
    force = (50 + found.own_weight) * G
    by_hand = 5 / 384 * force * 1000**3 / (EDGE * box(T, 100)) + force * 1000 / 8 / (
        620 * 5 / 6 * 100 * T
    )
    assert found.sags[0].first_day == pytest.approx(by_hand, rel=1e-3)


def test_a_web_on_short_stubs_carries_no_bending_there() -> None:
    """40 of 100 mm are left over 150 mm at each end: there the panel is alone."""
    found = bent("part: panel, load: {kg: 50, at: middle}, with: {part: hung}, lasting: no")
    alone, both = E_ALONG * box(300, T), E_ALONG * box(300, T) + EDGE * box(T, 100)
    force = 50 * G
    bending = force / 2 * ((150**3 / 3) / alone + (500**3 - 150**3) / 3 / both)
    rest = bent("part: panel, load: {kg: 0.001, at: middle}, with: {part: hung}, lasting: no")
    sheared = force / 4 * (300 / (190 * 300 * T) + 700 / (190 * 300 * T + 620 * 100 * T)) * 6 / 5
    ours = found.sags[0].first_day - rest.sags[0].first_day
    assert ours == pytest.approx(bending + sheared, rel=2e-3)
    full = bent("part: panel, load: {kg: 50, at: middle}, with: {part: web}, lasting: no")
    assert found.sags[0].first_day > full.sags[0].first_day


@pytest.mark.parametrize(
    ("family", "lasting", "passing"),
    [
        # EN 1995-1-1, Table 3.1, service class 1: permanent and short-term.
        ("hardwood-plywood", 0.60, 0.90),
        ("softwood-plywood", 0.60, 0.90),
        ("osb", 0.40, 0.90),
        ("particleboard", 0.30, 0.85),
        ("mdf", 0.20, 0.80),
        ("softwood", 0.60, 0.90),
        ("other", 0.20, 0.80),
    ],
)
def test_strength_over_time_is_the_material_s(family: str, lasting: float, passing: float) -> None:
    found = duration_of(family)
    assert (found.share(lasting=True), found.share(lasting=False)) == (lasting, passing)
    assert "EN 1995-1-1" in found.source.told(METRIC)


@pytest.mark.parametrize(
    ("family", "climate", "lasting", "passing", "creep"),
    [
        # EN 1995-1-1, Tables 3.1 and 3.2, classes 2 and 3, from memory; creep beside class 1.
        ("hardwood-plywood", SHED, 0.60, 0.90, 1.0 / 0.8),
        ("softwood", OUTDOORS, 0.50, 0.70, 2.0 / 0.6),
        ("particleboard", SHED, 0.20, 0.60, 3.0 / 2.25),
        ("mdf", SHED, None, 0.45, 3.0 / 2.25),
        ("mdf", OUTDOORS, None, None, None),
        ("other", SHED, None, None, None),
        ("mdf", HEATED, 0.20, 0.80, 1.0),
    ],
)
def test_damp_takes_strength_and_makes_it_creep(
    family: str, climate: Climate, lasting: float, passing: float, creep: float
) -> None:
    found = duration_of(family, climate)
    assert (found.share(lasting=True), found.share(lasting=False)) == (lasting, passing)
    assert found.creep == creep


def test_a_place_is_what_a_span_is_reckoned_for() -> None:
    panel = "part: panel, load: {kg: 20}"
    here, there = bent(panel), Spanned(f"place: shed\n{PLAN}").bent(panel)
    (now, later), (same, damper) = (
        (s.first_day, s.long_term) for s in (here.sags[0], there.sags[0])
    )
    assert (same, later, damper) == pytest.approx((now, now * 1.8, now * 2.0))
    told = {each.label: each.value for each in heard(there)}
    title = "Birch plywood 18 mm"
    assert told[f"{title}: creep under lasting load"] == (
        "the sag grows by 1 times the first day’s (a shed)"
    )
    assert told[f"{title}: strength over time"].endswith("while the load stays in a shed")
    fibre = "part: fibre, load: {kg: 20}"
    outdoors = Spanned(f"place: outdoors\n{PLAN}").bent(fibre)
    assert (outdoors.sags[0].strength, outdoors.sags[0].long_term) == (None, None)


def test_fibreboard_keeps_well_under_a_half_while_the_load_stays() -> None:
    stays = bent("part: fibre, load: {kg: 20}").sags[0].strength
    passes = bent("part: fibre, load: {kg: 20}, lasting: no").sags[0].strength
    assert (stays, passes) == (pytest.approx(20 * 0.2), pytest.approx(20 * 0.8))


def test_a_mean_strength_is_taken_at_its_low_end() -> None:
    """1 - 1.645 x 0.16: one in twenty is weaker (normal distribution)."""
    found = bent("board: batten, load: {kg: 10}")
    assert pytest.approx(0.7368) == LOW_END
    stated = next(each for each in settled("board: batten, load: {kg: 10}").boards).stock.strength
    assert stated is not None
    assert found.sags[0].strength == pytest.approx(stated * 0.7368 * 0.6)
    told = {each.label: each for each in heard(found)}
    assert any(label.endswith("low end of the strength") for label in told)


def test_a_greatest_load_of_nothing_says_why_and_which_limit_suits() -> None:
    span = "part: limp, load: {kg: 1}"
    found = bent(span)
    assert found.load_for_limit == found.greatest_load == 0
    assert found.rest.final > found.limit
    suits = math.floor(found.length / found.sags[0].final)
    (finding,) = span_findings(settled(span))
    assert finding.advice == (
        f"Its own weight alone sags beyond the limit; `limit: span/{suits}` would suit."
    )
    assert bent(f"{span}, limit: span/{suits}").load_for_limit >= 1
    assert bent(f"{span}, limit: span/{suits + 1}").load_for_limit < 1


def test_a_slanting_leg_counts_with_its_true_width() -> None:
    """60 mm level across a limb that leans by atan(400/700) are 60 cos of it square to it."""
    upright, slanted = (
        result(f"part: {part}, as: leg, load: {{kg: 5}}") for part in ("upright", "slanted")
    )
    assert isinstance(upright, LegResult)
    assert isinstance(slanted, LegResult)
    assert upright.area == pytest.approx(60 * T, rel=1e-6)
    assert slanted.area == pytest.approx(60 * 700 / math.hypot(400, 700) * T, rel=1e-3)


def test_a_lying_slab_lifts_long_before_it_bends() -> None:
    """P c = m a about the support: 300 of 1000 mm hang out, the middle lies 200 mm inside."""
    span = "part: panel, as: overhang, supports: [700, right], load: {kg: 20, at: end}"
    found = bent(span)
    mass = 1.0 * 0.3 * 0.0177 * 685
    assert found.lifting is not None
    assert found.lifting.load_end == pytest.approx(mass * 200 / 300, rel=1e-6)
    assert found.lifting.load_even == pytest.approx(2 * mass * 200 / 300, rel=1e-6)
    assert found.greatest_load == found.lifting.load_end < found.load_borne
    finding = next(each for each in span_findings(settled(span)) if each.rule == "span-lifts")
    assert finding.message == "`s` lifts off with 2.4 kg at its end, not 20 kg"
    assert finding.advice == (
        "Hold its far end down and write `held: fixed`, or let it reach out less."
    )


def test_no_limit_silences_what_lifts_and_held_down_it_stays() -> None:
    span = "part: panel, as: overhang, supports: [700, right], load: {kg: 20, at: end}"
    wide = settled(f"{span}, limit: span/1, safety: 1")
    assert [each.rule for each in span_findings(wide)] == ["span-lifts"]
    fixed = settled(f"{span}, limit: span/1, safety: 1, held: fixed")
    assert list(span_findings(fixed)) == []
    (held,) = span_results(fixed)
    assert isinstance(held, SagResult)
    assert held.lifting is None


def test_a_shelf_stated_to_lie_is_looked_at_on_both_ends() -> None:
    """Supports at 100 and 700 mm of 1000: 300 mm hang out beyond the second."""
    span = "part: panel, supports: [100, 700], load: {kg: 20}"
    assert bent(span).lifting is None
    lying = bent(f"{span}, held: lying")
    assert lying.lifting is not None
    assert (lying.lifting.reach, lying.lifting.arm) == (pytest.approx(300), pytest.approx(200))
    assert [each.rule for each in span_findings(settled(f"{span}, held: lying"))] == ["span-lifts"]


def test_what_falls_by_itself_bears_nothing_at_its_end() -> None:
    found = bent("part: panel, as: overhang, supports: [400, right], load: {kg: 1, at: end}")
    assert found.lifting is not None
    assert found.lifting.load_end == found.greatest_load == 0
