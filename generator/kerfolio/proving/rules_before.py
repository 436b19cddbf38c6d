"""The rules over what a plan states, before anything is worked out.

To add one: a function that yields findings (in the module of its subject), and an entry here.
"""

from __future__ import annotations

from kerfolio.basis.finding import Severity
from kerfolio.proving.chips import chips_not_thick, chips_not_thin
from kerfolio.proving.cutting import plunges_slower
from kerfolio.proving.joints import joint_ends, joint_kinds, joint_sheets, standing_piece
from kerfolio.proving.ladder import (
    fit_stated,
    ladder_outside_stock,
    thick_sheets_covered,
    thin_sheets_covered,
)
from kerfolio.proving.readers import children_warned, pictures_told, sitters_warned
from kerfolio.proving.references import (
    unknown_cutters,
    unknown_hardware,
    unknown_pieces,
    unknown_sheets,
    unused_elements,
    unused_sheets,
)
from kerfolio.proving.release import newest_release, rest_last
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, Before
from kerfolio.proving.steps import added_once, hardware_sum, no_steps, silent_steps

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
        severity=Severity.NOTE,
    ),
    Before(
        id="unused-element",
        reason="A forgotten layer is a missing hole.",
        source=COMMON_PRACTICE,
        check=unused_elements,
        severity=Severity.NOTE,
    ),
    Before(
        id="unknown-joint-piece",
        also=("unknown-joint-feature",),
        reason="A joint names features that exist.",
        source=OUR_FORM,
        check=joint_ends,
    ),
    Before(
        id="unknown-standing",
        reason="How the whole stands goes by a piece the plan has.",
        source=OUR_FORM,
        check=standing_piece,
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
        id="piece-added-twice",
        also=("piece-never-added",),
        reason="Each piece is used exactly once.",
        source=COMMON_PRACTICE,
        check=added_once,
    ),
    Before(
        id="hardware-sum",
        also=("hardware-unlisted",),
        reason="Totals are summed from the steps.",
        source=COMMON_PRACTICE,
        check=hardware_sum,
    ),
    Before(
        id="version-not-released",
        also=("no-release",),
        reason="Readers go by the version.",
        source=OUR_FORM,
        check=newest_release,
    ),
    Before(
        id="silent-step",
        reason="A step must tell something.",
        source=COMMON_PRACTICE,
        check=silent_steps,
        severity=Severity.WARNING,
    ),
    Before(
        id="no-steps",
        reason="Order of assembly is asked for.",
        source=COMMON_PRACTICE,
        check=no_steps,
        severity=Severity.NOTE,
    ),
    Before(id="rest-not-last", reason="What is left comes last.", source=OUR_FORM, check=rest_last),
    Before(
        id="thin-sheet-uncovered",
        reason="The reader with the thinnest sheet sold gets a rattling joint.",
        source="the stock's own least thickness; half a millimetre is common practice",
        check=thin_sheets_covered,
        severity=Severity.NOTE,
    ),
    Before(
        id="thick-sheet-uncovered",
        reason="The reader with the thickest sheet sold cannot put it together.",
        source="the stock's own largest thickness",
        check=thick_sheets_covered,
        severity=Severity.NOTE,
    ),
    Before(
        id="outside-stock",
        reason="A plan is published for thicknesses that can be bought.",
        source="the stock's own least and largest thickness",
        check=ladder_outside_stock,
        severity=Severity.WARNING,
    ),
    Before(
        id="no-fit",
        reason="A sheet does not go into a slot of its own thickness.",
        source=COMMON_PRACTICE,
        check=fit_stated,
        severity=Severity.WARNING,
    ),
    Before(
        id="plunge-over-feed",
        reason="A cutter cuts badly with its end: it plunges slower than it feeds.",
        source=COMMON_PRACTICE,
        check=plunges_slower,
        severity=Severity.WARNING,
    ),
    Before(
        id="chip-too-thin",
        reason="A chip thinner than any published one rubs: the cutter burns and dulls.",
        source="published chip loads, each named with its class of machine in the remark",
        check=chips_not_thin,
        severity=Severity.WARNING,
    ),
    Before(
        id="chip-too-thick",
        reason="A chip thicker than any published one breaks cutters and loses steps.",
        source="published chip loads, each named with its class of machine in the remark",
        check=chips_not_thick,
        severity=Severity.WARNING,
    ),
    Before(
        id="alt-says-little",
        reason="Some readers hear a picture's words and never see it.",
        source="WCAG 2.2, success criterion 1.1.1",
        check=pictures_told,
        severity=Severity.NOTE,
    ),
    Before(
        id="seat-caution",
        reason="People stand on what they sit on.",
        source=COMMON_PRACTICE,
        check=sitters_warned,
        severity=Severity.NOTE,
    ),
    Before(
        id="children-caution",
        reason="Who gives a thing to a child must know for which age it is meant.",
        source=COMMON_PRACTICE,
        check=children_warned,
        severity=Severity.NOTE,
    ),
)
"""The rules in the order they are looked at."""
