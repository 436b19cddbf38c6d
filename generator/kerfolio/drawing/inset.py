"""A detail drawn larger in a circle beside a picture, and the line that leads to it."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from math import dist, hypot, pi

from kerfolio.assembly.assembled import PosedPiece
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.callout import Block
from kerfolio.drawing.count_plate import count_plate, plate_size
from kerfolio.drawing.extent import padded
from kerfolio.drawing.hidden_bore import Bore, bore_strokes
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.motion import guide_strokes
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import Scene
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.vocabulary import Ink, Item, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.cropped import cropped
from kerfolio.geometry.facing import extent_of, solids_of
from kerfolio.geometry.hidden_lines import Seen, seen
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.shapes import circle
from kerfolio.geometry.view import View

RADIUS = 16.0
_RING = 1.8
_ROUND = 1.05
"""How much wider than the circle the window is that is worked out, so that no rim shows."""
_STEEP = 0.6
"""A line that rises by more than this share of its way across comes from below."""
_TOLD_GAP = 1.6
"""Between the circle and what is told below it, mm."""


@dataclass(frozen=True, slots=True)
class Pointer:
    """A ring round a spot in the picture, and a line to what is drawn larger of it."""

    line: Stroke
    ring: Stroke


@dataclass(frozen=True, slots=True)
class Inset:
    """A detail within a circle, in view coordinates, mm of the world.

    ``spot`` is where it lies in the picture that it belongs to; ``told`` stands below the circle
    where it is seen otherwise than the picture. The same is to be done at ``count`` places.
    ``worth`` is how well it shows what it is for, 0 to 1; ``bored`` are bores hidden in the wood.
    What is told stands ``over`` the circle where the line to it comes from below.
    """

    spot: Vector
    view: View
    scale: float
    centre: Point
    seen: Seen
    new: frozenset[int]
    worth: float = 1.0
    told: Block | None = None
    count: int = 1
    bored: tuple[Bore, ...] = ()
    over: bool = False

    @property
    def block(self) -> Block:
        """The inset as a block to go beside a picture."""
        return inset_block(self.told, self.count, self._items)

    def _items(self, at: Point) -> tuple[Item, ...]:
        told, wide = self.told, self.block.width
        middle = self._middle((at[0], at[1], at[0] + wide, at[1] + self.block.height))
        items = self._circle(middle)
        if self.count > 1:
            edge = RADIUS if self.over else -RADIUS
            items += count_plate(self.count, (middle[0], middle[1] + edge), Ink.SOFT)
        if told:
            foot = at[1] + self.block.height - told.height if self.over else at[1]
            items += told.items((at[0] + (wide - told.width) / 2, foot))
        return items

    def _middle(self, block: Box) -> Point:
        """Return the middle of the circle in the block's box."""
        x = (block[0] + block[2]) / 2
        return x, block[1] + RADIUS if self.over else block[3] - RADIUS

    def _circle(self, middle: Point) -> tuple[Item, ...]:
        x, y = (middle[axis] - self.centre[axis] * self.scale for axis in (0, 1))
        rim, seat = circle(middle, 2 * RADIUS), PaperSeat(self.view, self.scale, x, y)
        return (
            Stroke(contour=rim, width=None, fill=Ink.PAPER),
            *solid_strokes(self.seen, seat, self.new),
            *bore_strokes(self.bored, seat),
            *guide_strokes(self.seen, seat),
            Stroke(contour=rim, ink=Ink.SOFT, width=0.35),
        )

    def turned_to(self, main: PaperSeat, block: Box) -> Inset:
        """Return it with what is told on that side of the circle that no line comes from."""
        (x, y), (mx, my) = main.spot(self.spot), self._middle(block)
        from_below = my - y > abs(mx - x) * _STEEP
        return replace(self, over=from_below and (self.told is not None or self.count > 1))

    def pointer(self, main: PaperSeat, block: Box) -> Pointer:
        """Return what leads from the spot in the picture to the inset in its box."""
        spot, middle = main.spot(self.spot), self._middle(block)
        ring = max(_RING, min(4.0, RADIUS * main.scale / self.scale))
        reach = dist(spot, middle)
        way = ((middle[0] - spot[0]) / reach, (middle[1] - spot[1]) / reach)
        start = (spot[0] + ring * way[0], spot[1] + ring * way[1])
        end = (middle[0] - RADIUS * way[0], middle[1] - RADIUS * way[1])
        return Pointer(
            Stroke(contour=open_path(start, end), ink=Ink.SOFT, width=0.2),
            Stroke(contour=circle(spot, 2 * ring), ink=Ink.SOFT, width=0.3),
        )


@dataclass(frozen=True, slots=True)
class Detail:
    """What is to be drawn larger: where it is seen in the picture, at any of some spots alike.

    ``drawn`` makes the inset for the spot of a number; ``told`` stands below it. ``words`` say what
    is shown to those who cannot see it.
    """

    spots: tuple[Vector, ...]
    drawn: Callable[[int], Inset]
    words: str
    told: Block | None = None
    count: int = 1

    @property
    def room(self) -> Block:
        """A block of its size, with nothing in it."""
        return inset_block(self.told, self.count, lambda _: ())


def inset_block(
    told: Block | None, count: int, items: Callable[[Point], tuple[Item, ...]]
) -> Block:
    """Return the block of a circle with a count on its rim and what is told beside that."""
    wide = max(2 * RADIUS, told.width if told else 0.0)
    under = told.height + _TOLD_GAP if told else 0.0
    if count > 1:
        under += plate_size(count)[1] / 2
    return Block(wide, under + 2 * RADIUS, items)


def share_filled(scene: Scene, found: Seen, label: str, reach: float) -> float:
    """Return how much of the circle a piece fills."""
    solids = [number for number, piece in enumerate(scene.pieces) if piece.label == label]
    return math.fsum(each.shape.area for each in found.areas if each.solid in solids) / (
        pi * reach**2
    )


def near_to(scene: Scene, view: View, centre: Point, reach: float) -> Scene:
    """Leave out the pieces that do not come into the circle."""

    def touches(piece: PosedPiece) -> bool:
        left, bottom, right, top = extent_of(solids_of([scene.posed(piece)]), view)
        aside = max(left - centre[0], centre[0] - right, 0.0)
        above = max(bottom - centre[1], centre[1] - top, 0.0)
        return hypot(aside, above) < reach

    return kept(scene, [each for each in scene.pieces if touches(each)])


def kept(scene: Scene, pieces: Sequence[PosedPiece]) -> Scene:
    """Return a scene with these of its pieces alone."""
    away = {each.label: scene.away[each.label] for each in pieces}
    return replace(scene, pieces=tuple(pieces), away=away)


def in_circle(
    scene: Scene,
    view: View,
    centre: Point,
    scale: float,
    extra: Sequence[tuple[Vector, Vector]] = (),
) -> Seen:
    """Return what of a scene is seen within the circle, with ``extra`` lines of the world."""
    reach = RADIUS / scale
    found = seen(
        scene.solids(),
        view,
        apart=APART / scale,
        first=scene.coloured,
        extra=extra,
        window=padded((*centre, *centre), _ROUND * reach),
    )
    return cropped(found, centre, reach)
