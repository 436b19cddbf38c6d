"""Engravings to be cut on a finished piece: where their middle lies, and how to find it there."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import chain, combinations
from itertools import count as counting

from kerfolio.basis.latin import in_ascii
from kerfolio.geometry.arc import Edge, edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.crossing import crossings
from kerfolio.geometry.measure import Box, bounds
from kerfolio.geometry.transform import moved
from kerfolio.model.feature_kind import ENGRAVING
from kerfolio.model.outline import Drawn
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan

_LEAST_EDGE = 20.0
_INSET = 5.0
_LEAST_SINE = 0.5
_SKEWED = 200.0
_RECESSED, _BRIDGED = 100.0, 300.0
_LONG = 100.0
"""An edge one can lay a square on is this long and reaches this far past the foot, mm; two edges
meet at 30 degrees at least. A pair that is skewed, an edge in a recess or a measure that bridges
one counts as that much farther away, an edge shorter than the last figure as farther by what it
lacks. Common practice, no single source."""

_SAME = 1e-3


@dataclass(frozen=True, slots=True)
class Reach:
    """A distance to measure on a piece, mm: from an edge, square to it, to the middle of the art.

    ``foot`` is where the measure lies on the edge, which runs from ``start`` to ``end``. Where no
    edge is ``straight`` these are of a rule laid against the piece, along x or along y.
    """

    foot: Point
    start: Point
    end: Point
    straight: bool = True

    def distance(self, at: Point) -> float:
        """Return how far a point is from the foot, mm."""
        return math.dist(self.foot, at)


@dataclass(frozen=True, slots=True, kw_only=True)
class Art:
    """What one engraving scratches into a part: lines in the part's frame, mm.

    ``features`` are what it is made of: one, or the elements of a drawing that one name stands for.
    ``file`` is what its own cut file is called: no two engravings of a plan share it. ``centre`` is
    the middle of the box around them. ``reaches`` are two distances by which the centre is found on
    a finished piece.
    """

    part: SettledPart
    name: str
    file: str
    features: tuple[SettledFeature, ...]
    lines: tuple[Contour, ...]
    depth: float
    box: Box
    reaches: tuple[Reach, Reach]

    @property
    def centre(self) -> Point:
        """Where the middle of the art lies in the part's frame."""
        return self.box.centre

    @property
    def distances(self) -> tuple[float, float]:
        """How far the centre is from the two edges, mm."""
        one, other = self.reaches
        return one.distance(self.centre), other.distance(self.centre)

    @property
    def size(self) -> tuple[float, float]:
        """How wide and high the art is, mm."""
        return self.box.width, self.box.height

    @property
    def centred(self) -> tuple[Contour, ...]:
        """The lines with their middle at 0,0."""
        x, y = self.centre
        return tuple(moved(each, -x, -y) for each in self.lines)


def arts_of(settled: SettledPlan) -> tuple[Art, ...]:
    """Return every engraving of every part, in the plan's order.

    The elements of a drawing that one name stands for are one engraving; of a row of repeats each
    is one.
    """
    found: list[Art] = []
    for part in settled.parts:
        engravings = _engravings(part, _drawn_names(settled, part))
        files = _files(part.name, engravings)
        found += [
            _art(part, name, file, features)
            for (name, features), file in zip(engravings.items(), files, strict=True)
        ]
    return tuple(found)


def _files(part: str, names: Iterable[str]) -> Iterator[str]:
    """Yield ``PART.NAME`` for each name, as findings call it: no part's name holds a point.

    A layer of a drawing may have a name that no file can have; where two become one, or one
    another's, the later is numbered.
    """
    taken: set[str] = set()
    stated = list(names)
    for name in stated:
        plain = re.sub("[^a-z0-9._-]+", "-", in_ascii(name)).strip("-.") or ENGRAVING.key
        others = {*taken, *(each for each in stated if each != name)}
        numbered = (f"{plain}-{number}" for number in counting(2))
        file = next(each for each in chain((plain,), numbered) if each not in others)
        taken.add(file)
        yield f"{part}.{file}"


def _drawn_names(settled: SettledPlan, part: SettledPart) -> frozenset[str]:
    stated = next((each for each in settled.plan.parts if each.name == part.name), None)
    shape = stated.shape if stated else None
    rules = shape.features if isinstance(shape, Drawn) else ()
    return frozenset(rule.element.name for rule in rules)


