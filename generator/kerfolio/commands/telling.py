"""What commands print: findings, what is being done, what was written."""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

import click

from kerfolio.basis.digits import rounded
from kerfolio.basis.finding import Finding, Severity
from kerfolio.basis.words import counted

if TYPE_CHECKING:
    from kerfolio.publishing.freeze import Frozen


@dataclass(slots=True)
class Run:
    """What is being done at this moment, and whether a fault of ours is shown with its trace."""

    doing: str = ""
    trace: bool = False


RUN = Run()
"""The command that runs."""


_BAR = 30  # signs of a bar


class Progress:
    """Says what is being done: one rewritten line on a terminal, plain lines when piped."""

    def __init__(self) -> None:
        self._live = sys.stderr.isatty()

    def __call__(self, text: str) -> None:
        """Show what is being done now."""
        RUN.doing = text
        if self._live:
            click.echo(f"\r\x1b[2K{text} ...", err=True, nl=False)
        else:
            click.echo(text, err=True)

    def tally(self, done: int, of: int) -> None:
        """Show how many plans are done and left; of one alone there is nothing to count."""
        if of < 2:
            return
        words = f"{done} of {of} plans done, {of - done} left"
        if self._live:
            full = _BAR * done // of
            words = f"[{'#' * full}{'.' * (_BAR - full)}] {words}"
        self(words)

    def close(self) -> None:
        """Clear the line that is being rewritten."""
        if self._live:
            click.echo("\r\x1b[2K", err=True, nl=False)


def print_findings(findings: Iterable[Finding]) -> None:
    """Print each finding that is not silenced."""
    for finding in findings:
        if not finding.silenced:
            click.echo(str(finding))


def print_frozen(each: Frozen, words: str) -> None:
    """Say which layout was written, and where the one before it is kept."""
    click.echo(f"wrote {each.file}: {words}")
    if each.spare:
        click.echo(f"kept the one before as {each.spare}: {each.reason}")


def summary(findings: Iterable[Finding]) -> str:
    """Return how many findings there are of each severity, in a sentence."""
    found = tuple(findings)
    heard = [each for each in found if not each.silenced]
    counts = [(each, sum(f.count for f in heard if f.severity is each)) for each in Severity]
    words = [counted(count, str(each)) for each, count in counts if count]
    silenced = sum(each.count for each in found if each.silenced)
    if silenced:
        words.append(f"{silenced} silenced")
    return ", ".join(words) + "." if words else "Nothing to remark."


def as_json(findings: Iterable[Finding]) -> str:
    """Return findings as JSON."""
    rows = [
        {
            "rule": finding.rule,
            "severity": str(finding.severity),
            "message": finding.message,
            "advice": finding.advice,
            "file": finding.place.file,
            "line": finding.place.line,
            "column": finding.place.column,
            "silenced": finding.silenced,
            "subject": finding.subject,
            "count": finding.count,
            "facts": [
                {"name": fact.name, "value": rounded(fact.value), "unit": fact.unit}
                for fact in finding.facts
            ],
        }
        for finding in findings
    ]
    return json.dumps(rows, indent=1)  # in ASCII: it is the same in every locale
