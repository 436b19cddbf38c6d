"""Engines of other libraries, asked for by name, beside the own placer."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Protocol

from kerfolio.layouts.engine import Engine, EngineError, Job, Packed
from kerfolio.layouts.outside import OutsideEngine
from kerfolio.layouts.own_placer import OwnPlacer
from kerfolio.layouts.polish import polished

ENGINES = (OutsideEngine("packingsolver", spaced=True), OutsideEngine("spyrrow", strip=True))
"""All there are, in the order in which they are asked."""


class Asked(Engine, Protocol):
    """An engine that has a name; one for a ``strip`` is asked about a last sheet."""

    @property
    def library(self) -> str:
        """Its library's name."""
        ...

    @property
    def strip(self) -> bool:
        """Tell whether it lays all pieces on one sheet."""
        ...


@dataclass(frozen=True, slots=True)
class BestPlacer:
    """The own placer's packing, or a better one of the engines asked for.

    The own search always runs whole. A packing of another engine is taken where its sheets are
    worth less; at the same worth the own one stands. An engine for strips is asked about the last
    sheet alone, and taken where it leaves a larger offcut.
    """

    asked: Sequence[Asked]

    def pack(self, job: Job) -> Packed:
        """Place all blanks; see ``Engine``. Engines that fail are named in the packing."""
        best = OwnPlacer().pack(job)
        failed = []
        for engine in self.asked:
            try:
                best = (polished if engine.strip else _cheaper)(best, job, engine)
            except EngineError as fault:
                failed.append((engine.library, str(fault)))
        return replace(best, failed=tuple(failed))


def _cheaper(best: Packed, job: Job, engine: Engine) -> Packed:
    return min(best, engine.pack(job), key=job.price)
