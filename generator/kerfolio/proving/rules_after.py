"""The rules over a settled plan: shapes, cutters and sheets at one thickness.

To add one: a function that yields findings (in the module of its subject), and an entry here.
"""

from __future__ import annotations

from kerfolio.basis.finding import Severity
from kerfolio.proving.bolts import (
    bolts_end,
    bolts_leave,
    bolts_span,
    nuts_in_line,
    nuts_reached,
)
from kerfolio.proving.children import fingers_free
from kerfolio.proving.corners import corners_relieved
from kerfolio.proving.cutting import (
    cutter_reaches,
    first_pass_below_tip,
    goes_through,
    pass_depths,
    passes_deepen,
    skims,
    skims_lightly,
)
from kerfolio.proving.machining import (
    cutter_enters,
    fits_sheet,
    holes_drilled,
    kerf_between,
    leaves_floor,
    sold_sizes,
)
from kerfolio.proving.mating import (
    fingers_mesh,
    sheets_enter,
    sheets_snug,
    tabs_bottom,
    tabs_enter,
    tabs_flush,
    tabs_hold,
    tabs_snug,
)
from kerfolio.proving.parts import grain_along, small_parts_held
from kerfolio.proving.readers import tipping_warned
from kerfolio.proving.rule import COMMON_PRACTICE, After
from kerfolio.proving.sawing import boards_long_enough, sawn_from_sheets
from kerfolio.proving.screws import pilots_bored, pilots_inside, screws_bite, screws_stay_in
from kerfolio.proving.shapes import features_inside, overlapping_features
from kerfolio.proving.spans import spans_bear, spans_lie, spans_reckoned
from kerfolio.proving.webs import wood_left

_ROUND_CUTTER = "geometry of a round cutter"
_OWN_FIGURES = "the plan's own figures"

