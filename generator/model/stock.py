"""What can be bought: sheets, boards, cutters, hardware and papers, each with its source."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from generator.basis.place import NOWHERE, Place


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetStock:
    """A sheet material. Lengths mm, density kg/m3, price for one sheet of a size.

    ``nominal`` is what it is sold as; ``actual`` what it measures on average, within ``least`` and
    ``most``. ``sizes`` are (along the grain, across it). ``grain`` is False for fibreboard.
    """

    name: str
    title: str
    nominal: float
    actual: float
    least: float
    most: float
    density: float
    sizes: tuple[tuple[float, float], ...]
    grain: bool = True
    prices: tuple[tuple[tuple[float, float], Decimal], ...] = ()
    source: str = ""
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardStock:
    """Solid timber: dressed thickness and width in mm, lengths it is sold in, density kg/m3."""

    name: str
    title: str
    thickness: float
    width: float
    lengths: tuple[float, ...]
    density: float
    price_per_metre: Decimal | None = None
    source: str = ""
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class CutterStock:
    """A router bit: diameter, cutting length and up-cut tip length in mm."""

    name: str
    title: str
    diameter: float
    kind: str
    flutes: int
    cutting_length: float
    up_cut_length: float | None = None
    source: str = ""
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class HardwareStock:
    """A fastener or fitting; holes in mm. ``mass`` in kg a piece; ``inch_twin`` its alternative."""

    name: str
    title: str
    clearance: float | None = None
    pilot: float | None = None
    counterbore_diameter: float | None = None
    counterbore_depth: float | None = None
    length: float | None = None
    mass: float | None = None
    price: Decimal | None = None
    inch_twin: str = ""
    source: str = ""
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperStock:
    """A paper size in mm, width and height of the upright page."""

    name: str
    title: str
    width: float
    height: float
    source: str = ""
    place: Place = NOWHERE


@dataclass(frozen=True, slots=True, kw_only=True)
class Stock:
    """Everything that can be bought; each tuple sorted by name."""

    sheets: tuple[SheetStock, ...] = ()
    boards: tuple[BoardStock, ...] = ()
    cutters: tuple[CutterStock, ...] = ()
    hardware: tuple[HardwareStock, ...] = ()
    papers: tuple[PaperStock, ...] = ()

    def sheet(self, name: str) -> SheetStock | None:
        """Return the sheet of that name, or None."""
        return next((each for each in self.sheets if each.name == name), None)

    def board(self, name: str) -> BoardStock | None:
        """Return the board of that name, or None."""
        return next((each for each in self.boards if each.name == name), None)

    def cutter(self, name: str) -> CutterStock | None:
        """Return the cutter of that name, or None."""
        return next((each for each in self.cutters if each.name == name), None)

    def item(self, name: str) -> HardwareStock | None:
        """Return the piece of hardware of that name, or None."""
        return next((each for each in self.hardware if each.name == name), None)

    def paper(self, name: str) -> PaperStock | None:
        """Return the paper of that name, or None."""
        return next((each for each in self.papers if each.name == name), None)
