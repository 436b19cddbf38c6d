"""What can be bought and what its figures rest on: each value with its source and its file."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from typing import TypeVar

from kerfolio.basis.place import NOWHERE, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class Origin:
    """Where the value of one field was written, and the source stated for it in that file."""

    field: str
    place: Place
    source: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class StockItem:
    """What every entry of the stock has.

    A maker's entry of the same name lies over a shipped one field by field; ``origins`` tell, for
    each field that was written, which file it came from. ``source`` is that of the entry as a
    whole, ``place`` where its name was written last.
    """

    name: str
    source: str = ""
    place: Place = NOWHERE
    origins: tuple[Origin, ...] = ()

    def came_from(self, field: str) -> Place:
        """Return where a field's value was written; the entry's own place when it was not."""
        origin = self._origin(field)
        return self.place if origin is None else origin.place

    def source_of(self, field: str) -> str:
        """Return the source of a field's value: what the file that gives the value says of it.

        Empty when the maker changed a value and named no source.
        """
        origin = self._origin(field)
        return self.source if origin is None else origin.source

    def _origin(self, field: str) -> Origin | None:
        return next((each for each in self.origins if each.field == field), None)


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetStock(StockItem):
    """A sheet material. Lengths mm, density kg/m3, price for one sheet of a size.

    ``nominal`` is what it is sold as; ``actual`` what it measures on average, within ``least`` and
    ``most``. ``sizes`` are (along the grain, across it). ``grain`` is False for fibreboard.
    ``plies`` is how many layers of veneer it is glued of, ``face_ply`` how thick the outer one is.
    ``family`` is the key that chip loads are listed under (see ``FAMILIES``).

    Stiffness is the modulus of elasticity, strength the bending strength, both in N/mm2 of the
    panel loaded flat, along and across the face grain. Their kinds: see ``VALUE_KINDS``.
    Shear is N/mm2 too: flat it is that of the plane of the sheet, which makes plies roll, on edge
    that through its thickness. ``bearing_strength`` is against pressure on its face. ``creep`` is
    kdef for lasting load in a heated room (EN 1995-1-1, service class 1). ``swelling`` is what a
    standard says, in words. None or empty: the library has no figure for it.
    """

    title: str
    nominal: float
    actual: float
    least: float
    most: float
    density: float
    sizes: tuple[tuple[float, float], ...]
    grain: bool = True
    family: str = "other"
    plies: int | None = None
    face_ply: float | None = None
    stiffness_along: float | None = None
    stiffness_across: float | None = None
    stiffness_kind: str = "claim"
    strength_along: float | None = None
    strength_across: float | None = None
    strength_kind: str = "claim"
    shear_modulus_flat: float | None = None
    shear_modulus_edge: float | None = None
    shear_strength_flat: float | None = None
    shear_strength_edge: float | None = None
    bearing_strength: float | None = None
    creep: float | None = None
    swelling: str = ""
    prices: tuple[tuple[tuple[float, float], Decimal], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardStock(StockItem):
    """Solid timber: dressed thickness and width in mm, lengths it is sold in, density kg/m3.

    ``nominal`` is the size it is called by, where that differs from what it measures.
    ``stiffness`` and ``strength`` in N/mm2, along the grain; ``creep`` as for sheets.
    """

    title: str
    thickness: float
    width: float
    lengths: tuple[float, ...]
    density: float
    nominal: str = ""
    family: str = "softwood"
    stiffness: float | None = None
    stiffness_kind: str = "claim"
    strength: float | None = None
    strength_kind: str = "claim"
    creep: float | None = None
    price_per_metre: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CutterStock(StockItem):
    """A router bit: diameter, cutting length and up-cut tip length in mm.

    ``angle`` is that between the two edges of a V cutter, in degrees, ``tip_flat`` how wide its
    tip is, mm.

    What only the one in a maker's own machine has: the day it was first used, the days it was
    ``sharpened``, its ``true_cut`` (what it really cuts, mm), ``metres_before`` (the metres it had
    cut before the log began). Readers are not told of these.
    """

    title: str
    diameter: float
    kind: str
    flutes: int
    cutting_length: float
    up_cut_length: float | None = None
    angle: float | None = None
    tip_flat: float | None = None
    in_use_since: date | None = None
    sharpened: tuple[date, ...] = ()
    true_cut: float | None = None
    metres_before: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class HardwareStock(StockItem):
    """A fastener or fitting; holes in mm. ``mass`` in kg a piece; ``inch_twin`` its alternative.

    ``thread`` is the nominal diameter in mm of its thread, or of the shank of a screw or a dowel;
    ``head`` what its head is, empty where that is not known. ``head_diameter`` and ``head_height``
    are those of its head; ``outside`` is how wide the item itself is across (a washer, a nut over
    its flats), ``height`` how thick it is along its bolt.

    Of a bracket, ``leg`` and ``other_leg`` are how far its legs reach from its outer corner,
    ``width`` and ``thickness`` those of its metal, ``holes`` how far the middles of the holes of
    each leg are from that corner. Of a clamp, ``opening`` is the most it spans, ``reach`` how far
    it reaches in from an edge, ``width`` that of its jaws. None or empty where that is not known.
    """

    title: str
    kind: str = "other"
    thread: float | None = None
    head: str = ""
    head_diameter: float | None = None
    head_height: float | None = None
    outside: float | None = None
    height: float | None = None
    clearance: float | None = None
    pilot: float | None = None
    counterbore_diameter: float | None = None
    counterbore_depth: float | None = None
    length: float | None = None
    leg: float | None = None
    other_leg: float | None = None
    width: float | None = None
    thickness: float | None = None
    holes: tuple[float, ...] = ()
    opening: float | None = None
    reach: float | None = None
    mass: float | None = None
    price: Decimal | None = None
    inch_twin: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperStock(StockItem):
    """A paper size in mm, width and height of the upright page."""

    title: str
    width: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class ChipLoad(StockItem):
    """A published range of chip loads in mm a tooth, for a family of material and a cutter.

    ``diameter`` is the cutter's in mm; None where the table gives one range for all small cutters.
    ``machine`` is one of ``MACHINES``. ``depth`` says at which depth of cut the range holds.
    Published ranges for one cutter differ many times over: each is shown with its source, and
    what the maker's own log says outranks it.
    """

    family: str
    least: float
    most: float
    machine: str
    diameter: float | None = None
    depth: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DepthRule(StockItem):
    """The share of a chip load that is left at a depth of cut, in cutter diameters.

    The rule of share 1 is where a maker begins: no deeper in one pass with the full chip load.
    """

    diameters: float
    share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Movement(StockItem):
    """How a family of material moves with moisture; its name is the family's.

    ``thickness`` and ``plane`` are per cent of a size for each per cent of moisture, the latter
    along the sheet or, of solid wood, across the grain. ``bought`` is the moisture it is sold and
    measured at, per cent. ``takes_up`` says how damp air makes it: see ``TAKES_UP``.
    """

    thickness: float
    plane: float
    bought: float
    takes_up: str


@dataclass(frozen=True, slots=True, kw_only=True)
class FinishStock(StockItem):
    """What is put on wood: how thick one coat is while it is wet, mm, and its solids by volume.

    What stays when it has dried is the one times the other.
    """

    title: str
    wet: float
    solids: float


AS_WOOD = "as wood"
TAKES_UP = (AS_WOOD, "as fibreboard")
"""How much moisture a material takes from the air: as solid wood does, or less, as fibreboard."""

FAMILIES = (
    *("hardwood-plywood", "softwood-plywood", "mdf", "particleboard", "hardboard", "osb"),
    *("hardwood", "softwood", "laminate", "other"),
)
"""The families of material that chip loads are listed under."""

VALUE_KINDS = ("minimum", "characteristic", "mean", "claim")
"""What a stiffness or strength is.

