"""How many sheets a layout uses, and how much of each."""

from __future__ import annotations

from collections import Counter

from generator.geometry.measure import area
from generator.layouts.layout import Layout, SheetLayout
from generator.settling.settled import SettledPlan


def sheets_used(layout: Layout) -> dict[str, int]:
    """Return the number of sheets for each sheet material of the layout, by its name."""
    return dict(Counter(each.sheet for each in layout.sheets))


def sheets_for(layout: Layout, copies: int) -> dict[str, int]:
    """Return the number of sheets that so many copies take, by the sheet material's name.

    As the layout's table says; beyond it every copy has whole sheets of its own.
    """
    table = dict(layout.copies)
    return {
        name: table[name][copies - 1] if copies <= len(table.get(name, ())) else one * copies
        for name, one in sheets_used(layout).items()
    }


def sheets_by_size(layout: Layout) -> dict[tuple[str, tuple[float, float]], int]:
    """Return the number of sheets for each material and size (along the grain, across it), mm."""
    return dict(Counter((each.sheet, each.size) for each in layout.sheets))


def proven_minimal(layout: Layout) -> dict[str, bool]:
    """Tell for each sheet material whether no layout can do with fewer sheets."""
    used = sheets_used(layout)
    return {name: used.get(name, 0) <= least for name, least in layout.bounds}


def area_share(sheet: SheetLayout, settled: SettledPlan) -> float:
    """Return the share of a sheet's area that its pieces cover, from 0 to 1.

    Raises KeyError for a part that the plan has not.
    """
    areas = {part.name: area(part.routed) for part in settled.parts}
    covered = sum(areas[each.part] for each in sheet.placements)
    return covered / (sheet.size[0] * sheet.size[1])
