"""Which cuts speak for each other: the one place that says in what settings differ, and how far.

What decides an edge is the chip load, how fast the cutter turns with it, the first pass (on which
side of an up-cut tip), the passes after it, and the direction. How fast a cutter goes down, each
time where the cut begins, is told and not compared (common practice, no single source).

Two questions are asked. Whether it is the same setting (``unlike``): as near as dials and sheets
let it be set again, so that "cut like this" is true. And how far one cut speaks for another
(``Places``): wide enough that the few cuts of a log stand together.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from enum import StrEnum

import numpy as np
from numpy.typing import NDArray

from kerfolio.basis.tolerance import SAME
from kerfolio.model.stock import CutterStock
from kerfolio.shop.settings import Settings

CHIP_STEP = 1.25
"""Chip loads whose ratio is this lie one step apart."""
SPEED_STEP = 1.5
"""Speeds whose ratio is this, with one chip load, lie one step apart: the cutter gets hotter and
louder long before the edge is another (common practice, no single source)."""
PASS_STEP = 0.25
"""First passes that differ by so many diameters lie one step apart."""
LATER_STEP = 0.5
"""Passes after the first, the deepest of them, that differ by so many diameters lie one step
apart: they bend the cutter, and the face was cut already (common practice, no single source)."""
ALIKE = 1.0
"""Cuts no more steps apart than that are alike."""

_AXES = 6
_UNKNOWN = 0.5
"""Steps between a first pass that is logged and one that is not."""
_DIAL = 0.05
"""Speeds, feeds and first passes within a twentieth are set alike: dials are no finer (common
practice, no single source)."""
_REST = 0.25
"""Passes after the first within so many diameters are set alike: the last one takes what the sheet
leaves, and sheets sold alike differ by about as much (common practice, no single source)."""


class Dial(StrEnum):
    """What a maker sets, and would write down anew."""

    FEED = "feed"
    SPEED = "speed"
    PASSES = "passes"


class Axis(StrEnum):
    """Which way one cut lies from another."""

    THICKER = "thicker"  # more chip load
    THINNER = "thinner"
    FASTER = "faster"  # more turns with the same chip load
    SLOWER = "slower"
    DEEPER = "deeper"  # in the first pass
    SHALLOWER = "shallower"
    DEEPER_THEN = "deeper-then"  # in the passes after it
    SHALLOWER_THEN = "shallower-then"
    TURNED = "turned"  # the other direction of cut


def unlike(one: Settings, other: Settings, cutter: CutterStock) -> tuple[Dial, ...]:
    """Return in what two settings are not the same, as far as both tell it.

    The direction is not among it: plans do not state it.
    """
    first = _differ(one.first, other.first, _DIAL)
    found = (
        (Dial.FEED, _differ(one.feed, other.feed, _DIAL)),
        (Dial.SPEED, _differ(one.speed, other.speed, _DIAL)),
        (Dial.PASSES, first or _later_differ(one, other, cutter)),
    )
    return tuple(dial for dial, differs in found if differs)


def told_in(settings: Settings) -> tuple[bool | None, ...]:
    """Return what of what decides is told, and the direction: alike is only what tells the same."""
    stated = (settings.feed, settings.speed, settings.first, settings.later)
    return *(each is not None for each in stated), settings.climb


def _differ(one: float | None, other: float | None, share: float) -> bool:
    return one is not None and other is not None and abs(one - other) > share * max(one, other)


def _later_differ(one: Settings, other: Settings, cutter: CutterStock) -> bool:
    if one.later is None or other.later is None:
        return False
    return abs(other.later - one.later) > _REST * cutter.diameter + SAME


class Places:
    """Settings by where they lie, in steps: what is far from some is asked of all at once.

    Raises ValueError where a chip load is not known.
    """

    def __init__(self, settings: Iterable[Settings], cutter: CutterStock) -> None:
        self._cutter = cutter
        rows = [_place(each, cutter) for each in settings]
        self._rows = np.array(rows, dtype=float).reshape(len(rows), _AXES)

    def steps_from(self, here: Settings) -> NDArray[np.float64]:
        """Return how many steps each lies apart from ``here``, in the order given.

        The far side of the tip is one step more, and so is the other direction. What one of two
        does not tell counts for nothing, but for the first pass.
        """
        off = np.abs(self._rows - np.array(_place(here, self._cutter)))
        chip, speed, first, side, later, turned = off.T
        first = np.where(np.isnan(first), _UNKNOWN, first + side)
        rest = (np.nan_to_num(each) for each in (speed, later, turned))
        steps: NDArray[np.float64] = np.sqrt(chip**2 + first**2 + sum(each**2 for each in rest))
        return steps


def _place(settings: Settings, cutter: CutterStock) -> tuple[float, ...]:
    """Return chip load, speed, first pass, its side of the tip, later passes and direction."""
    first, later, climb = settings.first, settings.later, settings.climb
    return (
        math.log(settings.chip) / math.log(CHIP_STEP),
        math.log(settings.speed) / math.log(SPEED_STEP) if settings.speed else math.nan,
        math.nan if first is None else first / (PASS_STEP * cutter.diameter),
        float(under_tip(first, cutter) or False),
        math.nan if later is None else later / (LATER_STEP * cutter.diameter),
        math.nan if climb is None else float(climb),
    )


def way_to(one: Settings, other: Settings, cutter: CutterStock) -> Axis:
    """Return in what the other differs most. Raises ValueError where a chip load is not known."""
    here, there = (np.array(_place(each, cutter)) for each in (one, other))
    chip, speed, first, side, later, turned = map(float, np.nan_to_num(there - here))
    steps = (
        (chip, Axis.THICKER, Axis.THINNER),
        (first + math.copysign(side, first), Axis.DEEPER, Axis.SHALLOWER),
        (later, Axis.DEEPER_THEN, Axis.SHALLOWER_THEN),
        (speed, Axis.FASTER, Axis.SLOWER),
    )
    far, more, less = max(steps, key=lambda each: abs(each[0]))
    if turned and abs(far) < 1.0:
        return Axis.TURNED
    return more if far > 0 else less


def under_tip(first: float | None, cutter: CutterStock) -> bool | None:
    """Tell whether a first pass stays within the up-cut part at the tip, which lifts the face.

    None where there is no such part or no first pass is known. A pass just as deep stays within.
    """
    if first is None or cutter.up_cut_length is None:
        return None
    return first <= cutter.up_cut_length + SAME
