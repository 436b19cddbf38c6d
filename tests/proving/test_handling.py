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
