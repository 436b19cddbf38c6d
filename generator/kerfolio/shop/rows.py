"""The rows of the lists: parts, hardware, sheets, boards and costs."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from kerfolio.settling.settled import SettledEdge


@dataclass(frozen=True, slots=True, kw_only=True)
class PartRow:
    """A part: its pieces' marks and labels, overall size in mm, area mm2 and mass kg of one."""

    part: str
    mark: str
    marks: tuple[str, ...]
    labels: tuple[str, ...]
    count: int
    sheet: str
    thickness: float
    width: float
    height: float
    area: float
    mass: float
    grain: str
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class HardwareRow:
    """A fastener with the count summed over the steps; ``inch_twin`` is what to buy instead."""

    item: str
    title: str
    count: int
    purpose: str = ""
    inch_twin: str = ""
    price: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetRow:
    """Sheets to buy, or offcuts at hand: thickness and size in mm, how many, price of one."""

    sheet: str
    title: str
    thickness: float
    width: float
    height: float
    count: int
    price: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardRow:
    """Boards of one length: section and length in mm; price of one where known."""

    name: str
    title: str
    thickness: float
    width: float
    length: float
    count: int
    price: Decimal | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CostRow:
    """A line of the costs; ``total`` None where no price is known."""

    what: str
    count: int
    price: Decimal | None
    total: Decimal | None


@dataclass(frozen=True, slots=True, kw_only=True)
class EdgeRow:
    """What is done alike to edges of one sheet: ``edge`` is one of them, ``thickness`` the sheet's.

    ``count`` is how many stretches, a strip of banding each, ``length`` how long all of them are,
    ``to_buy`` the same with what is trimmed off; mm. Nothing but banding is bought.
    """

    edge: SettledEdge
    sheet: str
    thickness: float
    count: int
    length: float
    to_buy: float = 0.0