RULES_AFTER: tuple[After, ...] = (
    After(
        id="larger-than-sheet",
        reason="A part must fit the sheet inside its margins.",
        source=COMMON_PRACTICE,
        check=fits_sheet,
    ),
    After(
        id="size-not-sold",
        reason="A sheet must be one that can be bought.",
        source="the stock's own list of sizes",
        check=sold_sizes,
        severity=Severity.WARNING,
    ),
    After(
        id="gap-too-small",
        reason="The cutter passes between two pieces.",
        source=_ROUND_CUTTER,
        check=kerf_between,
    ),
    After(
        id="smaller-than-cutter",
        reason="A cutter cuts nothing narrower than itself.",
        source=_ROUND_CUTTER,
        check=cutter_enters,
    ),
    After(
        id="hole-to-drill",
        reason="A cutter cuts no hole smaller than itself.",
        source=_ROUND_CUTTER,
        check=holes_drilled,
        severity=Severity.NOTE,
    ),
    After(
        id="deeper-than-sheet",
        reason="A recess leaves a floor.",
        source=COMMON_PRACTICE,
        check=leaves_floor,
    ),
    After(
        id="feature-outside",
        reason="What is cut into a part lies in it.",
        source=COMMON_PRACTICE,
        check=features_inside,
    ),
    After(
        id="features-overlap",
        reason="Openings that meet weaken a part.",
        source=COMMON_PRACTICE,
        check=overlapping_features,
        severity=Severity.WARNING,
    ),
    After(
        id="corner-needs-relief",
        reason="A round cutter leaves inside corners round, and a sheet's corners are square.",
        source=_ROUND_CUTTER,
        check=corners_relieved,
        severity=Severity.WARNING,
    ),
    After(
        id="breaks-out",
        also=("thin-neck",),
        reason="Little wood splits off, short grain first: a part breaks where it is narrowest.",
        source=COMMON_PRACTICE,
        check=wood_left,
        severity=Severity.WARNING,
    ),
    After(
        id="grain-across-length",
        reason="Wood bends and breaks across its grain first; so does plywood, less so.",
        source="Wood Handbook FPL-GTR-190, chapter 5, on strength along and across the grain; the "
        "ratio of 3 is common practice",
        check=grain_along,
        severity=Severity.WARNING,
    ),
    After(
        id="small-part-loose",
        reason="A small part that comes free is thrown by the cutter.",
        source=COMMON_PRACTICE,
        check=small_parts_held,
        severity=Severity.WARNING,
    ),
    After(
        id="tab-wider-than-slot",
        reason="A tab goes into an opening at least as long.",
        source=_OWN_FIGURES,
        check=tabs_enter,
    ),
    After(
        id="tab-loose-in-slot",
        reason="A tab that slides about places nothing.",
        source=COMMON_PRACTICE,
        check=tabs_snug,
        severity=Severity.WARNING,
    ),
    After(
        id="sheet-thicker-than-slot",
        reason="A sheet goes into an opening at least as wide.",
        source=_OWN_FIGURES,
        check=sheets_enter,
    ),
    After(
        id="sheet-loose-in-slot",
        reason="A sheet that rattles holds nothing square.",
        source=COMMON_PRACTICE,
        check=sheets_snug,
        severity=Severity.WARNING,
    ),
    After(
        id="tab-deeper-than-recess",
        reason="A tab that meets the floor keeps its shoulders off the face.",
        source=_OWN_FIGURES,
        check=tabs_bottom,
    ),
    After(
        id="tab-barely-enters",
        reason="A tab holds by the wood it goes through.",
        source=COMMON_PRACTICE,
        check=tabs_hold,
        severity=Severity.WARNING,
    ),
    After(
        id="tab-not-flush",
        reason="A tab of fixed depth is flush in one thickness of sheet only.",
        source=_OWN_FIGURES,
        check=tabs_flush,
        severity=Severity.NOTE,
    ),
    After(
        id="fingers-unequal",
        reason="A finger meets a gap.",
        source=_OWN_FIGURES,
        check=fingers_mesh,
    ),
    After(
        id="bolt-too-short",
        reason="A bolt comes out of the part it holds.",
        source=_OWN_FIGURES,
        check=bolts_leave,
        severity=Severity.WARNING,
    ),
    After(
        id="bolt-shorter-than-stack",
        reason="A bolt goes through all it holds, and its nut.",
        source="height of a hexagon nut about that of ISO 4032, from memory",
        check=bolts_span,
        severity=Severity.WARNING,
    ),
    After(
        id="bolt-longer-than-stack",
        reason="A bolt that stands out catches.",
        source=COMMON_PRACTICE,
        check=bolts_end,
        severity=Severity.NOTE,
    ),
    After(
        id="bolt-beside-nut",
        reason="A bolt meets its nut only where both are in one line.",
        source=_OWN_FIGURES,
        check=nuts_in_line,
        severity=Severity.WARNING,
    ),
    After(
        id="bolt-before-nut",
        reason="A bolt holds by the thread that is in its nut.",
        source=_OWN_FIGURES,
        check=nuts_reached,
        severity=Severity.WARNING,
    ),
    After(
        id="screw-pokes-through",
        reason="A screw's point stays in the wood.",
        source=_OWN_FIGURES,
        check=screws_stay_in,
        severity=Severity.WARNING,
    ),
    After(
        id="screw-too-short",
        reason="A screw holds by the thread that is in the second part.",
        source=COMMON_PRACTICE,
        check=screws_bite,
        severity=Severity.WARNING,
    ),
    After(
        id="pilot-missing",
        reason="A screw without a pilot hole splits plies and strips board.",
        source=COMMON_PRACTICE,
        check=pilots_bored,
        severity=Severity.WARNING,
    ),
    After(
        id="screw-near-edge",
        reason="A screw near an edge splits it.",
        source=COMMON_PRACTICE,
        check=pilots_inside,
        severity=Severity.WARNING,
    ),
    After(
        id="first-pass-in-tip",
        reason="Within its tip a compression cutter only cuts upwards, and lifts the face.",
        source=COMMON_PRACTICE,
        check=first_pass_below_tip,
        severity=Severity.WARNING,
    ),
    After(
        id="pass-too-deep",
        reason="A slot deeper than three diameters packs its chips and bends the cutter.",
        source="corrections of chip load for depth, published to three diameters; common practice",
        check=pass_depths,
        severity=Severity.WARNING,
    ),
    After(
        id="passes-not-deeper",
        reason="Passes count from the face down.",
        source="the form of a plan",
        check=passes_deepen,
        severity=Severity.WARNING,
    ),
    After(
        id="cutter-too-short",
        reason="Above its edges a cutter rubs and burns.",
        source="the stock's own cutting length",
        check=cutter_reaches,
        severity=Severity.WARNING,
    ),
    After(
        id="stops-short",
        reason="A part that hangs on a veneer tears when it is broken out.",
        source=COMMON_PRACTICE,
        check=goes_through,
        severity=Severity.WARNING,
    ),
    After(
        id="no-skim",
        reason="A sheet is nowhere quite flat on its spoilboard.",
        source=COMMON_PRACTICE,
        check=skims,
        severity=Severity.NOTE,
    ),
    After(
        id="deep-skim",
        reason="Deep cuts ruin the spoilboard and let the next sheet sag.",
        source=COMMON_PRACTICE,
        check=skims_lightly,
        severity=Severity.WARNING,
    ),
    After(
        id="tipping-caution",
        reason="Tall storage tips over, above all on to children.",
        source="16 CFR 1261 and ASTM F2057 give 27 in for clothes storage; used as a mark only",
        check=tipping_warned,
        severity=Severity.NOTE,
    ),
    After(
        id="finger-trap",
        reason="An opening as wide as a child's finger holds it.",
        source="from memory of EN 716 and EN 14988, which avoid gaps of 5 to 12 mm; look them up. "
        "No conformity is claimed",
        check=fingers_free,
        severity=Severity.WARNING,
    ),
    After(
        id="board-too-long",
        reason="A piece of board comes out of a length that is sold.",
        source="the stock's own list of lengths",
        check=boards_long_enough,
    ),
    After(
        id="saw-too-large",
        reason="Whoever has only a saw must get the part out of the sheet too.",
        source=COMMON_PRACTICE,
        check=sawn_from_sheets,
        severity=Severity.NOTE,
    ),
    After(
        id="span-outside",
        reason="A span lies on a part, with wood all the way from support to support.",
        source=_OWN_FIGURES,
        check=spans_lie,
        also=("unknown-part", "unknown-board"),
    ),
    After(
        id="span-overloaded",
        reason="What is asked must sag less than the limit, and stay below the strength.",
        source="Wood Handbook FPL-GTR-190, equation 9-2 and Table 9-1; Euler's formula for legs",
        check=spans_bear,
        severity=Severity.WARNING,
    ),
    After(
        id="span-unreckoned",
        reason="Without a stiffness no sag can be told.",
        source="the stock's own figures",
        check=spans_reckoned,
        severity=Severity.NOTE,
    ),
)
"""The rules in the order they are looked at."""
