"""The pages of ``docs`` say what the program does: their plan, their pictures, their words."""

from __future__ import annotations

import re

from kerfolio.basis.finding import has_errors
from kerfolio.basis.functions import CONSTANTS, FUNCTIONS, SHEET_FUNCTIONS
from kerfolio.proving.prove import prove_plan
from kerfolio.reading.workshop import read_workshop
from tests.tools.docs_pictures import DOCS, PICTURES, pictures

PAGE = (DOCS / "places-and-sizes.md").read_text("utf-8")


def test_the_pictures_are_what_the_program_draws() -> None:
    """``python -m tests.tools.docs_pictures`` draws them anew."""
    made = pictures()
    assert set(re.findall(r"\(pictures/(.+?)\)", PAGE)) == set(made)
    assert {each.name: each.read_bytes() for each in PICTURES.iterdir()} == made


def test_what_is_quoted_stands_in_a_plan_without_errors() -> None:
    plan = (DOCS / "example" / "plans" / "trestle" / "plan.yaml").read_text("utf-8")
    lines = {re.sub(r"\s+#.*", "", each).strip() for each in plan.splitlines()}
    quoted = re.findall(r"^    (?!\.venv|wedge: )(.+)$", PAGE, re.MULTILINE)
    assert len(quoted) == 7
    assert set(quoted) <= lines
    workshop, read = read_workshop(DOCS / "example")
    assert workshop
    found = prove_plan(workshop.plans[0], workshop.stock).findings
    assert not has_errors((*read, *found))


def test_every_function_of_expressions_is_listed() -> None:
    for name in (*FUNCTIONS, *SHEET_FUNCTIONS):
        assert f"`{name}(" in PAGE, name
    for name in CONSTANTS:
        assert f"`{name}`" in PAGE
    assert f"a power of {8} at most" in PAGE
