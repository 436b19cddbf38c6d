"""What a part's outline and openings are: tabs, notches, slots, holes, windows, and its body."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from math import dist

from kerfolio.adopting.alike import Draft
from kerfolio.adopting.depths import depth_of
from kerfolio.adopting.finger_rows import FingerRow, finger_rows, is_of_fingers
from kerfolio.adopting.prongs import prongs
from kerfolio.adopting.roundness import diameter_of, has_round_ends
from kerfolio.adopting.thicknesses import CLUSTER, Thickness
from kerfolio.geometry.arc import edges
from kerfolio.geometry.boolean import difference
from kerfolio.geometry.contour import Contour, Point, Region
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.slot_fit import fitted_slot
from kerfolio.geometry.stretch import Stretch, without
from kerfolio.settling.edge import EdgeFrame

AS_LONG = 0.8
"""A slot is drawn longer than its tab by no more, mm."""

LOOSE = 6.0
"""Where nothing else goes together, a slot may be so much longer than its tab, mm."""

_STUB, _TUSK = 0.4, 8.0
"""A tab that goes into a slot is so many times as deep as a sheet is thick at least and at most."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tab:
    """A tab: the middle of its root, the unit vector out of the part, its width and depth, mm.

    Without a ``stretch`` it is a tongue: an edge as a whole that may go into a housing. Where it is
    not ``sure`` its depth tells of no sheet, and it is a tab only if it goes into a slot.
    """

    at: Point
    out: Point
    width: float
    depth: float
    stretch: Stretch | None = None
    sure: bool = True

    @property
    def along(self) -> Point:
        """The unit vector along its edge, the part below."""
        return (self.out[1], 0.0 - self.out[0])


