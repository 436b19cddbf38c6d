"""Ladders of thicknesses: how many rungs one has, and a step that gives it few enough."""

from __future__ import annotations

from math import ceil, log10

from kerfolio.basis.tolerance import NOISE

MOST_RUNGS = 40
"""Thicknesses that a coupon may be asked to try."""

_ENOUGH = 12
"""Rungs that a reader can choose from at a glance."""


def rung_count(first: float, last: float, step: float) -> int:
    """Return how many thicknesses a ladder has, both ends in one unit with the step above 0."""
    return int((last - first) / step + 1 + NOISE)


def sparse_step(first: float, last: float, least: float) -> float:
    """Return the smallest step of 1, 2 or 5 times a power of ten, and at least ``least``, that
    makes no more than a dozen rungs.
    """
    wanted = max((last - first) / (_ENOUGH - 1), least)
    power = 10.0 ** ceil(log10(wanted) - 1 - NOISE)
    steps = (power * each for each in (1, 2, 5, 10))
    return next(each for each in steps if each >= wanted - NOISE * power)
