"""How far a bore made by hand may be off: a named setting of the workshop."""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class HandBore:
    """How far a bore by hand lies beside its mark, mm, and leans, degrees, at most.

    Common practice, no single source.
    """

    off: float = 0.5
    tilt: float = 1.0

    def at(self, depth: float) -> float:
        """Return how far it may be off, mm, so deep in the wood, mm."""
        return self.off + depth * math.tan(math.radians(self.tilt))
