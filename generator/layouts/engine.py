"""What a packing engine is given and gives back; engines can be exchanged behind this."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from generator.geometry.packing import Flat


@dataclass(frozen=True, slots=True, kw_only=True)
class Bed:
    """The sheets to fill, all alike: size in mm, margin kept clear, gap between pieces."""

    size: tuple[float, float]
    margin: float
    gap: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Blank:
    """A piece to place: its shape in its own frame and the turns it may take, degrees."""

    label: str
    shape: Flat
    turns: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """What to pack. ``moves`` bounds the search by counted work, never by a clock."""

    bed: Bed
    blanks: tuple[Blank, ...]
    moves: int
    seed: int = 0


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
    """Where the pieces lie, and the labels of those that no sheet can hold."""

    spots: tuple[Spot, ...]
    too_large: tuple[str, ...] = ()


class Engine(Protocol):
    """Packs a job; the same job gives the same result on every run and machine."""

    name: str

    def pack(self, job: Job) -> Packed:
        """Place all blanks on as few sheets as it finds."""
        ...
