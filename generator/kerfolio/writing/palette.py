"""The one palette of all drawings: what colour each role of ink has."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from kerfolio.drawing.vocabulary import Ink

Palette = Mapping[Ink, str]
"""A colour ``#rrggbb`` for every role."""

PALETTE: Palette = MappingProxyType(
    {
        Ink.INK: "#26221c",
        Ink.SOFT: "#6d655a",
        Ink.FAINT: "#b8ad9c",
        Ink.ACCENT: "#b5532a",
        Ink.PAPER: "#fbf8f2",
        Ink.WOOD: "#e7d3b1",
        Ink.WOOD_DARK: "#cdb088",
        Ink.WASTE: "#f1ebe0",
        Ink.FACE_LIGHT: "#f6ead3",
        Ink.FACE_MID: "#e4cda4",
        Ink.FACE_DARK: "#cbaa7a",
        Ink.NEW_LIGHT: "#f7d0b6",
        Ink.NEW_MID: "#e9a984",
        Ink.NEW_DARK: "#d98c63",
        Ink.NEW_LINE: "#6f2c10",
        Ink.ENGRAVE: "#4c7a5c",
        Ink.POCKET: "#2f6c8c",
        Ink.HOLE: "#7a4a86",
        Ink.OPENING: "#a06f14",
        Ink.OUTLINE: "#26221c",
    }
)
"""A warm, quiet book: burnt sienna is the only loud colour. The operations of cut files differ in
hue and in lightness; the colours follow no machine program's code."""


def rgb(colour: str) -> tuple[int, int, int]:
    """Return ``#b5532a`` as (181, 83, 42)."""
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)
