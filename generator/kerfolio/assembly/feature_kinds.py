"""How a feature of each kind can be in the wrong place, when joints do not agree."""

from __future__ import annotations

from enum import Enum, auto

from kerfolio.model.feature_kind import (
    FINGERS,
    GROOVE,
    HOLE,
    NOTCH,
    POCKET,
    SLOT,
    TAB,
    WINDOW,
    FeatureKind,
)


class Freedom(Enum):
    """How something can be in the wrong place within its own sheet."""

    OUTLINE = auto()
    """It goes with the outline: off along its edge; outward it follows the part's length."""
    DEPTH = auto()
    """It is cut in from an edge: off along it, or too deep, or too shallow."""
    FACE = auto()
    """It lies in the face at an angle: off in any direction, and turned."""
    SPOT = auto()
    """It lies in the face and is alike all round: off in any direction."""

    @property
    def on_edge(self) -> bool:
        """Whether it is known by where its edge looks."""
        return self in (Freedom.OUTLINE, Freedom.DEPTH)


FEATURE_FREEDOMS: dict[FeatureKind, Freedom] = {
    SLOT: Freedom.FACE,
    NOTCH: Freedom.DEPTH,
    HOLE: Freedom.SPOT,
    WINDOW: Freedom.FACE,
    POCKET: Freedom.FACE,
    GROOVE: Freedom.FACE,
    TAB: Freedom.OUTLINE,
    FINGERS: Freedom.OUTLINE,
}
"""How each kind that a joint may name can be in the wrong place."""
