"""The record of a release: what its pieces were, where they met, what they took."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

Line = tuple[tuple[float, float, float], ...]
"""The vertices of a closed contour, (x, y, bulge), mm; see ``geometry.contour``."""

Frame = tuple[tuple[float, float, float], tuple[float, float, float], tuple[float, float, float]]
"""Where a feature lies in its part: the origin of its frame (mm), its directions x and z."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedSheet:
    """A sheet: what it was bought as, its range and the thickness it was drawn for, its fit; mm."""

    name: str
    stock: str
    least: float
    most: float
    drawn: float
    fit: float


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedPart:
    """A part with the labels of its pieces.

    ``one_face`` says that something is cut into its show face alone, so that a piece cannot be
    turned over; ``cut`` is a hash of all that is cut as drawn, reliefs and engravings with it.
    """

    name: str
    title: str
    sheet: str
    pieces: tuple[str, ...]
    one_face: bool
    cut: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedEnd:
    """What of a piece meets: a feature or a side, by the names in the plan.

    ``through`` says that it can be entered from either face.
    """

    piece: str
    feature: str
    through: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedJoint:
    """Two pieces that meet; ``kind`` is the joint's word, or ``fastening``."""

    kind: str
    a: RecordedEnd
    b: RecordedEnd
    slides: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedSeat:
    """One of the features of an end, at a point of the range.

    ``size`` is along and across, and how far it goes in or out, mm; 0 where that plays no part.
    ``gaps`` are where the gaps of fingers begin and end, along the row.
    """

    frame: Frame
    size: tuple[float, float, float]
    gaps: tuple[float, ...] = ()


Pair = tuple[RecordedSeat, RecordedSeat]
"""Two features that meet: their frames coincide when the pieces are home."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedContour:
    """A closed contour that is cut to a depth from the show face, mm; 0 goes through."""

    line: Line
    depth: float = 0.0


Shape = tuple[RecordedContour, ...]
"""The contours of a part: its outline, then its openings and recesses."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedPoint:
    """All of it at one thickness of each sheet, mm: shapes by part, pairs by joint."""

    thickness: Mapping[str, float]
    shapes: Mapping[str, Shape]
    pairs: tuple[tuple[Pair, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedStep:
    """A step: its title, the pieces it adds, and a hash of its words."""

    title: str
    add: tuple[str, ...]
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RecordedBoard:
    """Boards cut to one length, mm."""

    name: str
    stock: str
    length: float
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ReleaseRecord:
    """What a release was. ``points`` are as drawn, then the corners of the range.

    ``weight`` is in kg, ``sheet_count`` how many sheets it took; ``words`` is a hash of what is
    told besides the steps.
    """

    plan: str
    version: str
    sheets: tuple[RecordedSheet, ...]
    parts: tuple[RecordedPart, ...]
    joints: tuple[RecordedJoint, ...]
    points: tuple[RecordedPoint, ...]
    steps: tuple[RecordedStep, ...] = ()
    hardware: Mapping[str, int] = field(default_factory=dict)
    boards: tuple[RecordedBoard, ...] = ()
    weight: float = 0.0
    sheet_count: int = 0
    words: str = ""

    def __hash__(self) -> int:
        """Return a hash of what tells records apart: a plan that holds them is hashed often."""
        return hash((self.plan, self.version, self.weight, self.words))

    @property
    def drawn(self) -> RecordedPoint:
        """The plan at the thickness it was drawn for."""
        return self.points[0]

    @property
    def pieces(self) -> tuple[str, ...]:
        """The labels of all pieces."""
        return tuple(label for part in self.parts for label in part.pieces)

    def part(self, name: str) -> RecordedPart:
        """Return the part of that name; KeyError when there is none."""
        for each in self.parts:
            if each.name == name:
                return each
        raise KeyError(name)
