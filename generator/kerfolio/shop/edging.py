"""How much is done to edges: metres to band, to round over and to ease, and banding to buy."""

from __future__ import annotations

import math
from collections.abc import Iterable
from itertools import groupby

from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.arc import Edge, heading
from kerfolio.model.edge_treatment import BAND, EASE, EDGE_KINDS, ROUND_OVER
from kerfolio.settling.settled import SettledEdge, SettledPart, SettledPlan
from kerfolio.shop.rows import EdgeRow

TRIMMED = 20.0
"""How far a strip of banding reaches past each end of its edge, to be trimmed flush, mm: common
practice, no single source."""

_WORKED = (ROUND_OVER, EASE, BAND)
"""What takes time or material; the others are left as they are."""

_STRAIGHT_ON = math.cos(math.radians(15))
"""Edges that turn by less than this go on smoothly."""

_Key = tuple[int, str, str, float, float, str]


def edge_list(settled: SettledPlan) -> tuple[EdgeRow, ...]:
    """Return a row for each treatment of each sheet, all pieces counted, banding by what it is."""
    found = [
        (_key(edge, part), edge, part)
        for part in settled.parts
        for edge in part.edges
        if edge.kind in _WORKED
    ]
    found.sort(key=lambda each: each[0])
    return tuple(_row(group) for _, group in groupby(found, key=lambda each: each[0]))


def _key(edge: SettledEdge, part: SettledPart) -> _Key:
    thick = edge.thickness or 0.0
    kind = EDGE_KINDS.index(edge.kind)
    return (kind, part.sheet, edge.of, thick, edge.radius, edge.faces)


def _row(group: Iterable[tuple[_Key, SettledEdge, SettledPart]]) -> EdgeRow:
    same = [(edge, part) for _, edge, part in group]
    edge, part = same[0]
    strips = sum(len(each.pieces) * stretches(one.runs) for one, each in same)
    length = math.fsum(len(each.pieces) * one.length for one, each in same)
    return EdgeRow(
        edge=edge,
        sheet=part.sheet,
        thickness=part.thickness,
        count=strips,
        length=length,
        to_buy=length + strips * 2 * TRIMMED if edge.kind is BAND else 0.0,
    )


def stretches(runs: Iterable[Edge]) -> int:
    """Return in how many straight or curved stretches edges go on: a strip each.

    A strip is laid round a curve that goes on smoothly, and begins anew at a corner; one for each
    side of a rounded corner would be one too many.
    """
    count, before = 0, None
    for run in runs:
        goes_on = before is not None and math.dist(before.end, run.start) <= SAME
        count += 0 if goes_on and before is not None and _smooth(before, run) else 1
        before = run
    return count


def _smooth(one: Edge, other: Edge) -> bool:
    (x0, y0), (x1, y1) = heading(one, at_end=True), heading(other)
    return x0 * x1 + y0 * y1 > _STRAIGHT_ON
