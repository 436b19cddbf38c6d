"""How long a sheet of a layout takes on the machine."""

from __future__ import annotations

from kerfolio.layouts.layout import SheetLayout
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.cut_time import CutTime, Placed, sheet_time


def layout_time(settled: SettledPlan, layout: SheetLayout) -> CutTime:
    """Return the time of one sheet with its pieces where they lie."""
    placed = [Placed(part=p.part, x=p.x, y=p.y, turn=p.turn) for p in layout.placements]
    return sheet_time(settled, layout.sheet, placed)
