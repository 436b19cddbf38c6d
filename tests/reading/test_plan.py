"""Plans: what the records hold, all findings in one run, and what is left out without blame."""

from __future__ import annotations

from datetime import date

import pytest

from kerfolio.basis.place import Place
from kerfolio.model.climate import HEATED
from kerfolio.model.outline import (
    Drawn,
)
from kerfolio.model.plan import Plan
from tests.plans import RACK, workshop
from tests.reading.desks import HEAD, PLAN_TEXT, SIZES, changed, plan_of, said


def good() -> Plan:
    plan, findings = plan_of(PLAN_TEXT)
    assert plan is not None
    wanting = [each for each in findings if each.rule != "picture"]
    assert wanting == []
    return plan


def test_the_good_plan_is_read_whole() -> None:
    plan = good()
    assert (plan.name, plan.title, plan.version) == ("rack", "Desk rack", "1.1.0")
    assert plan.unread == ()
    assert [part.name for part in plan.parts] == ["side", "shelf", "back"]
    assert plan.parts[0].pieces == ("left", "right")
    assert plan.parts[0].grain == "along y"
    assert [(j.kind.name, str(j.a), str(j.b)) for j in plan.joints][:1] == [
        ("tab", "shelf.lower.left-tab", "side.left.lower-slot")
    ]
    assert plan.hardware[0].purpose == "the wall"
    assert plan.cuts[0].passes == ("8", "rest")
    assert plan.cuts[0].feed_mm_per_min == 4500
    assert plan.relief.style == "dog-bone"
    assert [release.version for release in plan.releases] == ["1.0.0", "1.1.0"]
    assert plan.releases[1].date == date(2026, 10, 2)
    assert plan.video is not None
    assert plan.video.chapters == (("0:00", "The idea"), ("2:10", "Cutting"))
    assert plan.questions[0].answer.plain() == "No, but inner can grow."


def test_texts_of_steps_come_from_the_plan_or_from_files() -> None:
    first, second, _ = good().steps
    assert (
        first.text.plain()
        == "Stand one side on the bench, show face out. Press both shelves into it."
    )
    assert first.text.place == Place("plans/rack/steps/01.md", 1, 1)
    assert second.photo is not None
    assert second.photo.file == "photos/rack.png"
    assert [str(each) for each in first.add] == ["side.left", "shelf.lower", "shelf.upper"]


def test_what_is_done_by_hand_is_kept_with_its_step() -> None:
    text = RACK.replace("    text: Push", "    by-hand: File the slots first.\n    text: Push")
    (step,) = workshop(text).plans[0].steps
    assert step.by_hand == "File the slots first."
    assert step.text.plain() == "Push the tabs home."


def test_drawings_are_kept_under_the_name_the_plan_gives_them() -> None:
    plan = good()
    assert [drawing.file for drawing in plan.drawings] == ["drawings/back.svg"]
    assert isinstance(plan.parts[2].shape, Drawn)
    rules = plan.parts[2].shape.features
    assert [(str(r.element), r.kind.name, str(r.takes or "")) for r in rules] == [
        ("slot-lower", "slot", "ply"),
        ("slot-upper", "slot", "ply"),
        ("finger-hole", "hole", ""),
    ]


def test_all_findings_of_a_file_come_in_one_run() -> None:
    _, findings = plan_of("""\
plan: Try
summary: [no text]
units: cm
sizes: {w: 3x, h: other, a: b, b: a}
sheets: {ply: {stock: birch-plywood-18, fit: 0,1}}
parts:
  Big:
    sheet: ply
    outline: {circle: 9}
  c:
    outline: {circle: w}
    colour: red
steps:
  - {titel: A, minutes: five}
releases: {1.0: {date: 2026-13-01}}
""")
    assert sorted(each.message for each in findings) == sorted(
        [
            "`version` is missing",
            "expected a text, found a list",
            "`cm` is not a unit",
            "`3 x` has no operator",
            "unknown size `other`",
            "`a` depends on itself: a -> b -> a",
            "`1` has no value",
            "`Big` is no name",
            "`sheet` is missing",
            "unknown key `colour`",
            "unknown key `titel`",
            "`five` is no plain number",
            "`1.0` is no version",
            "`2026-13-01` is no date",
            "`changed` is missing",
        ]
    )


def test_a_misspelt_key_is_read_as_what_was_meant() -> None:
    plan, findings = plan_of(changed("summary: Two", "sumary: Two"))
    assert [each.message for each in findings if each.rule != "picture"] == ["unknown key `sumary`"]
    assert plan is not None
    assert plan.summary.startswith("Two shelves")


def test_cycles_show_their_chain_once_each() -> None:
    _, findings = plan_of(f"""\
{HEAD.replace(SIZES, "sizes: {a: b + c, b: c, c: a, x: x, y: a}")}
parts: {{p: {{sheet: ply, outline: {{rectangle: [y, 9]}}}}}}
""")
    assert said(findings) == [
        "`a` depends on itself: a -> c -> a / State one of them as a number.",
        "`x` depends on itself: x -> x / State one of them as a number.",
    ]


