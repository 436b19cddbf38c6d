"""Plans: what the records hold, all findings in one run, and what is left out without blame."""

from __future__ import annotations

from datetime import date

import pytest

from generator.basis.place import Place
from generator.model.feature import (
    Engraving,
    Fingers,
    Groove,
    Hole,
    Notch,
    Pocket,
    Slot,
    Tabs,
    Window,
)
from generator.model.outline import (
    Circle,
    Drawn,
    Ellipse,
    PathText,
    Polygon,
    Rectangle,
    RoundedSlot,
)
from generator.model.part import Part
from generator.model.plan import Plan
from generator.model.statement import Amount
from tests.reading.desks import PLAN_TEXT, changed, plan_of, said

SIZES = "sizes: {w: 300, h: w/2, t: thickness(ply)}"
HEAD = """\
plan: Try
version: 1.0.0
summary: A plan for tests.
units: mm
sizes: {w: 300, h: w/2, t: thickness(ply)}
sheets: {ply: {stock: birch-plywood-18}, thin: {stock: birch-plywood-4}}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def texts(*amounts: Amount | None) -> list[str]:
    return [each.text if each else "" for each in amounts]


def read_part(body: str) -> tuple[Part, list[str]]:
    plan, findings = plan_of(f"{HEAD}parts:\n  a:\n    sheet: ply\n{body}")
    assert plan is not None
    assert len(plan.parts) == 1, findings
    return plan.parts[0], said(findings)


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
    assert [(j.kind, str(j.a), str(j.b)) for j in plan.joints][:1] == [
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


def test_drawings_are_kept_under_the_name_the_plan_gives_them() -> None:
    plan = good()
    assert [drawing.file for drawing in plan.drawings] == ["drawings/back.svg"]
    assert isinstance(plan.parts[2].shape, Drawn)
    rules = plan.parts[2].shape.features
    assert [(str(r.element), r.kind, str(r.takes or "")) for r in rules] == [
        ("slot-lower", "slot", "ply"),
        ("slot-upper", "slot", "ply"),
        ("finger-hole", "hole", ""),
    ]


def test_outlines() -> None:
    shapes = {
        "rectangle: [w, h], round: 20": Rectangle,
        "polygon: [[0, 0], [w, 0, {round: 4}], [0, h]]": Polygon,
        "polygon: [[0, 0], [w, 0]], mirror: {x: w}": Polygon,
        "circle: w": Circle,
        "ellipse: [w, h]": Ellipse,
        "rounded-slot: [w, 60]": RoundedSlot,
        'path: "M 0 0 L {w} 0 C 1 2 3 4 {h} 6 Z"': PathText,
    }
    for text, kind in shapes.items():
        part, findings = read_part(f"    outline: {{{text}}}\n")
        assert findings == []
        assert isinstance(part.shape, kind)


def test_every_kind_of_feature() -> None:
    part, findings = read_part("""\
    outline: {rectangle: [w, h]}
    features:
      a: {slot: {at: [w/2, 9], length: 90, angle: 45, takes: ply}}
      b: {notch: {edge: top, at: [60, 120], depth: 30, width: 18}}
      c: {hole: {at: [[1, 2], [3, 4]], diameter: 7, counterbore: {diameter: 14, depth: 6}}}
      d: {hole: {at: [1, 2], for: bolt-m6x40}, repeat: {count: 3, step: [32, 0]}, mirror: {x: w/2}}
      e: {window: {at: [9, 9], rounded-slot: [100, 30], angle: 30}}
      f: {pocket: {at: [9, 9], rectangle: [60, 20], round: 4, depth: 6}}
      g: {pocket: {at: [9, 9], length: 60, takes: thin, depth: 9}}
      h: {groove: {from: [0, 40], to: [w, 40], takes: thin, depth: 6}}
      i: {tabs: {edge: {from: [0, 0], to: [w, 0]}, at: 60, width: 60, takes: ply, round: 3}}
      j: {fingers: {edge: left, count: 5, takes: ply, first: gap}}
      k: {engrave: {text: "18 mm", at: [9, 9], height: 12, depth: 0.5, style: outline}}
