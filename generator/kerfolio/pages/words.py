"""How pages say money and sizes of files, and what stands below a part."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal

from kerfolio.basis.words import counted
from kerfolio.shop.rows import PartRow


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
