"""What each cutter has to do: metres and minutes in the wood, for the log."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from kerfolio.shop.cut_time import CutTime


@dataclass(frozen=True, slots=True, kw_only=True)
class CutterWear:
    """A cutter's work: metres cut over all passes, minutes in the wood, and how many cuts.

    Wear also depends on depth, glue and grit: metres compare like with like only.
    """

    cutter: str
    metres: float
    minutes: float
    cuts: int


def wear_of(times: Iterable[CutTime]) -> tuple[CutterWear, ...]:
    """Return what each cutter does over all sheets, in the order of its first use."""
    found: dict[str, CutterWear] = {}
    for row in (row for time in times for row in time.operations):
        before = found.get(row.cutter, CutterWear(cutter=row.cutter, metres=0, minutes=0, cuts=0))
        found[row.cutter] = CutterWear(
            cutter=row.cutter,
            metres=before.metres + row.metres,
            minutes=before.minutes + (row.feed_seconds + row.plunge_seconds) / 60,
            cuts=before.cuts + row.cuts,
        )
    return tuple(found.values())
