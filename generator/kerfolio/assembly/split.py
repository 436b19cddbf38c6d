"""A heap of bodies parted in two along a straight way, again and again, until none is whole.

Taking apart backwards is putting together: the part that leaves last is set down first. Taking
things away never puts anything in the way, so whichever legal split is made first, a heap that
comes apart at all still does; the prices only choose the more sensible of the legal ones.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import Move
from kerfolio.assembly.blocking import Blocking
from kerfolio.assembly.whole import Whole

# What makes a split less welcome. Only their order of size matters; the ratios are our own choice.
_STANDING = 100.0  # a piece that stands already is moved
_FALLS = 50.0  # a half is in several lots that need holding
_ASKEW = 10.0  # a joint is entered across its own axis
_HEAVY = 10.0  # the mover is all of the mass; less in proportion
_MANY = 8.0  # the mover is a lot made up beforehand; for each piece above one
_LOTS = 8.0  # what stays is in several lots, but each stands by itself
_TIPS = 6.0  # what stays does not stand by itself
_BELOW = 10.0  # the mover comes from below
_TURN = 2.0  # the way is not that of the move next to it


@dataclass(frozen=True, slots=True)
class Split:
    """``mover`` leaves ``base`` along the way of that number.

    Each is a body (a set of pieces that stays whole) or split further.
    """

    base: int | Split
    mover: int | Split
    way: int


def group_of(tree: int | Split) -> int:
    """Return all pieces of a tree as a set."""
    if isinstance(tree, int):
        return tree
    return group_of(tree.base) | group_of(tree.mover)


def split(
    whole: Whole, bodies: Sequence[int], standing: int = 0, last: int | None = None
) -> int | Split | None:
    """Return how bodies come apart, None when some cannot.

    ``standing`` are pieces better left where they are. ``bodies`` are in the order in which they
    are best put together, as far as nothing else decides; ``last`` is the way of the move before.
    """
    if len(bodies) == 1:
        return bodies[0]
    best = _best(whole, bodies, standing, last)
    if best is None:
        return None
    mover, way = best
    stays = split(whole, [each for each in bodies if not each & mover], standing, way)
    leaves = split(whole, [each for each in bodies if each & mover], standing)
    return None if stays is None or leaves is None else Split(stays, leaves, way)


def moves(whole: Whole, tree: int | Split) -> Iterator[tuple[int, Move]]:
    """Yield (way out, move) of every split, in the order of putting together.

    Halves that do not touch are only set down beside each other, which is no move.
    """
    if isinstance(tree, int):
        return
    yield from moves(whole, tree.base)
    yield from moves(whole, tree.mover)
    mover, base = group_of(tree.mover), group_of(tree.base)
    if whole.near(mover) & base:
        yield tree.way, whole.move(mover, base, tree.way)


def stuck(graphs: Blocking, bodies: Sequence[int]) -> tuple[int, ...]:
    """Return bodies of which no group can leave the others, none when all come apart."""
    heaps = [tuple(bodies)]
    while heaps:
        heap = heaps.pop()
        if len(heap) > 1:
            mover = next((group for group, _ in _legal(graphs, heap)), None)
            if mover is None:
                return heap
            heaps.append(tuple(each for each in heap if each & mover))
            heaps.append(tuple(each for each in heap if not each & mover))
    return ()


def core(graphs: Blocking, bodies: Sequence[int]) -> tuple[int, ...]:
    """Return the fewest bodies that still hold each other: with any one gone the rest comes apart.

    Returns none when the bodies come apart.
    """
    held = stuck(graphs, bodies)
    for body in held:
        fewer = stuck(graphs, [each for each in held if each != body])
        if fewer:
            return core(graphs, fewer)
    return held


def _legal(graphs: Blocking, bodies: Sequence[int]) -> Iterator[tuple[int, int]]:
    """Yield every (group, way) in which a group that one body carries along may leave."""
    everything = sum(bodies)
    for way in range(len(graphs.ways)):
        groups = (graphs.carried(body, way, bodies) for body in bodies)
        yield from ((each, way) for each in dict.fromkeys(groups) if each != everything)


def _best(
    whole: Whole, bodies: Sequence[int], standing: int, last: int | None
) -> tuple[int, int] | None:
    """Return the legal (mover, way) of the lowest price, None when there is none."""
    everything = sum(bodies)
    rank = {body: number for number, body in enumerate(bodies)}
    priced = []
    for mover, way in _legal(whole.graphs, bodies):
        inside = [body for body in bodies if body & mover]
        price = _price(whole, mover, everything & ~mover, way)
        price += _STANDING * bool(mover & standing) + _TURN * (way != last)
        price += _FALLS * (len(whole.lots(inside)) > 1)
        priced.append((round(price, 6), -min(rank[body] for body in inside), way, mover))
    priced.sort()
    best: tuple[float, int, int, int] | None = None
    for price, late, way, mover in priced:
        if best is not None and price > best[0]:
            break  # the rest only costs more
        stays = [body for body in bodies if not body & mover]
        found = (price + _footing(whole, stays), late, way, mover)
        best = found if best is None else min(best, found)
    return None if best is None else (best[3], best[2])


def _price(whole: Whole, mover: int, base: int, way: int) -> float:
    """Return the price of a split, save for how what stays is left standing."""
    out = whole.graphs.ways[way]
    share = whole.mass(mover) / (whole.mass(mover) + whole.mass(base))
    return (
        _ASKEW * whole.askew(mover, base, way)
        + _HEAVY * share
        + _MANY * (mover.bit_count() - 1)
        + _BELOW * (out[2] < -0.1)
    )


def _footing(whole: Whole, bodies: Sequence[int]) -> float:
    """Return the price of what stays: whether it holds together, and stands."""
    lots = whole.lots(bodies)
    steady = all(whole.stands(lot) for lot in lots)
    if len(lots) > 1:
        return _LOTS if steady else _FALLS
    return 0.0 if steady else _TIPS
