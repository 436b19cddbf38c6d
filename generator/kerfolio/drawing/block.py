"""A few items that move, turn and shrink together: lines of lettering, arrows with their words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace

from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.lettering import CAPITAL, Box
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Point

Line = tuple[str, float, bool]
"""Text, font size in mm, strong."""

_LEADING = 0.45  # of a line's size, between its capitals and the baseline above


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """Strokes and labels about their own 0,0, which is the middle of their box."""

    items: tuple[Stroke | Label, ...]
    width: float
    height: float

    def seated(self, at: Point, scale: float = 1.0, turn: float = 0.0) -> tuple[Item, ...]:
        """Return the items with their middle at a point, shrunk, turned counter-clockwise."""
        seat = Seat(x=at[0], y=at[1], scale=scale, turn=turn)
        return tuple(seated(item, seat) for item in self.items)


def seated(item: Stroke | Label, seat: Seat) -> Stroke | Label:
    """Return an item where a seat puts it, lettering shrunk and turned with it."""
    if isinstance(item, Label):
        return replace(
            item,
            at=seat.point(item.at),
            height=item.height * seat.scale,
            angle=item.angle + seat.turn,
        )
    holes = tuple(map(seat.contour, item.holes))
    return replace(item, contour=seat.contour(item.contour), holes=holes)


def block(items: Iterable[Stroke | Label], pad: float = 0.0) -> Block:
    """Return the items as a block, ``pad`` mm of air around them."""
    kept = tuple(items)
    left, bottom, right, top = padded(extent(kept), pad)
    seat = Seat(x=-(left + right) / 2, y=-(bottom + top) / 2)
    moved = tuple(seated(item, seat) for item in kept)
    return Block(items=moved, width=right - left, height=top - bottom)


def text_block(lines: Iterable[Line], layer: str = "", ink: Ink = Ink.INK) -> Block:
    """Return lines of lettering, centred, one under another."""
    labels: list[Label] = []
    y = 0.0
    for text, height, strong in lines:
        y -= height * (CAPITAL + (_LEADING if labels else 0.0))
        labels.append(
            Label(
                text=text,
                at=(0.0, y),
                height=height,
                layer=layer,
                ink=ink,
                anchor=Anchor.MIDDLE,
                strong=strong,
            )
        )
    return block(labels)


def box_at(middle: Point, width: float, height: float) -> Box:
    """Return the upright box of that size about a point."""
    x, y = middle
    return x - width / 2, y - height / 2, x + width / 2, y + height / 2
