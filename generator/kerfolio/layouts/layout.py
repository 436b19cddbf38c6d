"""Where every piece lies on which sheet."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.settling.settled import SheetSize

COORDINATE_DECIMALS = 3
"""Of a piece's place in ``layout.json``, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Placement:
    """A piece on a sheet: turned by ``turn`` degrees about the part's 0,0, then moved by x, y.

    x and y in mm from the sheet's lower left corner; x runs along the sheet's grain. Pieces are
    never turned over: the show face stays up.
    """

    piece: str
    part: str
    x: float
    y: float
    turn: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetLayout:
    """One sheet of the plan: ``number`` counts from 1 over the whole plan; ``size`` in mm."""

    number: int
    sheet: str
    size: SheetSize
    placements: tuple[Placement, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CopiesCount:
    """How many sheets of one material and size 1, 2, 3 ... copies of a plan take together."""

    sheet: str
    size: SheetSize
    counts: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Layout:
    """All sheets of a plan, with what they were computed from, by which engine and seed.

    ``as_computed`` is the digest of the placements as that engine left them; empty where nobody
    knows. ``bounds`` states for each sheet material how many sheets no layout can do without,
    ``copies`` how many sheets of each size one, two and more copies of the plan take together.
    """

    sheets: tuple[SheetLayout, ...]
    engine: str
    computed_from: str
    as_computed: str = ""
    seed: int = 0
    bounds: tuple[tuple[str, int], ...] = ()
    copies: tuple[CopiesCount, ...] = ()
