"""Walking the joints: a place for every piece that they reach.

A link can go several ways (which face, which way round); the loops of joints decide between them.
The walk carries a few candidate placements along and keeps those whose loops close best.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kerfolio.assembly.links import Link
from kerfolio.assembly.ways import Way
from kerfolio.geometry.rigid import Rigid, Vector, added, between, dot, length, scaled

_LEVER = 200.0
"""A turn counts as the way that a point this far off, mm, is moved."""

_CAP = 15.0
"""What a link that is all wrong costs, mm: beyond this, more wrong is not worse."""

_WIDTH = 48
"""How many candidates are carried along."""

_SLACK = 6.0
"""Candidates worse than the best one by more, mm, are dropped: a slip of the pencil is smaller."""

_PATIENCE = 10.0
"""A patient walk takes so many times as much for no worse: misses are shared before one is all."""

AS_GOOD = 0.05
"""Candidates are as good as the best one up to so much, mm."""

_SAME = 0.02


@dataclass(frozen=True, slots=True)
class Walk:
    """Places of pieces (world frame: the root's), the way each link goes, and how badly loops
    close, mm. ``rank`` sums how unusual the ways are.
    """

    poses: Mapping[str, Rigid]
    ways: Mapping[int, int]
    cost: float
    rank: tuple[int, int]


def misfit(way: Way, a: Rigid, b: Rigid) -> float:
    """Return how far from meeting two placed pieces are, mm: the mean over the pairs."""
    return math.fsum(length(gap(way, pair, a, b)) + turn(pair, a, b) for pair in way.pairs) / len(
        way.pairs
    )


def gap(way: Way, pair: tuple[Rigid, Rigid], a: Rigid, b: Rigid) -> Vector:
    """Return the way from the second feature's frame to the first one's, mm, in the world.

    Where the pieces may slide along x, that part is left out.
    """
    first, second = pair
    off = between(b.point(second.origin), a.point(first.origin))
    if not way.slides:
        return off
    x = b.vector(second.x)
    return added(off, scaled(x, -dot(off, x)))


def turn(pair: tuple[Rigid, Rigid], a: Rigid, b: Rigid) -> float:
    """Return by how much two frames are turned against each other, as mm at a lever of 200 mm.

    |R - I| (Frobenius) is 2 sqrt(2) sin(angle / 2); it is exact near 0, where acos is not.
    """
    first, second = pair
    square = 0.0
    for one, other in ((first.x, second.x), (first.y, second.y), (first.z, second.z)):
        off = between(a.vector(one), b.vector(other))
        square += dot(off, off)
    return _LEVER * (square / 2) ** 0.5 if square > 1e-18 else 0.0


def placed(way: Way, a: Rigid, pairs: Sequence[int] | None = None) -> Rigid:
    """Return where the second piece lies when the first lies at ``a``: the mean over its pairs."""
    kept = [way.pairs[i] for i in pairs] if pairs is not None else list(way.pairs)
    places = [a.after(first.after(second.inverse)) for first, second in kept]
    return _mean(places)


def placed_back(way: Way, b: Rigid, pairs: Sequence[int] | None = None) -> Rigid:
    """Return where the first piece lies when the second lies at ``b``."""
    kept = [way.pairs[i] for i in pairs] if pairs is not None else list(way.pairs)
    return _mean([b.after(second.after(first.inverse)) for first, second in kept])


def _mean(places: Sequence[Rigid]) -> Rigid:
    first = places[0]
    off: Vector = (0.0, 0.0, 0.0)
    for each in places:
        off = added(off, between(first.origin, each.origin))
    return first.moved(scaled(off, 1 / len(places)))


def walking_order(links: Sequence[Link], root: str) -> list[tuple[str, list[int]]]:
    """Return the pieces in the order they are reached, each with its links to those before.

    The piece that most links hold comes next, of those the one with the most links of all, so
    that loops close early.
    """
    touching: dict[str, list[int]] = {}
    for index, link in enumerate(links):
        touching.setdefault(link.a.piece, []).append(index)
        touching.setdefault(link.b.piece, []).append(index)
    order: list[tuple[str, list[int]]] = [(root, [])]
    reached = {root}
    while True:
        held: dict[str, list[int]] = {}
        for index, link in enumerate(links):
            ends = (link.a.piece, link.b.piece)
            if (ends[0] in reached) != (ends[1] in reached):
                held.setdefault(ends[0] if ends[1] in reached else ends[1], []).append(index)
        if not held:
            return order
        piece = max(held, key=lambda each: (len(held[each]), len(touching[each])))
        order.append((piece, held[piece]))
        reached.add(piece)


def walk(
    links: Sequence[Link], root: str, *, patient: bool = False, within: float = math.inf
) -> tuple[Walk, ...]:
    """Return the candidate placements of all pieces reached from the root, the best one first.

    A ``patient`` walk rather lets many joints miss a little than one of them altogether. Nothing is
    returned where all cost more than ``within``, mm: that is known as soon as a few loops are seen.
    """
    patience = _PATIENCE if patient else 1.0
    walks = [Walk({root: Rigid()}, {}, 0.0, (0, 0))]
    for piece, held in walking_order(links, root)[1:]:
        cap, slack = patience * _CAP, patience * _SLACK
        grown = [made for each in walks for made in _grown(each, piece, held, links, cap)]
        grown = [each for each in grown if each.cost <= within]
        if not grown:
            return ()
        grown.sort(key=lambda each: (round(each.cost / _SAME), each.rank))
        walks = _kept([each for each in grown if each.cost <= grown[0].cost + slack])
    return tuple(walks)


def _kept(walks: Sequence[Walk]) -> list[Walk]:
    """Return the best candidates, and for each way that a link may go as well one that has it."""
    kept = list(walks[:_WIDTH])
    known = {item for each in kept for item in each.ways.items()}
    for each in walks[_WIDTH:]:
        if each.cost <= walks[0].cost + AS_GOOD and not each.ways.items() <= known:
            known |= each.ways.items()
            kept.append(each)
    return kept


def _grown(
    walk: Walk, piece: str, held: Sequence[int], links: Sequence[Link], cap: float
) -> list[Walk]:
    """Return a walk with one more piece, in each place that one of its links proposes."""
    found: list[Walk] = []
    for index in held:
        link = links[index]
        for way in link.ways:
            if link.b.piece == piece:
                pose = placed(way, walk.poses[link.a.piece])
            else:
                pose = placed_back(way, walk.poses[link.b.piece])
            if any(_is_same(pose, each.poses[piece]) for each in found):
                continue
            found.append(_with(walk, piece, pose, held, links, cap))
    return found


def _with(
    walk: Walk, piece: str, pose: Rigid, held: Sequence[int], links: Sequence[Link], cap: float
) -> Walk:
    poses = {**walk.poses, piece: pose}
    ways, cost, rank = dict(walk.ways), walk.cost, walk.rank
    for index in held:
        link = links[index]
        a, b = poses[link.a.piece], poses[link.b.piece]
        costs = [misfit(way, a, b) for way in link.ways]
        best = min(range(len(costs)), key=lambda i: (round(costs[i] / _SAME), link.ways[i].rank))
        ways[index] = best
        cost += min(costs[best], cap)
        unusual, turned = link.ways[best].rank
        rank = (rank[0] + unusual, rank[1] + turned)
    return Walk(poses, ways, cost, rank)


def _is_same(one: Rigid, other: Rigid) -> bool:
    if length(between(one.origin, other.origin)) > _SAME:
        return False
    return dot(one.x, other.x) > 1 - 1e-6 and dot(one.y, other.y) > 1 - 1e-6
