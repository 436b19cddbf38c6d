"""Where bridges hold a piece in its sheet: on straight edges that mate with nothing.

Widths, heights and distances are common practice, no single source: a bridge of 8 x 2 mm holds a
piece of plywood against a cutter and is cut by hand.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil, dist

from kerfolio.basis.finding import Sketch
from kerfolio.basis.measures import length, point
from kerfolio.basis.said import said
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.measure import length as length_of
from kerfolio.geometry.straight_runs import Beside, StraightRun, beside, straight_runs
from kerfolio.model.bridges import Bridges
from kerfolio.model.feature_kind import ENGRAVING, FINGERS, HOLE, TAB, WINDOW
from kerfolio.model.joint import Joint
from kerfolio.model.joint_kind import EDGE_JOINT
from kerfolio.model.part import Part
from kerfolio.model.plan import CutSetting, Plan
from kerfolio.settling.scope import Scope, unsettled
from kerfolio.settling.settled import (
    Operation,
    SettledBridge,
    SettledFeature,
    SettledPart,
    SettledSheet,
)

WIDE, HIGH = 8.0, 2.0
"""A bridge's width and height in mm, where none are stated; at most a third of the sheet high."""

SMALLEST = (30.0, 2_500.0)
"""mm and mm2: what is narrower or smaller breaks where its bridges are cut; tape holds it."""

PERIMETER_EACH = 600.0
FEWEST, MOST = 3, 8
"""By size a piece gets a bridge for each 600 mm round it, three at least against turning."""

_SLUG_FEWEST = 2
_PARTS = 8
_COARSE = 0.02
"""Places this near to an even step, of the way round, are as good: so few change with thickness."""
_APART = 3.0
"""Bridges keep three widths between their middles."""

_ON = 1.0
"""A stated place is on an edge this near to it, mm."""

_BESIDE = 0.05
_UNMATED = (HOLE, WINDOW, ENGRAVING)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Size:
    """A bridge in mm, and what its middle keeps from the ends of a straight edge."""

    width: float
    height: float
    ends: float


@dataclass(frozen=True, slots=True)
class _Spot:
    """A place for the middle of a bridge, ``s`` mm along its contour, and the way its edge runs.

    It is ``part`` eighths along that ``run`` of its contour, or (no part) where a maker states it.
    """

    s: float
    at: Point
    direction: Point
    run: int
    part: int = 0


@dataclass(frozen=True, slots=True)
class _Round:
    """Places round a contour, and the sum of squares by which they stray from even steps."""

    spots: tuple[_Spot, ...]
    strayed: float


def butted_sides(joints: Iterable[Joint], parts: Iterable[Part]) -> dict[str, frozenset[str]]:
    """Return the sides of each part that joints lay on the face of another piece."""
    ends = [joint.a.name for joint in joints if joint.kind is EDGE_JOINT]
    found: dict[str, frozenset[str]] = {}
    for part in parts:
        found[part.name] = frozenset(
            end.removeprefix(f"{label}.")
            for end in ends
            for label in part.labels
            if end.startswith(f"{label}.")
        )
    return found


def asked_bridges(part: Part, cuts: Iterable[CutSetting]) -> Bridges | None:
    """Return what is stated of a part's bridges: by itself, else in its sheet's cut settings."""
    if part.bridges is not None:
        return part.bridges
    stated = (cut.bridges for cut in cuts if cut.sheet.name == part.sheet.name)
    return next((each for each in stated if each is not None), None)


def parts_to_hold(plan: Plan) -> frozenset[str]:
    """Return the names of the parts for which bridges are asked."""
    asked = ((part.name, asked_bridges(part, plan.cuts)) for part in plan.parts)
    return frozenset(name for name, each in asked if each is not None and each.count != 0)


