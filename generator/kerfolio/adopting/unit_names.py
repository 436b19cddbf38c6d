"""The units that a drawing may be in which states none."""

from __future__ import annotations

UNITS: dict[str, float] = {
    "mm": 1.0,
    "in": 25.4,
    "cm": 10.0,
    "px (96 to the inch)": 25.4 / 96,
    "px (90 to the inch)": 25.4 / 90,
    "pt (72 to the inch)": 25.4 / 72,
}
"""What a drawing's numbers may be, in mm: the commonest first."""
