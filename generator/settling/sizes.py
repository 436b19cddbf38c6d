"""The plan's named numbers, worked out in the order their names need."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.basis.expression import Expression, parse
from generator.basis.finding import Finding
from generator.model.plan import Plan, Size
from generator.settling.scope import Scope, SettlingError, unsettled
from generator.settling.settled import Sized


def scope_of(
    plan: Plan, thickness: Mapping[str, float], fit: Mapping[str, float]
) -> tuple[Scope, tuple[tuple[str, Sized], ...], tuple[Finding, ...]]:
    """Return the scope of a plan, its sizes (in the plan's unit) and what could not be settled.

    ``thickness`` and ``fit`` are in mm by sheet.
    """
    bare = Scope(unit=plan.units, names={}, thickness={}, fit={})
    per = bare.mm_per_unit
    thick = {name: value / per for name, value in thickness.items()}
    fits = {name: value / per for name, value in fit.items()}
    stated = {size.name: size for size in plan.sizes}
    known: dict[str, float] = {}
    findings: list[Finding] = []
    for size in plan.sizes:
        try:
            for each in _needed(size, stated, ()):
                if each.name not in known:
                    scope = Scope(unit=plan.units, names=known, thickness=thick, fit=fits)
                    known[each.name] = scope.value(each.amount)
        except SettlingError as trouble:
            findings.append(trouble.finding)
    scope = Scope(unit=plan.units, names=known, thickness=thick, fit=fits)
    sized = tuple(
        (size.name, Sized(known[size.name], size.amount.text))
        for size in plan.sizes
        if size.name in known
    )
    return scope, sized, tuple(findings)


def _needed(size: Size, stated: Mapping[str, Size], chain: tuple[str, ...]) -> Iterator[Size]:
    """Yield the sizes that one needs, deepest first, itself last. SettlingError: a cycle."""
    if size.name in chain:
        shown = " -> ".join((*chain[chain.index(size.name) :], size.name))
        advice = "State one of them as a number."
        raise unsettled("size-cycle", f"sizes go in a circle: {shown}", size.amount.place, advice)
    expression = parse(size.amount.text, "mm")
    if isinstance(expression, Expression):
        for name in expression.names:
            if name in stated:
                yield from _needed(stated[name], stated, (*chain, size.name))
    yield size
