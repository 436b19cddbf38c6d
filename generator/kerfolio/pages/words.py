"""What a parts list says below a part."""

from __future__ import annotations

from collections.abc import Mapping

from kerfolio.shop.rows import PartRow

_GRAINS = {"along x": "grain along the width", "along y": "grain along the height"}


def part_notes(row: PartRow, sheets: Mapping[str, str]) -> list[str]:
    """Return what a parts list says below a part's name: its sheet where there are several.

    ``sheets`` maps a plan's sheets to their titles.
    """
    sheet = sheets.get(row.sheet, row.sheet) if len(sheets) > 1 else ""
    head = ", ".join(text for text in (sheet, _GRAINS.get(row.grain, "")) if text)
    return [text for text in (f"{head[:1].upper()}{head[1:]}", row.note) if text]
