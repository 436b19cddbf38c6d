"""The layout of a plan for another sheet or bed than its own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.layouts.layout import Layout, SheetLayout
from kerfolio.settling.also_for import OtherSheet


@dataclass(frozen=True, slots=True, kw_only=True)
class OtherLayout:
    """``fresh`` tells why to write it, empty where it stands."""

    sheet: OtherSheet
    layout: Layout
    fresh: str = ""

    @property
    def sheets(self) -> Iterator[tuple[SheetLayout, str]]:
        """Its sheets, each with what it is called on its cut file."""
        for each in self.layout.sheets:
            yield each, f"sheet {each.number} on {self.sheet.label}"
