"""A side and a rail of one sheet that a test joins, bolts or cuts as it needs."""

from __future__ import annotations

from textwrap import indent

from kerfolio.basis.finding import Finding, Severity
from tests.plans import proved

PLAN = """\
plan: Two panels
version: 1.0.0
summary: Two panels to join.
sheets:
  ply: {{stock: birch-plywood-18, size: 2440 x 1220, published-for: {ladder}, fit: 0.1}}
{head}
parts:
  side:
    sheet: ply
    outline: {{rectangle: [400, 300]}}
    features:
{side}
  rail:
    sheet: ply
    outline: {{rectangle: [300, 120]}}
    features:
{rail}
joints:
{joints}
releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""


def plan_text(
    side: str = "hole: {hole: {at: [30, 270], diameter: 8}}",
    rail: str = "hole: {hole: {at: [150, 60], diameter: 8}}",
    joints: str = "",
    head: str = "",
    ladder: str = "17.8",
) -> str:
    """Return the text of a plan of two panels; ``joints`` are lines without their dashes."""
    lines = "\n".join(f"  - {{{line}}}" for line in joints.splitlines() if line.strip())
    return PLAN.format(
        ladder=ladder,
        head=head.strip("\n"),
        side=indent(side.strip("\n"), " " * 6),
        rail=indent(rail.strip("\n"), " " * 6),
        joints=lines or "  []",
    )


def remarks(text: str, *rules: str) -> list[Finding]:
    """Return what proving says under the given rules."""
    return [each for each in proved(text).findings if each.rule in rules]


def told(text: str, *rules: str) -> list[str]:
    """Return the messages of the given rules."""
    return [each.message for each in remarks(text, *rules)]


def weighs(text: str, rule: str) -> set[Severity]:
    """Return how much the findings of a rule weigh."""
    return {each.severity for each in remarks(text, rule)}
