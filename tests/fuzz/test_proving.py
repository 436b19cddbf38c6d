"""Spoiled plans that can be read are proved: they settle, or findings say why not.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_proving.py
"""

from __future__ import annotations

import pytest

from kerfolio.proving.prove import prove_plan
from kerfolio.reading.plan import read_plan
from kerfolio.reading.shelf import Shelf
from tests.broken.good_workshop import GOOD
from tests.fuzz.findings import check_findings
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated
from tests.fuzz.seeds import texts
from tests.plans import RACK, workshop
from tests.sets import PAIR, SET

SHELF = Shelf(folder=GOOD / "plans" / "rack", prefix="plans/rack", decodes=False)
GOOD_RACK = texts("plans/rack/plan.yaml")[0]
WORDS = ("0", "-1", "t", "h", "w/0", "90", "1/2 in", "999999999", "0.001", "top", "any", "free")


def check(text: str) -> None:
    made = read_plan(text.encode("utf-8", "surrogatepass"), "rack", SHELF)
    if made.plan is None:
        return
    proof = prove_plan(made.plan, workshop().stock)
    check_findings(proof.findings)
    assert proof.drawn is not None or proof.findings or made.findings, "neither settled nor told"


@pytest.mark.fuzz
def test_a_spoiled_plan_settles_or_is_told() -> None:
    hunt(mutated((RACK, RACK, GOOD_RACK, PAIR, SET), WORDS, edits=3), check)
