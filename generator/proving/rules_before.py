"""The rules over what a plan states, before anything is worked out.

To add one: a function that yields findings (in the module of its subject), and a line here.
"""

from __future__ import annotations

from generator.proving.joints import joint_ends, joint_kinds, joint_sheets
from generator.proving.references import (
    unknown_cutters,
    unknown_hardware,
    unknown_pieces,
    unknown_sheets,
    unused_elements,
    unused_sheets,
)
from generator.proving.release import newest_release, rest_last
from generator.proving.rule import COMMON_PRACTICE, OUR_FORM, Before
from generator.proving.steps import added_once, hardware_sum, no_steps, silent_steps

RULES_BEFORE: tuple[Before, ...] = (
    Before(
        id="unknown-sheet",
        reason="A part needs a sheet the plan has.",
        source=OUR_FORM,
        check=unknown_sheets,
    ),
    Before(
        id="unknown-cutter",
        reason="Settings name a cutter of the stock.",
        source=OUR_FORM,
        check=unknown_cutters,
    ),
    Before(
        id="unknown-hardware",
        reason="Hardware must be known to be bought.",
        source=OUR_FORM,
        check=unknown_hardware,
    ),
    Before(
        id="unknown-piece",
        reason="Steps add pieces the plan has.",
        source=OUR_FORM,
        check=unknown_pieces,
    ),
    Before(
        id="unused-sheet",
        reason="A sheet nobody cuts would be bought.",
        source=COMMON_PRACTICE,
        check=unused_sheets,
    ),
    Before(
        id="unused-element",
        reason="A forgotten layer is a missing hole.",
        source=COMMON_PRACTICE,
        check=unused_elements,
    ),
    Before(
        id="unknown-joint",
        reason="A joint names features that exist.",
        source=OUR_FORM,
        check=joint_ends,
    ),
    Before(
        id="joint-kind",
        reason="A tab goes into an opening, a notch over a notch.",
        source=OUR_FORM,
        check=joint_kinds,
    ),
    Before(
        id="joint-sheet",
        reason="An opening is as wide as the sheet it takes.",
        source=OUR_FORM,
        check=joint_sheets,
    ),
    Before(
        id="piece-added-once",
        reason="Each piece is used exactly once.",
        source=COMMON_PRACTICE,
        check=added_once,
    ),
    Before(
        id="hardware-sum",
        reason="Totals are summed from the steps.",
        source=COMMON_PRACTICE,
        check=hardware_sum,
    ),
    Before(
        id="newest-release",
        reason="Readers go by the version.",
        source=OUR_FORM,
        check=newest_release,
    ),
    Before(
        id="silent-step",
        reason="A step must tell something.",
        source=COMMON_PRACTICE,
        check=silent_steps,
    ),
    Before(
        id="no-steps",
        reason="Order of assembly is asked for.",
        source=COMMON_PRACTICE,
        check=no_steps,
    ),
    Before(id="rest-not-last", reason="What is left comes last.", source=OUR_FORM, check=rest_last),
)
"""The rules in the order they are looked at."""
