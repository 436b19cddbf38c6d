"""Where pieces go when a plan is drawn apart: back along the ways they came, and not far."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from kerfolio.assembly.assembled import Assembled, BuildOrder, PosedPiece
from kerfolio.assembly.extent import box_around, extents, size_of
from kerfolio.geometry.rigid import Vector, added, dot, length, scaled

_AIR = 0.12
"""Clear air between what is drawn apart, of the whole's diagonal (tried on pictures)."""

_FARTHEST = 0.75
"""No piece goes farther than this, of the whole's diagonal; else all ways are shortened alike."""


def apart(assembled: Assembled, order: BuildOrder) -> Mapping[str, Vector]:
    """Return for each piece how far it goes from its place, mm; a piece in no move stays.

    A move is undone by its travel and some air, and starts from where the pieces it would meet
    have gone already. What moves inside a group that is moved itself gets less air: the air is
    shared by the levels. What would then lie in a piece that came later goes on past it.
    """
    pieces = {each.label: each for each in assembled.pieces}
    far = dict.fromkeys(pieces, (0.0, 0.0, 0.0))
    diagonal = _diagonal(pieces.values())
    moves = [(step.standing, step.added, move) for step in order.steps for move in step.moves]
    for number, (standing, new, move) in enumerate(moves):
        way = scaled(move.direction, -1.0)
        carried = sum(set(move.pieces) < set(later.pieces) for _, _, later in moves[number + 1 :])
        air = _AIR * diagonal / (1 + carried)
        met = [pieces[each] for each in (*standing, *new) if each not in move.pieces]
        start = _start([pieces[each] for each in move.pieces], met, far, way)
        gone = scaled(way, start + move.travel + air)
        far |= {label: added(far[label], gone) for label in move.pieces}
    for number, (standing, new, move) in enumerate(moves):
        way = scaled(move.direction, -1.0)
        later = {piece for _, _, each in moves[number + 1 :] for piece in each.pieces}
        if not later.isdisjoint(move.pieces):
            continue  # a later move takes them out of the way
        aside = (later | {*standing, *new}) - {*move.pieces}
        still = {label: each for label, each in pieces.items() if label not in aside}
        more = scaled(way, _past(move.pieces, still, far, way, _AIR * diagonal / 2))
        far |= {label: added(far[label], more) for label in move.pieces}
    farthest = max((length(each) for each in far.values()), default=0.0)
    factor = min(1.0, _FARTHEST * diagonal / farthest) if farthest else 1.0
    return {label: scaled(each, factor) for label, each in far.items()}


def _start(
    moved: Sequence[PosedPiece],
    others: Sequence[PosedPiece],
    far: Mapping[str, Vector],
    way: Vector,
) -> float:
    """Return how far along the way the farthest piece has gone that the moved ones would meet."""
    ours, theirs = (
        extents([replace(each, pose=each.pose.moved(far[each.label])) for each in group], way)
        for group in (moved, others)
    )
    gone = [
        dot(far[other.label], way)
        for other, box in zip(others, theirs, strict=True)
        if any(each.may_hit(box) for each in ours)
    ]
    return max(0.0, *gone) if gone else 0.0


def _past(
    moved: Sequence[str],
    pieces: Mapping[str, PosedPiece],
    far: Mapping[str, Vector],
    way: Vector,
    air: float,
) -> float:
    """Return how much farther along the way moved pieces must go to lie in no other's box, mm.

    Pieces whose boxes overlap at home lie within each other anyway.
    """
    homes = dict(zip(pieces, extents(list(pieces.values()), way), strict=True))
    gone = {label: dot(each, way) for label, each in far.items()}
    drawn = extents([replace(p, pose=p.pose.moved(far[name])) for name, p in pieces.items()], way)
    boxes = dict(zip(pieces, drawn, strict=True))
    pairs = [
        (boxes[one], boxes[other])
        for one in moved
        for other in pieces
        if other not in moved and gone[other] < gone[one] and not homes[one].meets(homes[other])
    ]
    more = 0.0
    for _ in pairs:
        ahead = [
            other.along[1] - mine.along[0]
            for mine, other in pairs
            if mine.along_by(more).meets(other)
        ]
        if not ahead:
            return more
        more = max(ahead) + air
    return more


def _diagonal(pieces: Iterable[PosedPiece]) -> float:
    return length(size_of(box_around(pieces)))
