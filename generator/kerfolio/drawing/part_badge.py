"""What every template carries: mark, name, count, show face, up and grain."""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.arrow import double_arrow, open_path
from kerfolio.drawing.block import Block, block, box_at, text_block
from kerfolio.drawing.extent import extent
from kerfolio.drawing.ground import Ground
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.label_spot import label_spot
from kerfolio.geometry.measure import bounds
from kerfolio.settling.settled import SettledPart

_LEAST = 7.5 * 25.4 / 72
"""A block whose smallest letters would be smaller than this, mm, stands beside the part instead."""

_TURNED = 0.75
"""What a block is worth on its side: upright is taken unless it must be much smaller."""


def badge(
    part: SettledPart, told: Sequence[str], ground: Ground, layer: str, reader: Reader
) -> tuple[Item, ...]:
    """Return the words and arrows, each block in the roomiest spot left; takes those spots.

    ``told`` are lines that say what the part is called, and what it is cut from where need be.
    Nothing of it follows the thickness.
    """
    return (
        *_placed(_words(part, told, layer, reader), ground, may_turn=True),
        *_placed(_arrows(part, layer, reader), ground, may_turn=False),
    )


def _words(part: SettledPart, told: Sequence[str], layer: str, reader: Reader) -> Block:
    lines = (
        (part.mark, 22.0, True),
        (say(reader, "template-show-face").upper(), 6.0, True),
        *((line, 5.0, False) for line in told),
    )
    return text_block(lines, layer)


def _arrows(part: SettledPart, layer: str, reader: Reader) -> Block:
    """Return the up mark, and the grain's arrow beside it where the grain matters."""
    up = _up(layer, reader)
    if not part.grained:
        return block(up)
    upright = part.grain == "along y"
    arrow = double_arrow((20.0, 9.0), 16.0, 90.0 if upright else 0.0, layer)
    grain = say(reader, "drawing-grain")
    word = Label(text=grain, at=(20.0, -4.4), height=4.0, layer=layer, anchor=Anchor.MIDDLE)
    return block((*up, *arrow, word))


def _up(layer: str, reader: Reader) -> tuple[Stroke | Label, ...]:
    shaft, head = open_path((0.0, 1.0), (0.0, 17.0)), open_path((-2.5, 12.5), (0, 17), (2.5, 12.5))
    lines = [Stroke(contour=each, layer=layer, ink=Ink.INK, width=0.5) for each in (shaft, head)]
    up = say(reader, "template-up")
    word = Label(text=up, at=(0.0, -4.4), height=4.0, layer=layer, anchor=Anchor.MIDDLE)
    return (*lines, word)


def _placed(each: Block, ground: Ground, *, may_turn: bool) -> tuple[Item, ...]:
    region, blocked = ground.common, ground.blocked
    best = (0.0, 0.0, 0.0, (0.0, 0.0))
    for turn in (0.0, 90.0) if may_turn else (0.0,):
        wide, high = (each.height, each.width) if turn else (each.width, each.height)
        spot, room = label_spot(region, wide / high, blocked, enough=1.25 * high)
        scale = min(1.0, room / high)
        best = max(best, (scale * (_TURNED if turn else 1.0), scale, turn, spot))
    _, scale, turned, spot = best
    least = _LEAST / min(label.height for label in each.items if isinstance(label, Label))
    if scale < least:
        return _beside(each, least, ground)
    items = each.seated(spot, scale, turned)
    ground.taken.append(extent(items))
    return items


def _beside(each: Block, scale: float, ground: Ground) -> tuple[Item, ...]:
    boxes = [bounds(shape.outer) for shape in ground.shapes]
    right = max([*(box.x1 for box in boxes), *(other[2] for other in ground.taken)])
    bottom = min(box.y0 for box in boxes)
    spot = (right + 4.0 + each.width * scale / 2, bottom + each.height * scale / 2)
    ground.taken.append(box_at(spot, each.width * scale, each.height * scale))
    return each.seated(spot, scale)
