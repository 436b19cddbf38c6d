"""Words with quantities: told in a unit, compared without numbers, read as facts."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.finding import error, in_unit
from kerfolio.basis.measures import (
    angle,
    chip,
    chips,
    feed,
    length,
    mass,
    number,
    point,
    precise,
    reading,
    readings,
    size,
    spot,
)
from kerfolio.basis.place import Place
from kerfolio.basis.reader import INCHES, METRIC
from kerfolio.basis.said import (
    Measure,
    Quantity,
    Words,
    enumerated,
    facts,
    named,
    said,
    skeleton,
    stated_name,
    strung,
    told,
    written,
)

SHORT = said("`{}` is {} too {}", "rail", length("short", 2.3), "short")


def test_words_are_told_in_the_unit_asked_for() -> None:
    assert told(SHORT, METRIC) == "`rail` is 2.3 mm too short"
    assert told(SHORT, INCHES) == "`rail` is 0.091 in too short"
    assert told("plain", INCHES) == "plain"


def test_the_skeleton_leaves_numbers_and_copies_out() -> None:
    other = said("`{}` is {} too {}", "rail", length("short", 4.0), "short")
    assert skeleton(SHORT) == skeleton(other)
    assert skeleton(SHORT) != skeleton(said("`{}` is {} too {}", "rail", length("long", 4), "long"))
    assert skeleton(named("rail.slots.1")) == skeleton(named("rail.slots.12"))
    assert skeleton(named("rail.m6")) != skeleton(named("rail.m8"))
    assert skeleton(named("rail.slots")) != skeleton(named("side.slots"))


def test_the_facts_are_the_quantities_in_the_order_told() -> None:
    words = said("{} of {}", SHORT, reading("thickness", 17.8))
    assert tuple(facts("plain", words)) == (
        Quantity("short", 2.3, "mm"),
        Quantity("thickness", 17.8, "mm"),
    )


def test_a_name_is_told_with_its_copy_and_stated_without() -> None:
    assert told(named("rail.slots.3"), METRIC) == "`rail.slots.3`"
    assert [stated_name(each) for each in ("rail.slots.3", "rail.slots.1.2", "rail.slots")] == [
        "rail.slots"
    ] * 3


def test_words_are_joined_as_texts_are() -> None:
    three = [SHORT, "b", said("{}", number("count", 2))]
    assert told(enumerated(three), METRIC) == "`rail` is 2.3 mm too short, b and 2"
    assert told(enumerated(["a"]), METRIC) == "a"
    assert told(enumerated([]), METRIC) == ""
    assert told(strung(three[1:], ", or "), METRIC) == "b, or 2"
    assert told("It is so: " + SHORT + ".", METRIC) == "It is so: `rail` is 2.3 mm too short."


def test_an_example_is_one_of_the_plans_unit() -> None:
    assert told(written("fit: 0.1", "fit: 0.005"), METRIC) == "Write `fit: 0.1`."
    assert told(written("fit: 0.1", "fit: 0.005"), INCHES) == "Write `fit: 0.005`."


def test_a_template_wants_a_field_for_each_gap() -> None:
    with pytest.raises(ValueError, match=r"1 fields for `\{\} and \{\}`"):
        said("{} and {}", "a")
    assert told(said("`{a: {}}`", 1), METRIC) == "`{a: 1}`"


@pytest.mark.parametrize(
    ("measure", "metric", "inch"),
    [
        (length("x", 9.525), "9.5 mm", "3/8 in"),
        (reading("x", 18.25625), "18.26 mm", "0.719 in"),
        (precise("x", 6.35), "6.35 mm", "1/4 in"),
        (precise("x", 18.51025), "18.51 mm", "0.729 in"),
        (readings(("a", 17.2), ("b", 18.6)), "17.2 to 18.6 mm", "0.677 to 0.732 in"),
        (size((360.0, 165.1)), "360 x 165.1 mm", "14 3/16 x 6 1/2 in"),
        (spot(120.5, 0.0), "120.5, 0 mm", "4 3/4, 0 in"),
        (chip(0.127), "0.127 mm", "0.005 in"),
        (chips(0.0254, 0.0762), "0.025 to 0.076 mm", "0.001 to 0.003 in"),
        (feed("x", 4572.0), "4572 mm/min", "180 in/min"),
        (mass("x", 8.2), "8.2 kg", "18.1 lb"),
        (angle("x", 3.0), "3.0 degrees", "3.0 degrees"),
        (number("x", 4), "4", "4"),
    ],
)
def test_each_quantity_is_told_as_the_trade_does(measure: Measure, metric: str, inch: str) -> None:
    """180 in/min are 4572 mm/min: 25.4 mm to the inch, exactly (1959)."""
    assert (measure.told(METRIC), measure.told(INCHES)) == (metric, inch)


def test_a_point_names_both_its_lengths() -> None:
    assert told(point(3.0, 4.5, "least-"), METRIC) == "3 mm, 4.5 mm"
    assert [each.name for each in point(3.0, 4.5, "least-").facts] == ["least-x", "least-y"]


@given(st.floats(min_value=0.5, max_value=3000))
def test_a_fact_is_the_number_told(mm: float) -> None:
    shown = re.fullmatch(r"([0-9.]+) mm", length("x", mm).told(METRIC))
    assert shown
    assert abs(float(shown[1]) - length("x", mm).facts[0].value) <= 0.051


def test_a_finding_is_told_in_its_unit_and_keeps_its_facts() -> None:
    advice = said("Make it {} longer.", length("longer", 2.3))
    more = (Quantity("plunge", 600, "mm/min"),)
    found = error("rule", SHORT, Place("a", 1, 1), advice, subject="rail", more=more)
    (inch,) = in_unit([found], "in")
    assert str(found) == (
        "a:1:1: error: `rail` is 2.3 mm too short [rule]\n    Make it 2.3 mm longer."
    )
    assert str(inch) == (
        "a:1:1: error: `rail` is 0.091 in too short [rule]\n    Make it 0.091 in longer."
    )
    assert inch.facts == found.facts
    assert [each.name for each in found.facts] == ["short", "longer", "plunge"]
    assert inch.identity == found.identity


def test_words_without_parts_are_nothing() -> None:
    assert told(Words(()), METRIC) == ""


def test_what_is_quoted_of_a_file_steers_no_terminal() -> None:
    finding = error("x", "`\x1b[31m\n\ud800\u202e` is é \u00a0 👩\u200d🔧", Place("a.yaml"))
    assert finding.message == r"`\x1b[31m\n\ud800\u202e` is é " + "\u00a0 👩\u200d🔧"


def test_what_is_quoted_of_a_file_is_cut_where_it_is_long() -> None:
    finding = error("x", f"`{'9' * 5000}` and `{'8' * 50}`", Place("a.yaml"), f"`{'7' * 100}`")
    assert finding.message == f"`{'9' * 96}...` and `{'8' * 50}`"
    assert finding.advice == f"`{'7' * 96}...`"


def test_words_between_two_quotes_are_not_cut() -> None:
    words = f"`side.slot` holds {'more ' * 30}than `shelf.tab` asks for"
    long = f"`side` and {'more ' * 30}of `{'x' * 120}`"
    assert told(words, METRIC) == words
    assert told(long, METRIC) == f"`side` and {'more ' * 30}of `{'x' * 96}...`"
