"""Spans as a maker writes them, and what is said of those that cannot be read."""

from __future__ import annotations

from decimal import Decimal

import pytest

from kerfolio.model.span import SagLimit, Span
from kerfolio.reading.consumable import CONSUMABLES
from kerfolio.reading.desk import Desk
from kerfolio.reading.identity import IDENTITY
from kerfolio.reading.span import SPANS
from tests.reading.desks import HEAD, node_of, plan_of, read


def spans(text: str) -> tuple[tuple[Span, ...], list[str]]:
    return read(SPANS, text, Desk(sizes=frozenset({"body"})))


def one(text: str) -> Span:
    found, faults = spans(text)
    assert faults == []
    (span,) = found
    return span


def test_the_shortest_span() -> None:
    span = one("top: {part: worktop, load: {kg: 60}}")
    assert (span.name, span.kind, span.axis) == ("top", "shelf", "x")
    assert span.part is not None
    assert span.part.name == "worktop"
    assert (span.load.kg, span.load.per_metre, span.load.where) == (60, False, "even")
    assert span.supports == ()
    assert span.limit == SagLimit(share=300.0)
    assert (span.safety, span.lasting, span.under) == (3, True, ())


def test_a_span_with_everything() -> None:
    span = one(
        "top: {part: worktop, as: shelf, supports: [60, body - 60], along: y, "
        "load: {kg-per-m: 30}, limit: span/600, safety: 4, lasting: no, "
        "with: {part: rail, count: 2, joined: glued}}"
    )
    first, last = span.supports
    assert first.at is not None
    assert last.at is not None
    assert (first.at.text, last.at.text) == ("60", "body - 60")
    assert span.axis == "y"
    assert span.load.per_metre
    assert span.limit.share == 600
    assert (span.safety, span.lasting) == (4, False)
    (web,) = span.under
    assert (web.part.name, web.count, web.lies, web.joined) == ("rail", 2, "edge", "glued")


def test_several_parts_lie_under_it_from_the_top_down() -> None:
    span = one(
        "top: {part: worktop, load: {kg: 60}, "
        "with: [{part: rail, count: 2, joined: glued}, {part: flange, lies: flat}]}"
    )
    assert [(each.part.name, each.lies, each.joined) for each in span.under] == [
        ("rail", "edge", "glued"),
        ("flange", "flat", "loose"),
    ]


@pytest.mark.parametrize(
    ("supports", "kind", "axis"),
    [
        ("supports: [left, right], ", "shelf", "x"),
        ("supports: [bottom, top], ", "shelf", "y"),
        ("supports: [left, 400], ", "shelf", "x"),
        ("supports: [10, 400], ", "leg", "y"),
        ("", "leg", "y"),
        ("", "rail", "x"),
    ],
)
def test_which_way_it_runs(supports: str, kind: str, axis: str) -> None:
    assert one(f"a: {{part: p, as: {kind}, {supports}load: {{kg: 5}}}}").axis == axis


def test_pounds_are_kilograms() -> None:
    # 1 lb = 0.45359237 kg and 1 ft = 0.3048 m, both exact (international yard and pound, 1959).
    load = one("a: {part: p, load: {lb: 100, at: middle}}").load
    assert (load.kg, load.where) == (pytest.approx(45.359237), "middle")
    load = one("a: {part: p, load: {lb-per-ft: 20}}").load
    assert (load.kg, load.per_metre) == (pytest.approx(29.7632728), True)


def test_a_limit_may_be_a_length() -> None:
    limit = one("a: {part: p, load: {kg: 5}, limit: 3 mm}").limit
    assert limit.share is None
    assert limit.length is not None
    assert limit.length.text == "3 mm"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "a: {load: {kg: 5}}",
            "a span needs `part` or `board` / Write `top: {part: worktop, load: {kg: 60}}`.",
        ),
        ("a: {part: p}", "`load` is missing / Add `load:` with a load."),
        (
            "a: {part: p, load: {}}",
            "a load needs one of `kg`, `kg-per-m`, `lb`, `lb-per-ft` / "
            "Write `load: {kg: 30}` or `load: {kg-per-m: 30}`.",
        ),
        (
            "a: {part: p, load: {kg: 0}}",
            "`0` is no number above 0 / Write the number alone, such as `30` or `2.5`.",
        ),
        (
            "a: {part: p, load: {kg-per-m: 5, at: middle}}",
            "a load a metre lies evenly / Write `kg:` for a load at one spot.",
        ),
        (
            "a: {part: p, load: {kg: 5, at: end}}",
            "a shelf has no free end / Write `at: middle`, or `as: overhang`.",
        ),
        (
            "a: {part: p, as: overhang, load: {kg: 5, at: middle}}",
            "an overhang carries evenly or at its end / Write `at: end`.",
        ),
        (
            "a: {part: p, load: {kg: 5}, supports: [left, top]}",
            "the supports do not lie along one direction / Write `[left, right]`, "
            "`[bottom, top]` or two lengths, such as `[60, body - 60]`.",
        ),
        (
            "a: {part: p, load: {kg: 5}, supports: [left, left]}",
            "the supports do not lie along one direction / Write `[left, right]`, "
            "`[bottom, top]` or two lengths, such as `[60, body - 60]`.",
        ),
        (
            "a: {part: p, load: {kg: 5}, limit: span/0}",
            "`span/0` is no limit of sag / Write `span/300`, or a length such as `3 mm`.",
        ),
        (
            "a: {part: p, load: {kg: 5}, safety: 0.5}",
            "`0.5` is no safety factor / Write a number from 1 to 20; 3 is usual.",
        ),
        (
            "a: {part: p, as: rail, load: {kg: 5}, with: {part: rail}}",
            "`with` is for a part that lies flat / Leave it out.",
        ),
    ],
)
def test_what_is_said_of_others(text: str, said: str) -> None:
    found, faults = spans(text)
    assert found == ()
    assert faults == [said]


def test_a_span_that_cannot_be_read_blames_nothing_else() -> None:
    text = HEAD.replace("w: 300", "w: 300, seat: w") + (
        "spans: {seat: {part: top}}\nparts: {top: {sheet: ply, outline: {rectangle: [seat, w]}}}\n"
    )
    plan, findings = plan_of(text)
    assert plan is not None
    assert [each.message for each in findings] == ["`load` is missing"]
    assert [each.name for each in plan.parts] == ["top"]


def test_consumables() -> None:
    lines, faults = read(
        CONSUMABLES, "[{what: Oil, price: 3.50}, {what: Cutter, price: 0.4, each: sheet}]"
    )
    assert faults == []
    assert [(each.what, each.price, each.each) for each in lines] == [
        ("Oil", Decimal("3.50"), "copy"),
        ("Cutter", Decimal("0.4"), "sheet"),
    ]


def test_a_consumable_that_cannot_be_read_is_left_out() -> None:
    lines, faults = read(CONSUMABLES, "[{what: Oil}, {what: Wax, price: 1}]")
    assert [each.what for each in lines] == ["Wax"]
    assert faults == ["`price` is missing / Add `price:` with a price."]


def test_a_workshop_states_its_machine_hour() -> None:
    desk = Desk()
    text = "{workshop: W, maker: M, machine-hour: 12, consumables: [{what: Oil, price: 2}]}"
    identity = IDENTITY.read(node_of(text), desk)
    assert desk.findings == []
    assert identity is not None
    assert identity.machine_hour == Decimal(12)
    assert [each.what for each in identity.consumables] == ["Oil"]
