"""Column generation: patterns of boards, the bound they prove, and the best whole choice of them.

Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations
Research 9, 1961: a pattern is what one board gives; the linear programme over patterns bounds the
cost from below, and its duals price the next pattern in a knapsack. The bound is taken from the
duals alone, scaled until no pattern undercuts them (Farley, "A note on bounding a class of linear
programming problems", Operations Research 38, 1990), so it holds whatever the solver rounds.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from kerfolio.layouts.board_filling import quick_fills, trimmed
from kerfolio.layouts.board_job import Fill, Job, Scale
from kerfolio.layouts.board_knapsack import Knapsack
from kerfolio.layouts.board_patterns import Duals, by_size, cheap_patterns

_ROUNDS = 1000
_AT_ONCE = 8
_NODES = 200
_STEPS = 1_000_000
_PATTERNS = 5_000
_TINY = 1e-9
_SOLVED = (0, 2)
"""States of the integer programme: solved, and proven to have no solution."""

Floats = NDArray[np.float64]


def improved(
    job: Job, scale: Scale, fills: tuple[Fill, ...], bound: int
) -> tuple[tuple[Fill, ...], int]:
    """Return the better of ``fills`` and a whole choice of patterns, and the better bound.

    First the mix rounded, then the whole choices over the patterns the bound needed; while that
    leaves a gap, over all patterns that a choice at the bound, and then any cheaper choice, could
    use, if these are not too many.
    """
    master = _Master(job=job, scale=scale)
    relaxed = master.relaxed(fills)
    bound = max(bound, scale.reached(relaxed.duals.bound))
    best = min((fills, *master.rounded(relaxed)), key=scale.rank)
    if scale.cost(best) > bound:
        best = master.choice(relaxed.patterns, best, bound, scale.cost(best) - 1)[0]
    for target in (bound, scale.below(scale.cost(best))):
        if scale.cost(best) <= bound:
            break
        every = cheap_patterns(job, scale, relaxed.duals, target, _STEPS)
        if every is None or len(every) > _PATTERNS:
            break
        best, solved = master.choice(every, best, bound, target)
        if solved:
            bound = min(scale.cost(best), scale.reached(target + 1))
    return best, bound


@dataclass(frozen=True, slots=True, kw_only=True)
class _Relaxed:
    """The cheapest mix of patterns, with prices that no pattern undercuts."""

    patterns: tuple[Fill, ...]
    mix: Floats
    duals: Duals


@dataclass(frozen=True, slots=True, kw_only=True)
class _Master:
    job: Job
    scale: Scale

    def relaxed(self, fills: Sequence[Fill]) -> _Relaxed:
        """Add patterns until none is worth more than it costs."""
        patterns = list(dict.fromkeys(fills))
        best = by_size(self.job, self.scale)
        for _ in range(_ROUNDS):
            mix, prices = self._mix(patterns)
            priced = list(self._priced(prices))
            best = max(best, self._safe(prices, priced), key=lambda each: each.bound)
            known = set(patterns)
            worth_it = (fill for ratio, fill in priced if ratio > 1 + _TINY)
            fresh = [fill for fill in dict.fromkeys(worth_it) if fill not in known]
            if not fresh:
                break
            patterns += fresh
        return _Relaxed(patterns=tuple(patterns[: len(mix)]), mix=mix, duals=best)

    def _safe(self, prices: Floats, priced: Sequence[tuple[float, Fill]]) -> Duals:
        """Scale prices down until the most valuable pattern costs what it is worth."""
        safe = prices / max(1.0, max(ratio for ratio, _ in priced))
        bound = float(np.array(self.job.counts) @ safe)
        return Duals(prices=tuple(safe.tolist()), bound=bound)

    def _mix(self, patterns: Sequence[Fill]) -> tuple[Floats, Floats]:
        """Return how often each pattern is used at least cost, and the price of each kind."""
        from scipy.optimize import linprog

        solved = linprog(
            [self.scale.costs[each.room] for each in patterns],
            A_ub=-_takes(patterns),
            b_ub=-np.array(self.job.counts, dtype=float),
            method="highs",
        )
        return solved.x, np.maximum(0.0, -solved.ineqlin.marginals)

    def _priced(self, duals: Floats) -> Iterator[tuple[float, Fill]]:
        """Yield for each room its most valuable pattern, with its value over its cost.

        Then the same of the pieces that are left, so that a round prices many patterns.
        """
        job = self.job
        for _ in range(_AT_ONCE):
            knapsack = Knapsack(job.sizes, job.counts, duals.tolist(), job.rooms[-1])
            taken = []
            for room, cost in enumerate(self.scale.costs):
                index = knapsack.best(job.rooms[room])
                taken.append(Fill(room=room, take=knapsack.take(index)))
                yield knapsack.values[index] / cost, taken[-1]
            job = replace(job, counts=job.left(taken[-1:]))

    def rounded(self, relaxed: _Relaxed) -> Iterator[tuple[Fill, ...]]:
        """Yield whole boards of the mix with quick fillings of what is then left over."""
        for up in (0.0, 0.3, 0.5, 0.7):
            order = np.argsort(-(relaxed.mix % 1.0), kind="stable")
            whole = [
                relaxed.patterns[index]
                for index in order
                for _ in range(int(relaxed.mix[index] + up + _TINY))
            ]
            whole = list(trimmed(self.job, whole))
            rest = replace(self.job, counts=self.job.left(whole))
            for more in quick_fills(rest):
                yield (*whole, *more)

    def choice(
        self, patterns: Sequence[Fill], best: tuple[Fill, ...], least: int, most: int
    ) -> tuple[tuple[Fill, ...], bool]:
        """Return the cheapest whole choice of patterns within two costs, and whether that is sure.

        Without one, ``best`` comes back.
        """
        from scipy.optimize import Bounds, LinearConstraint, milp

        if not patterns:
            return best, True
        counts = np.array(self.job.counts, dtype=float)
        costs = np.array([self.scale.costs[each.room] for each in patterns], dtype=float)
        solved = milp(
            costs,
            integrality=np.ones(len(patterns)),
            bounds=Bounds(0, max(self.job.counts)),
            constraints=[
                LinearConstraint(_takes(patterns), lb=counts),
                LinearConstraint(costs[None, :], lb=least, ub=most),
            ],
            options={"node_limit": _NODES, "mip_rel_gap": 0.0},
        )
        if solved.x is not None:
            repeats = [round(each) for each in solved.x]
            whole = [each for each, n in zip(patterns, repeats, strict=True) for _ in range(n)]
            best = min(best, trimmed(self.job, whole), key=self.scale.rank)
        return best, solved.status in _SOLVED


def _takes(patterns: Sequence[Fill]) -> Floats:
    """Return a row for each kind, a column for each pattern."""
    return np.array([each.take for each in patterns], dtype=float).T
