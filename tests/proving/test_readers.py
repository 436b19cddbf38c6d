"""What readers are told: words for pictures, cautions for seats, tall storage and children."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Severity
from kerfolio.model.plan import Photo, Plan
from kerfolio.model.stock import Stock
from kerfolio.proving.readers import pictures_told
from kerfolio.proving.rule import Stated
from tests.plans import proved

PLAN = """\
plan: {title}
version: 1.0.0
summary: Something of plywood.
sheets: {{ply: {{stock: birch-plywood-18, published-for: 17.8}}}}
parts:
  panel: {{sheet: ply, outline: {{rectangle: [{long}, 300]}}}}
{more}
releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""
STANDING = """\
assemblies:
  panel: {pieces: [panel], standing: {piece: panel, looks: front, top: right}}
"""
RULES = ("seat-caution", "tipping-caution", "children-caution")


def told(title: str, long: int = 400, more: str = "") -> list[str]:
    found = proved(PLAN.format(title=title, long=long, more=more)).findings
    assert all(each.severity is Severity.NOTE for each in found if each.rule in RULES)
    return [each.rule for each in found if each.rule in RULES]


@pytest.mark.parametrize(
    ("title", "long", "more", "rules"),
    [
        ("Harbour stool", 400, "", ["seat-caution"]),
        ("Two chairs", 400, "", ["seat-caution"]),
        ("Harbour stool", 400, "cautions: [Do not stand on it.]", []),
        ("Potting bench", 400, "", []),
        ("Tall bookcase", 1800, STANDING, ["tipping-caution"]),
        ("Tall bookcase", 1800, "", []),  # one board that lies on the floor
        ("Tall bookcase", 1800, f"{STANDING}cautions: [Fix it to the wall.]", []),
        ("Shelves for jars", 685, STANDING, ["tipping-caution"]),  # under 27 in, and 17.8 mm deep
        ("Tall bookcase", 1800, f"{STANDING}placed: on a table", []),
        ("Tabletop", 1800, "", []),
        ("Doll's house", 400, "for-children: true", ["children-caution"]),
        ("Doll's house", 400, "for-children: no", []),
        (
            "Doll's house",
            400,
            "for-children: true\ncautions: [An adult stays near; from the age of three.]",
            [],
        ),
    ],
)
def test_cautions(title: str, long: int, more: str, rules: list[str]) -> None:
    assert told(title, long, more) == rules


@pytest.mark.parametrize(
    ("alt", "fires"),
    [
        ("stool.png", True),
        ("Photo", True),
        ("A picture of the Harbour stool", True),
        ("The left side lies ready with its boat outward.", False),
        ("A rack with two shelves", False),
    ],
)
def test_words_for_pictures(alt: str, fires: bool) -> None:
    plan = Plan(
        name="stool",
        title="Harbour stool",
        version="1.0.0",
        summary="",
        photos=(Photo(file="photos/stool.png", alt=alt),),
    )
    found = [each.rule for each in pictures_told.check(Stated(plan=plan, stock=Stock()))]
    assert found == (["alt-says-little"] if fires else [])
