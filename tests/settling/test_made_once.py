"""What is kept while a plan is settled at one point after the other."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from kerfolio.settling import settle as settling
from kerfolio.settling.made_once import MadeOnce
from kerfolio.settling.point import point
from kerfolio.settling.settle import Settler, settle
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.settling.variant import drawn_variant
from tests.plans import workshop

Numbers = Mapping[str, float]

TWO = """\
plan: Two sheets
version: 1.0.0
summary: Slots of one sheet for another.
sizes: {wide: 400, inner: wide - 2*thickness(ply)}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.4 to 18.2, fit: 0.1}
  thin: {stock: birch-plywood-12, size: 2440 x 1220, published-for: 11.6 to 12.4, fit: 0.1}
parts:
  side:
    sheet: ply
    outline: {rectangle: [300, 200]}
    features: {low: {slot: {at: [150, 60], length: 80, takes: thin}}}
  shelf: {sheet: thin, outline: {rectangle: [inner, 200]}}
  lid: {sheet: thin, outline: {rectangle: [wide, 200]}}
"""


def test_a_thing_is_made_again_only_where_something_that_it_read_is_another() -> None:
    kept: MadeOnce[float] = MadeOnce()
    made: list[str] = []

    def product(name: str, ours: Numbers, theirs: Numbers) -> float:
        def make(one: Numbers, other: Numbers) -> float:
            made.append(name)
            return one["a"] * other["b"] if one["a"] else 0.0

        return kept.of(name, (ours, theirs), make)

    assert product("x", {"a": 2, "c": 1}, {"b": 3}) == 6
    assert product("x", {"a": 2, "c": 9}, {"b": 3}) == 6  # `c` was never read
    assert made == ["x"]
    assert product("x", {"a": 2, "c": 1}, {"b": 4}) == 8
    assert product("x", {"a": 0, "c": 1}, {"b": 4}) == 0
    assert product("x", {"a": 0, "c": 1}, {"b": 7}) == 0  # nor was `b`, this time
    assert made == ["x"] * 3
    assert product("y", {"a": 2, "c": 1}, {"b": 3}) == 6
    assert made == ["x", "x", "x", "y"]


def test_who_looks_around_is_made_again_for_any_other_value_or_name() -> None:
    kept: MadeOnce[float] = MadeOnce()

    def total(numbers: Numbers) -> float:
        return kept.of("sum", (numbers,), lambda found: sum(found.values()))

    assert [total({"a": 1, "b": 2}), total({"a": 1, "b": 3}), total({"a": 1})] == [3, 4, 1]


def test_a_name_that_was_not_there_is_looked_for_again() -> None:
    kept: MadeOnce[bool] = MadeOnce()

    def has(numbers: Numbers) -> bool:
        return kept.of("has", (numbers,), lambda found: "a" in found)

    assert [has({}), has({"a": 0.0}), has({})] == [False, True, False]


@pytest.fixture(scope="module")
def drawn() -> SettledPlan:
    shop = workshop(TWO)
    plan = shop.plans[0]
    variant = drawn_variant(plan, shop.stock)
    assert variant is not None
    made, findings = settle(plan, shop.stock, variant)
    assert made is not None, findings
    return made


def points(drawn: SettledPlan) -> list[FitVariant]:
    """Both ends of either sheet, with either cutter wider, with none."""
    own, most = {"ply": 17.4, "thin": 11.6}, {"ply": 18.2, "thin": 12.4}
    thick = [own, most, own | {"thin": 12.4}, own | {"ply": 18.2}, own]
    cutters = [{"ply": 4.0}, {"thin": 4.0}, {"ply": 4.0, "thin": 4.0}, {"ply": None}]
    return [
        *(point(drawn, each, {}, {}) for each in thick),
        *(point(drawn, own, {}, each) for each in cutters),
    ]


def test_one_point_after_the_other_settles_as_each_by_itself(drawn: SettledPlan) -> None:
    settler = Settler(drawn.plan, drawn.stock)
    for there in points(drawn):
        assert settler.at(there) == settle(drawn.plan, drawn.stock, there)


def test_a_part_is_made_once_for_the_numbers_that_it_depends_on(
    drawn: SettledPlan, monkeypatch: pytest.MonkeyPatch
) -> None:
    made: list[str] = []
    settled_part = settling.settled_part

    def counted(part, mark, job):  # type: ignore[no-untyped-def]
        made.append(part.name)
        return settled_part(part, mark, job)

    monkeypatch.setattr(settling, "settled_part", counted)
    settler = Settler(drawn.plan, drawn.stock)
    for there in points(drawn):
        settler.at(there)
    # Of nine points: the side for two by two thicknesses, with another cutter and with none; the
    # shelf for as many thicknesses and another cutter; the lid for its own two and another cutter.
    assert {name: made.count(name) for name in made} == {"side": 6, "shelf": 5, "lid": 3}