@dataclass(frozen=True, slots=True, kw_only=True)
class Notch:
    """A notch: the middle of its end, the unit vector out of the part, its width and depth, mm."""

    at: Point
    out: Point
    width: float
    depth: float
    stretch: Stretch


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A slot: its centre, the unit vector along it, mm; ``opening`` is its number in the part.

    With a ``depth``, mm, it is a housing in the show face.
    """

    at: Point
    along: Point
    length: float
    width: float
    opening: int
    depth: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Hole:
    """A round hole, mm."""

    at: Point
    diameter: float
    opening: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Recognised:
    """A part with what was recognised in it; ``windows`` are the openings that are left.

    ``pockets`` are those that do not go through, each with its depth, mm.

    ``fingers`` are the rows along its sides, as at the corners of a box.
    """

    draft: Draft
    tabs: tuple[Tab, ...] = ()
    notches: tuple[Notch, ...] = ()
    slots: tuple[Slot, ...] = ()
    holes: tuple[Hole, ...] = ()
    windows: tuple[int, ...] = ()
    pockets: tuple[tuple[int, float], ...] = ()
    fingers: tuple[FingerRow, ...] = ()

    @property
    def body(self) -> Contour:
        """The outline with its tabs and notches made straight edges."""
        tabs = [tab.stretch for tab in self.tabs if tab.stretch]
        gone = tabs + [notch.stretch for notch in self.notches]
        plain = without(self.draft.outline.contour, gone)
        tongues = [_strip(tab) for tab in self.tabs if not tab.stretch]
        return difference(Region(plain), tongues).outer if tongues else plain

    @property
    def is_one_sided(self) -> bool:
        """Tell whether something is cut into one face alone."""
        return bool(self.pockets) or any(slot.depth is not None for slot in self.slots)


def housing_depths(parts: Iterable[Draft]) -> tuple[float, ...]:
    """Return how deep openings are, mm, whose layers say so: each depth once."""
    every = (depth_of(opening.names) for part in parts for opening in part.openings)
    return tuple(sorted({deep for deep in every if deep is not None}))


def mortises(parts: Iterable[Draft], sheets: Sequence[Thickness]) -> tuple[float, ...]:
    """Return how long slots are that take a sheet, mm: each length once."""
    slots = (_slot(0, opening.contour, sheets) for part in parts for opening in part.openings)
    return tuple(sorted({round(slot.length, 2) for slot in slots if slot is not None}))


def recognised(
    part: Draft,
    sheets: Sequence[Thickness],
    housings: Sequence[float] = (),
    slots_long: Sequence[float] = (),
) -> Recognised:
    """Return what is recognised in a part where sheets are so thick.

    Tabs are as deep as a sheet is thick, or as the ``housings`` are, mm; or, like tusks and stubs,
    of another depth and as wide as some slot is long (``slots_long``, mm).
    """
    found = prongs(part.outline.contour)
    tabs, notches = [], []
    rows = finger_rows(part.outline.contour, [each.mm for each in sheets], 2 * CLUSTER)
    between = _between_notches(found, sheets)
    for each in found:
        if not each.level or each in between or is_of_fingers(each, rows, CLUSTER):
            continue
        if _of_a_sheet(each, sheets, housings):
            if each.tab:
                tabs.append(_tab(each))
            else:
                notches.append(_notch(each))
        elif each.tab and _may_go_in(each, sheets, slots_long):
            tabs.append(replace(_tab(each), sure=False))
    slots, holes, windows, pockets = [], [], [], []
    for index, opening in enumerate(part.openings):
        deep = depth_of(opening.names)
        slot = _slot(index, opening.contour, sheets)
        if deep is not None and slot is not None:
            slots.append(replace(slot, depth=deep))
            continue
        if deep is not None:
            pockets.append((index, deep))
            continue
        diameter = diameter_of(opening.contour)
        if diameter is not None:
            holes.append(Hole(at=bounds(opening.contour).centre, diameter=diameter, opening=index))
        elif slot is not None:
            slots.append(slot)
        else:
            windows.append(index)
    return Recognised(
        draft=part,
        tabs=tuple(tabs),
        notches=tuple(notches),
        slots=tuple(slots),
        holes=tuple(holes),
        windows=tuple(windows),
        pockets=tuple(pockets),
        fingers=rows,
    )


def _between_notches(found: Sequence[Stretch], sheets: Sequence[Thickness]) -> set[Stretch]:
    """Return what stands between two notches for a sheet: no tab, and much wider than they are."""
    walls = {
        wall
        for each in found
        if not each.tab and any(sheet.takes(each.width) for sheet in sheets)
        for wall in each.walls
    }
    return {each for each in found if each.tab and walls.issuperset(each.walls)}


def with_tongues(part: Recognised, every: Iterable[Recognised]) -> Recognised:
    """Return a part with its edges as tabs that are as long as some housing of another part."""
    housings = [
        slot for each in every if each is not part for slot in each.slots if slot.depth is not None
    ]
    tongues = []
    for edge in edges(part.draft.outline.contour) if housings else ():
        long = dist(edge.start, edge.end)
        fits = [s.depth for s in housings if s.depth and -0.1 <= s.length - long <= AS_LONG]
        if edge.bulge or not fits:
            continue
        ux, uy = (edge.end[0] - edge.start[0]) / long, (edge.end[1] - edge.start[1]) / long
        out, deep = (uy + 0.0, 0.0 - ux), min(fits)
        x, y = (edge.start[0] + edge.end[0]) / 2, (edge.start[1] + edge.end[1]) / 2
        at = (x - out[0] * deep, y - out[1] * deep)
        tongues.append(Tab(at=at, out=out, width=long, depth=deep))
    return replace(part, tabs=(*part.tabs, *tongues)) if tongues else part


def _strip(tab: Tab) -> Contour:
    """Return the strip along an edge that a tongue is, and a little beyond the edge."""
    return across(tab.at, tab.out, tab.width, 0.0, tab.depth + 1.0)


def across(at: Point, out: Point, width: float, low: float, high: float) -> Contour:
    """Return the rectangle across a way out, from ``low`` to ``high`` along it, mm."""
    half = width / 2
    along = (out[1], 0.0 - out[0])
    frame = EdgeFrame(origin=at, along=along, outward=out, first=-half, last=half)
    return frame.box(-half, half, low, high)


def _of_a_sheet(stretch: Stretch, sheets: Iterable[Thickness], housings: Iterable[float]) -> bool:
    if stretch.tab and any(abs(stretch.depth - deep) <= 0.3 for deep in housings):
        return True
    for sheet in sheets:
        if not stretch.tab and sheet.takes(stretch.width):
            return True
        if stretch.tab and abs(stretch.depth - sheet.mm) <= 0.3:
            return True
    return False


def _may_go_in(stretch: Stretch, sheets: Sequence[Thickness], slots_long: Iterable[float]) -> bool:
    """Tell whether a tab that is deeper or less deep than a sheet may go into some slot."""
    least = min((each.mm for each in sheets), default=0.0) * _STUB
    most = max((each.mm for each in sheets), default=0.0) * _TUSK
    wide = stretch.width
    return least <= stretch.depth <= most and any(-0.1 <= s - wide <= LOOSE for s in slots_long)


def _tab(stretch: Stretch) -> Tab:
    return Tab(
        at=stretch.middle,
        out=stretch.outward,
        width=stretch.width,
        depth=stretch.depth,
        stretch=stretch,
    )


def _notch(stretch: Stretch) -> Notch:
    (x, y), (ux, uy), deep = stretch.middle, stretch.outward, stretch.depth
    return Notch(
        at=(x - ux * deep, y - uy * deep),
        out=stretch.outward,
        width=stretch.width,
        depth=deep,
        stretch=stretch,
    )


def _slot(index: int, contour: Contour, sheets: Sequence[Thickness]) -> Slot | None:
    """Return the slot that an opening is, as wide as some sheet is thick."""
    fitted = fitted_slot(contour)
    if fitted is None:
        return None
    u = fitted.direction
    sides = ((fitted.width, fitted.length, u), (fitted.length, fitted.width, (0.0 - u[1], u[0])))
    for width, length, along in sides:
        if any(sheet.takes(width) for sheet in sheets) and not has_round_ends(contour, width):
            return Slot(at=fitted.centre, along=along, length=length, width=width, opening=index)
    return None
