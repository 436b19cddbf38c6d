"""Spoiled expressions have a value or say why not.

For ten minutes:
FUZZ_MINUTES=10 .venv/bin/python -m pytest -m fuzz -n 0 -s tests/fuzz/test_expression.py
"""

from __future__ import annotations

import math
import re

import pytest

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.expression import ExpressionError, parse
from kerfolio.basis.finding import error
from kerfolio.basis.place import Place
from tests.fuzz.findings import check_findings
from tests.fuzz.hunt import hunt
from tests.fuzz.mutation import mutated
from tests.fuzz.seeds import texts

WORDS = (
    *("+", "-", "*", "/", "**", "^", "%", "(", ")", ",", "mm", "in", "cm", "m", "ft", '"', "'"),
    *("sqrt(", "sin(", "cos(", "tan(", "min(", "max(", "round(", "floor(", "abs(", "atan2("),
    *("thickness(", "fit(", "pi", "ply", "seat", "1' 6-1/2\"", "3/4 in", '23/32"', "18 mm"),
)
SEEDS = (
    *dict.fromkeys(
        found
        for text in texts("plans/*/plan.yaml")
        for found in re.findall(r"[a-z0-9.]+(?: ?[-+*/] ?[a-z0-9.()]+)+", text)
    ),
    *("3/4 in", "1' 6-1/2\"", "max(t, 2*fit(ply))", "sqrt(seat**2 + height**2)", "-(-2)**3"),
    *("sin(30) + cos(60)*tan(45)", "((((seat))))", "seat/(height - 2*t)", "18 mm + 1/16 in"),
)
PLACE = Place("plan.yaml", 1, 1)


def check(text: str) -> None:
    for unit in ("mm", "in"):
        read = parse(text, unit)
        if isinstance(read, Complaint):
            check_findings([error("expression", read, PLACE, read.advice)])
            continue
        for value in (0.0, 17.8, -1e300, 1e-300):
            given = [dict.fromkeys(names, value) for names in (read.names, *[read.sheets] * 2)]
            try:
                found = read.evaluate(*given)
            except ExpressionError as refused:
                check_findings([error("no-value", str(refused), PLACE, refused.advice or "-")])
            else:
                assert math.isfinite(found), "no finite value"


@pytest.mark.fuzz
def test_a_spoiled_expression_has_a_value_or_says_why_not() -> None:
    hunt(mutated(SEEDS, WORDS, edits=5), check)
