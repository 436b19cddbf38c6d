"""Keys that are indented too little: the mapping they were meant for is named, and nothing else."""

from __future__ import annotations

import pytest

from kerfolio.reading.plan import read_plan
from kerfolio.reading.shelf import Shelf
from tests.broken.good_workshop import GOOD

FOLDER = GOOD / "plans" / "rack"
TEXT = (FOLDER / "plan.yaml").read_text("utf-8")


def told(text: str) -> list[tuple[str, str, str]]:
    read = read_plan(text.encode(), "rack", Shelf(folder=FOLDER, prefix="plans/rack"))
    own = [each for each in read.findings if each.rule != "picture"]
    return [(each.rule, each.message, each.advice) for each in own]


def indented(word: str, under: str) -> tuple[str, str, str]:
    return "indentation", f"`{word}` is indented too little", f"Indent `{word}` under {under}."


@pytest.mark.parametrize(
    ("old", "new", "findings"),
    [
        (
            "    features:\n      left-tab",
            "  features:\n      left-tab",
            [indented("features", "`shelf`")],
        ),
        (
            "    drawn-for: 17.8\n    fit: 0.1\n",
            "drawn-for: 17.8\nfit: 0.1\n",
            [indented("drawn-for", "`ply`"), indented("fit", "`ply`")],
        ),
        (
            "      mark: {engrave",
            "    mark: {engrave",
            [indented("mark", "`features`")],
        ),
        (
            "    caution: Mind your fingers.\n",
            "caution: Mind your fingers.\n",
            [indented("caution", "the last of `steps`")],
        ),
    ],
)
def test_a_key_beside_its_mapping(old: str, new: str, findings: list[tuple[str, str, str]]) -> None:
    assert TEXT.count(old) == 1
    assert told(TEXT.replace(old, new)) == findings


def test_a_part_may_be_called_as_a_key_is() -> None:
    text = TEXT.replace("  back:\n", "  note:\n").replace("back.slot", "note.slot")
    assert told(text.replace("add: [back]", "add: [note]")) == []