""")
    assert findings == []
    kinds = [Slot, Notch, Hole, Hole, Window, Pocket, Pocket, Groove, Tabs, Fingers, Engraving]
    assert [type(each.cutting) for each in part.features] == kinds
    slot, notch, bore, bolt, window, _, housing, groove, tabs, fingers, mark = (
        each.cutting for each in part.features
    )
    assert isinstance(slot, Slot)
    assert texts(slot.at.x, slot.at.y, slot.angle, slot.width) == ["w/2", "9", "45", ""]
    assert isinstance(notch, Notch)
    assert texts(*notch.at) == ["60", "120"]
    assert notch.edge.side == "top"
    assert isinstance(bore, Hole)
    assert texts(bore.counterbore_diameter, bore.counterbore_depth) == ["14", "6"]
    assert len(bore.at) == 2
    assert isinstance(bolt, Hole)
    assert str(bolt.for_) == "bolt-m6x40"
    assert part.features[3].repeat is not None
    assert part.features[3].mirror is not None
    assert isinstance(window, Window)
    assert isinstance(window.outline, RoundedSlot)
    assert isinstance(housing, Pocket)
    assert isinstance(housing.outline, Rectangle)
    assert texts(housing.outline.width, housing.outline.height) == ["60", "thickness(thin)"]
    assert isinstance(groove, Groove)
    assert texts(groove.end.x) == ["w"]
    assert isinstance(tabs, Tabs)
    assert tabs.edge.end is not None
    assert isinstance(fingers, Fingers)
    assert fingers.first == "gap"
    assert isinstance(mark, Engraving)
    assert mark.style == "outline"
    assert part.features[0].place == Place("plans/rack/plan.yaml", 13, 7)


@pytest.mark.parametrize(
    ("text", "pieces"),
    [("count: 3", ("1", "2", "3")), ("count: 1", ()), ("pieces: [a, b]", ("a", "b"))],
)
def test_pieces(text: str, pieces: tuple[str, ...]) -> None:
    part, findings = read_part(f"    {text}\n    outline: {{circle: 90}}\n")
    assert findings == []
    assert part.pieces == pieces


@pytest.mark.parametrize(
    ("feature", "words"),
    [
        (
            "{}",
            "a feature needs one of `slot`, `notch`, `hole`, `window`, `pocket`, `groove`, "
            "`tabs`, `fingers`, `engrave` / "
            "Write its kind first: `{slot: {at: [180, 370], length: 120, takes: ply}}`.",
        ),
        (
            "slot",
            "expected a feature, found `slot` / "
            "Write its kind first: `{slot: {at: [180, 370], length: 120, takes: ply}}`.",
        ),
        (
            "{slot: {at: [1, 2], length: 3, takes: ply, with: 4}}",
            "unknown key `with` / Did you mean `width`?",
        ),
        (
            "{hole: {at: [1, 2], diameter: 3, for: bolt-m6x40}}",
            "`diameter` and `for` exclude each other / Keep one of them.",
        ),
        (
            "{pocket: {at: [1, 2], takes: ply, depth: 3}}",
            "`length` is missing / Add `length:`, the length of the housing.",
        ),
        (
            "{pocket: {at: [1, 2], circle: 9, length: 4, depth: 3}}",
            "`length` does not fit this shape / Only a pocket that `takes` a sheet has a length.",
        ),
        (
            "{engrave: {drawing: drawings/back.svg, style: stroke, at: [1, 2], height: 9, "
            "depth: 1}}",
            "`style` does not fit a drawing / Leave it out: it is for texts.",
        ),
        (
            "{window: {at: [1, 2], circle: 9, mirror: {x: 3}}}",
            "`mirror` does not fit this shape / Only a polygon or a path is mirrored.",
        ),
        (
            "{tabs: {edge: {from: [0, 0]}, at: 1, width: 2, depth: 3}}",
            "`to` is missing / Add `to:` with a point [x, y].",
        ),
        (
            "{hole: {at: [], diameter: 3}}",
            "expected a point [x, y] or a list of points, found a list / "
            "Write `[30, 60]` or `[[30, 60], [90, 60]]`.",
        ),
    ],
)
def test_features_refuse_in_words(feature: str, words: str) -> None:
    part = f"{{sheet: ply, outline: {{circle: 90}}, features: {{f: {feature}}}}}"
    plan, findings = plan_of(f"{HEAD}parts:\n  a: {part}\n")
    assert said(findings) == [words]
    assert plan is not None
    assert plan.unread in (("a",), ())


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


def test_a_drawn_part_keeps_its_rules() -> None:
    part, findings = read_part("""\
    drawing:
      file: drawings/back.svg
      outline: outline
      features: {slot-lower: {slot: takes ply}, slot-upper: slot, finger-hole: {pocket: depth t/2}}
""")
    assert findings == []
    assert isinstance(part.shape, Drawn)
    assert [(r.kind, r.depth.text if r.depth else "") for r in part.shape.features] == [
        ("slot", ""),
        ("slot", ""),
        ("pocket", "t/2"),
    ]


@pytest.mark.parametrize(
    ("rule", "words"),
    [
        ("{pocket: takes ply, hole: x}", "expected elements of the drawing, found keys and values"),
        ("{hole: takes ply}", "`hole` needs `depth 6`"),
        ("{slot: depth 6}", "`slot` needs `takes ply`"),
        ("{engrave: depth deep}", "unknown size `deep`"),
        ("mortise", "`mortise` is no drawn feature"),
    ],
)
def test_drawn_rules_refuse_in_words(rule: str, words: str) -> None:
    _, findings = plan_of(changed("finger-hole: hole", f"finger-hole: {rule}"))
    assert [each.message for each in findings if each.rule != "picture"] == [words]
