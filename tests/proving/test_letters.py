"""Letters that cannot be printed are told wherever they stand in a plan."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Severity
from tests.plans import RACK, proved
from tests.sets import SET


@pytest.mark.parametrize(
    ("plan", "old", "new", "message", "line"),
    [
        (RACK, "plan: Probe rack", "plan: Probe 木 rack", "`木` in the title prints as `?`", 1),
        (RACK, "grain: along x", "note: 木", "`木` in the note of a part prints as `?`", 18),
        (RACK, "for: sides}", "for: 木}", "`木` in a use of hardware prints as `?`", 29),
        (RACK, "title: Put", "title: 木 Put", "`木` in the title of step 1 prints as `?`", 31),
        (RACK, "First release.", "木", "`木` in release 1.0.0 prints as `?`", 35),
        (SET, "text: Push.", "text: 木", "`木` in the text of step 1 of `foot` prints as `?`", 34),
        (SET, "pieces: [board]", "title: 木\n    pieces: [board]", "`木` in the title of `board` "
         "prints as `?`", 35),
    ],
)  # fmt: skip
def test_a_letter_no_font_has_is_told(
    plan: str, old: str, new: str, message: str, line: int
) -> None:
    assert plan.count(old) == 1
    found = [
        each
        for each in proved(plan.replace(old, new)).findings
        if each.rule == "unprintable-letter"
    ]
    assert [(each.message, each.severity) for each in found] == [(message, Severity.WARNING)]
    assert found[0].place.line == line


@pytest.mark.parametrize("plan", [RACK, SET])
def test_a_plan_in_plain_letters_is_not(plan: str) -> None:
    assert "unprintable-letter" not in [each.rule for each in proved(plan).findings]