def bridges_of(
    asked: Bridges | None,
    part: SettledPart,
    sides: Iterable[str],
    drawn: Iterable[Contour],
    sheet: SettledSheet,
    scope: Scope,
    kept: Sequence[SettledBridge] = (),
) -> tuple[SettledBridge, ...]:
    """Return the bridges of a part's outline, then those of what falls out of its openings.

    ``sides`` are sides that butt on another piece, ``drawn`` notches and tabs that stay as drawn.
    ``kept`` are the part's bridges at the thickness it is drawn for: those of other thicknesses
    stand on the same eighths of the same edges. Raises SettlingError for a stated place where no
    bridge can stand.
    """
    if asked is None or asked.count == 0:
        return ()
    size, shape = _size(asked, sheet, scope), part.routed
    mating = [each for each in part.features if each.kind not in _UNMATED]
    taken = beside([*drawn, *(contour for each in mating for contour in each.shape)])
    lines = [*_roots(mating), *_sides(shape, sides)]
    straight = straight_runs(shape.outer, taken, size.ends)
    runs = [each for each in straight if not _lies_on(each, lines)]
    spots = tuple(_stated(asked, runs, size, scope))
    if not asked.at and _holds(shape.outer, 0.0):
        count = asked.count or _by_size(shape.outer, FEWEST)
        spots = _as_kept(runs, kept, 0) or _spread(runs, count, length_of(shape.outer), size)
    slugs = (
        _made(spot, size, Operation.OPENING, number)
        for number, opening in enumerate(shape.openings, start=1)
        if _holds(opening, sheet.cutter.diameter)
        for spot in _slug(opening, taken, size, kept, number)
    )
    return (*(_made(each, size, Operation.OUTLINE, 0) for each in spots), *slugs)


def _as_kept(
    runs: Sequence[StraightRun], kept: Iterable[SettledBridge], contour: int
) -> tuple[_Spot, ...]:
    """Return the places of bridges on a contour that has the same runs elsewhere, else none."""
    spots = [each.spot for each in kept if each.spot and each.spot[0] == contour]
    if any(run >= len(runs) for _, run, _ in spots):
        return ()
    return tuple(_eighth(runs[run], run, part) for _, run, part in spots)


def _size(asked: Bridges, sheet: SettledSheet, scope: Scope) -> _Size:
    width = scope.positive(asked.width, "width") if asked.width else WIDE
    high = min(HIGH, sheet.thickness / 3)
    height = scope.positive(asked.height, "height") if asked.height else high
    if height >= sheet.thickness:
        message = said("bridges of {} are no lower than the sheet", length("height", height))
        advice = said("The sheet is {}: leave a third of it.", length("sheet", sheet.thickness))
        raise unsettled("bridge-too-high", message, asked.place, advice)
    return _Size(width=width, height=height, ends=width / 2 + sheet.cutter.diameter)


def _holds(contour: Contour, less: float) -> bool:
    """Tell whether what a contour encloses, ``less`` mm narrower, is large enough for bridges."""
    box = bounds(contour)
    wide, high = box.width - 2 * less, box.height - 2 * less
    narrow, small = SMALLEST
    return min(wide, high) >= narrow and min(abs(area(contour)), wide * high) >= small


def _slug(
    opening: Contour, taken: Beside, size: _Size, kept: Iterable[SettledBridge], number: int
) -> tuple[_Spot, ...]:
    runs = straight_runs(opening, taken, size.ends)
    as_kept = _as_kept(runs, kept, number)
    return as_kept or _spread(runs, _by_size(opening, _SLUG_FEWEST), length_of(opening), size)


def _by_size(contour: Contour, fewest: int) -> int:
    return min(MOST, max(fewest, ceil(length_of(contour) / PERIMETER_EACH)))


def _roots(features: Iterable[SettledFeature]) -> Iterator[tuple[Point, Point]]:
    """Yield the edges that tabs and fingers stand on: their shoulders bear on another piece."""
    return ((each.at, each.direction) for each in features if each.kind in (TAB, FINGERS))


def _sides(shape: Region, sides: Iterable[str]) -> Iterator[tuple[Point, Point]]:
    box = bounds(shape.outer)
    lines = {
        "left": ((box.x0, box.y0), (-1.0, 0.0)),
        "right": ((box.x1, box.y1), (1.0, 0.0)),
        "bottom": ((box.x0, box.y0), (0.0, -1.0)),
        "top": ((box.x1, box.y1), (0.0, 1.0)),
    }
    return (lines[side] for side in sorted(sides) if side in lines)


