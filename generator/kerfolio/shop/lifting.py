"""Whether a slab that only lies on its supports lifts off one of them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from kerfolio.geometry.measure import bounds
from kerfolio.model.plan import LYING, Plan
from kerfolio.model.span import Span
from kerfolio.settling.settled import SettledPlan
from kerfolio.shop.mass import part_mass
from kerfolio.shop.span_place import SpanPlace

_LEAST = 1.0
"""An end that reaches out no farther than this, mm, is no overhang."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Lifting:
    """The loads on an overhang that lift the far end of what lies there, kg.

    Statics about the support: P c = m a. The slab's own ``mass`` (kg) holds it down with the way
    ``arm`` from the support to its centre of mass, mm; the load stands at its end, ``reach`` mm
    out (``load_end``), or evenly over the overhang (``load_even``: its middle is half as far out).
    0 where it falls by itself. ``asked``: the load that the span is stated for may stand out there.
    """

    reach: float
    arm: float
    mass: float
    asked: bool = True

    @property
    def load_end(self) -> float:
        """The load at the very end that lifts the far end, kg."""
        return max(0.0, self.mass * self.arm / self.reach)

    @property
    def load_even(self) -> float:
        """The load spread over the overhang that lifts the far end, kg."""
        return 2 * self.load_end


def lifting_of(span: Span, settled: SettledPlan, place: SpanPlace) -> Lifting | None:
    """Return what lifts a slab at its worse end; None where it is held down or hangs out nowhere.

    An overhang lies unless it is stated to be fixed; a shelf is held by its joints unless it is
    stated to lie. Either follows how its assembly lies on others. Where an overhang of the same
    part is stated, the load of a shelf stands between its supports.
    """
    if not _lies(span, settled.plan):
        return None
    mass, centre, low, high = _slab(span, settled)
    first, last = place.ends
    if span.kind == "overhang":
        pairs: tuple[tuple[float, float], ...] = ((first, last),)
    else:
        pairs = ((min(place.ends), low), (max(place.ends), high))
    asked = span.kind == "overhang" or not any(
        each.kind == "overhang" and _carrier(each) == _carrier(span) for each in settled.plan.spans
    )
    found = [replace(each, asked=asked) for each in _each(pairs, centre, mass)]
    return min(found, key=lambda each: each.load_end, default=None)


def _carrier(span: Span) -> tuple[str, str]:
    return (span.part.name if span.part else "", span.board.name if span.board else "")


def _lies(span: Span, plan: Plan) -> bool:
    """Tell whether nothing holds it down: the more careful of what span and assembly say."""
    laid = plan.laid(span.part.name) if span.part else None
    if laid is not None:
        return LYING in (span.held, laid.held)
    return (span.held or (LYING if span.kind == "overhang" else "fixed")) == LYING


def _each(pairs: tuple[tuple[float, float], ...], centre: float, mass: float) -> Iterator[Lifting]:
    for pivot, end in pairs:
        reach = abs(end - pivot)
        if reach > _LEAST:
            yield Lifting(
                reach=reach, arm=(pivot - centre) * math.copysign(1, end - pivot), mass=mass
            )


def _slab(span: Span, settled: SettledPlan) -> tuple[float, float, float, float]:
    """Return a slab's mass (kg), and its centre and both ends along the span, mm."""
    if span.board is not None:
        board = next(each for each in settled.boards if each.use.name == span.board.name)
        return board.mass, board.length / 2, 0.0, board.length
    assert span.part is not None, "the form asks for a part or a board"
    part = settled.part(span.part.name)
    index, box = "xy".index(span.axis), bounds(part.routed)
    low, high = (box.x0, box.x1) if span.axis == "x" else (box.y0, box.y1)
    weighed = part_mass(part)
    return part.mass, (weighed.x, weighed.y)[index], low, high
