"""The good plan with odd values in odd places: reading and proving never fail, they tell."""

from __future__ import annotations

import re

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kerfolio.proving.prove import prove_plan
from kerfolio.reading.plan import read_plan
from kerfolio.reading.shelf import Shelf
from kerfolio.reading.workshop import read_workshop
from tests.broken.good_workshop import GOOD

TEXT = (GOOD / "plans" / "rack" / "plan.yaml").read_text("utf-8")
SHELF = Shelf(folder=GOOD / "plans" / "rack", prefix="plans/rack")
SPOTS = [each.span() for each in re.finditer(r"(?<=[\[ (,:])[a-z0-9/.-]+(?=[\],} \n)])", TEXT)]
ODD = [
    *(
        "0",
        "-5",
        "360",
        "999999999",
        "999999999*999999999",
        "999999999 m",
        "0.001",
        "t",
        "depth",
        "inner/0",
        "90",
        "1/2 in",
        "''",
        "",
    ),
    *("ply", "any", "yes", "x", "top", "[0, 0]", "[[0, 0], [1, 1], [2, 2]]", "{x: 100}"),
]


@settings(max_examples=50, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(st.lists(st.tuples(st.sampled_from(SPOTS), st.sampled_from(ODD)), min_size=1, max_size=3))
def test_any_change_has_findings_or_a_settled_plan(
    changes: list[tuple[tuple[int, int], str]],
) -> None:
    text = TEXT
    for (start, end), odd in sorted(dict(changes).items(), reverse=True):
        text = text[:start] + odd + text[end:]
    made = read_plan(text.encode(), "rack", SHELF)
    if made.plan is None:
        assert made.findings
        return
    workshop, _ = read_workshop(GOOD)
    assert workshop is not None
    proof = prove_plan(made.plan, workshop.stock)
    assert proof.drawn is not None or proof.findings or made.findings
