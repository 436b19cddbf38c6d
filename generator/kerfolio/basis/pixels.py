"""A picture taken apart."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Pixels:
    """Rows of pixels in sRGB, the uppermost first: three bytes each, four where ``see_through``."""

    width: int
    height: int
    content: bytes
    see_through: bool = False
