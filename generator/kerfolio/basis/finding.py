"""What is wrong, doubtful or worth knowing in a maker's files, as plain values."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from enum import StrEnum

from kerfolio.basis.place import NOWHERE, Place


class Severity(StrEnum):
    """How much a finding weighs: an error stops a publish, the others do not."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class Ring:
    """A circle round a spot in a part's own frame, mm."""

    x: float
    y: float
    r: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Mark:
    """Where on a part a finding is: its rings, at the fit variant of that label."""

    part: str
    rings: tuple[Ring, ...]
    variant: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One remark on a maker's input.

    ``rule`` is the id of the check (``unknown-key``); ``message`` quotes what was found and stays
    short; ``advice`` says what to write instead. ``mark`` shows where on a part it is.
    ``silenced`` is the maker's reason for not wanting to hear it, empty where it is heard.
    """

    rule: str
    message: str
    advice: str = ""
    severity: Severity = Severity.ERROR
    place: Place = NOWHERE
    mark: Mark | None = None
    silenced: str = ""

    def __str__(self) -> str:
        tail = f"\n    {self.advice}" if self.advice else ""
        return f"{self.place}: {self.severity}: {self.message} [{self.rule}]{tail}"


def error(
    rule: str, message: str, place: Place, advice: str = "", mark: Mark | None = None
) -> Finding:
    """Return a finding that stops a publish."""
    return Finding(rule=rule, message=message, advice=advice, place=place, mark=mark)


def warning(
    rule: str, message: str, place: Place, advice: str = "", mark: Mark | None = None
) -> Finding:
    """Return a finding that a maker should look at but may publish with."""
    return replace(error(rule, message, place, advice, mark), severity=Severity.WARNING)


def note(
    rule: str, message: str, place: Place, advice: str = "", mark: Mark | None = None
) -> Finding:
    """Return a finding that only informs."""
    return replace(error(rule, message, place, advice, mark), severity=Severity.NOTE)


def has_errors(findings: Iterable[Finding]) -> bool:
    """Tell whether any finding stops a publish."""
    return any(finding.severity is Severity.ERROR for finding in findings)


def in_order(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """Sort by place, then rule, and drop exact repeats."""
    unique = dict.fromkeys(findings)
    return tuple(sorted(unique, key=lambda f: (f.place, f.rule, f.message)))
