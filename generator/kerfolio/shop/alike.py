"""Which cuts speak for each other: the one place that says in what settings differ, and how far.

What decides an edge is the chip load, how fast the cutter turns with it, the first pass (on which
side of an up-cut tip), the passes after it, and the direction. How fast a cutter goes down, each
time where the cut begins, is told and not compared (common practice, no single source).

Two questions are asked. Whether it is the same setting (``unlike``): as near as dials and sheets
let it be set again, so that "cut like this" is true. And how far one cut speaks for another
(``apart``): wide enough that the few cuts of a log stand together.
"""

from __future__ import annotations

import math
from enum import StrEnum

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
    later = _later_steps(one, other, cutter)
    found = (
        (Dial.FEED, _differ(one.feed, other.feed, _DIAL)),
        (Dial.SPEED, _differ(one.speed, other.speed, _DIAL)),
        (Dial.PASSES, first or abs(later) * LATER_STEP > _REST + SAME),
    )
    return tuple(dial for dial, differs in found if differs)


def told_in(settings: Settings) -> tuple[bool | None, ...]:
    """Return what of what decides is told, and the direction: alike is only what tells the same."""
    stated = (settings.feed, settings.speed, settings.first, settings.later)
    return *(each is not None for each in stated), settings.climb


def _differ(one: float | None, other: float | None, share: float) -> bool:
    return one is not None and other is not None and abs(one - other) > share * max(one, other)


def apart(one: Settings, other: Settings, cutter: CutterStock) -> float:
    """Return how many steps two cuts lie apart; the far side of the tip is one step more.

    Raises ValueError where a chip load is not known.
    """
    first = _pass_steps(one, other, cutter)
    return math.hypot(
        _chip_steps(one, other),
        _speed_steps(one, other),
        _UNKNOWN if first is None else first,
        _later_steps(one, other, cutter),
        1.0 if _turned(one, other) else 0.0,
    )


def way_to(one: Settings, other: Settings, cutter: CutterStock) -> Axis:
    """Return in what the other differs most. Raises ValueError where a chip load is not known."""
    steps = (
        (_chip_steps(one, other), Axis.THICKER, Axis.THINNER),
        (_pass_steps(one, other, cutter) or 0.0, Axis.DEEPER, Axis.SHALLOWER),
        (_later_steps(one, other, cutter), Axis.DEEPER_THEN, Axis.SHALLOWER_THEN),
        (_speed_steps(one, other), Axis.FASTER, Axis.SLOWER),
    )
    far, more, less = max(steps, key=lambda each: abs(each[0]))
    if _turned(one, other) and abs(far) < 1.0:
        return Axis.TURNED
    return more if far > 0 else less


def under_tip(first: float | None, cutter: CutterStock) -> bool | None:
    """Tell whether a first pass stays within the up-cut part at the tip, which lifts the face.

    None where there is no such part or no first pass is known. A pass just as deep stays within.
    """
    if first is None or cutter.up_cut_length is None:
        return None
    return first <= cutter.up_cut_length + SAME


def chip_steps(chip: float) -> float:
    """Return where a chip load, mm, lies on the scale of steps."""
    return math.log(chip) / math.log(CHIP_STEP)


def _chip_steps(one: Settings, other: Settings) -> float:
    return math.log(other.chip / one.chip) / math.log(CHIP_STEP)


def _speed_steps(one: Settings, other: Settings) -> float:
    if not one.speed or not other.speed:
        return 0.0
    return math.log(other.speed / one.speed) / math.log(SPEED_STEP)


def _pass_steps(one: Settings, other: Settings, cutter: CutterStock) -> float | None:
    if one.first is None or other.first is None:
        return None
    steps = (other.first - one.first) / (PASS_STEP * cutter.diameter)
    if under_tip(one.first, cutter) is not under_tip(other.first, cutter):
        steps += math.copysign(1.0, steps)
    return steps


def _later_steps(one: Settings, other: Settings, cutter: CutterStock) -> float:
    if one.later is None or other.later is None:
        return 0.0
    return (other.later - one.later) / (LATER_STEP * cutter.diameter)


def _turned(one: Settings, other: Settings) -> bool:
    return None not in {one.climb, other.climb} and one.climb is not other.climb