def _engravings(part: SettledPart, drawn: frozenset[str]) -> dict[str, list[SettledFeature]]:
    found: dict[str, list[SettledFeature]] = {}
    for feature in part.features:
        if feature.kind is ENGRAVING:
            stem = feature.name.rpartition(".")[0]
            found.setdefault(stem if stem in drawn else feature.name, []).append(feature)
    return found


def _art(part: SettledPart, name: str, file: str, features: Sequence[SettledFeature]) -> Art:
    lines = tuple(line for feature in features for line in feature.shape)
    boxes = [bounds(each) for each in lines]
    box = Box(
        min(each.x0 for each in boxes),
        min(each.y0 for each in boxes),
        max(each.x1 for each in boxes),
        max(each.y1 for each in boxes),
    )
    depths = [each.depth.value for each in features if each.depth]
    return Art(
        part=part,
        name=name,
        file=file,
        features=tuple(features),
        lines=lines,
        depth=max(depths, default=0.0),
        box=box,
        reaches=reaches(part.plain.outer, box.centre),
    )


def reaches(outline: Contour, at: Point) -> tuple[Reach, Reach]:
    """Return two distances that fix a point inside an outline, from edges that can be reached.

    An edge can be reached when it is straight, long enough, faces away and the point lies square
    to it. The nearest pair is taken, square to one another before skewed, at the outside before
    in a recess or across one, long before short. Where there is no such pair, the distances are
    those to rules laid against the outline, one upright and one level, on the nearer sides.
    """
    feet = [
        _Footing(edge, foot, math.dist(foot, at), _hindrance(edge, foot, at, outline))
        for edge in edges(outline)
        for foot in _feet(edge, at)
    ]
    pairs = [pair for pair in combinations(feet, 2) if _sine(*pair) > _LEAST_SINE]
    if pairs:
        one, other = min(pairs, key=_cost)
        return _reach(one), _reach(other)
    box = bounds(outline)
    x = min((box.x0, box.x1), key=lambda side: abs(side - at[0]))
    y = min((box.y0, box.y1), key=lambda side: abs(side - at[1]))
    return (
        Reach((x, at[1]), (x, box.y0), (x, box.y1), straight=False),
        Reach((at[0], y), (box.x0, y), (box.x1, y), straight=False),
    )


@dataclass(frozen=True, slots=True)
class _Footing:
    """An edge, the point on it to measure from, how far that is, and what hinders it, mm."""

    edge: Edge
    foot: Point
    distance: float
    hindrance: float

    @property
    def way(self) -> Point:
        (x0, y0), (x1, y1) = self.edge.start, self.edge.end
        return (x1 - x0) / self.length, (y1 - y0) / self.length

    @property
    def length(self) -> float:
        return math.dist(self.edge.start, self.edge.end)


def _reach(footing: _Footing) -> Reach:
    return Reach(footing.foot, footing.edge.start, footing.edge.end)


def _feet(edge: Edge, at: Point) -> Iterator[Point]:
    """Yield the point of a straight edge square to ``at``, if it faces away and is well within."""
    (x0, y0), (x1, y1) = edge.start, edge.end
    length = math.dist(edge.start, edge.end)
    if edge.bulge or length < _LEAST_EDGE:
        return
    ux, uy = (x1 - x0) / length, (y1 - y0) / length
    along = (at[0] - x0) * ux + (at[1] - y0) * uy
    inward = (at[1] - y0) * ux - (at[0] - x0) * uy  # the outline runs counter-clockwise
    if _INSET <= along <= length - _INSET and inward > 0:
        yield x0 + along * ux, y0 + along * uy


def _hindrance(edge: Edge, foot: Point, at: Point, outline: Contour) -> float:
    """Return what an edge in a recess, and a measure across one, count as farther away, mm."""
    measured = Edge(foot, at)
    away = (foot[0] - at[0], foot[1] - at[1])
    far = foot[0] * away[0] + foot[1] * away[1] + _SAME
    recessed = any(x * away[0] + y * away[1] > far for x, y, _ in outline.vertices)
    bridged = any(crossings(each, measured) for each in edges(outline) if each != edge)
    return _RECESSED * recessed + _BRIDGED * bridged


def _sine(one: _Footing, other: _Footing) -> float:
    (ax, ay), (bx, by) = one.way, other.way
    return abs(ax * by - ay * bx)


def _cost(pair: tuple[_Footing, _Footing]) -> float:
    far = math.fsum(each.distance + each.hindrance for each in pair)
    short = math.fsum(_LONG - min(_LONG, each.length) for each in pair)
    skew = math.sqrt(max(0.0, 1 - _sine(*pair) ** 2))
    return round(far + short + _SKEWED * skew, 6)
