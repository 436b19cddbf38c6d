"""Every kind of feature and of joint as a whole: its record, and what each room does with it.

The tables of the rooms cannot stand in one module, since no room imports all the others. Here they
are gathered, and a kind that one of them lacks is told.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Collection, Iterable, Iterator
from dataclasses import fields
from pathlib import Path
from typing import get_args

import pytest

from kerfolio.assembly.feature_kinds import FEATURE_FREEDOMS
from kerfolio.assembly.joint_kinds import JOINT_WAYS
from kerfolio.basis.reader import METRIC
from kerfolio.drawing.feature_kinds import FEATURE_WORDS
from kerfolio.model import feature_kind, joint_kind
from kerfolio.model.feature import Cutting
from kerfolio.model.feature_kind import (
    BORE,
    ENGRAVING,
    FEATURE_KINDS,
    FINGERS,
    GROOVE,
    HOLE,
    SLOT,
    TAB,
    FeatureKind,
)
from kerfolio.model.joint_kind import JOINT_KINDS, JointKind
from kerfolio.proving.about import PICTURED, TOLD
from kerfolio.proving.rules import RULES
from kerfolio.reading.by_mate import BY_MATE_FORMS
from kerfolio.reading.feature_kinds import FEATURE_FORMS
from kerfolio.reading.followed import FOLLOWING
from kerfolio.reading.joint_kinds import JOINT_FORMS
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.drawn import DRAWN_SHAPES
from kerfolio.settling.feature_kinds import FEATURE_SHAPES
from tests.conftest import SAMPLE
from tests.settling.panels import panel

GENERATOR = Path(__file__).resolve().parent.parent / "generator" / "kerfolio"
JOINED = {each for joint in JOINT_KINDS for end in joint.ends for each in end}

FEATURE_TABLES: dict[str, tuple[Collection[FeatureKind], Collection[FeatureKind]]] = {
    "reading: its form": (FEATURE_FORMS, FEATURE_KINDS),
    "reading: its form by its mate": (BY_MATE_FORMS, [k for k in FEATURE_KINDS if k.by_mate]),
    "reading: what it follows": (FOLLOWING, [k for k in FEATURE_KINDS if k.by_mate]),
    "settling: its shapes": (FEATURE_SHAPES, FEATURE_KINDS),
    "settling: its shapes as drawn": (DRAWN_SHAPES, [k for k in FEATURE_KINDS if k.drawn]),
    "assembly: its freedom": (FEATURE_FREEDOMS, [k for k in FEATURE_KINDS if k in JOINED]),
    "drawing: its words": (FEATURE_WORDS, FEATURE_KINDS),
}
"""Each table of a room, and the kinds it must know."""

JOINT_TABLES: dict[str, tuple[Collection[JointKind], Collection[JointKind]]] = {
    "reading: its form": (JOINT_FORMS, JOINT_KINDS),
    "assembly: its ways": (JOINT_WAYS, JOINT_KINDS),
}


def unlike(table: Iterable[object], wanted: Iterable[object]) -> list[str]:
    """Return the kinds that a table lacks, or has in excess."""
    return sorted(str(each) for each in {*table} ^ {*wanted})


@pytest.mark.parametrize("name", FEATURE_TABLES)
def test_every_room_knows_every_kind_of_feature(name: str) -> None:
    table, wanted = FEATURE_TABLES[name]
    assert unlike(table, wanted) == []


@pytest.mark.parametrize("name", JOINT_TABLES)
def test_every_room_knows_every_kind_of_joint(name: str) -> None:
    table, wanted = JOINT_TABLES[name]
    assert unlike(table, wanted) == []


def test_a_table_that_lacks_a_kind_is_told() -> None:
    short = {kind: form for kind, form in FEATURE_FORMS.items() if kind is not GROOVE}
    assert unlike(short, FEATURE_KINDS) == ["groove"]


def test_every_kind_that_is_declared_is_listed() -> None:
    declared = [each for each in vars(feature_kind).values() if isinstance(each, FeatureKind)]
    assert declared == [*FEATURE_KINDS]
    joints = [each for each in vars(joint_kind).values() if isinstance(each, JointKind)]
    assert joints == [*JOINT_KINDS]


@pytest.mark.parametrize("kind", FEATURE_KINDS, ids=str)
def test_what_is_declared_of_a_kind_is_what_its_statement_can_say(kind: FeatureKind) -> None:
    (stated,) = [each for each in get_args(Cutting) if each.kind is kind]
    keys = {each.name for each in fields(stated)}
    assert kind.takes == ("takes" in keys)
    assert kind.on_edge == ("edge" in keys)


EXAMPLES = {kind: kind.example.mm.replace("depth: t}", "depth: 17.8}") for kind in FEATURE_KINDS}
EXAMPLES[SLOT] = "{at: [180, 200], length: 120, takes: ply}"
"""The examples, where needed brought on to the panel that they are tried on."""


@pytest.mark.parametrize("kind", FEATURE_KINDS, ids=str)
def test_the_example_of_a_kind_goes_the_whole_way(kind: FeatureKind) -> None:
    part = panel(f"it: {{{kind.key}: {EXAMPLES[kind]}}}", outline="{rectangle: [400, 450]}")
    assert {each.kind for each in part.features} == {kind}
    first = part.features[0]
    said = FEATURE_WORDS[kind](first, METRIC)
    assert bool(said) == (kind.fitted or kind in (HOLE, BORE))
    # Only what opens the sheet, and is not cut to a depth, is cut through.
    assert kind is TAB or kind.opens == (first.depth is None)
    assert all(contour.closed for contour in first.shape) or kind is ENGRAVING


@pytest.mark.parametrize("kind", [each for each in FEATURE_KINDS if each is not FINGERS], ids=str)
def test_the_example_in_inches_is_about_as_large(kind: FeatureKind) -> None:
    numbers = [
        [float(each) for each in re.findall(r"(?<![0-9/.])[0-9]+(?:\.[0-9]+)?(?![0-9/])", text)]
        for text in (kind.example.mm, kind.example.inch)
    ]
    assert max(numbers[0]) / max(numbers[1]) == pytest.approx(25.4, rel=0.2)


def test_the_sample_shows_every_kind_in_use() -> None:
    """README.md says so of features; of joints it lists every kind itself."""
    workshop, _ = read_workshop(SAMPLE)
    assert workshop is not None
    stated = {each.kind for plan in workshop.plans for part in plan.parts for each in part.features}
    assert unlike(stated, FEATURE_KINDS) == []


def test_the_readme_lists_every_kind_of_joint() -> None:
    listed = [
        line.split("{")[1]
        for line in (SAMPLE.parent / "README.md").read_text("utf-8").splitlines()
        if line.lstrip().startswith("- {")
    ]
    for kind in JOINT_KINDS:
        assert any(f"{kind.name}: " in each and f"{kind.other}: " in each for each in listed), kind


def test_of_every_finding_is_said_whether_a_picture_shows_it() -> None:
    """Who adds a rule says in ``proving/about.py`` what it is about; ``test_album`` draws those."""
    known = {id for rule in RULES for id in rule.ids}
    assert known - PICTURED - TOLD == set(), "say in proving/about.py what they are about"
    assert set() == PICTURED & TOLD
    assert TOLD - known == set()


WORDS = {word for each in FEATURE_KINDS for word in (each.name, each.key)} | {
    each.name for each in JOINT_KINDS
}
DECLARED = ("model/feature_kind.py", "model/joint_kind.py")
OTHER_MEANINGS = {
    # What the router does, and the ink it is drawn in; layers of cut files are named by it.
    ("settling/settled.py", "engrave"),
    ("settling/settled.py", "pocket"),
    ("settling/settled.py", "hole"),
    ("drawing/vocabulary.py", "engrave"),
    ("drawing/vocabulary.py", "pocket"),
    ("drawing/vocabulary.py", "hole"),
    # The length of what goes into a drawn slot, in a reason.
    ("settling/fitted.py", "tab"),
    # What messages are called, and what they choose by.
    ("edition/difficulty.py", "fingers"),
    # The face of a sheet, as it came out of a cut.
    ("reading/outcome.py", "face"),
    ("publishing/log_text.py", "face"),
    ("trials/answers.py", "face"),
    ("edition/swap.py", "edge"),
    ("edition/swap.py", "face"),
    ("paper/before_sawing.py", "edge"),
    ("paper/before_sawing.py", "hole"),
    ("shop/span.py", "tabs"),
    # The edge of a part that a feature stands on, and that of a sheet where a clamp lies.
    ("settling/part.py", "edge"),
    ("reading/feature_kinds.py", "edge"),
    ("reading/sheet.py", "edge"),
    # Which way a member lies in a span, and its plies: on edge or flat.
    ("model/span.py", "edge"),
    ("reading/span.py", "edge"),
    ("shop/member.py", "edge"),
    ("shop/fibre.py", "edge"),
}


def words_in(source: str) -> Iterator[str]:
    """Yield every text in a source that is just the word of a kind."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Constant) and node.value in WORDS:
            yield node.value


def test_the_words_of_kinds_stand_in_one_place() -> None:
    found = {
        (path.relative_to(GENERATOR).as_posix(), word)
        for path in sorted(GENERATOR.rglob("*.py"))
        for word in words_in(path.read_text("utf-8"))
    }
    assert {each for each in found if each[0] not in DECLARED} == OTHER_MEANINGS


def test_the_check_itself_sees_a_word() -> None:
    source = 'def f(x):\n    """A slot."""\n    return x.kind in ("slot", "a slot", "tabs")\n'
    assert [*words_in(source)] == ["slot", "tabs"]
