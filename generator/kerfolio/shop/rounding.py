"""How far an edge may be rounded over before a joint suffers, or the sheet has no more to give."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.arc import Edge
from kerfolio.geometry.contour import Point
from kerfolio.geometry.edge_runs import nearest
from kerfolio.geometry.measure import bounds
from kerfolio.model.edge_treatment import BACK_FACE, BOTH_FACES
from kerfolio.model.feature_kind import ENGRAVING, FINGERS, NOTCH, TAB
from kerfolio.settling.settled import SettledEdge, SettledFeature, SettledPart

WALL_KEPT = 2 / 3
"""The share of a notch's wall, or of a finger's breadth, that a rounding leaves: common practice,
no single source."""

_SQUARE = 1e-3  # the sine of an angle that is none


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """The largest radius in mm that something leaves room for; 0 for none.

    ``feature`` is what does, None for the sheet itself, or with ``butts`` the piece it butts on;
    with ``walls`` it is the share of its walls that may go. ``at`` is where that is, in the part's
    frame.
    """

    radius: float
    feature: SettledFeature | None = None
    at: Point | None = None
    butts: bool = False
    walls: bool = False


def stands_on(feature: SettledFeature, edge: SettledEdge) -> bool:
    """Tell whether a tab, a notch or fingers stand on an edge."""
    spans = [edge.ends] if edge.ends else [(run.start, run.end) for run in _straight(edge.runs)]
    return feature.kind in (TAB, NOTCH, FINGERS) and any(_stands(feature, *each) for each in spans)


def butts(edge: SettledEdge, part: SettledPart, sides: frozenset[str]) -> bool:
    """Tell whether an edge lies on one of the ``sides`` of a part that butt on other pieces."""
    if edge.side:
        return edge.side in sides
    box = bounds(part.plain.outer)
    levels = {"left": (0, box.x0), "right": (0, box.x1), "bottom": (1, box.y0), "top": (1, box.y1)}
    return any(
        all(abs(end[axis] - level) <= SAME for end in (run.start, run.end))
        for axis, level in (levels[side] for side in sides)
        for run in _straight(edge.runs)
    )


def limits(edge: SettledEdge, part: SettledPart, sides: frozenset[str]) -> Iterator[Limit]:
    """Yield what bounds the rounding over of an edge.

    The sheet: half of it where both faces are rounded. What butts, or carries tabs or fingers,
    takes none, since its shoulders bear. A rounding keeps off the walls of what is cut near it,
    from the face that it is at, and leaves two thirds of the walls of notches that open in it.
    """
    thick = part.thickness
    yield Limit(radius=thick / 2 if edge.faces == BOTH_FACES else thick)
    if butts(edge, part, sides):
        yield Limit(radius=0.0, butts=True)
    for feature in part.features:
        if feature.kind.by_hand or feature.kind is ENGRAVING:
            continue
        if edge.runs and feature.name not in edge.openings:
            yield from _beside(feature, edge)


def largest(edge: SettledEdge, part: SettledPart, sides: frozenset[str]) -> Limit:
    """Return the tightest of its limits, the first of equal ones."""
    return min(limits(edge, part, sides), key=lambda each: each.radius)


def _beside(feature: SettledFeature, edge: SettledEdge) -> Iterator[Limit]:
    if stands_on(feature, edge):
        kept = feature.length.value * (1 - WALL_KEPT) if feature.kind is NOTCH else 0.0
        yield Limit(radius=kept, feature=feature, at=feature.at, walls=kept > 0)
        return
    blind_behind = feature.depth is not None and edge.faces == BACK_FACE
    if feature.kind is TAB or blind_behind or not feature.shape:
        return
    away, at = min(nearest(edge.runs, shape) for shape in feature.shape)
    if feature.kind is FINGERS and away <= _breadth(feature):
        share = (1 - WALL_KEPT) * _breadth(feature)
        yield Limit(radius=share, feature=feature, at=at, walls=True)
    else:
        yield Limit(radius=away, feature=feature, at=at)


def _breadth(row: SettledFeature) -> float:
    """Return how wide the gaps of a row of fingers are, mm."""
    box = bounds(row.shape[0])
    return box.width if abs(row.direction[1]) > abs(row.direction[0]) else box.height


def _straight(runs: Sequence[Edge]) -> list[Edge]:
    return [each for each in runs if not each.bulge]


def _stands(feature: SettledFeature, start: Point, end: Point) -> bool:
    """Tell whether a feature stands on the straight line between two points, or at its end."""
    (x, y), (ox, oy) = _root(feature), feature.direction
    along = (end[0] - start[0], end[1] - start[1])
    size = (along[0] ** 2 + along[1] ** 2) ** 0.5
    if abs(along[0] * ox + along[1] * oy) > _SQUARE * size:
        return False
    off = abs((x - start[0]) * ox + (y - start[1]) * oy)
    return off <= SAME and _touches(feature, start, end)


def _root(feature: SettledFeature) -> Point:
    """Return the middle of a feature on its edge; that of a notch is the middle of its bottom."""
    (x, y), (ox, oy) = feature.at, feature.direction
    deep = feature.length.value if feature.kind is NOTCH else 0.0
    return (x + deep * ox, y + deep * oy)


def _touches(feature: SettledFeature, start: Point, end: Point) -> bool:
    return min(nearest([Edge(start, end)], shape)[0] for shape in feature.shape) <= SAME
