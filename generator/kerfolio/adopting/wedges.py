"""Wedges that hold tusks: which pieces are shaped like one, and through which slots they go.

A tusk is a tab that comes out behind the sheet it goes through; the slot for its wedge lies there,
along the tusk, and begins within that sheet, so that the wedge draws.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.adopting.recognised import Slot, Tab
from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.together import Arrangement
from kerfolio.adopting.wedge_shape import WedgeShape, wedge_shape
from kerfolio.geometry.contour import Point
from kerfolio.model.feature_kind import TAB

_SQUARE = 0.01
_OUT = 3.0
_DRAWS = 1.0
_LOW = 0.2
_TO_DRIVE = 4.0
"""A wedge is drawn so far from being driven home, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wedge:
    """A wedge in its place: its piece, what it goes through by a slot's number, what it holds.

    ``at`` is the point of its drawing, mm, in the middle of the slot; driven in from the back of
    the piece it goes through, its show face looks along ``looks``, as that piece is drawn. ``out``
    is the way out of the tusk there.
    """

    piece: int
    through: int
    slot: int
    holds: int
    at: Point
    looks: Point
    out: Point


def wedges(parts: Sequence[PartPlan], arranged: Arrangement) -> tuple[Wedge, ...]:
    """Return the wedges among the pieces that nothing else has given a place."""
    free = {
        number: part
        for part in parts
        if not part.made.draft.openings
        for number in part.numbers
        if number not in arranged.poses
    }
    found = []
    for tusk in _tusks(parts, arranged):
        for number, part in free.items():
            shape = wedge_shape(part.made.draft.outline.contour)
            if shape is None or not shape.thin <= tusk.bears <= shape.thick:
                continue
            del free[number]
            found.append(_placed(number, shape, tusk))
            break
    return tuple(found)


@dataclass(frozen=True, slots=True)
class _Tusk:
    """A slot in a tusk ``thick``: its middle is ``away`` from the face that is drawn on.

    Its far wall ``bears`` so far from there, mm.
    """

    through: int
    slot: int
    holds: int
    away: float
    bears: float
    thick: float
    out: Point


def _tusks(parts: Sequence[PartPlan], arranged: Arrangement) -> Iterator[_Tusk]:
    owner = {number: part for part in parts for number in part.numbers}
    filled = {(meet.other, meet.second) for meet in arranged.meets if meet.kind is TAB}
    for meet in arranged.meets:
        if meet.kind is not TAB:
            continue
        made, thick = owner[meet.one].made, arranged.bodies[meet.other].thickness
        tab = made.tabs[meet.first]
        if tab.depth < thick + _OUT:
            continue
        for index, slot in enumerate(made.slots):
            if (meet.one, index) not in filled and slot.depth is None and _is_in(slot, tab, thick):
                away = _along(slot, tab) - thick
                bears = away + slot.length / 2
                own = arranged.bodies[meet.one].thickness
                yield _Tusk(meet.one, index, meet.other, away, bears, own, tab.out)


def _along(slot: Slot, tab: Tab) -> float:
    """Return how far a slot's middle lies out from a tab's root, mm."""
    return (slot.at[0] - tab.at[0]) * tab.out[0] + (slot.at[1] - tab.at[1]) * tab.out[1]


def _is_in(slot: Slot, tab: Tab, thick: float) -> bool:
    """Tell whether a slot lies along a tusk, and begins within the sheet that this goes through."""
    run = abs(slot.along[0] * tab.out[0] + slot.along[1] * tab.out[1])
    aside = (slot.at[0] - tab.at[0]) * tab.out[1] - (slot.at[1] - tab.at[1]) * tab.out[0]
    inner, outer = (_along(slot, tab) + way * slot.length / 2 for way in (-1, 1))
    begins = 0 <= inner <= thick + _DRAWS
    return run > 1 - _SQUARE and abs(aside) < tab.width / 2 and begins and outer < tab.depth


def _placed(piece: int, shape: WedgeShape, tusk: _Tusk) -> Wedge:
    (ox, oy) = tusk.out
    # Where the head comes in it is widest, half the tusk's sheet from the middle of its slot.
    up = shape.across(tusk.bears) - tusk.thick / 2 - _TO_DRIVE
    at = tusk.away if shape.left else shape.thick - tusk.away
    looks = (0.0 - oy, ox) if shape.left else (oy, 0.0 - ox)
    return Wedge(
        piece=piece,
        through=tusk.through,
        slot=tusk.slot,
        holds=tusk.holds,
        at=(at, max(up, shape.length * _LOW)),
        looks=looks,
        out=tusk.out,
    )
