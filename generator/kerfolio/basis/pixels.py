"""A picture taken apart."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Pixels:
    """Rows of pixels in sRGB, the uppermost first: three bytes each, four where ``see_through``.

    ``frames`` is how many pictures the file shows one after the other; these are the first one's.
    """

    width: int
    height: int
    content: bytes
    see_through: bool = False
    frames: int = 1
