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
        Ink.ENGRAVE: "#5c8038",
        Ink.POCKET: "#3b76bb",
        Ink.HOLE: "#975eac",
        Ink.OPENING: "#a06f14",
        Ink.OUTLINE: "#177f86",
        Ink.ASIDE: "#8b8174",
    }
)
"""A warm, quiet book: burnt sienna is the only loud colour. What stands on cut files differs in
hue and shows on white as on the dark grounds of drawing programs, by 3:1 at least (WCAG 2.2,
1.4.11); the colours follow no machine program's code."""


def rgb(colour: str) -> tuple[int, int, int]:
    """Return ``#b5532a`` as (181, 83, 42)."""
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)
