"""The search for the cheapest boards: quick fillings first, then column generation."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.layouts.board_columns import improved
from kerfolio.layouts.board_filling import joined, quick_fills
from kerfolio.layouts.board_job import Fill, Job, Scale
from kerfolio.layouts.board_patterns import by_size


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The boards, a total price that nothing can undercut, and whether the boards reach it."""

    fills: tuple[Fill, ...]
    bound: int
    proven: bool


def search(job: Job) -> Found:
    """Return boards of the least total price that was found, then the fewest.

    Deterministic: effort is bounded by counted work. The programmes are asked only when the quick
    fillings leave a gap to the bound by size.
    """
    if not job.sizes:
        return Found(fills=(), bound=0, proven=True)
    scale = Scale.of(job)
    best = min(quick_fills(job), key=scale.rank)
    bound = scale.reached(by_size(job, scale).bound)
    if scale.cost(best) > bound:
        best, bound = improved(job, scale, best, bound)
    proven = scale.cost(best) <= bound
    fills = _ordered(joined(job, scale, best), job)
    return Found(fills=fills, bound=bound * scale.unit, proven=proven)


def _ordered(fills: Sequence[Fill], job: Job) -> tuple[Fill, ...]:
    """Order boards by falling length, then those with the longest pieces first."""
    longest = sorted(fills, key=lambda each: each.take, reverse=True)
    return tuple(sorted(longest, key=lambda each: -job.prices[each.room]))
