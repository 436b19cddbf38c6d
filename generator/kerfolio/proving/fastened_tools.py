"""Check that a tool reaches the head of what is fastened, at the step in which that is done."""

from __future__ import annotations

import math
from collections.abc import Iterator

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.assembly.building import Build
from kerfolio.basis.finding import Finding, Severity, warning
from kerfolio.basis.measures import length
from kerfolio.basis.said import said
from kerfolio.geometry.measure import bounds, point_in
from kerfolio.geometry.rigid import Rigid, Vector, added, scaled
from kerfolio.model.fastening import BOLTED, SCREWED
from kerfolio.proving.in_place import InPlace, along, at_points
from kerfolio.proving.rule import COMMON_PRACTICE, together
from kerfolio.settling.settled import SettledPart

TOOL = 100.0
"""How long a key or a driver is in front of a head, mm (common practice, no single source)."""

AROUND = 1.0
"""How far it reaches beyond the head on every side, mm (common practice, no single source)."""

_STEP = 2.0
_WAYS = 8
_TOUCH = 0.05


@together(
    "tool-blocked",
    reason="What holds things together is turned by a tool, which comes along a straight line.",
    source=COMMON_PRACTICE,
    severity=Severity.WARNING,
)
def tools_reach(build: Build) -> Iterator[Finding]:
    """Look for heads that a piece stands before when they are to be turned."""
    return at_points(build, _blocked)


def _blocked(there: InPlace) -> Iterator[Finding]:
    posed, settled = there.posed, there.posed.settled
    if settled.kind not in (BOLTED, SCREWED):
        return
    wide = settled.item.head_diameter or 2 * (settled.item.thread or 0.0)
    here = _present(there)
    found = [
        (free, piece.label)
        for piece in there.pieces
        if piece.label in here
        and piece.label != settled.first.piece
        and (free := _free(there, piece, posed.frame, wide / 2 + AROUND)) is not None
    ]
    if found:
        free, piece = min(found)
        seat, place = settled.first, settled.stated.place
        message = said(
            "`{}` stands {} before the head of `{}` in {}",
            *(piece, length("free", free), there.item, seat.called),
        )
        if posed.step:
            message = said("{} in step {}", message, str(posed.step))
        advice = said(
            "A tool takes {} along a straight line: fasten it before `{}` joins, or leave a hole.",
            *(length("wanted", TOOL), piece),
        )
        what = there.about(seat, along(-free, 0.0, "free"), others=(piece,))
        yield warning("tool-blocked", message, place, advice, **what)


def _present(there: InPlace) -> frozenset[str]:
    """Return the pieces that are there when a fastening is done: all where no step tells."""
    steps = there.settled.plan.steps[: there.posed.step]
    added = [piece.name for step in steps for piece in step.add]
    return frozenset(added or (each.label for each in there.pieces))


def _free(there: InPlace, piece: PosedPiece, frame: Rigid, radius: float) -> float | None:
    """Return how far a tool can be drawn back from a head before it is in a piece, mm; else None.

    The tool is a round rod along the axis; looked at in steps, at its middle and on its rim.
    """
    inner, part = piece.pose.inverse.after(frame), there.settled.part(piece.part)
    start = there.posed.settled.first.sunk
    spots = [(0.0, 0.0)]
    for way in range(_WAYS):
        angle = 2 * math.pi * way / _WAYS
        spots.append((radius * math.cos(angle), radius * math.sin(angle)))
    back = inner.vector((0.0, 0.0, -1.0))
    ways = (_way_in(inner.point((x, y, -start)), back, part) for x, y in spots)
    return min((way for way in ways if way is not None), default=None)


def _way_in(start: Vector, back: Vector, part: SettledPart) -> float | None:
    """Return the steps' first way from a spot back along a direction that is in a part, mm."""
    box = bounds(part.plain)  # faces and box tell most spots apart before any edge is looked at
    for index in range(1, int(TOOL / _STEP) + 1):
        way = index * _STEP
        x, y, z = added(start, scaled(back, way))
        if (
            _TOUCH < z < part.thickness - _TOUCH
            and box.x0 <= x <= box.x1
            and box.y0 <= y <= box.y1
            and point_in(part.plain, (x, y))
        ):
            return way
    return None
