"""The maker's silences: rules that are not to be heard in a plan, each with its reason."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from kerfolio.basis.finding import Finding, Severity, error, note
from kerfolio.basis.names import nearest
from kerfolio.model.plan import Plan

UNKNOWN, REFUSED, IDLE = "unknown-rule", "error-silenced", "idle-silence"


def heard(
    findings: Iterable[Finding],
    plan: Plan,
    severities: dict[str, Severity],
    *,
    complete: bool,
) -> tuple[Finding, ...]:
    """Return the findings, those of silenced rules as notes that carry the maker's reason.

    ``severities`` are those of all rules by the ids of their findings. Errors are never silenced.
    Silences that name no rule, an error, or (where the plan was proved ``complete``) nothing that
    was found are told.
    """
    every = tuple(findings)
    reasons = {each.rule: each.reason for each in plan.silences}
    hushed = tuple(
        replace(each, severity=Severity.NOTE, silenced=reasons[each.rule])
        if each.rule in reasons and each.severity is not Severity.ERROR
        else each
        for each in every
    )
    given = {each.rule for each in every}
    return (*hushed, *_misused(plan, severities, given, complete=complete))


def _misused(
    plan: Plan, severities: dict[str, Severity], given: set[str], *, complete: bool
) -> Iterator[Finding]:
    for each in plan.silences:
        if each.rule not in severities:
            close = nearest(each.rule, severities)
            advice = f"Did you mean `{close}`?" if close else "Ids stand behind each remark."
            message = f"no rule `{each.rule}`"
            yield error(UNKNOWN, message, each.place, advice, subject=each.rule)
        elif severities[each.rule] is Severity.ERROR:
            advice = "What it finds stops a publish: mend that, and take this line out."
            message = f"`{each.rule}` is an error"
            yield error(REFUSED, message, each.place, advice, subject=each.rule)
        elif complete and each.rule not in given:
            message = f"`{each.rule}` has nothing to say here"
            advice = "Take the line out of `silence`."
            yield note(IDLE, message, each.place, advice, subject=each.rule)
