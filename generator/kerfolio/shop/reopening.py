"""A piece too tight laid for a second cut, which opens it wider: what is cut, and where it lies.

Three points fix a flat piece, two of them along a fence and one at a stop (the 3-2-1 principle of
locating work; common practice, no single source). The corner of fence and stop is 0,0.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.basis.tolerance import SAME
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.transform import turned
from kerfolio.settling.reopened import reopened
from kerfolio.settling.settled import Cut, SettledFeature, SettledPart, SettledSheet

_TURNS = (0.0, 90.0, 180.0, 270.0)
_SHARE = 1 / 3
"""The share of its width on which a piece bears along a fence, at least (common practice)."""
_STOP = 10.0
"""mm of an edge that lie well against a stop; a curve touches it in one point, which will do."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lying:
    """A piece turned about its own 0,0, degrees, then moved by x, y, mm: its lower left is at 0,0.

    ``past`` tells that a cut runs out over the fence below or the stop at its left.
    """

    turn: float
    x: float
    y: float
    past: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Reopening:
    """A part whose openings are cut wider by ``by`` mm, and how a piece of it lies for that.

    ``name`` is what is reopened as a plan names it: the part, or a feature of it.
    """

    name: str
    part: SettledPart
    by: float
    cuts: tuple[Cut, ...]
    lying: Lying


def reopening(
    name: str,
    part: SettledPart,
    sheet: SettledSheet,
    features: Sequence[SettledFeature],
    by: float,
    turns: Sequence[float] = _TURNS,
) -> Reopening | None:
    """Return what opens features of a part wider; None where it bears on no edge to lay it by.

    ``turns`` are those that the piece may lie in.
    """
    cuts = reopened(part, sheet, features, by)
    lying = lying_for(part.routed.outer, (c for cut in cuts for c in cut.contours), turns)
    if lying is None:
        return None
    return Reopening(name=name, part=part, by=by, cuts=cuts, lying=lying)


def lying_for(
    outline: Contour, cuts: Iterable[Contour], turns: Sequence[float] = _TURNS
) -> Lying | None:
    """Return how a piece of an outline is laid for ``cuts``, None where it bears on no edge.

    They run out over neither fence nor stop where the piece can lie so, and its left edge is
    straight; then it is turned as little as may be.
    """
    ways = _ways(outline, tuple(cuts), turns)
    return min(ways, key=lambda each: each[0], default=(None, None))[1]


def _ways(
    outline: Contour, cuts: Sequence[Contour], turns: Sequence[float]
) -> Iterator[tuple[tuple[bool, bool, float], Lying]]:
    """Yield each way to lie with what speaks against it, the worst first."""
    for turn in turns:
        shape = turned(outline, turn)
        box, corners = bounds(shape), points(shape)
        if _span(x for x, y in corners if y < box.y0 + SAME) < _SHARE * box.width:
            continue
        left = _span(y for x, y in corners if x < box.x0 + SAME)
        reach = [bounds(turned(each, turn)) for each in cuts]
        past = any(each.x0 < box.x0 - SAME or each.y0 < box.y0 - SAME for each in reach)
        lying = Lying(turn=turn, x=0.0 - box.x0, y=0.0 - box.y0, past=past)
        yield (past, left < _STOP, turn), lying


def _span(found: Iterable[float]) -> float:
    """Return from where to where values reach."""
    every = sorted(found)
    return every[-1] - every[0] if every else 0.0
