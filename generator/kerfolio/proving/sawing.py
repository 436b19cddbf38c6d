"""Rules about what a saw and the lengths sold can give."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding
from kerfolio.layouts.boards import board_faults
from kerfolio.layouts.saw import saw_faults
from kerfolio.settling.settled import SettledPlan


def boards_long_enough(settled: SettledPlan) -> Iterator[Finding]:
    """Yield an error for every length of board that no length sold can give."""
    yield from board_faults(settled)


def sawn_from_sheets(settled: SettledPlan) -> Iterator[Finding]:
    """Yield a finding for every part that a saw cannot take out of its sheet."""
    yield from saw_faults(settled)
