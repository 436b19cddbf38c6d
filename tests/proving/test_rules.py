"""Every rule fires on the mistake it is for, and is silent on a good plan."""

from __future__ import annotations

import pkgutil
from importlib import import_module

import pytest

from kerfolio import proving
from kerfolio.basis.finding import Finding
from kerfolio.proving.rules import AFTER, AS_SET, BEFORE, RULES, TOGETHER, rules_of
from tests.plans import RACK, READY, proved, remarks


def found(text: str) -> dict[str, Finding]:
    return {each.rule: each for each in proved(text).findings}


def test_a_good_plan_is_not_remarked_on() -> None:
    assert remarks() == []
    assert [each.label for each in proved(READY).sets] == [
        f"{each}mm" for each in (17.6, 17.8, "18.0", 18.2)
    ]


@pytest.mark.parametrize(
    ("old", "new", "rule", "message"),
    [
        (
            "add: [side.left, rail, side.right]",
            "add: [side.left, rail, side.left]",
            "piece-added-twice",
            "piece `side.left` is added twice",
        ),
        (
            "add: [side.left, rail, side.right]",
            "add: [side.left, rail]",
            "piece-never-added",
            "piece `side.right` joins in no step",
        ),
        (
            "hardware: {bolt-m6x40: 2}",
            "hardware: {bolt-m6x40: 3}",
            "hardware-sum",
            "`bolt-m6x40`: the list says 2, the steps use 3",
        ),
        (
            "hardware: {bolt-m6x40: 2}",
            "hardware: {bolt-m6x40: 2, bolt-m6x50: 1}",
            "hardware-unlisted",
            "`bolt-m6x50` is used but not listed",
        ),
        (
            "version: 1.0.0",
            "version: 1.0.1",
            "version-not-released",
            "version is 1.0.1, the newest release 1.0.0",
        ),
        (
            "size: 2440 x 1220",
            "size: 330 x 300",
            "larger-than-sheet",
            "part `rail` is 335.2 x 120 mm, too large",
        ),
        (
            "length: 60, angle: 90, takes: ply}}",
            "length: 60, angle: 90, width: 5}}",
            "smaller-than-cutter",
            "slot `side.rail-slot` is 5 mm wide",
        ),
        (
            "depth: 6}}",
            "depth: 18}}",
            "deeper-than-sheet",
            "pocket `rail.housing` is 18 mm deep (at 17.6mm)",
        ),
        (
            "bolt: {hole: {at: [30, 30]",
            "bolt: {hole: {at: [100, 40]",
            "features-overlap",
            "`side.rail-slot` and `bolt` run into each other",
        ),
        (
            "bolt: {hole: {at: [30, 30]",
            "bolt: {hole: {at: [-3, 30]",
            "feature-outside",
            "hole `side.bolt` lies partly outside the part",
        ),
        (
            "edge: left, at: 30",
            "edge: left, at: 90",
            "tab-off-edge",
            "tab `rail.left-tab` is not on the edge: edge 0 mm to 120 mm, tab 90 mm to 150 mm",
        ),
        (
            "[[0, 0], [200, 0], [200, h, {round: 30}], [0, h, {round: 30}]]",
            "[[0, 0], [200, 120], [200, 0], [0, 120]]",
            "self-crossing",
            "outline of `side` crosses itself at 100 mm, 60 mm",
        ),
        (
            "{rectangle: [w, h]}",
            "{polygon: [[0, 0], [100, 0], [200, 0]]}",
            "zero-area",
            "outline of `rail` encloses no area",
        ),
        (
            "foot: {notch: {edge: bottom, at: 160, depth: 20",
            "foot: {notch: {edge: bottom, at: 160, depth: 130",
            "falls-apart",
            "part `side` falls into 2 pieces",
        ),
    ],
)
def test_each_mistake_is_found(old: str, new: str, rule: str, message: str) -> None:
    assert RACK.count(old) >= 1
    remarks = found(RACK.replace(old, new, 1))
    assert rule in remarks, sorted(remarks)
    assert remarks[rule].message == message
    assert remarks[rule].place.line > 0


def test_the_same_remark_is_made_once_for_all_thicknesses() -> None:
    text = RACK.replace("length: 60, angle: 90, takes: ply}}", "length: 60, angle: 90, width: 5}}")
    rules = [each.rule for each in proved(text).findings]
    assert rules.count("smaller-than-cutter") == 1


def test_what_only_a_thick_sheet_suffers_names_the_thickness() -> None:
    text = RACK.replace("size: 2440 x 1220", "size: 355.7 x 355.7")
    remark = found(text)["larger-than-sheet"]
    assert remark.message.endswith("too large (at 18.2mm)")


@pytest.mark.parametrize(
    "more", ["also: [1220 x 1220]", "offcuts: [{size: 400 x 400, count: 3}]"], ids=str.split
)
def test_a_part_may_be_too_large_for_one_of_several_sheets(more: str) -> None:
    text = RACK.replace("size: 2440 x 1220", f"size: 355.7 x 355.7, {more}")
    assert "larger-than-sheet" not in found(text)
    tiny = text.replace("size: 355.7 x 355.7", "size: 60 x 60").replace("1220 x 1220", "90 x 90")
    advice = found(tiny.replace("400 x 400", "90 x 90"))["larger-than-sheet"].advice
    assert advice.startswith("The largest sheet leaves 70 x 70 mm inside its margins")


def test_a_part_whose_grain_is_free_may_lie_slanted() -> None:
    # With its tabs the rail is 1215.6 x 120 at most: slanted by 45 degrees, 945 x 945.
    text = RACK.replace("size: 2440 x 1220", "size: 1000 x 1000").replace("w: 300", "w: 1180")
    assert "larger-than-sheet" in found(text)
    assert "larger-than-sheet" in found(text.replace("grain: along x", "grain: any"))
    assert "larger-than-sheet" not in found(text.replace("grain: along x", "grain: free"))


def test_rules_have_ids_reasons_and_sources() -> None:
    ids = [id for rule in RULES for id in rule.ids]
    assert len(set(ids)) == len(ids)
    assert all(rule.reason and rule.source for rule in RULES)


def test_every_declared_rule_is_looked_at_once_in_the_order_written() -> None:
    names = [each.name for each in pkgutil.iter_modules(proving.__path__, "kerfolio.proving.")]
    declared = {name: [*rules_of(import_module(name))] for name in names}
    assert sorted(rule.id for rules in declared.values() for rule in rules) == sorted(
        rule.id for rule in RULES
    )
    for name, rules in declared.items():
        assert [rule for rule in RULES if rule.check.__module__ == name] == rules
        lines = [rule.check.__code__.co_firstlineno for rule in rules]
        assert lines == sorted(lines)
    assert all((BEFORE, AFTER, TOGETHER, AS_SET))
    assert sum(map(len, (BEFORE, AFTER, TOGETHER, AS_SET))) == len(RULES)
