"""The plan's named numbers, worked out in the order their names need."""

from __future__ import annotations

from collections.abc import Mapping
from graphlib import CycleError, TopologicalSorter

from kerfolio.basis.expression import Expression, parse
from kerfolio.basis.finding import Finding, error
from kerfolio.model.plan import Plan, Size
from kerfolio.settling.scope import Scope, SettlingError
from kerfolio.settling.settled import Sized
from kerfolio.settling.size_dimension import dimensions


def scope_of(
    plan: Plan, thickness: Mapping[str, float], fit: Mapping[str, float]
) -> tuple[Scope, tuple[tuple[str, Sized], ...], tuple[Finding, ...]]:
    """Return the scope of a plan, its sizes in mm and what could not be settled.

    ``thickness`` and ``fit`` are in mm by sheet.
    """
    bare = Scope(unit=plan.units)
    per = bare.mm_per_unit
    thick = {name: value / per for name, value in thickness.items()}
    fits = {name: value / per for name, value in fit.items()}
    stated = {size.name: size for size in plan.sizes}
    known: dict[str, float] = {}
    order, findings = _in_order_of_need(stated, plan.units)
    for name in order:
        scope = Scope(unit=plan.units, names=known, thickness=thick, fit=fits)
        try:
            known[name] = scope.value(stated[name].amount)
        except SettlingError as trouble:
            findings.append(trouble.about(name))
    scope = Scope(unit=plan.units, names=known, thickness=thick, fit=fits)
    powers = {} if per == 1 else dimensions(plan, order)
    sized = tuple(
        (size.name, Sized(known[size.name] * per ** powers.get(size.name, 0), size.amount.text))
        for size in plan.sizes
        if size.name in known
    )
    return scope, sized, tuple(findings)


def _in_order_of_need(stated: Mapping[str, Size], unit: str) -> tuple[list[str], list[Finding]]:
    """Return the names, each after those it needs; rings are left out with a finding each."""
    needs = {name: _needs(size, stated, unit) for name, size in stated.items()}
    findings: list[Finding] = []
    while True:
        try:
            return list(TopologicalSorter(needs).static_order()), findings
        except CycleError as ring:
            chain = list(reversed(ring.args[1]))
            first = stated[chain[0]]
            message = f"sizes go in a circle: {' -> '.join(chain)}"
            advice = "State one of them as a number."
            place, name = first.amount.place, chain[0]
            findings.append(error("size-cycle", message, place, advice, subject=name))
            lost = set(chain)
            needs = {n: needed - lost for n, needed in needs.items() if n not in lost}


def _needs(size: Size, stated: Mapping[str, Size], unit: str) -> set[str]:
    expression = parse(size.amount.text, unit)
    return {*expression.names} & stated.keys() if isinstance(expression, Expression) else set()
