"""How many sheets a layout uses, and how much of each."""

from __future__ import annotations

from collections import Counter

from kerfolio.layouts.layout import Layout
from kerfolio.settling.settled import SheetSize


def sheets_used(layout: Layout) -> dict[str, int]:
    """Return the number of sheets for each sheet material of the layout, by its name."""
    return dict(Counter(each.sheet for each in layout.sheets))


def sheets_by_size(layout: Layout) -> dict[tuple[str, SheetSize], int]:
    """Return the number of sheets for each material and size."""
    return dict(Counter((each.sheet, each.size) for each in layout.sheets))


def sheets_for(layout: Layout, copies: int) -> dict[tuple[str, SheetSize], int]:
    """Return the number of sheets that so many copies take, for each material and size.

    As the layout's table says; beyond it every copy has sheets of its own. One copy takes those of
    the layout, which may have been moved by hand.
    """
    if copies == 1:
        return sheets_by_size(layout)
    table = [each for each in layout.copies if copies <= len(each.counts)]
    told = {each.sheet for each in table}
    apart = {key: one * copies for key, one in sheets_by_size(layout).items() if key[0] not in told}
    counts = {(each.sheet, each.size): each.counts[copies - 1] for each in table}
    return {key: count for key, count in (counts | apart).items() if count}


def proven_minimal(layout: Layout) -> dict[str, bool]:
    """Tell for each sheet material whether no layout can do with fewer sheets."""
    used = sheets_used(layout)
    return {name: used.get(name, 0) <= least for name, least in layout.bounds}
