"""Spoiled plan files are read or told.

For ten minutes: FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_plan.py
"""

from __future__ import annotations

import pytest

from kerfolio.reading.plan import read_plan
from kerfolio.reading.shelf import Shelf
from tests.broken.good_workshop import GOOD
from tests.conftest import SAMPLE
from tests.fuzz.findings import check_findings
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated
from tests.fuzz.seeds import texts
from tests.plans import RACK

SEEDS = (*texts("plans/*/plan.yaml"), RACK)
SHELVES = (
    Shelf(folder=GOOD / "plans" / "rack", prefix="plans/rack", decodes=False),
    *(
        Shelf(folder=each.parent, prefix=f"plans/{each.parent.name}", decodes=False)
        for each in sorted(SAMPLE.glob("plans/*/plan.yaml"))
    ),
)


def check(text: str) -> None:
    content = text.encode("utf-8", "surrogatepass")
    for shelf in SHELVES[:: 1 if "drawings/" in text else len(SHELVES)]:
        made = read_plan(content, shelf.folder.name, shelf)
        check_findings(made.findings, shelf.prefix)
        assert made.plan is not None or made.findings, "neither read nor told"


@pytest.mark.fuzz
def test_a_spoiled_plan_is_read_or_told() -> None:
    hunt(mutated(SEEDS), check)
