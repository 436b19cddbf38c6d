"""What is built so far at the end of a step: it stands, or falls over (statics of a rigid body)."""

from __future__ import annotations

import pytest

from tests.proving.case_plan import LIES, told

RULES = ("step-topples", "step-unsteady")


@pytest.mark.parametrize(
    ("lies", "topples", "unsteady"),
    [
        (LIES, [], []),
        (
            "",
            [],
            [
                "after step 1, what is built of `side.left`, `rail.low`, `rail.high` and 1 more "
                "falls over as it stands"
            ],
        ),
        ("    people: 2\n", [], []),
        (
            "    lies: {side.left: on its left}\n",
            [],
            [],
        ),
        (
            "    lies: {shelf: face down}\n",
            [
                "as step 1 lies, what is built of `side.left`, `rail.low`, `rail.high` and 1 more "
                "falls over"
            ],
            [],
        ),
        ("    lies: {shelf: face down}\n    people: 2\n", [], []),
    ],
)
def test_what_falls_over_half_built_is_told(
    lies: str, topples: list[str], unsteady: list[str]
) -> None:
    found = [told(rule, (LIES, lies)) for rule in RULES]
    assert found == [topples, unsteady]


def test_what_stands_by_itself_half_built_is_not_told() -> None:
    frame = "add: [side.left, rail.low, rail.high"
    whole = (
        (f"{frame}, shelf]", f"{frame}, side.right]"),
        ("    add: [side.right]", "    add: [shelf]"),
        (LIES, ""),
    )
    assert [told(rule, *whole) for rule in RULES] == [[], []]
