"""Proves a plan: rules over what it states, settling at every variant, rules over the results."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from generator.basis.finding import Finding, has_errors, in_order
from generator.model.plan import Plan
from generator.model.stock import Stock
from generator.proving.rule import Stated
from generator.proving.rules_after import RULES_AFTER
from generator.proving.rules_before import RULES_BEFORE
from generator.settling.settle import settle
from generator.settling.settled import FitVariant, SettledPlan
from generator.settling.variant import drawn_variant, variants


@dataclass(frozen=True, slots=True, kw_only=True)
class Proof:
    """A plan with all that was found; ``drawn`` and ``variants`` only where all of it settles."""

    plan: Plan
    drawn: SettledPlan | None
    variants: tuple[SettledPlan, ...]
    findings: tuple[Finding, ...]


def prove_plan(plan: Plan, stock: Stock) -> Proof:
    """Prove a plan at every thickness it is published for."""
    stated = Stated(plan=plan, stock=stock)
    findings = [finding for rule in RULES_BEFORE for finding in rule.check(stated)]
    choices, faults = variants(plan, stock)
    findings += faults
    settled, more = _settled(plan, stock, choices)
    findings += more
    aim = drawn_variant(plan, stock)
    drawn = next((each for each in settled if each.variant == aim), None)
    complete = drawn is not None and len(settled) == len(choices)
    return Proof(
        plan=plan,
        drawn=drawn if complete else None,
        variants=tuple(settled) if complete else (),
        findings=in_order(findings),
    )


def _settled(
    plan: Plan, stock: Stock, choices: Sequence[FitVariant]
) -> tuple[list[SettledPlan], tuple[Finding, ...]]:
    """Settle at every variant and look at each result; the same remark is made once."""
    settled: list[SettledPlan] = []
    found: list[tuple[FitVariant, Finding]] = []
    for variant in choices:
        made, faults = settle(plan, stock, variant)
        found += [(variant, fault) for fault in faults]
        if made is not None:
            settled.append(made)
            found += [(variant, each) for rule in RULES_AFTER for each in rule.check(made)]
        elif has_errors(faults) and not settled:
            break  # what fails at the thinnest sheet fails alike at the others
    return settled, folded(found, len(choices))


def folded(found: Iterable[tuple[FitVariant, Finding]], count: int) -> tuple[Finding, ...]:
    """Make one remark of those that differ only in the variant.

    It is the first one; where only some variants are concerned, it says from which on.
    """
    groups: dict[tuple[object, ...], list[tuple[FitVariant, Finding]]] = {}
    for variant, finding in found:
        key = (finding.rule, finding.severity, finding.place, _without_numbers(finding.message))
        groups.setdefault(key, []).append((variant, finding))
    return tuple(_told(group, count) for group in groups.values())


def _told(group: Sequence[tuple[FitVariant, Finding]], count: int) -> Finding:
    variant, finding = group[0]
    concerned = len({each.label for each, _ in group})
    if concerned == count or count == 1:
        return finding
    return replace(finding, message=f"{finding.message} (at {variant.label})")


def _without_numbers(text: str) -> str:
    return "".join("#" if each.isdigit() or each == "." else each for each in text)
