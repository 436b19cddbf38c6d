"""What lies on others does under a person: with them as one body where it is held, else by itself.

A slab that only lies there is a body of its own on the hull of what bears it: it tips off about a
side of that hull, and slides on it, before anything else moves. What bears it is pushed by friction
at its top; each support tips about its own foot with its own weight and an even share of what lies
on it, in the middle of its top. With m its mass, b the way to the side of its foot, N the share, c
the way from the middle of its top to that side, and h its height, all of them together give way at
the sum of (m b + N c) g / h (statics of rigid bodies; the slab moves along level).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.bracing import bracing
from kerfolio.assembly.extent import box_around, corners
from kerfolio.assembly.in_use import (
    BRACE,
    PANEL,
    SHOULDER,
    InUse,
    Push,
    first_edge,
    in_use_of,
    middle_of,
    pushes_of,
    tipped_by,
    tips_in_the_middle,
)
from kerfolio.assembly.stability import Stability, along, sides, stability_of
from kerfolio.basis.masses import GRAVITY
from kerfolio.geometry.contour import Point
from kerfolio.geometry.hull import convex_hull, shared_hull
from kerfolio.geometry.rigid import Vector
from kerfolio.model.plan import LYING, Assembly
from kerfolio.settling.settled import SettledPlan

_LEVEL = 0.05  # mm: points of a top within this of the highest bear


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """One of the things that lie on others, in its place, with each of what bears it.

    ``whole`` is all of them as one, ``stability`` how steady that is.
    """

    stated: Assembly
    lying: Assembled
    supports: tuple[Assembled, ...]
    whole: Assembled
    stability: Stability

    @property
    def inset(self) -> float | None:
        """How far its centre of mass lies inside what bears it, mm; None where that has no area.

        Below zero it falls off by itself.
        """
        nearest = self._nearest
        return nearest[1] if nearest else None

    @property
    def to_side(self) -> tuple[Vector, Vector] | None:
        """From under its centre of mass to the nearest side of what bears it, in the world, mm."""
        nearest = self._nearest
        if nearest is None:
            return None
        (x, y), inset, (wx, wy) = nearest
        left, front, low = box_around(self.lying.pieces)[0]
        start = (left + x, front + y, low)
        return start, (start[0] + inset * wx, start[1] + inset * wy, low)

    @property
    def _nearest(self) -> tuple[Point, float, Point] | None:
        """Its centre of mass from its left front corner, how far to the nearest side, and where."""
        slab = _slab(self)
        if slab is None:
            return None
        x, y, _ = slab.centre
        found = ((side - along((x, y), way), way) for way, side in sides(slab))
        inset, way = min(found)
        return (x, y), inset, way


def laid_on(stated: Assembly, lying: Assembled, supports: Sequence[Assembled]) -> Laid:
    """Return a thing with what bears it, all in their places."""
    pieces = [piece for each in (lying, *supports) for piece in each.pieces]
    joints = [joint for each in (lying, *supports) for joint in each.joints]
    whole = replace(lying, pieces=tuple(pieces), joints=tuple(joints))
    return Laid(
        stated=stated,
        lying=lying,
        supports=tuple(supports),
        whole=whole,
        stability=stability_of(whole),
    )


def laid_in_use(settled: SettledPlan, laid: Laid) -> InUse | None:
    """Return what it does in use; None as for ``in_use_of``, or where what bears has no area."""
    body, feet = laid.stability, [stability_of(each) for each in laid.supports]
    found, slab = in_use_of(settled, laid.whole, body), _slab(laid)
    if found is None or slab is None or not all(each.contact for each in feet):
        return None
    each_foot = [pushes_of(settled, *both) for both in zip(laid.supports, feet, strict=True)]
    pushes = [_weakest(each, own) for each, *own in zip(found.pushes, *each_foot, strict=True)]
    if laid.stated.held != LYING:
        return replace(found, pushes=tuple(pushes))
    person, ways = settled.plan.person, [each.push for each in bracing(laid.whole)]
    shares = [_share(*both) for both in zip(laid.supports, feet, strict=True)]
    loads = slab.mass, slab.mass + person.kg
    return replace(
        found,
        edge=first_edge((slab, body), person),
        pushes=tuple(
            _slid(each, way, settled.plan.friction * GRAVITY, loads, shares)
            for each, way in zip(pushes, ways, strict=True)
        ),
        middle_tips=any(tips_in_the_middle(each, person) for each in (slab, body)),
        lies=True,
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class UsedThing:
    """One of the things of a set in use: by itself, or with the ``on`` that it lies on.

    ``bears``: something lies on it, so that it is used by itself only before that is there.
    """

    stated: Assembly
    on: tuple[str, ...]
    bears: bool
    found: InUse


def _weakest(push: Push, feet: Sequence[Push]) -> Push:
    """Return a push with what stands against it in what bears the panel, each by itself."""
    least = min(feet, key=lambda each: _SUREST.index(each.stiffened))
    leans = [each.lean for each in feet if each.lean is not None]
    loose = not least.stiffened and least.lean is None
    return replace(
        push,
        tabs=sum(each.tabs for each in feet),
        lean=max(leans, default=None) if not loose else None,
        stiffened=least.stiffened,
        by=tuple(label for each in feet for label in each.by) if least.stiffened else (),
    )


_SUREST = ("", BRACE, SHOULDER, PANEL)


def _slid(
    push: Push,
    way: Vector,
    slide: float,
    loads: tuple[float, float],
    shares: Sequence[tuple[Stability, Point]],
) -> Push:
    """Return a push on what only lies there; ``loads`` kg lie on its supports, empty and loaded."""
    empty, loaded = (
        math.fsum(tipped_by(foot, load / len(shares), top, way) for foot, top in shares)
        for load in loads
    )
    return replace(
        push,
        slides_empty=slide * loads[0],
        slides_loaded=slide * loads[1],
        tips_empty=empty,
        tips_loaded=loaded,
    )


def _share(support: Assembled, foot: Stability) -> tuple[Stability, Point]:
    """Return a support as a body pushed at its top, and the middle of that top, mm."""
    least = box_around(support.pieces)[0]
    middle = middle_of(tuple(_top(support)))
    return replace(foot, crown_height=foot.size[2]), (middle[0] - least[0], middle[1] - least[1])


def _top(support: Assembled) -> Sequence[Point]:
    """Return the points of the highest of its corners, across the floor, mm."""
    points = [point for piece in support.pieces for point in corners(piece)]
    highest = max(point[2] for point in points)
    return [(x, y) for x, y, z in points if z >= highest - _LEVEL]


def _slab(laid: Laid) -> Stability | None:
    """Return what lies as a body on the hull of what bears it; None where that has no area."""
    body, (least, _) = stability_of(laid.lying), box_around(laid.lying.pieces)
    high = [each for each in laid.supports if _height(each) >= least[2] - _LEVEL]
    bearing = convex_hull(point for each in high for point in _top(each))
    under = convex_hull((x, y) for piece in laid.lying.pieces for x, y, _ in corners(piece))
    contact = shared_hull(bearing, under)
    moved = tuple((x - least[0], y - least[1]) for x, y in contact)
    return replace(body, contact=moved) if moved else None


def _height(support: Assembled) -> float:
    return box_around(support.pieces)[1][2]
