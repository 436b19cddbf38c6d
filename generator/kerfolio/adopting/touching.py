"""Edges that follow a sheet without any tab: butted on a face, or flush with what butts on theirs.

Once it is known how pieces move while a sheet grows, so is how such an edge must, to touch as it is
drawn: no gap opens, and nothing needs the same room.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from kerfolio.adopting.edge_key import EdgeKey, edge_key, is_same_edge
from kerfolio.adopting.meeting import Body
from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.together import Arrangement
from kerfolio.adopting.turnings import turnings_of
from kerfolio.geometry.contour import Point
from kerfolio.geometry.nesting import holders
from kerfolio.geometry.rigid import Vector

_SQUARE = 0.9995
_NEAR = 0.15
_LEAST = 5.0
"""Shorter edges, mm, are none that anything rests on."""

_FLUSH = 0.05
_SHARES = (0.5, 0.25, 0.75)


@dataclass(frozen=True, slots=True)
class Touch:
    """An edge of a piece in the plane of another's face, ``flush`` with it or butted on it.

    ``out`` and ``at``, the middle of the edge, are in the piece's own drawing.
    """

    piece: int
    out: Point
    at: Point
    other: int
    flush: bool


@dataclass(frozen=True, slots=True)
class _Edge:
    start: Point
    end: Point
    out: Point

    def at(self, share: float) -> Point:
        (ax, ay), (bx, by) = self.start, self.end
        return (ax + (bx - ax) * share, ay + (by - ay) * share)


def touches(parts: Sequence[PartPlan], arranged: Arrangement) -> tuple[Touch, ...]:
    """Return the edges without tabs and fingers that touch faces, then those flush with them."""
    owner = {piece: part for part in parts for piece in part.numbers}
    plain = {part.name: tuple(_plain_edges(part)) for part in parts}
    butted, flush = [], []
    for piece, pose in arranged.poses.items():
        for edge in plain[owner[piece].name]:
            for other, there in arranged.poses.items():
                onto = there.inverse.after(pose)
                out = onto.vector((*edge.out, 0.0))
                if other == piece or abs(out[2]) < _SQUARE:
                    continue
                body, own = arranged.bodies[other], arranged.bodies[piece]
                spots = [onto.point(own.mid(edge.at(share))) for share in _SHARES]
                if not _lies_on(body, out, spots):
                    continue
                butted.append(Touch(piece, edge.out, edge.at(0.5), other, flush=False))
                far = onto.inverse
                for end in plain[owner[other].name]:
                    if _is_flush(
                        own, far.vector((*end.out, 0.0)), far.point(body.mid(end.at(0.5)))
                    ):
                        flush.append(Touch(other, end.out, end.at(0.5), piece, flush=True))
    return (*butted, *dict.fromkeys(flush))


def _plain_edges(part: PartPlan) -> Iterator[_Edge]:
    """Yield the straight edges of a part's body that carry no tabs and no fingers."""
    turnings = turnings_of(part.made.body) or ()
    taken = [edge_key(each.out, each.at) for each in part.made.tabs]
    taken += [edge_key(row.out, row.middle) for row in part.made.fingers]
    for index, turning in enumerate(turnings):
        start, end = turning.end, turnings[(index + 1) % len(turnings)].start
        size = ((end[0] - start[0]) ** 2 + (end[1] - start[1]) ** 2) ** 0.5
        if size < _LEAST:
            continue
        out = ((end[1] - start[1]) / size + 0.0, (start[0] - end[0]) / size + 0.0)
        if not any(is_same_edge(edge_key(out, start), key) for key in taken):
            yield _Edge(start, end, out)


def _lies_on(body: Body, out: Vector, spots: Sequence[Vector]) -> bool:
    """Tell whether an edge lies on the face of a body that it looks at, by points along it."""
    level = 0.0 if out[2] > 0 else body.thickness
    if not all(abs(z - level) <= _NEAR for _, _, z in spots):
        return False
    region = body.part.draft.region
    return 0 in holders([(x, y) for x, y, _ in spots], [region.outer, *region.openings])


def _is_flush(body: Body, out: Vector, spot: Vector) -> bool:
    """Tell whether an edge lies in the plane of a body's face and looks as that does."""
    level = body.thickness if out[2] > 0 else 0.0
    return abs(out[2]) >= _SQUARE and abs(spot[2] - level) <= _FLUSH


def led_edges(
    parts: Sequence[PartPlan],
    arranged: Arrangement,
    found: Sequence[Touch],
    moves: Mapping[int, Vector],
    sheet: str,
) -> dict[tuple[int, EdgeKey], Fraction]:
    """Return how far out edges move that touch faces, while a sheet grows by 1 mm.

    ``moves`` say how pieces move then. An edge moves only where it must alike in all pieces.
    """
    owner = {piece: i for i, part in enumerate(parts) for piece in part.numbers}
    wanted: dict[tuple[int, EdgeKey], set[Fraction]] = {}
    for each in found:
        part = owner[each.piece]
        out = arranged.poses[each.piece].vector((*each.out, 0.0))
        mine, theirs = moves.get(each.piece), moves.get(each.other)
        apart = sum(
            axis * ((theirs[k] if theirs else 0.0) - (mine[k] if mine else 0.0))
            for k, axis in enumerate(out)
        )
        half = 0.5 if parts[owner[each.other]].sheet == sheet else 0.0
        by = Fraction(apart + (half if each.flush else -half)).limit_denominator(100)
        wanted.setdefault((part, edge_key(each.out, each.at)), set()).add(by)
    return {key: next(iter(by)) for key, by in wanted.items() if len(by) == 1 and any(by)}
