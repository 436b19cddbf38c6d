"""The packing of a job by whoever is at hand: own placer first, another library where it helps."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

from kerfolio.layouts.bound import fewest_sheets
from kerfolio.layouts.engine import Engine, EngineError, Job, Packed
from kerfolio.layouts.outside import OutsideEngine
from kerfolio.layouts.own_placer import OwnPlacer
from kerfolio.layouts.polish import polished
from kerfolio.layouts.verify import packing_faults

_QUICK = 10
"""The own placer first tries with this part of the moves."""

OUTSIDE = (OutsideEngine("packingsolver", spaced=True),)
STRIP = OutsideEngine("spyrrow", strip=True)


@dataclass(frozen=True, slots=True)
class BestPlacer:
    """Takes the first packing that its lower bound proves minimal, else the best of all.

    Outside engines are asked in turn; one that is missing or fails is passed over. Only when none
    of them answers does the own placer use up its moves. Where asked for, ``strip`` then looks for
    a larger offcut on the last sheet.
    """

    outside: Sequence[Engine] = OUTSIDE
    strip: Engine = STRIP

    def pack(self, job: Job) -> Packed:
        """Place all blanks; see ``Engine``."""
        packed = self._packed(job)
        return polished(packed, job, self.strip) if job.polish else packed

    def _packed(self, job: Job) -> Packed:
        least = fewest_sheets(job)
        best = OwnPlacer().pack(replace(job, moves=job.moves // _QUICK))
        if best.too_large or _proven(best, job, least):
            return best
        answered = False
        for engine in self.outside:
            try:
                made = engine.pack(job)
            except EngineError:
                continue
            answered = True
            if not packing_faults(job, made) and price(made, job) <= price(best, job):
                best = made
            if _proven(best, job, least):
                return best
        if answered:
            return best
        return min(OwnPlacer().pack(job), best, key=lambda packed: price(packed, job))


def price(packed: Packed, job: Job) -> tuple[float, int]:
    """Return what the sheets of a packing cost, and their number: the less the better."""
    return job.bed.price(Counter(packed.sheets))


def _proven(packed: Packed, job: Job, least: int) -> bool:
    return len(job.bed.stacks) == 1 and len(packed.sheets) <= least
