"""Features that stand on an edge of their part: tabs, notches and fingers."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.said import Words, said
from kerfolio.geometry.contour import Contour
from kerfolio.model.feature import Feature, Fingers, Notch, Tabs
from kerfolio.settling.bench import Bench, settled_feature
from kerfolio.settling.copies import finger_count
from kerfolio.settling.edge import EdgeFrame, edge_frame
from kerfolio.settling.scope import unsettled
from kerfolio.settling.settled import Sized
from kerfolio.settling.shaped import Mating, Shaped

ROOT = 0.5
"""How far, mm, a tab reaches into its part and a notch out of it, so that the shapes join."""

_HAIR = 1e-4


def tabs(cutting: Tabs, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield a tab for each place along its edge. Raises SettlingError, ShapeError."""
    scope = bench.fitting.scope
    frame = edge_frame(cutting.edge, bench.outline, scope)
    width = bench.positive(cutting.width, "width")
    depth = bench.fitting.tab_depth(cutting.depth, cutting.takes)
    radius = scope.not_negative(cutting.round, "round") if cutting.round else 0.0
    for stated in cutting.at:
        a = scope.mm(stated)
        b = a + width.value
        shape = frame.box(a, b, 0.0, depth.value, radius)
        yield Shaped(
            feature=settled_feature(
                *(feature, frame.point((a + b) / 2, 0.0), frame.outward),
                *((width, depth), (shape,)),
                takes=cutting.takes,
                ruler=frame.ruler,
            ),
            added=(frame.box(a, b, -ROOT, depth.value, radius),),
            mating=tuple(Mating(at=frame.point(s, 0.0), eaten=frame.along) for s in (a, b)),
            stands_on=(_inside(frame, a, b),),
            stands_out=(_outside(frame, a, b),),
            edge=frame,
            span=(frame.point(a, 0.0), frame.point(b, 0.0)),
        )


def notches(cutting: Notch, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield a notch for each place along its edge. Raises SettlingError, ShapeError.

    A sideways relief eats the longer of bottom and side walls: the bottom of a deep notch bears.
    """
    fitting = bench.fitting
    frame = edge_frame(cutting.edge, bench.outline, fitting.scope)
    width = fitting.width(cutting.takes, cutting.width)
    depth = fitting.notch_depth(cutting.depth, cutting.takes)
    eaten = frame.outward if depth.value >= width.value else frame.along
    for stated in cutting.at:
        s = fitting.scope.mm(stated)
        a, b = s - width.value / 2, s + width.value / 2
        corners = [frame.point(end, -depth.value) for end in (a, b)]
        mating = tuple(Mating(at=each, eaten=eaten) for each in corners)
        yield Shaped(
            feature=settled_feature(
                *(feature, frame.point(s, -depth.value), frame.outward),
                *((width, depth), (frame.box(a, b, -depth.value, 0.0),)),
                takes=cutting.takes,
                room=fitting.given,
                ruler=frame.ruler,
            ),
            taken=(frame.box(a, b, -depth.value, ROOT),),
            mating=mating if cutting.takes else (),
            stands_on=(_inside(frame, a, b, depth.value),),
            stands_out=(_outside(frame, a, b),),
            edge=frame,
            span=(frame.point(a, 0.0), frame.point(b, 0.0)),
        )


def fingers(cutting: Fingers, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield the row of gaps between fingers. Raises SettlingError, ShapeError.

    Every gap is a pitch and the fit wide, every finger a pitch less the fit: half of the clearance
    lies in each of the two parts that meet.
    """
    fitting = bench.fitting
    frame = edge_frame(cutting.edge, bench.outline, fitting.scope)
    count = finger_count(cutting, fitting.scope)
    span = frame.last - frame.first
    gap = fitting.finger_gap(span / count, cutting.takes)
    if gap.value >= 2 * span / count:
        message = f"{count} fingers are narrower than the fit"
        raise unsettled("no-such-shape", message, feature.place, "Lower their `count`.")
    depth = fitting.tab_depth(None, cutting.takes)
    gaps = list(_gaps(frame, count, gap.value, first_is_gap=cutting.first == "gap"))
    walls = [s for a, b in gaps for s in (a, b) if frame.first < s < frame.last]
    gap_reason = gap.reason if isinstance(gap.reason, Words) else said("{}", gap.reason)
    row = Sized(span, said("{} fingers and gaps, each gap {}", count, gap_reason))
    yield Shaped(
        feature=settled_feature(
            *(feature, frame.point((frame.first + frame.last) / 2, 0.0), frame.outward),
            *((row, depth), tuple(_shown(frame, a, b, depth.value) for a, b in gaps)),
            takes=cutting.takes,
            room=fitting.given,
            ruler=frame.ruler,
        ),
        taken=tuple(frame.box(a, b, -depth.value, ROOT) for a, b in gaps),
        mating=tuple(Mating(at=frame.point(s, -depth.value), eaten=frame.along) for s in walls),
        stands_on=(_inside(frame, frame.first, frame.last, depth.value),),
        stands_out=(_outside(frame, frame.first, frame.last),),
    )


def _gaps(
    frame: EdgeFrame, count: int, gap: float, *, first_is_gap: bool
) -> Iterator[tuple[float, float]]:
    """Yield where gaps begin and end; one at the edge's end runs out of the part."""
    pitch = (frame.last - frame.first) / count
    play = (gap - pitch) / 2
    for index in range(0 if first_is_gap else 1, count, 2):
        start = frame.first + index * pitch
        yield (
            start - (ROOT if index == 0 else play),
            start + pitch + (ROOT if index == count - 1 else play),
        )


def _shown(frame: EdgeFrame, a: float, b: float, depth: float) -> Contour:
    return frame.box(max(a, frame.first), min(b, frame.last), -depth, 0.0)


def at_edge(frame: EdgeFrame, a: float, b: float) -> tuple[Contour, Contour]:
    """Return strips just inside and just outside an edge: in the part and beside it, or no edge."""
    return _inside(frame, a, b), _outside(frame, a, b)


def _inside(frame: EdgeFrame, a: float, b: float, depth: float = ROOT) -> Contour:
    """Return a strip just inside an edge, which lies in the part where the edge is one."""
    return frame.box(a, b, -min(ROOT, depth), -_HAIR)


def _outside(frame: EdgeFrame, a: float, b: float) -> Contour:
    """Return a strip just outside an edge, which lies in the void where the edge is one."""
    return frame.box(a, b, 0.02, 0.07)
