"""What a packing engine is given and gives back; engines can be exchanged behind this."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Protocol

from kerfolio.geometry.packing import Flat

OWN = "own-"
"""So begin the names of engines of this program."""

Box = tuple[float, float, float, float]
"""(least x, least y, greatest x, greatest y), mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stack:
    """Sheets alike in size, mm.

    ``count`` is how many there are, None for as many as wanted. ``worth`` is what taking one
    costs, in any unit; 0 for an offcut at hand. ``barred`` are zones kept clear of pieces.
    """

    size: tuple[float, float]
    count: int | None = None
    worth: float = 1.0
    barred: tuple[Box, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Bed:
    """The sheets to fill, the margin kept clear along their edges, the gap between pieces, mm.

    The gap is also kept from barred zones.
    """

    stacks: tuple[Stack, ...]
    margin: float
    gap: float

    def price(self, taken: Mapping[int, int]) -> tuple[float, int]:
        """Return the worth of sheets and their number: the less the better.

        ``taken`` tells how many sheets of a stack, by its place in the bed.
        """
        worth = math.fsum(self.stacks[stack].worth * count for stack, count in taken.items())
        return round(worth, 6), sum(taken.values())


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """A piece to place: its shape in its own frame and the turns it may take, degrees.

    ``copy`` is the copy of the plan it belongs to; of the same ``twin`` are blanks that copies can
    exchange, alike in every respect.
    """

    label: str
    shape: Flat
    turns: tuple[float, ...]
    copy: int = 1
    twin: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """What to pack.

    ``moves`` bounds a search that counts its work; ``seconds`` one that goes by the clock.
    """

    bed: Bed
    blanks: tuple[Blank, ...]
    moves: int
    seconds: float = 4.0
    seed: int = 0

    def price(self, packed: Packed) -> tuple[float, int]:
        """Return what the sheets of a packing cost, and their number: the less the better."""
        return self.bed.price(Counter(packed.sheets))


@dataclass(frozen=True, slots=True, kw_only=True)
class Spot:
    """A piece on the sheet numbered from 0: turned about its own 0,0, then moved by x, y mm."""

    label: str
    sheet: int
    x: float
    y: float
    turn: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Packed:
    """Where the pieces lie, and the labels of those that no sheet can hold.

    ``sheets`` names for every sheet used the stack it comes from, by its place in the bed.
    ``engine`` is who packed it, with its version. ``failed`` names other engines that were asked
    and gave nothing, each with the reason.
    """

    spots: tuple[Spot, ...]
    engine: str
    sheets: tuple[int, ...] = ()
    too_large: tuple[str, ...] = ()
    failed: tuple[tuple[str, str], ...] = ()


class Engine(Protocol):
    """Packs a job.

    One that counts its work gives the same result for the same job on every run.
    """

    def pack(self, job: Job) -> Packed:
        """Place all blanks on as few sheets as it finds, those of least worth first.

        Raises EngineError when it fails; nothing else ever comes out of it.
        """
        ...


class EngineError(Exception):
    """An engine gave no result: it is missing, failed, took too long or answered nonsense."""
