"""A found order told in words, and written out as steps."""

from __future__ import annotations

import yaml

from kerfolio.assembly.assembled import BuildOrder, BuildStep, Move
from kerfolio.assembly.told import as_yaml, told_steps
from kerfolio.basis.reader import Reader

DOWN, LEFTWARD = (0.0, 0.0, -1.0), (-1.0, 0.0, 0.0)
ORDER = BuildOrder(
    steps=(
        BuildStep(number=1, standing=(), added=("front", "rear"), moves=()),
        BuildStep(
            number=2,
            standing=("front", "rear"),
            added=("rib.1", "rib.2", "rib.3", "rib.4"),
            moves=tuple(Move(pieces=(f"rib.{n}",), direction=DOWN, travel=50) for n in range(1, 5)),
        ),
        BuildStep(
            number=3,
            standing=("front", "rear", "rib.1", "rib.2", "rib.3", "rib.4"),
            added=("side",),
            moves=(Move(pieces=("side",), direction=LEFTWARD, travel=20),),
        ),
    ),
    found=True,
)


def spoken(label: str) -> str:
    return label.replace(".", " ")


def test_titles_say_what_is_done_and_from_where() -> None:
    assert [each.title for each in told_steps(ORDER, spoken)] == [
        "Set down front and rear",
        "Push rib 1, rib 2 and 2 more down, from above",
        "Push side on from the right",
    ]


def test_only_the_first_step_says_how_the_order_came_about() -> None:
    texts = [each.text.plain() for each in told_steps(ORDER, spoken)]
    assert "worked out from the joints" in texts[0]
    assert texts[1:] == ["", ""]


def test_what_is_printed_can_be_pasted_into_a_plan() -> None:
    read = yaml.safe_load(as_yaml(told_steps(ORDER, spoken)))
    assert [step["add"] for step in read["steps"]] == [list(each.added) for each in ORDER.steps]


def test_readers_of_german_are_told_in_german() -> None:
    steps = told_steps(ORDER, spoken, Reader(language="de"))
    assert [each.title for each in steps] == [
        "Front und rear hinstellen",
        "Rib 1, rib 2 und 2 weitere von oben aufschieben",
        "Side von rechts aufschieben",
    ]
    assert steps[0].text.plain().startswith("Diese Reihenfolge ist aus den Verbindungen errechnet")
