"""Spoiled layout files are read or told, and what is read is kept as it is.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_layout.py
"""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import has_errors
from kerfolio.basis.place import Place
from kerfolio.layouts.check import first_faults
from kerfolio.layouts.fingerprint import placements_digest
from kerfolio.layouts.frozen import freeze, lost_with
from kerfolio.layouts.thawing import thaw
from tests.fuzz.findings import check_findings
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated
from tests.fuzz.seeds import texts
from tests.plans import proved, small_layout

FILE = Place("plans/rack/layout.json")
SEEDS = (*texts("plans/*/layout.json"), *[freeze(small_layout())] * 4)
WORDS = ("true", "null", "NaN", "Infinity", "{}", "[]", '"x"', "side.left", "ply", "rail")


def check(text: str) -> None:
    layout, findings = thaw(text, FILE)
    check_findings(findings, FILE.file)
    assert layout is not None or has_errors(findings), "neither read nor told"
    lost_with(text, FILE, placements_digest(small_layout().sheets))
    if layout is None:
        return
    check_findings(first_faults(layout, proved().points), "plans/rack/")
    again, told = thaw(freeze(layout), FILE)
    assert (again is not None, told) == (True, ()), "what was read cannot be frozen"


@pytest.mark.fuzz
def test_a_spoiled_layout_is_read_or_told() -> None:
    hunt(mutated(SEEDS, WORDS), check)
