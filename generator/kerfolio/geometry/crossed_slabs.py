"""The volume two slabs share where their panels stand at a right angle: a plane integral.

Let s run along the line in which the panels cross, b along the normal of the second and a along
that of the first. At a place s the first slab shows a length LA(s), that of its polygon within the
thickness of the second, and the second shows LB(s) likewise. What they share is the integral of
LA(s) LB(s) over s, as the solid there is a box of sides LA and LB, or several.

LA is a sum over the polygon's directed edges: each adds the height at which it runs, held to the
thickness, and takes it away where it runs back (the trapezoid rule for the area of a polygon). Held
to the thickness an edge is at most three straight pieces, and the product of two straight pieces is
integrated exactly. So no polygon is cut and nothing is sorted. All pairs are worked out together.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.float64]
Counts = NDArray[np.int64]

_MOST = 1_000_000
"""So many pairs of pieces are worked out at a time, to bound the memory."""


@dataclass(frozen=True, slots=True)
class Side:
    """One slab of each pair as the other one sees it.

    ``edges`` one array for each pair: rows x0, y0, x1, y1, material on the left. ``along`` and
    ``height`` (rows: factor of x, factor of y, constant) take its points to s and to the height
    over the other's rear face; ``low`` and ``high`` are the other's faces. All in mm.
    """

    edges: Sequence[Numbers]
    along: Numbers
    height: Numbers
    low: Numbers
    high: Numbers


@dataclass(frozen=True, slots=True)
class Pieces:
    """Straight pieces of L(s): from (s0, v0) to (s1, v1), s0 < s1; ``sign`` +1 or -1.

    ``owner`` is the number of the pair, in rising order.
    """

    owner: Counts
    s0: Numbers
    s1: Numbers
    v0: Numbers
    v1: Numbers
    sign: Numbers

    def kept(self, which: NDArray[np.bool_]) -> Pieces:
        """Return some of the pieces."""
        return Pieces(*(each[which] for each in self.rows))

    @property
    def rows(self) -> tuple[Any, ...]:
        """All the columns, in their order."""
        return (self.owner, self.s0, self.s1, self.v0, self.v1, self.sign)


def crossed_volumes(one: Side, other: Side) -> Numbers:
    """Return the volume that each pair shares, mm3; exact but for rounding."""
    count = len(one.edges)
    a, b = pieces(one), pieces(other)
    (low_a, high_a), (low_b, high_b) = _reach(a, count), _reach(b, count)
    low, high = np.maximum(low_a, low_b), np.minimum(high_a, high_b)
    a, b = (each.kept(_meets(each, low, high)) for each in (a, b))
    total = np.zeros(count)
    for i, j in _products(a.owner, b.owner, count):
        total += _shared(a, i, b, j, count)
    # Both signs change with the handedness of the two maps; it is the same for all of a pair.
    return np.abs(total)


def pieces(side: Side) -> Pieces:
    """Return the pieces of L(s) of each pair, on one side."""
    owner = np.repeat(np.arange(len(side.edges)), [len(each) for each in side.edges])
    rows = np.vstack([np.empty((0, 4)), *side.edges])
    begin, end = rows[:, 0:2], rows[:, 2:4]
    along, height = side.along[owner], side.height[owner]
    low, high = side.low[owner], side.high[owner]
    s = np.stack([_mapped(along, begin), _mapped(along, end)], axis=1)
    h = np.stack([_mapped(height, begin), _mapped(height, end)], axis=1)
    over = np.minimum(h[:, 0], h[:, 1]) >= high
    # Whatever runs below adds nothing.
    bent = ~over & (np.maximum(h[:, 0], h[:, 1]) > low)
    joined = np.append(False, (owner[1:] == owner[:-1]) & np.all(begin[1:] == end[:-1], axis=1))
    level = _level(owner, s, (high - low), over, joined)
    return _joined(level, _bent(owner[bent], s[bent], h[bent], low[bent], high[bent]))


def _level(
    owner: Counts, s: Numbers, full: Numbers, over: NDArray[np.bool_], joined: NDArray[np.bool_]
) -> Pieces:
    """Return one piece for each run of joined edges that lie above the thickness.

    On its way to and fro a run adds and takes away the same; only its two ends count.
    """
    follows = joined & over & np.append(False, over[:-1])
    starts = over & ~follows
    stops = over & ~np.append(follows[1:], False)
    return _directed(owner[starts], s[starts, 0], s[stops, 1], full[starts], full[starts])


def _bent(owner: Counts, s: Numbers, h: Numbers, low: Numbers, high: Numbers) -> Pieces:
    """Return the pieces of edges held to the thickness: three each, some of no length."""
    rise = h[:, 1] - h[:, 0]
    level = rise == 0
    step = np.where(level, 1.0, rise)
    first, second = (np.where(level, 0.0, (each - h[:, 0]) / step) for each in (low, high))
    bends = np.clip([np.minimum(first, second), np.maximum(first, second)], 0.0, 1.0)
    share = np.stack([np.zeros(len(rise)), *bends, np.ones(len(rise))], axis=1)
    at = s[:, :1] + (s[:, 1:] - s[:, :1]) * share
    v = np.clip(h[:, :1] + rise[:, None] * share, low[:, None], high[:, None]) - low[:, None]
    ends = (each.ravel() for each in (at[:, :-1], at[:, 1:], v[:, :-1], v[:, 1:]))
    return _directed(np.repeat(owner, 3), *ends)


def _directed(owner: Counts, s0: Numbers, s1: Numbers, v0: Numbers, v1: Numbers) -> Pieces:
    some = (s0 != s1) & ((v0 > 0) | (v1 > 0))
    owner, s0, s1, v0, v1 = owner[some], s0[some], s1[some], v0[some], v1[some]
    forth = s1 > s0
    return Pieces(
        owner,
        np.minimum(s0, s1),
        np.maximum(s0, s1),
        np.where(forth, v0, v1),
        np.where(forth, v1, v0),
        np.where(forth, 1.0, -1.0),
    )


def _joined(one: Pieces, other: Pieces) -> Pieces:
    """Return the pieces of both, by owner."""
    order = np.argsort(np.concatenate([one.owner, other.owner]), kind="stable")
    rows = zip(one.rows, other.rows, strict=True)
    return Pieces(*(np.concatenate(pair)[order] for pair in rows))


def _mapped(line: Numbers, points: Numbers) -> Numbers:
    return np.asarray(line[:, 0] * points[:, 0] + line[:, 1] * points[:, 1] + line[:, 2])


def _reach(given: Pieces, count: int) -> tuple[Numbers, Numbers]:
    """Return from where to where each pair's pieces go; from inf to -inf where it has none."""
    low, high = np.full(count, np.inf), np.full(count, -np.inf)
    np.minimum.at(low, given.owner, given.s0)
    np.maximum.at(high, given.owner, given.s1)
    return low, high


