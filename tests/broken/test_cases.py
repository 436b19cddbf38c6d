"""Broken workshops: each mistake a maker would make gives exactly the finding it should.

A case file says what is ``wrong`` in words, what is done to the good workshop (``change`` one
text ``to`` another, give a ``whole`` file, ``add`` or ``remove`` one), and the ``finding``: rule,
message, and ``at``, a text of the line it points at. ``findings`` holds several, ``beside`` the
rules that may remark on what follows from the mistake; notes may always stand beside it.
"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest
import yaml

from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.reader import INCHES
from kerfolio.basis.said import told
from kerfolio.proving.prove import prove_plan
from kerfolio.reading.workshop import read_workshop
from tests.broken.good_workshop import lay_out

CASES = sorted((Path(__file__).resolve().parent / "cases").glob("*.yaml"))
PLAN = "plans/rack/plan.yaml"


def every_finding(folder: Path) -> list[Finding]:
    """Return what reading and proving have to say."""
    workshop, read = read_workshop(folder)
    findings = list(read)
    for plan in workshop.plans if workshop else ():
        findings += prove_plan(plan, workshop.stock, workshop.trials).findings
    return list(dict.fromkeys(findings))


def without_notes(findings: list[Finding]) -> list[Finding]:
    """Return the findings that are more than notes."""
    return [each for each in findings if each.severity is not Severity.NOTE]


QUOTING = ("expression", "odd-blank")
"""Rules that quote what the maker wrote, in whatever unit it is."""


def told_in_one_unit(finding: Finding) -> bool:
    """Tell whether all lengths of a finding can be told in inches: none is a word of its text."""
    if finding.rule in QUOTING:
        return True
    for text in (finding.words, finding.counsel):
        parts = (text,) if isinstance(text, str) else text.parts
        if any(re.search(r"[0-9]`? ?(mm|kg)\b", each) for each in parts if isinstance(each, str)):
            return False
        if re.search(r"[0-9] ?(mm|kg)\b", told(text, INCHES)):
            return False
    return True


def spoil(folder: Path, case: dict[str, Any]) -> None:
    """Do to the good workshop what the case says."""
    path = folder / case.get("file", PLAN)
    if "change" in case:
        text = path.read_text("utf-8")
        assert text.count(case["change"]) == 1, "the text to change must occur once"
        path.write_text(text.replace(case["change"], case["to"]), "utf-8")
    if "whole" in case:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(case["whole"], "utf-8")
    if "bytes" in case:
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(bytes.fromhex(case["bytes"]))
    if "remove" in case:
        (folder / case["remove"]).unlink()
    if "rename" in case:
        (folder / case["rename"]).rename(folder / case["as"])


def shown(finding: Finding, folder: Path) -> dict[str, str]:
    """Return a finding as the case files write it, its whole line under ``at``."""
    place = finding.place
    path = folder / place.file
    line = ""
    if place.line and path.is_file():
        lines = path.read_text("utf-8", "replace").splitlines()
        line = lines[place.line - 1] if place.line <= len(lines) else ""
    return {
        "rule": finding.rule,
        "message": finding.message,
        "file": place.file,
        "at": line.strip(),
        "advice": finding.advice,
        "severity": str(finding.severity),
    }


def fits(expected: dict[str, str], found: dict[str, str]) -> bool:
    """Tell whether a finding is the expected one; what the case leaves out is free."""
    at = expected.get("at", "")
    rest = {key: value for key, value in expected.items() if key != "at"}
    return at in found["at"] and all(found[key] == value for key, value in rest.items())


def test_the_good_workshop_has_no_finding(tmp_path: Path) -> None:
    assert without_notes(every_finding(lay_out(tmp_path / "good"))) == []


def test_there_are_enough_cases() -> None:
    assert len(CASES) >= 60


@pytest.mark.parametrize("path", CASES, ids=lambda path: path.stem)
def test_case(path: Path, tmp_path: Path) -> None:
    case = yaml.safe_load(path.read_text("utf-8"))
    assert case["wrong"]
    folder = lay_out(tmp_path / "workshop")
    spoil(folder, case)
    every = every_finding(folder)
    assert [each for each in every if not told_in_one_unit(each)] == []
    found = [shown(each, folder) for each in every]
    expected = case.get("findings") or [case["finding"]]
    unmet = [each for each in expected if not any(fits(each, one) for one in found)]
    assert unmet == [], found
    asked = [one for one in found if any(fits(each, one) for each in expected)]
    loud = [shown(each, folder) for each in without_notes(every)]
    beside = [one for one in loud if one not in asked and one["rule"] not in case.get("beside", ())]
    assert beside == []
