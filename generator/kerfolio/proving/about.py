"""Which findings are about a joint or a shape: each of them is shown by a picture."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

JOINTS: Mapping[str, str] = MappingProxyType(
    {
        **dict.fromkeys(("joint-off", "joint-count", "joint-way", "joint-unchecked"), ""),
        **dict.fromkeys(("which-way-round", "joint-too-tight", "joint-too-loose"), "y"),
        **dict.fromkeys(("tab-wider-than-slot", "tab-loose-in-slot", "fingers-unequal"), "x"),
        **dict.fromkeys(("sheet-thicker-than-slot", "swells-past-play", "fit-shared"), "y"),
        **dict.fromkeys(("tab-deeper-than-recess", "tab-barely-enters", "tab-not-flush"), "z"),
    }
)
"""What is measured where a joint is shown: along, across, the way in; or how far it is off."""

SHAPES = frozenset(
    (
        *("pieces-clash", "step-blocked", "pieces-locked", "unbraced", "piece-unjoined"),
        *("feature-outside", "features-overlap", "feature-unjoined", "joint-without-feature"),
        *("smaller-than-cutter", "hole-to-drill", "deeper-than-sheet", "larger-than-sheet"),
        *("piece-off-bed", "corner-needs-relief", "relief-eats-wall", "relief-moved"),
        *("breaks-out", "thin-neck", "finger-trap", "small-part-loose", "no-bridge-place"),
        *("grain-across-length", "round-over-too-large", "round-over-in-joint"),
        *("banding-in-joint", "glued-edge-unmasked", "edge-as-drawn", "edge-follows"),
        *("screw-pokes-through", "screw-too-short", "pilot-missing", "screw-near-edge"),
        *("bolt-too-short", "bolt-shorter-than-stack", "bolt-longer-than-stack"),
        *("bolt-beside-nut", "bolt-before-nut", "engraving-unreadable", "engraving-fades"),
        *("engraving-through-face", "holes-miss-studs"),
        *("tab-off-edge", "notch-off-edge", "fingers-off-edge", "self-crossing", "zero-area"),
        *("open-path", "falls-apart", "bridge-off-edge", "no-such-edge"),
    )
)
"""What is about a part, or about pieces in their places."""
