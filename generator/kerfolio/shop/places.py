"""Where what is cut into a part lies from its left and its lower edge, for marking by hand."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.geometry.measure import bounds
from kerfolio.model.feature_kind import (
    BORE,
    GROOVE,
    HOLE,
    NOTCH,
    POCKET,
    SLOT,
    WINDOW,
    FeatureKind,
)
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan
from kerfolio.shop.drills import edge_bores_of, holes_of

MARKED = (SLOT, NOTCH, WINDOW, POCKET, GROOVE)
"""What is marked besides holes; tabs and fingers are the outline's own."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """Something to mark, mm: its middle from the left and the lower edge of the part's overall box.

    Of a notch it is the middle of its bottom, of a bore into an edge that of its mouth. ``width``
    is across, ``length`` along its ``turn``, degrees from the x axis, 0 up to 180; of a hole or a
    bore both are its diameter. ``depth`` None goes through. ``bore``: a wide one that a head sinks
    into.
    """

    kind: FeatureKind
    left: float
    up: float
    width: float
    length: float
    turn: float = 0.0
    depth: float | None = None
    bore: bool = False


def spots_of(settled: SettledPlan, part: SettledPart) -> tuple[Spot, ...]:
    """Return what is to be marked on a part: holes first, then the rest, as the plan has them."""
    box = bounds(part.plain.outer)
    return (*_drilled(settled, part, box.x0, box.y0), *_others(part, box.x0, box.y0))


def _drilled(settled: SettledPlan, part: SettledPart, x0: float, y0: float) -> Iterator[Spot]:
    for hole in (*holes_of(settled, part), *edge_bores_of(settled, part)):
        yield Spot(
            kind=BORE if hole.edge else HOLE,
            left=hole.at[0] - x0,
            up=hole.at[1] - y0,
            width=hole.diameter,
            length=hole.diameter,
            depth=hole.depth,
            bore=hole.bore,
        )


def _others(part: SettledPart, x0: float, y0: float) -> Iterator[Spot]:
    for feature in part.features:
        if feature.kind in MARKED:
            yield Spot(
                kind=feature.kind,
                left=feature.at[0] - x0,
                up=feature.at[1] - y0,
                width=feature.width.value,
                length=feature.length.value,
                turn=_turn(feature),
                depth=feature.depth.value if feature.depth else None,
            )


def _turn(feature: SettledFeature) -> float:
    angle = math.degrees(math.atan2(feature.direction[1], feature.direction[0])) % 180.0
    return 0.0 if math.isclose(angle, 180.0, abs_tol=1e-6) else angle
