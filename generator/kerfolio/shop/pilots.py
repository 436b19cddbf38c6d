"""How wide a pilot hole wants to be for a screw, by what it goes into; and what pull that bears."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.model.stock import SheetStock
from kerfolio.shop.screw import BOARDS, allowable_hold

_SOFT = ("softwood-plywood", "softwood", "osb")


@dataclass(frozen=True, slots=True, kw_only=True)
class Pilot:
    """From how wide to how wide a pilot hole is, in shares of the screw's shank; ``why`` says where
    that is from.
    """

    least: float
    most: float
    why: str


_IN_SOFT = Pilot(least=0.45, most=0.68, why="softwood: lead holes by a plate citing AWC")
_IN_HARD = Pilot(least=0.55, most=0.80, why="hardwood: lead holes by a plate citing AWC")
_IN_BOARD_EDGE = Pilot(
    least=0.60, most=0.80, why="the edge of a board of fibres: common practice, no published rule"
)
"""The plate's own holes for #6 to #14 are 0.45 to 0.51 of the shank in softwood, 0.56 to 0.58 in
hardwood; at most 85 and 100 % of the root, which is 0.80 of the shank at the most (NDS, from
memory). A board's edge splits where wood's would be pressed together."""


def pilot_in(stock: SheetStock, *, edge: bool) -> Pilot:
    """Return the pilot that a sheet material wants in its face or its edge."""
    if stock.family in BOARDS:
        return _IN_BOARD_EDGE if edge else _IN_HARD
    return _IN_SOFT if stock.family in _SOFT else _IN_HARD


@dataclass(frozen=True, slots=True, kw_only=True)
class Pull:
    """What pull in N a screw is allowed, and the source of that; None where none is published."""

    allowed: float | None
    source: str


def pull_of(stock: SheetStock, shank: float, bite: float, *, edge: bool) -> Pull:
    """Return what pull a screw is allowed ``bite`` mm deep in a sheet, ``shank`` mm wide.

    A plywood's face counts as side grain of its density, dried; of the edge of plywood, and of MDF
    by itself, nothing is published that would be read by anybody here.
    """
    if stock.family == "particleboard":
        source = "Wood Handbook FPL-GTR-190, chapter 8, particleboard, a fifth; from memory"
    elif edge or stock.family in BOARDS:
        what = "the edge of plywood" if stock.family not in BOARDS else "MDF and hardboard"
        return Pull(allowed=None, source=f"no published rule covers {what}")
    else:
        source = "NDS for wood screws, side grain: 2850 G2 D a unit of length"
    return Pull(allowed=allowable_hold(stock, shank, bite, edge=edge), source=source)
