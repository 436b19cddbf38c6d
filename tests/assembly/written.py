"""Plans written as a maker's would be, for tests of putting together: `plans/*.yaml`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache
from pathlib import Path

from kerfolio.assembly.building import Build, build_of
from kerfolio.assembly.poses import Together, put_together
from kerfolio.basis.finding import Finding, Severity
from kerfolio.proving.prove import prove_plan
from kerfolio.proving.rules import TOGETHER
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.settling.variant import drawn_variant, variants
from tests.plans import altered, workshop

FOLDER = Path(__file__).resolve().parent / "plans"
NAMES = ("stool", "cupboard", "egg-crate", "workshop-table")
_LADDER = re.compile(r"published-for: \S+ to \S+ by \S+, drawn-for: (\S+),")


@cache
def text(name: str) -> str:
    """Return the text of a plan."""
    return (FOLDER / f"{name}.yaml").read_text("utf-8")


def changed(name: str, *changes: tuple[str, str]) -> str:
    """Return the text of a plan with each old text, which must occur once, made a new one."""
    return altered(text(name), *changes)


def at_one_thickness(plan: str) -> str:
    """Return a plan's text published for the thicknesses alone that it is drawn for."""
    return _LADDER.sub(r"published-for: \1 to \1 by 0.1, drawn-for: \1,", plan)


@cache
def settled(plan: str) -> SettledPlan:
    """Return a plan's text settled at the thicknesses it is drawn for."""
    found = workshop(plan)
    return _settled(plan, [drawn_variant(found.plans[0], found.stock)])[0]


def _settled(plan: str, choices: Sequence[FitVariant]) -> list[SettledPlan]:
    found = workshop(plan)
    made = []
    for variant in choices:
        each, faults = settle(found.plans[0], found.stock, variant)
        assert each is not None, faults
        made.append(each)
    return made


@cache
def together(plan: str) -> Together:
    """Return a plan's text put together at the thicknesses it is drawn for."""
    made = put_together(settled(plan))
    assert made is not None
    return made


def at_three(plan: str) -> list[SettledPlan]:
    """Return a plan's text settled at the thinnest, the drawn and the thickest sheets."""
    found = workshop(plan)
    choices, _ = variants(found.plans[0], found.stock)
    low, high = _settled(plan, [choices[0], choices[-1]])
    return [low, settled(plan), high]


@cache
def built(plan: str) -> Build:
    """Return a plan's text put together at the thinnest, the drawn and the thickest sheets."""
    made = build_of(settled(plan), at_three(plan))
    assert made is not None
    return made


def remarks(build: Build) -> list[Finding]:
    """Return what the rules over plans put together have to say, without the notes."""
    found = [each for rule in TOGETHER for each in rule.check(build)]
    return [each for each in found if each.severity is not Severity.NOTE]


@cache
def told(plan: str) -> tuple[Finding, ...]:
    """Return all that proving says of a plan at one thickness, without the notes."""
    found = workshop(at_one_thickness(plan))
    findings = prove_plan(found.plans[0], found.stock).findings
    return tuple(each for each in findings if each.severity is not Severity.NOTE)


def joints_told(plan: str) -> tuple[Finding, ...]:
    """Return what putting a plan together says of its joints, without the notes."""
    findings = together(plan).findings
    return tuple(each for each in findings if each.severity is not Severity.NOTE)
