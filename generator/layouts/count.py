"""How many sheets a layout uses, and how much of each."""

from __future__ import annotations

from collections import Counter

from generator.geometry.measure import area
from generator.layouts.layout import Layout, SheetLayout
from generator.settling.settled import SettledPlan


def sheets_used(layout: Layout) -> dict[str, int]:
    """Return the number of sheets for each sheet material of the layout, by its name."""
    return dict(Counter(each.sheet for each in layout.sheets))


def area_share(sheet: SheetLayout, settled: SettledPlan) -> float:
    """Return the share of a sheet's area that its pieces cover, from 0 to 1.

    Raises KeyError for a part that the plan has not.
    """
    areas = {part.name: area(part.routed) for part in settled.parts}
    covered = sum(areas[each.part] for each in sheet.placements)
    return covered / (sheet.size[0] * sheet.size[1])