def test_what_cannot_be_read_is_named_and_blames_nothing_else() -> None:
    plan, findings = plan_of(changed("  tab: 80", "  tab: 80 cubits"))
    assert [each.message for each in findings if each.rule != "picture"] == [
        "`80 cubits` has no operator"
    ]
    assert plan is not None
    assert [part.name for part in plan.parts] == ["back"]
    labels = ("side", "side.left", "side.right", "shelf", "shelf.lower", "shelf.upper")
    assert plan.unread == tuple(sorted(("tab", *labels)))


def test_sizes_that_cannot_be_taken_apart_blame_no_name() -> None:
    plan, findings = plan_of(
        HEAD.replace(SIZES, "sizes: 300") + "parts: {p: {sheet: ply, outline: {circle: w}}}\n"
    )
    assert said(findings) == [
        "expected sizes by name, found `300` / Write `seat: 360`, a size each."
    ]
    assert plan is not None
    assert plan.unread == ("p",)


def test_a_version_that_cannot_be_read_passes_for_the_newest() -> None:
    plan, _ = plan_of(changed("version: 1.1.0", "version: one"))
    assert plan is not None
    assert plan.version == "1.1.0"


def test_a_release_without_a_day_stays_in_its_place() -> None:
    plan, _ = plan_of(changed("2026-10-02", "yesterday"))
    assert plan is not None
    assert [(each.version, each.date) for each in plan.releases] == [
        ("1.0.0", date(2026, 8, 1)),
        ("1.1.0", date(2026, 8, 1)),
    ]


def test_uses_place_and_person() -> None:
    text = PLAN_TEXT + (
        "placed: on a table\nuses: [sit in the middle, lean on]\n"
        "person: {lb: 200, push-lbf: 35}\nfriction: 0.4\n"
    )
    plan, findings = plan_of(text)
    assert findings == plan_of(PLAN_TEXT)[1]
    assert plan is not None
    assert (plan.placed, plan.uses) == ("on a table", ("sit in the middle", "lean on"))
    # 1 lb = 0.45359237 kg, 1 lbf = 4.4482216 N (both exact by definition).
    assert plan.person.kg == pytest.approx(90.718474)
    assert plan.person.push == pytest.approx(155.68776)
    assert plan.friction == 0.4
    assert (good().person.kg, good().person.push, good().friction) == (110, 200, 0.3)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("uses: [sit]", "`sit` is not a use"),
        ("placed: floor", "`floor` is not a place to stand"),
        ("person: {kg: 5}", "`5` is no person's mass"),
        ("person: {kg: 80, lb: 170}", "`kg` and `lb` exclude each other"),
        ("friction: 3", "`3` is no friction"),
    ],
)
def test_what_is_refused_of_uses(text: str, words: str) -> None:
    _, findings = plan_of(f"{PLAN_TEXT}{text}\n")
    usual = {each.message for each in plan_of(PLAN_TEXT)[1]}
    assert [each.message for each in findings if each.message not in usual] == [words]


def test_finish_place_and_how_boards_are_held() -> None:
    text = PLAN_TEXT + (
        "place: heated room\n"
        "finish: {of: varnish, coats: 3, when: before assembly, wet: 0.1, solids: 0.4,\n"
        "  sanding: 0.05, between-coats: 0.005}\n"
    )
    plan, findings = plan_of(text)
    assert findings == plan_of(PLAN_TEXT)[1]
    assert plan is not None
    assert plan.climate is HEATED
    stated = plan.finish
    assert stated is not None
    assert (stated.of.name, stated.coats, stated.when) == ("varnish", 3, "before assembly")
    lengths = (stated.wet, stated.film, stated.sanding, stated.between_coats)
    assert [each and each.text for each in lengths] == ["0.1", None, "0.05", "0.005"]
    assert stated.solids == 0.4
    assert (good().climate, good().finish) == (None, None)


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("place: sched", "`sched` is not a place to live in"),
        ("finish: varnish", "expected a finish, found `varnish`"),
        ("finish: {coats: 2}", "`of` is missing"),
        ("finish: {of: varnish, when: later}", "`later` is not a time to finish"),
        ("finish: {of: varnish, film: 3}", "`3` comes to 3 mm"),
        ("finish: {of: varnish, solids: 45}", "`45` is no number from 0.01 to 1"),
        ("finish: {of: oil, film: 0.1, solids: 0.4}", "`film` and `solids` exclude each other"),
        ("finish: {of: oil, between-coats: 0.01}", "`between-coats` where there is one coat"),
    ],
)
def test_what_is_refused_of_finish_and_place(text: str, words: str) -> None:
    _, findings = plan_of(f"{PLAN_TEXT}{text}\n")
    usual = {each.message for each in plan_of(PLAN_TEXT)[1]}
    assert [each.message for each in findings if each.message not in usual] == [words]


def test_an_inch_plan() -> None:
    plan, findings = plan_of("""\
plan: Inches
version: 1.0.0
summary: Written in inches.
units: in
sheets: {ply: {stock: plywood-23-32, size: 96 x 48, published-for: 0.69 to 0.75 by 1/64 in}}
sizes: {w: 1' 6-1/2", h: 12, mark: 3/4 in}
parts: {p: {sheet: ply, outline: {rectangle: [w - 1/2, 23/32"]}}}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
""")
    assert findings == ()
    assert plan is not None
    assert [each.amount.text for each in plan.sizes] == ["1' 6-1/2\"", "12", "3/4 in"]
