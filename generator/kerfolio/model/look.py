"""A workshop's look: the few choices that all its colours and its type are worked out from."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from kerfolio.basis.pixels import Pixels
from kerfolio.basis.place import NOWHERE, Place


class TypePair(StrEnum):
    """Which family heads a text and which one runs on below; the words a workshop writes."""

    SANS_OVER_SERIF = "sans over serif"
    SERIF_OVER_SANS = "serif over sans"
    ALL_SANS = "all sans"
    ALL_SERIF = "all serif"

    @property
    def heads_in_serif(self) -> bool:
        """Whether headings are in the serif."""
        return self in (TypePair.SERIF_OVER_SANS, TypePair.ALL_SERIF)

    @property
    def reads_in_serif(self) -> bool:
        """Whether running text is in the serif."""
        return self in (TypePair.SANS_OVER_SERIF, TypePair.ALL_SERIF)

    @property
    def labels_in_serif(self) -> bool:
        """Whether labels, tables and captions are in the serif."""
        return self is TypePair.ALL_SERIF


LEAST_GROUND = 16.0
"""How a ground must stand apart from black, by the contrast ratio of WCAG: text on the darkest tint
of a drawing, five steps of shade below the ground, then still has the 4.5:1 that it needs."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Logo:
    """A workshop's own mark: its ``file``, its size, and the drawing itself or its ``pixels``."""

    file: str
    width: float
    height: float
    svg: bytes = b""
    pixels: Pixels | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """The tokens: ``accent`` and ``ground`` as ``#rrggbb`` on a light screen, and the type.

    The dark scheme, paper and every tint follow from them (``drawing/palette.py``). Without a
    ``logo`` the workshop has a mark drawn from its name.
    """

    accent: str = "#1c5c46"
    ground: str = "#f6f8f8"
    type: TypePair = TypePair.SANS_OVER_SERIF
    logo: Logo | None = None
    place: Place = NOWHERE
