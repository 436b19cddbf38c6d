"""What a saw diagram says: a sheet's blanks, and its cuts in the order they are made."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.reader import Reader
from kerfolio.layouts.saw_blank import Blank

TRIM, RIP, CROSS = "trim", "rip", "cross-cut"


@dataclass(frozen=True, slots=True, kw_only=True)
class Saw:
    """What the saw takes, in mm: the width of its cut, and what is trimmed off a sheet's edges.

    ``allowance`` is left for trimming wherever a shaped part has no straight edge on the side of
    its blank. Raises ValueError for a trim that is narrower than the kerf, unless it is 0: its
    strip could not be cut off.
    """

    kerf: float = 3.2
    trim: float = 5.0
    allowance: float = 10.0

    def __post_init__(self) -> None:
        if 0 < self.trim < self.kerf:
            raise ValueError(f"a trim of {self.trim} mm is narrower than the kerf, {self.kerf} mm")


@dataclass(frozen=True, slots=True, kw_only=True)
class Workpiece:
    """What lies on the saw: a rectangle of the sheet, in mm from the sheet's lower left corner."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SawBlank:
    """The blank of a piece on its sheet: ``at`` where; ``blank`` says how the part lies in it."""

    piece: str
    mark: str
    part: str
    at: Workpiece
    blank: Blank


SHEET, STRIP, BLOCK, ROUGH, PIECE = "sheet", "strip", "block", "rough", "piece"


@dataclass(frozen=True, slots=True)
class Called:
    """What a workpiece is called: the sheet, a strip, a block of pieces, a piece; by which name.

    What is ``ROUGH`` becomes the piece of that mark once it is trimmed.
    """

    kind: str
    name: str = ""

    def told(self, reader: Reader) -> str:
        """Return it in words: ``strip 2``, ``block 2a``, ``A1 rough``, ``A1``."""
        return reader.says(f"sawsheet-called-{self.kind}", name=self.name)


@dataclass(frozen=True, slots=True, kw_only=True)
class SawCut:
    """One cut from edge to edge of a workpiece.

    A ``rip`` runs along the sheet's x, its grain; a ``cross-cut`` across; a ``trim`` takes the
    sheet's own edge off. ``setting`` is the distance in mm from ``edge`` (``lower`` or ``left``)
    of the workpiece to the kerf. What lies between the two is ``kept``, what lies beyond the kerf
    is cut on or left over. A trim keeps what lies beyond. ``of`` and ``gives`` name the workpiece
    and what is kept. ``fresh``: the fence is set anew for this cut.
    """

    number: int
    kind: str
    of: Called
    gives: Called
    setting: float
    edge: str
    workpiece: Workpiece
    kept: Workpiece
    fresh: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SawSheet:
    """One sheet: its blanks, and its cuts in the order they are made.

    ``number`` counts from 1 over the plan; ``size`` in mm, x along the grain. Each cut divides a
    workpiece that the sheet or an earlier cut gave, so the cuts make a tree. ``offcuts`` are what
    is left over, the largest first.
    """

    number: int
    sheet: str
    size: tuple[float, float]
    saw: Saw
    blanks: tuple[SawBlank, ...]
    cuts: tuple[SawCut, ...]
    offcuts: tuple[Workpiece, ...]

    @property
    def settings(self) -> int:
        """How often the fence is set."""
        return sum(cut.fresh for cut in self.cuts)
