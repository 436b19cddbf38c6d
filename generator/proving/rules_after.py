"""The rules over a settled plan: shapes, cutters and sheets at one thickness.

To add one: a function that yields findings (in the module of its subject), and a line here.
"""

from __future__ import annotations

from generator.proving.machining import (
    cutter_enters,
    fits_sheet,
    kerf_between,
    leaves_floor,
    sold_sizes,
)
from generator.proving.rule import COMMON_PRACTICE, After
from generator.proving.shapes import features_inside, overlapping_features

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
    ),
    After(
        id="gap-too-small",
        reason="The cutter passes between two pieces.",
        source="geometry of a round cutter",
        check=kerf_between,
    ),
    After(
        id="smaller-than-cutter",
        reason="A cutter cuts nothing narrower than itself.",
        source="geometry of a round cutter",
        check=cutter_enters,
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
    ),
)
"""The rules in the order they are looked at."""