def _lies_on(run: StraightRun, lines: Iterable[tuple[Point, Point]]) -> bool:
    """Tell whether a run lies on a line, each given by a point and its normal."""
    return any(
        all(abs((x - at[0]) * nx + (y - at[1]) * ny) < _BESIDE for x, y in (run.start, run.end))
        for at, (nx, ny) in lines
    )


def _stated(
    asked: Bridges, runs: Sequence[StraightRun], size: _Size, scope: Scope
) -> Iterator[_Spot]:
    for each in asked.at:
        at = scope.point(each)
        spots = (_nearest(run, number, at) for number, run in enumerate(runs))
        near = min(spots, key=lambda s: dist(s.at, at), default=None)
        if near is None or dist(near.at, at) > _ON:
            message = said("no bridge can stand at {}", point(*at))
            advice = said(
                "Name a point on a straight stretch of the outline that mates with nothing, {} "
                "from its ends.",
                length("ends", size.ends),
            )
            there = Sketch(part="", outline=(), spots=(at,))
            raise unsettled("bridge-off-edge", message, asked.place, advice, sketch=there)
        yield near


def _nearest(run: StraightRun, number: int, at: Point) -> _Spot:
    (x, y), (ux, uy) = run.start, run.direction
    along = min(run.length, max(0.0, (at[0] - x) * ux + (at[1] - y) * uy))
    return _Spot(run.begins + along, run.point(along), run.direction, number)


def _spread(
    runs: Sequence[StraightRun], count: int, perimeter: float, size: _Size
) -> tuple[_Spot, ...]:
    """Return so many places in even steps round a contour, fewer where there is no room.

    Places are eighths of straight runs, so that they follow the sheet's thickness smoothly. Those
    of the longest run are tried as the first one, its middle before its ends; the round that strays
    least from even steps is taken.
    """
    if not runs:
        return ()
    numbered = list(enumerate(runs))
    spots = [each for number, run in numbered for each in _eighths(run, number)]
    number, longest = max(numbered, key=lambda each: round(each[1].length, 1))
    firsts = _eighths(longest, number)
    rounds = [_round(spots, first, count, perimeter, size) for first in firsts]
    return min(rounds, key=lambda each: (-len(each.spots), round(each.strayed, 1))).spots


def _eighths(run: StraightRun, number: int) -> tuple[_Spot, ...]:
    """Return places along a run, its middle first."""
    ways = sorted(range(1, _PARTS), key=lambda part: abs(2 * part - _PARTS))
    return tuple(_eighth(run, number, part) for part in ways)


def _eighth(run: StraightRun, number: int, part: int) -> _Spot:
    along = run.length * part / _PARTS
    return _Spot(run.begins + along, run.point(along), run.direction, number, part)


def _round(
    spots: Sequence[_Spot], first: _Spot, count: int, perimeter: float, size: _Size
) -> _Round:
    """Return the places nearest to even steps from the first one."""
    chosen, strayed = [first], 0.0
    for step in range(1, count):
        target = first.s + step * perimeter / count
        left = [spot for spot in spots if _keeps(spot, chosen, size)]
        if not left:
            break
        ways = [_way_round(each.s - target, perimeter) for each in left]
        shares = [round(way / (_COARSE * perimeter)) for way in ways]
        chosen.append(left[shares.index(min(shares))])
        strayed += min(ways) ** 2
    return _Round(tuple(sorted(chosen, key=lambda spot: spot.s)), strayed)


def _keeps(spot: _Spot, chosen: Iterable[_Spot], size: _Size) -> bool:
    return all(dist(spot.at, each.at) >= _APART * size.width for each in chosen)


def _way_round(way: float, perimeter: float) -> float:
    """Return the shorter way round a contour, mm."""
    rest = abs(way) % perimeter
    return min(rest, perimeter - rest)


def _made(spot: _Spot, size: _Size, operation: Operation, contour: int) -> SettledBridge:
    return SettledBridge(
        at=spot.at,
        direction=spot.direction,
        width=size.width,
        height=size.height,
        operation=operation,
        spot=(contour, spot.run, spot.part) if spot.part else None,
    )
