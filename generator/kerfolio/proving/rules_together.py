"""The rules over a plan put together: joints that agree, pieces that fit, an order that works.

To add one: a function that yields findings (in the module of its subject), and a line here.
"""

from __future__ import annotations

from kerfolio.assembly.building import Build
from kerfolio.basis.finding import Severity
from kerfolio.proving.going_together import (
    braced,
    joints_agree,
    joints_checked,
    order_exists,
    pieces_fit,
    pieces_joined,
    steps_possible,
    ways_stated,
)
from kerfolio.proving.rule import COMMON_PRACTICE, OUR_FORM, Rule

GEOMETRY = "geometry of rigid flat panels"

RULES_TOGETHER: tuple[Rule[Build], ...] = (
    Rule(
        id="joint-off",
        reason="Every way round from piece to piece must lead to the same place.",
        source="geometry: loops of joints close",
        check=joints_agree,
        also=("joint-count", "joint-way"),
    ),
    Rule(
        id="which-way-round",
        reason="A piece that could go in two ways must be told which.",
        source=OUR_FORM,
        check=ways_stated,
        severity=Severity.WARNING,
    ),
    Rule(
        id="piece-unjoined",
        reason="A piece that is in no joint has no place.",
        source=OUR_FORM,
        check=pieces_joined,
        severity=Severity.WARNING,
    ),
    Rule(
        id="joint-unchecked",
        reason="A place that only one joint states is only as right as that joint.",
        source="geometry: loops of joints close",
        check=joints_checked,
        severity=Severity.NOTE,
    ),
    Rule(
        id="pieces-clash",
        reason="Two pieces cannot fill the same space.",
        source=GEOMETRY,
        check=pieces_fit,
    ),
    Rule(
        id="step-blocked",
        reason="A piece must get to its place past what stands.",
        source=COMMON_PRACTICE,
        check=steps_possible,
        severity=Severity.WARNING,
    ),
    Rule(
        id="unbraced",
        reason="A structure good under downward load may not resist sideways force.",
        source=COMMON_PRACTICE,
        check=braced,
        severity=Severity.NOTE,
    ),
    Rule(
        id="pieces-locked",
        reason="Pieces that hold each other can be neither put together nor taken apart.",
        source="blocking graphs: Wilson and Latombe, AAAI 1992 (abstract)",
        check=order_exists,
        severity=Severity.WARNING,
    ),
)
"""The rules in the order they are looked at."""
