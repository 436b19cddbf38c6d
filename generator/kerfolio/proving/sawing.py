"""Rules about what a saw and the lengths sold can give."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.finding import Finding, Severity
from kerfolio.layouts.boards import board_faults
from kerfolio.layouts.saw import saw_faults
from kerfolio.proving.rule import COMMON_PRACTICE, after
from kerfolio.settling.settled import SettledPlan


@after(
    "board-too-long",
    reason="A piece of board comes out of a length that is sold.",
    source="the stock's own list of lengths",
)
def boards_long_enough(settled: SettledPlan) -> Iterator[Finding]:
    """Yield an error for every length of board that no length sold can give."""
    yield from board_faults(settled)


@after(
    "saw-too-large",
    reason="Whoever has only a saw must get the part out of the sheet too.",
    source=COMMON_PRACTICE,
    severity=Severity.NOTE,
)
def sawn_from_sheets(settled: SettledPlan) -> Iterator[Finding]:
    """Yield a finding for every part that a saw cannot take out of its sheet."""
    yield from saw_faults(settled)
