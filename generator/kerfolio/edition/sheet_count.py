"""How many sheets it takes, how far that count can be trusted, and how small a piece will do."""

from __future__ import annotations

import math
from collections.abc import Mapping

from kerfolio.basis.lengths import INCH
from kerfolio.basis.saying import say
from kerfolio.basis.tolerance import NOISE
from kerfolio.edition.bed import laid_size
from kerfolio.edition.edition import Edition
from kerfolio.layouts.count import proven_minimal, sheets_used
from kerfolio.layouts.layout import SheetLayout

_SMALL = 0.6
"""Share of a sheet up to which readers are told of a piece that will do: yards sell halves (common
practice, no single source)."""
_STEPS = {"mm": 10.0, "in": INCH}
"""What such a piece is rounded up to."""


def counted_as(edition: Edition) -> Mapping[str, str]:
    """Return what is known of the fewest sheets of each material; nothing where nothing is.

    The bound is the layout's own: the area of the pieces with their gaps, and pieces too wide to
    lie side by side.
    """
    used = sheets_used(edition.layout)
    proven, bounds = proven_minimal(edition.layout), dict(edition.layout.bounds)
    return {
        name: say(
            edition.reader,
            "sheetcount-proven" if proven[name] else "sheetcount-bound",
            sheets=count,
            bound=bounds[name],
        )
        for name, count in used.items()
        if name in proven
    }


def piece_enough(edition: Edition, sheet: str) -> tuple[float, float] | None:
    """Return how large a piece will do in place of the least filled sheet of a material, mm.

    Along the grain first, margins and all, as the pieces lie on it; None where most of every sheet
    is wanted.
    """
    laid = [each for each in edition.layout.sheets if each.sheet == sheet and each.placements]
    found = [(_needed(edition, each), each.size) for each in laid]
    small = [need for need, size in found if math.prod(need) <= _SMALL * math.prod(size)]
    return min(small, key=math.prod, default=None)


def _needed(edition: Edition, layout: SheetLayout) -> tuple[float, float]:
    step, margin = _STEPS[edition.reader.unit], edition.settled.sheet(layout.sheet).margin
    sides = (side + 2 * margin for side in laid_size(edition, layout))
    wide, high = (math.ceil(side / step - NOISE) * step for side in sides)
    return wide, high
