"""Short ways for tests to read one value or one small plan."""

from __future__ import annotations

from typing import Any

from kerfolio.basis.finding import Finding
from kerfolio.model.plan import Plan
from kerfolio.reading.desk import Desk
from kerfolio.reading.forms import Form
from kerfolio.reading.nodes import Node
from kerfolio.reading.plan import read_plan
from kerfolio.reading.shelf import Shelf
from kerfolio.reading.yaml_text import read_yaml
from tests.broken.good_workshop import GOOD

FILE = "test.yaml"
SHELF = Shelf(folder=GOOD / "plans" / "rack", prefix="plans/rack")
PLAN_TEXT = (GOOD / "plans" / "rack" / "plan.yaml").read_text("utf-8")


def node_of(text: str) -> Node:
    """Return the node of a sound YAML text."""
    node, findings = read_yaml(text.encode(), FILE)
    assert node is not None, findings
    assert findings == ()
    return node


def read(form: Form[Any], text: str, desk: Desk | None = None) -> tuple[Any, list[str]]:
    """Return what a form reads in a YAML text, and its findings as ``message / advice``."""
    used = desk or Desk()
    value = form.read(node_of(text), used)
    return value, said(used.findings)


def said(findings: Any) -> list[str]:
    """Return findings as ``message / advice``."""
    return [f"{each.message} / {each.advice}" for each in findings]


def plan_of(text: str) -> tuple[Plan | None, tuple[Finding, ...]]:
    """Return a plan read from its text, with the good workshop's files beside it."""
    made = read_plan(text.encode(), "rack", SHELF)
    return made.plan, made.findings


def changed(old: str, new: str) -> str:
    """Return the good plan's text with one text in it changed."""
    assert PLAN_TEXT.count(old) == 1, old
    return PLAN_TEXT.replace(old, new)


SIZES = "sizes: {w: 300, h: w/2, t: thickness(ply)}"
HEAD = """\
plan: Try
version: 1.0.0
summary: A plan for tests.
units: mm
sizes: {w: 300, h: w/2, t: thickness(ply)}
sheets: {ply: {stock: birch-plywood-18}, thin: {stock: birch-plywood-4}}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
