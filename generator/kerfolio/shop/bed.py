"""Which bed a machine needs for a piece, and which pieces a bed has no room for."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.settling.settled import SettledPart, SettledPlan, SettledSheet

Sides = tuple[float, float]
"""The longer side of a rectangle, then the shorter, mm."""


def sides_of(size: Sequence[float]) -> Sides:
    """Return the sides of a rectangle, the longer first."""
    return max(size), min(size)


def bed_for(part: SettledPart, sheet: SettledSheet) -> Sides:
    """Return the least bed on which a piece is cut by itself, lying square, mm.

    The cutter runs round it, and so takes its width on every side.
    """
    round_it = 2 * sheet.cutter.diameter
    long, short = sides_of(part.size)
    return long + round_it, short + round_it


def off_bed(settled: SettledPlan, bed: Sides) -> Iterator[SettledPart]:
    """Yield the parts that are too large for a bed, whichever way they are laid on it square."""
    most = sides_of(bed)
    for part in settled.parts:
        needed = bed_for(part, settled.sheet(part.sheet))
        if any(need > room for need, room in zip(needed, most, strict=True)):
            yield part
