"""Checks of the steps and of what they use."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity, error, note, warning
from kerfolio.basis.measures import number
from kerfolio.basis.said import said
from kerfolio.proving.naming import pieces_of
from kerfolio.proving.rule import COMMON_PRACTICE, Stated, before
from kerfolio.shop.lists import hardware_counts


@before(
    "piece-added-twice",
    reason="Each piece is used exactly once.",
    source=COMMON_PRACTICE,
    also=("piece-never-added",),
    unbuilt=True,
)
def added_once(stated: Stated) -> Iterator[Finding]:
    """Look for pieces that are added in two steps or in none."""
    if not stated.plan.steps:
        return
    seen: set[str] = set()
    for step in stated.plan.steps:
        for each in step.add:
            if each.name in seen:
                message = f"piece `{each.name}` is added twice"
                advice = "Each piece joins once; name the other piece that is meant."
                yield error("piece-added-twice", message, each.place, advice, subject=each.name)
            seen.add(each.name)
    for label, part in pieces_of(stated.plan).items():
        if label not in seen:
            message = f"piece `{label}` joins in no step"
            advice = f"Put `{label}` under `add` of the step where it joins."
            yield error("piece-never-added", message, part.place, advice, subject=label)


@before(
    "hardware-sum",
    reason="Totals are summed from the steps.",
    source=COMMON_PRACTICE,
    also=("hardware-unlisted",),
)
def hardware_sum(stated: Stated) -> Iterator[Finding]:
    """Look for a hardware list that is not the sum over the steps."""
    plan = stated.plan
    if not plan.steps or not plan.hardware:
        return  # a plan without a list of its own is summed from its steps
    summed = hardware_counts(plan) if any(step.hardware for step in plan.steps) else {}
    listed = Counter[str]()
    for use in plan.hardware:
        listed[use.item.name] += use.count
    for use in plan.hardware:
        if listed[use.item.name] != summed.get(use.item.name, 0):
            name = use.item.name
            counts = number("listed", listed[name]), number("used", summed.get(name, 0))
            message = said("`{}`: the list says {}, the steps use {}", name, *counts)
            advice = "Make the list and the steps' `hardware` agree."
            yield error("hardware-sum", message, use.place, advice, subject=name)
    for step in plan.steps:
        for use in step.hardware:
            if use.item.name not in listed:
                unlisted = f"`{use.item.name}` is used but not listed"
                advice = f"Add `{{item: {use.item.name}, count: ...}}` to `hardware`."
                name = use.item.name
                yield error("hardware-unlisted", unlisted, use.place, advice, subject=name)


@before(
    "silent-step",
    reason="A step must tell something.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def silent_steps(stated: Stated) -> Iterator[Finding]:
    """Look for steps that tell nothing."""
    for step in stated.plan.steps:
        if not step.text and not step.photo:
            message = f"step `{step.title}` has neither text nor photo"
            advice = "Say what to do, in a sentence."
            yield warning("silent-step", message, step.place, advice, subject=step.title)


@before(
    "no-steps",
    reason="Order of assembly is asked for.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def no_steps(stated: Stated) -> Iterator[Finding]:
    """Look for a plan without steps."""
    if not stated.plan.steps:
        advice = "Add `steps`: readers have no order of assembly yet."
        yield note("no-steps", "the plan has no steps", stated.plan.place, advice)
