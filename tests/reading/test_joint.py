"""Joints and how the whole stands: what they read as, and the words they refuse in."""

from __future__ import annotations

from itertools import product

import pytest

from kerfolio.model.joint import Joint, Standing
from kerfolio.reading.joint import JOINTS, STANDING
from tests.reading.desks import read
from tests.reading.test_schemas import faults


def joint(text: str) -> tuple[Joint | None, list[str]]:
    found, said = read(JOINTS, f"- {text}\n")
    return (found[0] if found else None), said


@pytest.mark.parametrize(
    ("text", "kind", "face", "looking"),
    [
        ("{tab: a.tab, into: b.slot}", "tab", "", ""),
        ("{tab: a.tab, into: b.slot, show: out, looking: right}", "tab", "back", "right"),
        ("{tab: a.tab, into: b.slot, show: in, looking: up}", "tab", "show", "up"),
        ("{notch: a.notch, with: b.notch, looking: left}", "notch", "", "left"),
        ("{fingers: a.row, with: b.row, show: in, looking: down}", "fingers", "show", "down"),
        ("{face: a.holes, on: b.holes, side: back, looking: toward}", "face", "back", "toward"),
        ("{edge: a.left, on: b.holes, show: out}", "edge", "back", ""),
        ("{wedge: a, through: b.slot, show: in}", "wedge", "show", ""),
    ],
)
def test_kinds(text: str, kind: str, face: str, looking: str) -> None:
    found, said = joint(text)
    assert found is not None, said
    assert said == []
    assert (found.kind.name, found.face, found.looking) == (kind, face, looking)
    assert (found.a.name[0], found.b.name[0]) == ("a", "b")


def test_a_place_and_a_turn() -> None:
    found, said = joint("{face: a, on: b, side: show, at: [50/2, 30 mm], turn: 45}")
    assert found is not None, said
    assert found.at is not None
    assert (found.at.x.text, found.at.y.text) == ("50/2", "30 mm")
    assert found.turn is not None
    assert found.turn.text == "45"
    found, said = joint("{wedge: a, through: b.slot, at: [13, 70]}")
    assert found is not None, said
    assert found.at is not None


@pytest.mark.parametrize(
    ("text", "complaint"),
    [
        (
            "{tab: a.tab, into: b.slot, looking: upwards}",
            "`upwards` is not a direction / Known here: `down`, `left`, `right`, `up`.",
        ),
        (
            "{tab: a.tab, into: b.slot, show: yes}",
            "`yes` is not a way to look / Known here: `in`, `out`.",
        ),
        (
            "{face: a, on: b, side: front, at: [1, 2]}",
            "`front` is not a side / Known here: `back`, `show`.",
        ),
        (
            "{face: a, on: b, looking: up, at: [1, 2]}",
            "`up` is not a direction / Known here: `away`, `toward`.",
        ),
        (
            "{notch: a.notch, with: b.notch, show: out}",
            "unknown key `show` / Known here: `fit`, `looking`, `notch`, `with`.",
        ),
        (
            "{tab: a.tab, into: b.slot, at: [1, 2]}",
            "unknown key `at` / Known here: `fit`, `into`, `looking`, `show`, `tab`.",
        ),
        (
            "{edge: a.left, on: b.holes, turn: 30}",
            "unknown key `turn` / Known here: `edge`, `looking`, `on`, `show`.",
        ),
    ],
)
def test_words_that_do_not_belong(text: str, complaint: str) -> None:
    _, said = joint(text)
    assert complaint in said


@pytest.mark.parametrize(
    ("kind", "other"),
    [
        ("tab", "into"),
        ("notch", "with"),
        ("fingers", "with"),
        ("face", "on"),
        ("edge", "on"),
        ("wedge", "through"),
    ],
)
def test_a_joint_has_two_ends(kind: str, other: str) -> None:
    found, said = joint(f"{{{kind}: a.x}}")
    assert found is None
    assert any(each.startswith(f"`{other}` is missing") for each in said)


def test_what_is_no_joint() -> None:
    found, said = joint("a.tab into b.slot")
    assert found is None
    assert said
    assert "Write `{tab: rail.left-tabs, into: side.left.rail-slot}`." in said[0]
    _, said = joint("{glue: a, to: b}")
    assert any("`tab` is missing" in each for each in said)
    assert any("unknown key `glue`" in each for each in said)


WAYS = ("front", "back", "left", "right", "up", "down")
_PAIRS = ({"front", "back"}, {"left", "right"}, {"up", "down"})


@pytest.mark.parametrize(("looks", "top"), list(product(WAYS, WAYS)))
def test_a_drawing_s_top_lies_in_its_face(looks: str, top: str) -> None:
    found, said = read(STANDING, f"{{piece: side.left, looks: {looks}, top: {top}}}")
    if any({looks, top} <= pair for pair in _PAIRS):
        assert said == [
            f"the show face looks {looks}, so the drawing's top cannot point {top} / "
            "State another `top`."
        ]
    else:
        assert said == []
        assert isinstance(found, Standing)
        assert (found.piece.name, found.looks, found.top) == ("side.left", looks, top)


def test_standing_without_a_top_and_in_other_words() -> None:
    found, said = read(STANDING, "{piece: side.left, looks: left}")
    assert said == []
    assert found.top == ""
    _, said = read(STANDING, "{piece: side.left, looks: forward}")
    assert said == [
        "`forward` is not a direction / Known here: `back`, `down`, `front`, `left`, `right`, `up`."
    ]
    _, said = read(STANDING, "{looks: left}")
    assert any(each.startswith("`piece` is missing") for each in said)


PLAN = """\
plan: Try
version: 1.0.0
summary: A plan for tests.
sheets: {{ply: {{stock: birch-plywood-18}}}}
parts: {{a: {{sheet: ply, outline: {{rectangle: [10, 10]}}}}}}
joints: [{joint}]
releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""


@pytest.mark.parametrize(
    ("text", "sound"),
    [
        ("{tab: a.tab, into: b.slot, show: out, looking: right}", True),
        ("{notch: a.notch, with: b.notch, looking: up}", True),
        ("{fingers: a.row, with: b.row, show: in}", True),
        ("{face: a, on: b, side: back, at: [1, 2], turn: 90}", True),
        ("{edge: a.left, on: b.holes, looking: up}", True),
        ("{wedge: a, through: b.slot, at: [1, 2]}", True),
        ("{tab: a.tab}", False),
        ("{tab: a.tab, into: b.slot, looking: upwards}", False),
        ("{notch: a.notch, with: b.notch, show: out}", False),
        ("{face: a, on: b, side: front}", False),
    ],
)
def test_the_schema_takes_what_the_form_reads(text: str, sound: bool) -> None:
    """JSON Schema draft 2020-12, by jsonschema; the form is the second opinion."""
    assert (faults("plan.schema.json", PLAN.format(joint=text)) == []) is sound
    assert (joint(text)[1] == []) is sound
