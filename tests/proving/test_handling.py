"""What a step moves, and how many people it wants.

NIOSH lifting equation (NIOSH 94-110): 23 kg x 25 / H, H = 20 + W / 2 cm; over 1.8 m two carry
(common practice).
"""

from __future__ import annotations

import pytest

from tests.proving.case_plan import found, told

RULE = "step-wants-hands"
LONG = ("wide: 500, deep: 300, high: 400", "wide: 1900, deep: 300, high: 400")
SHORTER = ("wide: 500, deep: 300, high: 400", "wide: 1750, deep: 300, high: 400")
HEAVY = (
    ("wide: 500, deep: 300, high: 400", "wide: 1700, deep: 1100, high: 400"),
    ("size: 2440 x 1220, published-for", "size: 2500 x 1250, published-for"),
)
TWO = (
    "    lies: {side.left: on its outer face}\n",
    "    lies: {side.left: on its outer face}\n    people: 2\n",
)


@pytest.mark.parametrize(
    ("changes", "messages"),
    [
        ((), []),
        ((SHORTER,), []),
        ((LONG,), ["step 1 moves `shelf` at once"]),
        ((LONG, TWO), []),
    ],
)
def test_what_is_too_long_for_one_is_told(
    changes: tuple[tuple[str, str], ...], messages: list[str]
) -> None:
    assert [each.partition(",")[0] for each in told(RULE, *changes)] == messages


def test_what_is_too_heavy_for_one_is_told() -> None:
    (finding,) = found(RULE, *HEAVY)
    assert "`shelf`" in finding.message
    facts = {each.name: each.value for each in finding.facts}
    assert facts["mass"] == pytest.approx(1.7 * 1.1 * 0.0178 * 685, rel=0.03)
    assert "`people: 2`" in finding.advice
    assert told(RULE, *HEAVY, TWO) == []


SHELF = "  - {title: Shelf, add: [shelf], text: Push the shelf into its groove.}\n"
SHELF_LATER = (
    ("rail.high, shelf]", "rail.high]"),
    ("  - title: Close with", f"{SHELF}  - title: Close with"),
)


@pytest.mark.parametrize(
    ("deep", "together", "later"),
    [
        # The shelf weighs 14.5 kg, 10.5 may be lifted; what stands weighs 6.7.
        ("deep: 700", ["step 1 moves `shelf`"], []),
        # Neither may: the shelf weighs 22.8 kg, what stands 8.7.
        (
            "deep: 1100",
            ["step 1 moves `shelf`"],
            ["step 2 moves `side.left`, `rail.low` and `rail.high`"],
        ),
    ],
)
def test_the_lighter_of_what_stands_and_what_is_new_is_moved(
    deep: str, together: list[str], later: list[str]
) -> None:
    changes = (("wide: 500, deep: 300", f"wide: 1700, {deep}"), HEAVY[1])
    assert _first(*changes) == together
    assert _first(*changes, *SHELF_LATER) == later


def _first(*changes: tuple[str, str]) -> list[str]:
    return [each.partition(" at once")[0] for each in told(RULE, *changes)[:1]]
