"""Parts: outlines, every kind of feature and drawn parts, and the words they refuse in."""

from __future__ import annotations

import pytest

from kerfolio.basis.place import Place
from kerfolio.model.feature import (
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
from kerfolio.model.outline import (
    Circle,
    Drawn,
    Ellipse,
    PathText,
    Polygon,
    Rectangle,
    RoundedSlot,
)
from kerfolio.model.part import Part
from kerfolio.model.statement import Amount
from tests.reading.desks import HEAD, changed, plan_of, said


def texts(*amounts: Amount | None) -> list[str]:
    return [each.text if each else "" for each in amounts]


def read_part(body: str) -> tuple[Part, list[str]]:
    plan, findings = plan_of(f"{HEAD}parts:\n  a:\n    sheet: ply\n{body}")
    assert plan is not None
    assert len(plan.parts) == 1, findings
    return plan.parts[0], said(findings)


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
    assert texts(slot.at[0].x, slot.at[0].y, slot.angle, slot.width) == ["w/2", "9", "45", ""]
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
            "`tabs`, `fingers`, `engrave`, `bore`, `slots`, `notches`, `holes`, `housings`, "
            "`grooves` / "
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


def test_a_drawn_part_keeps_its_rules() -> None:
    part, findings = read_part("""\
    drawing:
      file: drawings/back.svg
      outline: outline
      features: {slot-lower: {slot: takes ply}, slot-upper: slot, finger-hole: {pocket: depth t/2}}
""")
    assert findings == []
    assert isinstance(part.shape, Drawn)
    assert [(r.kind.name, r.depth.text if r.depth else "") for r in part.shape.features] == [
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
