"""Proves a plan: rules over what it states, settling at every variant, rules over the results."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from generator.basis.finding import Finding, in_order
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
    """Settle at every variant and look at each result; the same remark is made once.

    Where the thinnest sheets fail only the thickest are tried besides: what is wrong at both is
    wrong at all.
    """
    settled: list[SettledPlan] = []
    found: list[tuple[FitVariant, Finding]] = []
    tried = choices
    for variant in choices:
        if variant not in tried:
            continue
        made, faults = settle(plan, stock, variant)
        found += [(variant, fault) for fault in faults]
        if made is not None:
            settled.append(made)
            found += [(variant, each) for rule in RULES_AFTER for each in rule.check(made)]
        elif not settled:
            tried = tuple(dict.fromkeys((choices[0], choices[-1])))
    return settled, folded(found, len(tried))


def folded(found: Iterable[tuple[FitVariant, Finding]], count: int) -> tuple[Finding, ...]:
    """Make one remark of those that differ only in the variant, of ``count`` that were tried.

    It is the first one; where only some of the variants are concerned, it names the first of them.
    """
    groups: dict[tuple[object, ...], list[tuple[FitVariant, Finding]]] = {}
    for variant, finding in found:
        key = (finding.rule, finding.severity, finding.place, _without_numbers(finding.message))
        groups.setdefault(key, []).append((variant, finding))
    return tuple(_told(group, count) for group in groups.values())


def _told(group: Sequence[tuple[FitVariant, Finding]], count: int) -> Finding:
    variant, finding = group[0]
    concerned = len({each.label for each, _ in group})
    if concerned == count:
        return finding
    return replace(finding, message=f"{finding.message} (at {variant.label})")


_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?(?= mm)|\.[0-9]+(?=`)")


def _without_numbers(text: str) -> str:
    """Return a message without its lengths and the numbers of copies; other numbers stay."""
    return _NUMBER.sub("#", text)
