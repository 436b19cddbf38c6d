"""How pages say lengths, weights, money, days and sizes of files."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from decimal import Decimal

from kerfolio.basis.lengths import (
    caliper_inches,
    inch_text,
    mm_number,
    mm_text,
    thickness_text,
)
from kerfolio.basis.words import counted
from kerfolio.shop.rows import PartRow


def range_text(least: float, most: float, first: str) -> str:
    """Return a range of thicknesses: ``17.2 to 18.6 mm (0.677 to 0.732 in)``."""
    if least == most:
        return thickness_text(least, first)
    metric = f"{mm_number(least, 2)} to {mm_text(most, 2)}"
    inch = f"{caliper_inches(least).removesuffix(' in')} to {caliper_inches(most)}"
    return f"{metric} ({inch})" if first == "mm" else f"{inch} ({metric})"


def size_pair(sides: Sequence[float], first: str) -> tuple[str, str]:
    """Return a size in the first unit and in the other: ``360 × 450 mm``, ``14 3/16 × ... in``."""
    metric = " × ".join(mm_number(side) for side in sides) + " mm"
    inch = " × ".join(inch_text(side).removesuffix(" in") for side in sides) + " in"
    return (metric, inch) if first == "mm" else (inch, metric)


def size_text(sides: Sequence[float], first: str) -> str:
    """Return a size in both units on one line."""
    one, other = size_pair(sides, first)
    return f"{one} ({other})"


def money_text(amount: Decimal, currency: str) -> str:
    """Return ``92.50 EUR``."""
    return f"{amount:.2f} {currency}"


def bytes_text(size: int) -> str:
    """Return a file's size as people read it: ``640 kB``, ``3.2 MB`` (1 kB = 1000 bytes)."""
    if size < 1000:
        return counted(size, "byte")
    if size < 1_000_000:
        return f"{size / 1000:.0f} kB"
    return f"{size / 1_000_000:.1f} MB"


_GRAINS = {"along x": "grain along the width", "along y": "grain along the height"}


def part_notes(row: PartRow, sheets: Mapping[str, str]) -> list[str]:
    """Return what a parts list says below a part's name: its sheet where there are several.

    ``sheets`` maps a plan's sheets to their titles.
    """
    sheet = sheets.get(row.sheet, row.sheet) if len(sheets) > 1 else ""
    head = ", ".join(text for text in (sheet, _GRAINS.get(row.grain, "")) if text)
    return [text for text in (f"{head[:1].upper()}{head[1:]}", row.note) if text]
