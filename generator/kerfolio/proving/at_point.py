"""Proves a plan at one more point, which nobody published it for."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from kerfolio.assembly.building import fitted_at
from kerfolio.assembly.made import Made
from kerfolio.basis.finding import Finding
from kerfolio.model.stock import Stock
from kerfolio.proving.folding import at
from kerfolio.proving.going_together import joints_agree, pieces_fit
from kerfolio.proving.looking import looked_at
from kerfolio.proving.prove import Proof, as_told
from kerfolio.settling.making import one_of, set_of
from kerfolio.settling.settle import Settler
from kerfolio.settling.settled import FitVariant, SettledPlan


def prove_at(
    proof: Proof, stock: Stock, there: FitVariant
) -> tuple[SettledPlan | None, tuple[Finding, ...]]:
    """Return a proved plan settled at a point, and what is found there and was not before.

    It has the pieces of everything the plan makes. None where it cannot be settled there.
    """
    settled, faults = looked_at(Settler(proof.plan, stock), there)
    found = [at(each, there) for each in faults]
    if settled is not None:
        found += [each for made in proof.made for each in _together(made, settled, there)]
    before = {each.identity for each in proof.findings}
    before |= {at(each, there).identity for each in proof.findings}
    fresh = [each for each in found if each.identity not in before]
    told = as_told(fresh, proof.plan, complete=False)
    return None if settled is None else set_of(settled), told


def _together(made: Made, settled: SettledPlan, there: FitVariant) -> Iterator[Finding]:
    """Yield what is wrong where a thing that the plan makes is put together."""
    if made.build is None:
        return
    fitted = fitted_at(one_of(settled, made.stated), made.settled, made.build.drawn)
    build = replace(made.build, fitted=() if fitted is None else (fitted,))
    yield from joints_agree.check(build)  # which says itself where
    yield from (at(each, there) for each in pieces_fit.check(build))
