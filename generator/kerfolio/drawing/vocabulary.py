"""The drawing vocabulary: strokes, labels and dimensions on named layers, in mm, y up.

A drawing knows nothing of files; every format replays the same record. A text may be a
``Figured``: its figures are told by whoever writes it, and it stands to the right of its place.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from kerfolio.geometry.contour import Contour, Point


class Ink(StrEnum):
    """Roles of colour; each writer's palette gives them a colour."""

    INK = "ink"  # lines and text
    SOFT = "soft"  # secondary lines and text
    FAINT = "faint"  # grids, sheet edges
    ACCENT = "accent"  # what matters now
    PAPER = "paper"  # ground
    WOOD = "wood"  # a piece's face
    WOOD_DARK = "wood-dark"  # a piece's face turned away, pockets
    WASTE = "waste"  # sheet around pieces
    FACE_LIGHT = "face-light"  # a solid's faces, by the way they look
    FACE_MID = "face-mid"
    FACE_DARK = "face-dark"
    NEW_LIGHT = "new-light"  # the same of what is new in a step
    NEW_MID = "new-mid"
    NEW_DARK = "new-dark"
    NEW_LINE = "new-line"  # edges of what is new
    ENGRAVE = "engrave"  # cut files only, one for each operation
    POCKET = "pocket"
    HOLE = "hole"
    OPENING = "opening"
    OUTLINE = "outline"
    BRIDGE = "bridge"
    ASIDE = "aside"  # what of a cut file is not cut


class Anchor(StrEnum):
    """Which point of a label stands on its spot (baseline, vertically)."""

    START = "start"
    MIDDLE = "middle"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A contour drawn and perhaps filled; ``width`` in mm on paper, None draws no line.

    ``holes`` are subtracted from the fill (even-odd).
    """

    contour: Contour
    holes: tuple[Contour, ...] = ()
    layer: str = ""
    ink: Ink = Ink.INK
    width: float | None = 0.25
    dash: tuple[float, ...] = ()
    fill: Ink | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """Text; ``height`` is the font size in mm; ``angle`` degrees counter-clockwise."""

    text: str
    at: Point
    height: float
    layer: str = ""
    ink: Ink = Ink.INK
    anchor: Anchor = Anchor.START
    angle: float = 0.0
    strong: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimension:
    """A linear dimension between two points, its line moved ``offset`` mm to the left of a-b."""

    a: Point
    b: Point
    text: str
    offset: float
    height: float = 3.5
    layer: str = ""
    ink: Ink = Ink.SOFT


Item = Stroke | Label | Dimension


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """A named layer: what it is for, and its depth in mm (None: through, or not a cut)."""

    name: str
    purpose: str = ""
    depth: float | None = None
    cuts: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """Items inside a box ``(left, bottom, right, top)`` in mm, with the layers they lie on.

    ``title`` and ``description`` are for people who cannot see it. ``thickness`` is that of the
    sheet a cut file is for, mm: written into the file as data, besides the line that people read.
    """

    box: tuple[float, float, float, float]
    items: tuple[Item, ...]
    layers: tuple[Layer, ...] = ()
    title: str = ""
    description: str = ""
    thickness: float | None = None

    @property
    def width(self) -> float:
        """Width in mm."""
        return self.box[2] - self.box[0]

    @property
    def height(self) -> float:
        """Height in mm."""
        return self.box[3] - self.box[1]
