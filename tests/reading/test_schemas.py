"""The JSON Schemas agree with what the forms read (JSON Schema draft 2020-12, by jsonschema)."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from kerfolio.basis.shipped import shipped
from kerfolio.reading.nodes import Broken, Mapping, Node, Sequence
from kerfolio.reading.schemas import schemas
from kerfolio.reading.yaml_text import read_yaml
from tests.broken.good_workshop import GOOD
from tests.reading.desks import PLAN_TEXT

SCHEMAS = schemas()


def document(text: str) -> Any:
    """Return a YAML text as an editor sees it (the JSON schema of YAML 1.2, section 10.2)."""
    node, _ = read_yaml(text.encode(), "x.yaml")
    assert node is not None
    return plain(node)


def plain(node: Node) -> Any:
    if isinstance(node, Mapping):
        return {each.key.text: plain(each.value) for each in node.entries}
    if isinstance(node, Sequence):
        return [plain(each) for each in node.items]
    if isinstance(node, Broken):
        return None
    if node.style:
        return node.text
    words: dict[str, Any] = {"true": True, "false": False, "null": None, "": None}
    if node.text in words:
        return words[node.text]
    if re.fullmatch("-?[0-9]+", node.text):
        return int(node.text)
    return float(node.text) if re.fullmatch(r"-?[0-9]+\.[0-9]+", node.text) else node.text


def faults(name: str, text: str) -> list[str]:
    validator = Draft202012Validator(SCHEMAS[name])
    return [error.message for error in validator.iter_errors(document(text))]


@pytest.mark.parametrize("name", sorted(SCHEMAS))
def test_each_is_a_sound_schema(name: str) -> None:
    Draft202012Validator.check_schema(SCHEMAS[name])
    assert SCHEMAS[name]["$schema"] == "https://json-schema.org/draft/2020-12/schema"
    assert json.dumps(SCHEMAS[name]) == json.dumps(schemas()[name])


def test_the_kinds_of_file() -> None:
    assert sorted(SCHEMAS) == [
        "log.schema.json",
        "plan.schema.json",
        "release.schema.json",
        "stock.schema.json",
        "workshop.schema.json",
    ]


@pytest.mark.parametrize(
    ("name", "file"),
    [
        ("plan.schema.json", "plans/rack/plan.yaml"),
        ("workshop.schema.json", "workshop.yaml"),
        ("stock.schema.json", "stock/own.yaml"),
        ("log.schema.json", "log/september.yaml"),
    ],
)
def test_good_files_pass(name: str, file: str) -> None:
    assert faults(name, (GOOD / file).read_text("utf-8")) == []


@pytest.mark.parametrize(
    "path", sorted(shipped("content").glob("*.yaml")), ids=lambda path: str(path.stem)
)
def test_the_shipped_library_passes(path: Path) -> None:
    assert faults("stock.schema.json", path.read_text("utf-8")) == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("summary: Two", "sumary: Two"),
        ("version: 1.1.0", "version: 1.1"),
        ("units: mm", "units: cm"),
        ("access: open", "access: everyone"),
        ("grain: along y", "grain: vertical"),
        ("    sheet: ply\n    pieces: [left, right]\n", "    pieces: [left, right]\n"),
        ("{rectangle: [depth, height], round: 10}", "{rectangle: [depth]}"),
        ("{rectangle: [depth, height], round: 10}", "{rectangle: [depth, height], circle: 4}"),
        ("{rectangle: [depth, height], round: 10}", "{}"),
        ("[depth/2, 180], length: tab, angle: 0, takes: ply", "[depth/2, 180], length: tab"),
        ("pieces: [lower, upper]", "pieces: [lower, upper]\n    count: 2"),
        ("{tab: shelf.upper.back-tab, into: back.slot-upper}", "{tab: shelf.upper.back-tab}"),
        ("count: 2", "count: two"),
        ("finger-hole: hole", "finger-hole: mortise"),
        ("minutes: 5", "minutes: five"),
        ("feed: 4500 mm/min", "feed: fast"),
        (
            "photos/rack.png, alt: The rack with two shelves, cover",
            "photos/rack.gif, alt: X, cover",
        ),
        ("alt: The rack with two shelves, cover", "cover"),
        ("url: https://example.org/v/1", "url: example"),
        ("date: 2026-10-02", "date: yesterday"),
        ("  depth: 200", "  desk-depth: 200"),
    ],
)
def test_broken_plans_fail(old: str, new: str) -> None:
    assert PLAN_TEXT.count(old) == 1
    assert faults("plan.schema.json", PLAN_TEXT.replace(old, new)) != []


@pytest.mark.parametrize(
    ("name", "text"),
    [
        ("workshop.schema.json", "workshop: X\n"),
        ("workshop.schema.json", "workshop: X\nmaker: Y\ncurrency: euro\n"),
        ("stock.schema.json", "sheet: {}\n"),
        ("stock.schema.json", "cutters: {a: {kind: sharp}}\n"),
        ("stock.schema.json", "sheets: {a: {stiffness-along: stiff}}\n"),
        ("stock.schema.json", "sheets: {a: {family: cheese}}\n"),
        ("stock.schema.json", "chip-loads: {a: {machine: huge}}\n"),
        ("log.schema.json", "trials: [{title: X}]\n"),
        ("log.schema.json", "trials: [{date: 2026-10-02, title: X, outcome: fine}]\n"),
    ],
)
def test_other_broken_files_fail(name: str, text: str) -> None:
    assert faults(name, text) != []


def described(schema: Any, check: Callable[[dict[str, Any]], None]) -> None:
    if isinstance(schema, dict):
        check(schema)
        for each in schema.values():
            described(each, check)
    elif isinstance(schema, list):
        for each in schema:
            described(each, check)


WRITTEN_BY_MAKERS = sorted({*SCHEMAS} - {"release.schema.json"})
"""A record is written by the program; `docs/releases.md` explains it."""


@pytest.mark.parametrize("name", WRITTEN_BY_MAKERS)
def test_every_key_is_documented(name: str) -> None:
    def check(schema: dict[str, Any]) -> None:
        if schema.get("additionalProperties") is False and "description" in schema:
            for key, inner in schema.get("properties", {}).items():
                assert inner["description"], key

    described(SCHEMAS[name], check)
    assert all(each["description"] for each in SCHEMAS[name]["properties"].values())
