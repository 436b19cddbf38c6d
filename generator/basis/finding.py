"""What is wrong, doubtful or worth knowing in a maker's files, as plain values."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from enum import StrEnum

from generator.basis.place import NOWHERE, Place


class Severity(StrEnum):
    """How much a finding weighs: an error stops a publish, the others do not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One remark on a maker's input.

    ``rule`` is the id of the check (``unknown-key``); ``message`` quotes what was found and stays
    short; ``advice`` says what to write instead.
    """

    rule: str
    message: str
    advice: str = ""
    severity: Severity = Severity.ERROR
    place: Place = NOWHERE

    def __str__(self) -> str:
        tail = f"\n    {self.advice}" if self.advice else ""
        return f"{self.place}: {self.severity}: {self.message} [{self.rule}]{tail}"


def error(rule: str, message: str, place: Place, advice: str = "") -> Finding:
    """Return a finding that stops a publish."""
    return Finding(rule=rule, message=message, advice=advice, place=place)


def warning(rule: str, message: str, place: Place, advice: str = "") -> Finding:
    """Return a finding that a maker should look at but may publish with."""
    return Finding(
        rule=rule, message=message, advice=advice, severity=Severity.WARNING, place=place
    )


def note(rule: str, message: str, place: Place, advice: str = "") -> Finding:
    """Return a finding that only informs."""
    return Finding(rule=rule, message=message, advice=advice, severity=Severity.NOTE, place=place)


def has_errors(findings: Iterable[Finding]) -> bool:
    """Tell whether any finding stops a publish."""
    return any(finding.severity is Severity.ERROR for finding in findings)


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Sort by place, then rule, and drop exact repeats."""
    unique = dict.fromkeys(findings)
    return tuple(sorted(unique, key=lambda f: (f.place, f.rule, f.message)))