``minimum``: guaranteed, or the low end of a published range. ``characteristic``: the value that
19 of 20 pieces reach. ``mean``: the average. ``claim``: a maker's or seller's word.
"""

SHAPED = ("v", "ball")
"""Kinds of cutters whose cuts are wider at the face than below: for engraving alone."""

MACHINES = ("light hobby", "small shop", "industrial")
"""Classes of machine that chip loads are meant for, the lightest first."""

HARDWARE_KINDS = (
    *("bolt", "screw", "insert", "barrel-nut", "tee-nut", "nut", "lock-nut", "washer"),
    *("dowel", "connector", "shelf-pin", "bracket", "clamp", "other"),
)

Item = TypeVar("Item", bound=StockItem)


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """Everything that can be bought and the figures for cutting it; each tuple sorted by name."""

    sheets: tuple[SheetStock, ...] = ()
    boards: tuple[BoardStock, ...] = ()
    cutters: tuple[CutterStock, ...] = ()
    hardware: tuple[HardwareStock, ...] = ()
    papers: tuple[PaperStock, ...] = ()
    chip_loads: tuple[ChipLoad, ...] = ()
    depth_rules: tuple[DepthRule, ...] = ()
    movements: tuple[Movement, ...] = ()
    finishes: tuple[FinishStock, ...] = ()

    def sheet(self, name: str) -> SheetStock | None:
        """Return the sheet of that name, or None."""
        return _named(self.sheets, name)

    def board(self, name: str) -> BoardStock | None:
        """Return the board of that name, or None."""
        return _named(self.boards, name)

    def cutter(self, name: str) -> CutterStock | None:
        """Return the cutter of that name, or None."""
        return _named(self.cutters, name)

    def item(self, name: str) -> HardwareStock | None:
        """Return the piece of hardware of that name, or None."""
        return _named(self.hardware, name)

    def movement(self, family: str) -> Movement | None:
        """Return how a family of material moves with moisture, None where nothing is known."""
        return _named(self.movements, family)

    def finish(self, name: str) -> FinishStock | None:
        """Return the finish of that name, or None."""
        return _named(self.finishes, name)

    def paper(self, name: str) -> PaperStock | None:
        """Return the paper of that name, or None."""
        return _named(self.papers, name)


def _named(items: Iterable[Item], name: str) -> Item | None:
    return next((each for each in items if each.name == name), None)