def _meets(given: Pieces, low: Numbers, high: Numbers) -> NDArray[np.bool_]:
    return np.asarray((given.s1 > low[given.owner]) & (given.s0 < high[given.owner]))


def _products(one: Counts, other: Counts, count: int) -> Iterator[tuple[Counts, Counts]]:
    """Yield every (piece of one, piece of the other) of the same pair, in portions."""
    theirs = np.bincount(other, minlength=count)
    start = np.cumsum(theirs) - theirs
    # A row for each piece of one: how many pieces of the other it meets, and the first of them.
    many, first = theirs[one], start[one]
    done = np.cumsum(many)
    here = 0
    while here < len(one):
        before = done[here - 1] if here else 0
        stop = max(here + 1, int(np.searchsorted(done, before + _MOST, side="right")))
        some = many[here:stop]
        i = np.repeat(np.arange(here, stop), some)
        j = np.arange(len(i)) - np.repeat(np.cumsum(some) - some - first[here:stop], some)
        yield i, j
        here = stop


def _shared(a: Pieces, i: Counts, b: Pieces, j: Counts, count: int) -> Numbers:
    """Return for each pair the signed integral of the products of pieces, over the s they share.

    Of two straight pieces from p to q and from r to t over a length h it is
    h (2 p r + p t + q r + 2 q t) / 6.
    """
    low, high = np.maximum(a.s0[i], b.s0[j]), np.minimum(a.s1[i], b.s1[j])
    some = high > low
    i, j, low, high = i[some], j[some], low[some], high[some]
    p, q = _at(a, i, low), _at(a, i, high)
    r, t = _at(b, j, low), _at(b, j, high)
    product = (high - low) * (2 * p * r + p * t + q * r + 2 * q * t) / 6
    signed = a.sign[i] * b.sign[j] * product
    return np.asarray(np.bincount(a.owner[i], signed, minlength=count))


def _at(given: Pieces, which: Counts, s: Numbers) -> Numbers:
    s0, v0 = given.s0[which], given.v0[which]
    return np.asarray(v0 + (given.v1[which] - v0) * ((s - s0) / (given.s1[which] - s0)))
