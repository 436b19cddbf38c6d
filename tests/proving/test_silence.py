"""Silences: warnings and notes fall silent for a reason, errors never do."""

from __future__ import annotations

import pytest

from kerfolio.basis.finding import Finding, Severity
from kerfolio.proving.rules import RULES, SEVERITIES
from tests.plans import proved
from tests.proving.two_panels import plan_text, remarks

HOLE = "h: {hole: {at: [8, 150], diameter: 8}}"  # 4 mm from the edge


def silenced(lines: str, side: str = HOLE) -> str:
    return plan_text(side, head=f"silence:\n{lines}" if lines else "")


def only(text: str, rule: str) -> Finding:
    (finding,) = remarks(text, rule)
    return finding


def test_a_silenced_warning_is_a_note_with_its_reason() -> None:
    assert only(silenced(""), "breaks-out").severity is Severity.WARNING
    finding = only(silenced("  breaks-out: A brass plate covers it."), "breaks-out")
    assert (finding.severity, finding.silenced) == (Severity.NOTE, "A brass plate covers it.")
    assert finding.message == "4 mm of wood between hole `side.h` and the edge"


def test_other_rules_are_still_heard() -> None:
    text = silenced(
        "  breaks-out: Covered.", f"{HOLE}\nd: {{hole: {{at: [200, 150], diameter: 3}}}}"
    )
    assert only(text, "hole-to-drill").silenced == ""


@pytest.mark.parametrize(
    ("line", "rule", "severity", "message", "advice"),
    [
        (
            "  breaks-ot: Covered.",
            "unknown-rule",
            Severity.ERROR,
            "no rule `breaks-ot`",
            "Did you mean `breaks-out`?",
        ),
        (
            "  feature-outside: It is meant.",
            "error-silenced",
            Severity.ERROR,
            "`feature-outside` is an error",
            "What it finds stops a publish: mend that, and take this line out.",
        ),
        (
            "  thin-neck: There is none.",
            "idle-silence",
            Severity.NOTE,
            "`thin-neck` has nothing to say here",
            "Take the line out of `silence`.",
        ),
    ],
)
def test_silences_that_are_wrong(
    line: str, rule: str, severity: Severity, message: str, advice: str
) -> None:
    finding = only(silenced(line), rule)
    assert (finding.severity, finding.message, finding.advice) == (severity, message, advice)
    assert finding.place.line == 7  # where the rule stands under `silence`


def test_a_plan_that_does_not_settle_leaves_idle_silences_alone() -> None:
    broken = "h: {hole: {at: [8, 150], diameter: 0}}"
    assert remarks(silenced("  thin-neck: There is none.", broken), "idle-silence") == []


def test_every_finding_weighs_what_its_rule_says() -> None:
    """The list of rules and the findings they give are written in two places."""
    assert len(SEVERITIES) == sum(len(rule.ids) for rule in RULES)
    texts = [
        silenced("", f"{HOLE}\nd: {{hole: {{at: [200, 150], diameter: 3}}}}"),
        plan_text("n: {notch: {edge: top, at: 9, depth: 60, width: 5}}"),
        plan_text("p: {pocket: {at: [500, 150], circle: 40, depth: 50}}"),
    ]
    seen = {(each.rule, each.severity) for text in texts for each in proved(text).findings}
    assert len(seen) > 4
    assert {rule: SEVERITIES[rule] for rule, _ in seen} == dict(seen)
