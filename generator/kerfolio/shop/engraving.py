"""What an engraving comes out like: which cutter makes it, how wide its strokes are, what reads."""

from __future__ import annotations

import math
from dataclasses import dataclass

from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.engraved import run_together, widest_stroke
from kerfolio.model.stock import SHAPED, CutterStock
from kerfolio.settling.settled import Cut, Operation, SettledPart, SettledPlan
from kerfolio.shop.cut_setting import in_choice, settings_of

UNEVEN = 0.3
"""A sheet lies so much, mm, higher or lower than where z was set (common practice, no single
source: thickness and flatness of a sheet that is held at its edges)."""

_LEAST_WOOD, _WOOD_SHARE = 0.5, 0.5
"""Between two strokes stays so much wood, mm, so that it does not break out, and so much of a
stroke, so that both are seen apart (common practice, no single source)."""

_V, _BALL = "v", "ball"


@dataclass(frozen=True, slots=True, kw_only=True)
class Engraved:
    """One engraving and its strokes: the cutter, ``diameter`` mm, goes ``depth`` mm deep.

    ``width`` is that of its strokes, mm, ``narrow`` and ``wide`` where the sheet lies 0.3 mm off.
    """

    cutter: CutterStock
    diameter: float
    depth: float
    lines: tuple[Contour, ...]

    @property
    def width(self) -> float:
        """How wide the strokes are, mm."""
        return stroke_width(self.cutter, self.diameter, self.depth)

    @property
    def narrow(self) -> float:
        """How wide they are where the sheet lies low; nothing where it is not touched."""
        return stroke_width(self.cutter, self.diameter, self.depth - UNEVEN)

    @property
    def wide(self) -> float:
        """How wide they are where the sheet lies high."""
        return stroke_width(self.cutter, self.diameter, self.depth + UNEVEN)

    @property
    def follows_depth(self) -> bool:
        """Whether the strokes are wider the deeper they go."""
        return self.cutter.kind in SHAPED

    @property
    def lost(self) -> tuple[Point, ...]:
        """Where strokes, as wide as they may come out, leave too little wood between them."""
        return run_together(self.lines, _room(self.wide))

    @property
    def larger(self) -> float:
        """How many times its size it must be so that nothing is lost."""
        return _room(self.wide) / widest_stroke(self.lines) if self.lost else 1.0

    @property
    def widest(self) -> float:
        """The widest stroke, mm, by which nothing of it is lost; 0 where none is."""
        room = widest_stroke(self.lines)
        return max(0.0, min(room - _LEAST_WOOD, room / (1 + _WOOD_SHARE)))

    @property
    def deepest(self) -> float:
        """How deep this cutter may go so that nothing is lost on an uneven sheet, mm, or below 0.

        Of cutters that widen their strokes alone.
        """
        return depth_of(self.cutter, self.diameter, self.widest) - UNEVEN


def _room(width: float) -> float:
    return width + max(_LEAST_WOOD, _WOOD_SHARE * width)


def stroke_width(cutter: CutterStock, diameter: float, depth: float) -> float:
    """Return how wide a groove is at the face, mm; 0 where the cutter does not reach it.

    Of a V cutter: flat of the tip + 2 x depth x tan(angle / 2); of a ball one: the chord of its
    circle. Neither is wider than the cutter, nor is that of a straight one.
    """
    if depth <= 0:
        return 0.0
    if cutter.kind == _V and cutter.angle:
        flank = math.tan(math.radians(cutter.angle) / 2)
        return min(diameter, (cutter.tip_flat or 0.0) + 2 * depth * flank)
    if cutter.kind == _BALL and depth < diameter / 2:
        return 2 * math.sqrt(depth * (diameter - depth))
    return diameter


def depth_of(cutter: CutterStock, diameter: float, width: float) -> float:
    """Return how deep a groove of a width is, mm; of straight cutters 0: theirs have one width."""
    width = min(width, diameter)
    if cutter.kind == _V and cutter.angle:
        return (width - (cutter.tip_flat or 0.0)) / 2 / math.tan(math.radians(cutter.angle) / 2)
    if cutter.kind == _BALL:
        return diameter / 2 - math.sqrt((diameter / 2) ** 2 - (width / 2) ** 2)
    return 0.0


def engraved(
    settled: SettledPlan, part: SettledPart, lines: tuple[Contour, ...], depth: float
) -> Engraved | None:
    """Return lines as the cutter leaves them that comes first for them; None without a cutter."""
    sheet = settled.sheet(part.sheet)
    cut = Cut(operation=Operation.ENGRAVE, depth=depth, contours=lines)
    able = in_choice(cut, settings_of(settled, part.sheet))
    if able and able[0].cutter.kind in SHAPED:
        cutter = able[0].cutter
        return Engraved(cutter=cutter, diameter=cutter.diameter, depth=depth, lines=lines)
    if sheet.diameter is None:
        return None
    own = sheet.diameter == sheet.cutter.diameter
    cutter = able[0].cutter if able and own else sheet.cutter
    diameter = cutter.diameter if own else sheet.diameter
    return Engraved(cutter=cutter, diameter=diameter, depth=depth, lines=lines)


def stroke_widths(settled: SettledPlan, part: SettledPart) -> dict[str, float]:
    """Return how wide the strokes of each engraving of a part are, mm, by its feature's name."""
    found = {}
    for cut in part.cuts:
        if cut.operation is Operation.ENGRAVE:
            made = engraved(settled, part, cut.contours, cut.depth or 0.0)
            found[cut.feature] = made.width if made else 0.0
    return found
