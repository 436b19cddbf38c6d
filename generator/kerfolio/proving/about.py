"""What each finding is about: a joint, a shape, a fastening, a step or what lies has a picture.

Every id of a rule stands in one of these sets, so that whoever adds one decides.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

JOINTS: Mapping[str, str] = MappingProxyType(
    {
        **dict.fromkeys(("joint-off", "joint-count", "joint-way", "joint-unchecked"), ""),
        **dict.fromkeys(("joint-kind", "joint-sheet"), ""),
        **dict.fromkeys(("which-way-round", "joint-too-tight", "joint-too-loose"), "y"),
        **dict.fromkeys(("tab-wider-than-slot", "tab-loose-in-slot", "fingers-unequal"), "x"),
        **dict.fromkeys(("sheet-thicker-than-slot", "swells-past-play", "fit-shared"), "y"),
        **dict.fromkeys(("tab-deeper-than-recess", "tab-barely-enters", "tab-not-flush"), "z"),
        **dict.fromkeys(("tab-proud", "halving-uneven"), "z"),
    }
)
"""What is measured where a joint is shown: along, across, the way in; or how far it is off."""

SHAPES = frozenset(
    (
        *("held-by-friction", "step-topples", "step-unsteady", "step-wants-hands"),
        *("pieces-clash", "step-blocked", "pieces-locked", "unbraced", "piece-unjoined"),
        *("feature-outside", "features-overlap", "feature-unjoined", "joint-without-feature"),
        *("smaller-than-cutter", "hole-to-drill", "deeper-than-sheet", "larger-than-sheet"),
        *("piece-off-bed", "corner-needs-relief", "relief-eats-wall", "relief-moved"),
        *("thin-floor", "head-pulls-through", "tab-narrow", "short-grain", "recess-in-tip"),
        *("no-waste-to-enter", "fastening-forgotten", "crossing-forgotten"),
        *("finger-gap", "head-gap", "child-tips"),
        *(
            "breaks-out",
            "thin-neck",
            "head-trap",
            "finger-trap",
            "small-part-loose",
            "no-bridge-place",
        ),
        *("grain-across-length", "round-over-too-large", "round-over-in-joint"),
        *("banding-in-joint", "glued-edge-unmasked", "edge-as-drawn", "edge-follows"),
        *("screw-pokes-through", "screw-too-short", "pilot-missing", "screw-near-edge"),
        *("bolt-too-short", "bolt-shorter-than-stack", "bolt-longer-than-stack"),
        *("bolt-beside-nut", "bolt-before-nut", "engraving-unreadable", "engraving-fades"),
        *("engraving-through-face", "holes-miss-studs"),
        *("tab-off-edge", "notch-off-edge", "fingers-off-edge", "self-crossing", "zero-area"),
        *("open-path", "falls-apart", "bridge-off-edge", "no-such-edge"),
        *("bracket-askew", "bracket-off-face", "bracket-over-opening", "bracket-hole-off"),
        *("bracket-splits", "clamp-askew", "clamp-narrow", "clamp-short", "clamp-in-air"),
        *("saw-too-large", "fit-of-nothing"),
    )
)
"""What is about a part, or about pieces in their places."""

FASTENINGS = frozenset(
    (
        *("fastening-off-axis", "bore-wants-guide", "bolt-short-of-nut", "bolt-out-of-nut"),
        *("fastening-bottoms", "head-unseated", "head-proud", "barrel-nut-long"),
        *("barrel-nut-hole", "thread-mismatch", "nut-missing", "bore-share"),
        *("bore-breaks-out", "bore-meets-opening", "screw-out", "screw-bites-little"),
        *("pilot-shallow", "pilot-unfit", "pilot-unbored", "screw-splits"),
        *("fastening-apart", "fastening-shared", "washer-missing", "screw-catches"),
        *("screw-falls-through", "insert-long"),
        *("screw-pull-unknown", "dowel-unfit", "insert-unfit", "tool-blocked"),
        *("board-beside", "board-clash", "screw-misses-board", "wall-not-behind"),
        *("wedge-grain", "wedge-taper", "wedge-turned", "wedge-cannot-draw"),
        *("wedge-off-face", "wedge-driven-out", "wedge-short-wood", "wedge-loose"),
    )
)
"""What is about hardware, bores by hand, boards and wedges where they stand."""

STEPS = frozenset(("step-lies-otherwise", "beside-joined"))
"""What is about how pieces lie and join in a step, besides ``step-blocked``."""

WHOLES = frozenset(
    (
        *("lies-too-short", "lies-otherwise", "lies-unlevel", "lies-off"),
        *("set-unfit", "use-unfit"),
    )
)
"""What is about how things lie on each other and stand."""

PICTURED = frozenset((*JOINTS, *SHAPES, *FASTENINGS, *STEPS, *WHOLES))
"""All that is shown by a picture."""

TOLD = frozenset(
    (
        # names, counts and words, of which the place in the file says all
        *("unknown-sheet", "unknown-cutter", "unknown-hardware", "unknown-piece"),
        *("hole-without-hardware", "child-bed-refused", "names-disagree"),
        "piece-upside-down",
        *("child-edges-sharp", "child-small-part", "child-finish"),
        *("unused-sheet", "unused-element", "unknown-assembly-piece", "piece-unassembled"),
        *("piece-in-two", "foreign-piece", "unknown-support", "held-unlisted", "held-otherwise"),
        *("unknown-joint-piece", "unknown-joint-feature", "unknown-standing", "unknown-swap"),
        *("fastening-item", "fastening-end", "fastening-kind", "fastening-single"),
        *("board-place", "wall-unsaid"),
        *("fastening-nut", "fastening-at", "fastening-twice", "fastening-step", "fastening-sets"),
        *("piece-added-twice", "piece-never-added", "hardware-sum", "hardware-unlisted"),
        *(
            "silent-step",
            "no-steps",
            "piece-lies-early",
            "piece-held-early",
            "order-of-one",
            "step-bores",
            "unprintable-letter",
        ),
        *("version-not-released", "no-release", "release-order", "release-class"),
        *("show-open", "alt-says-little"),
        *("step-works", "work-undrawn", "work-elsewhere", "clamps-no-room", "glue-unpressed"),
        *("seat-caution", "children-caution", "tipping-caution", "set-tips", "use-unsaid"),
        # stock, cutters and how they are run
        *("rest-not-last", "thin-sheet-uncovered", "thick-sheet-uncovered", "outside-stock"),
        *("chip-too-thin", "chip-too-thick", "size-not-sold", "gap-too-small"),
        *("cut-logged-poor", "cut-logged-better", "log-disagrees", "log-outdated"),
        *("machine-unsaid", "speed-out-of-reach", "feed-out-of-reach", "pass-over-machine"),
        *(
            "tip-unmeasured",
            "first-pass-in-tip",
            "pass-too-deep",
            "passes-not-deeper",
            "cutter-too-short",
        ),
        *("stops-short", "no-skim", "deep-skim", "plunge-over-feed", "face-ply-unknown"),
        *("fit-too-tight", "fit-too-loose", "sheet-too-damp"),
        # boards and loads, which are reckoned and have no drawn place
        *("board-held-across", "board-too-long", "span-outside", "unknown-part"),
        *("unknown-board", "span-overloaded", "span-lifts", "span-unreckoned"),
        "screws-overpulled",
    )
)
"""What a picture would add nothing to."""
