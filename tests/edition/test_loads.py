"""Spans in words: what was asked, the bounds, and what stands beside them."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.reader import METRIC
from kerfolio.basis.saying import say
from kerfolio.edition.loads import LoadWords, loads_of
from kerfolio.shop.leg import LegResult
from kerfolio.shop.span import RACKING, SPAN_CAUTIONS, SagResult
from tests.edition.carrying import carrying


def words(title: str, units_first: str = "mm") -> LoadWords:
    loads = loads_of(carrying(units_first))
    assert loads is not None
    return next(each for each in loads.spans if each.title == title)


def figures(title: str, units_first: str = "mm") -> dict[str, str]:
    return {each.head: each.value for each in words(title, units_first).figures}


def sag_of(name: str) -> SagResult:
    found = next(each for each in carrying().spans if each.name == name)
    assert isinstance(found, SagResult)
    return found


def test_what_is_asked_stands_in_one_sentence() -> None:
    assert words("Top shelf").asked == (
        "40 kg (88 lb) spread evenly on the shelf, 800 mm (31 1/2 in) from support to support; "
        "the load stays. On edge under it: 2 × rail, not glued to it."
    )
    assert (
        words("Foot").asked == "30 kg (66 lb) straight down on the leg, 700 mm (27 9/16 in) long."
    )
    # 400 kg a metre are 400 x 0.3048 / 0.45359237 = 268.8 lb a foot (the international units).
    assert words("Bare").asked == (
        "400 kg a metre (268 lb a foot), in all 320 kg (705 lb) spread evenly on the shelf, "
        "800 mm (31 1/2 in) from support to support; the load comes and goes."
    )
    assert words("Bare", "in").asked.startswith("268 lb a foot (400 kg a metre), in all 705 lb (")
    assert words("Pressed").asked.startswith("5 kg (11 lb) in the middle of the shelf, 800 mm")
    assert words("Out").asked == (
        "3 kg (6.6 lb) at the end of the shelf, hanging out 300 mm (11 13/16 in); the load stays."
    )


def test_the_figures_are_those_of_the_bound_that_counts() -> None:
    result, found = sag_of("bare"), figures("Bare")
    first, later = result.sags[0].first_day, result.sags[0].long_term
    assert later is not None
    assert found["Sag on the first day"] == f"{first:.1f} mm ({first / 25.4:.2f} in)"
    assert found["Sag after years"] == f"{later:.1f} mm ({later / 25.4:.2f} in)"
    # span/300 of 800 mm
    assert found["Limit"] == "2.7 mm (0.10 in)"
    assert found["Greatest load, estimated"].startswith(f"{int(result.greatest_load)} kg (")


def test_every_bound_is_there_the_one_that_counts_first() -> None:
    bounds = words("Top shelf").bounds
    assert [each.held for each in bounds] == [
        "Ends free to turn, not glued",
        "Ends clamped, not glued",
        "Ends free to turn, glued",
        "Ends clamped, glued",
    ]
    best = words("Top shelf").figures[0].notes[0]
    assert best.endswith("were it clamped and glued")
    assert best.split(" were")[0] == bounds[-1].first_day.split(" (")[0]


def test_the_safety_factor_stands_beside_the_greatest_load() -> None:
    strength = sag_of("top-shelf").load_for_strength
    assert strength is not None
    notes = words("Top shelf").figures[-1].notes
    where = "in the middle of the rail"
    assert f"strength over a safety factor of 3: {int(strength)} kg, {where}" in notes
    assert "each over a safety factor of 3" in words("Foot").figures[-1].notes


def test_a_leg_shows_the_least_of_its_limits() -> None:
    result = next(each for each in carrying().spans if each.name == "foot")
    assert isinstance(result, LegResult)
    found = figures("Foot")
    assert found["Greatest load, estimated"] == found["Buckles, swaying, at"]
    assert found["Buckles, swaying, at"].startswith(f"{int(result.load_swaying)} kg")


def test_more_than_it_bears_is_said() -> None:
    # 320 kg sag 15.6 mm, worked from kb W L3 / (E I) + ks W L / (G A'): 800/15.6 = 51.
    assert words("Bare").warning == (
        "More is asked here than this estimate allows. The sag alone would suit a limit of span/51."
    )
    assert words("Top shelf").warning == ""


def test_a_span_without_figures_says_why() -> None:
    found = words("Back")
    assert found.warning == "No figure: no stiffness of it is known."
    assert found.figures == ()
    assert found.asked == "1 kg (2.2 lb) spread evenly on the back."


def test_cautions_always_go_with_spans() -> None:
    loads = loads_of(carrying())
    assert loads is not None
    assert loads.cautions == tuple(say(METRIC, each) for each in SPAN_CAUTIONS)
    assert loads.racking == say(METRIC, RACKING)
    assert all(each.assumptions for each in loads.spans if each.figures)
    assert loads_of(replace(carrying(), spans=())) is None
