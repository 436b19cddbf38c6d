"""How far what is laid down reaches past what bears it: the picture of its step has the size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.assembly.overhangs import Overhang
from kerfolio.basis.lengths import length_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import Scene
from kerfolio.drawing.space_dimension import space_dimension
from kerfolio.drawing.vocabulary import Item
from kerfolio.geometry.patch import Line
from kerfolio.geometry.rigid import Vector, added
from kerfolio.geometry.view import View

_OFF = 0.05
"""A line on a face is drawn so far off it, mm, that the face does not hide it."""


def overhang_lines(overhangs: Sequence[Overhang], scene: Scene, view: View) -> Iterator[Line]:
    """Yield the lines over and under what lies, above the outermost spot of what bears it."""
    for each in overhangs:
        x, y, z = each.foot
        away = scene.away[each.label]
        face = each.low[2] - _OFF if view.from_below else each.high[2] + _OFF
        yield added((x, each.low[1], face), away), added((x, each.high[1], face), away)
        yield added((x, y, each.low[2] - _OFF), away), (x, y, z)


def overhang_sizes(
    overhangs: Sequence[Overhang], scene: Scene, seat: PaperSeat, reader: Reader
) -> Iterator[Item]:
    """Yield the sizes along that edge of what lies which is away from the eye."""
    behind = 1.0 if seat.view.to_viewer[1] < 0 else -1.0
    for each in overhangs:
        y = each.high[1] if behind > 0 else each.low[1]
        z = each.low[2] if seat.view.from_below else each.high[2]
        spots: list[Vector] = [(x, y, z) for x in (each.end, each.foot[0])]
        a, b = (added(spot, scene.away[each.label]) for spot in spots)
        yield from space_dimension(a, b, (0.0, behind, 0.0), [length_in(each.far, reader)], seat)


def overhang_sentences(
    overhangs: Sequence[Overhang], scene: Scene, reader: Reader
) -> Iterator[str]:
    """Yield what the sizes say."""
    for each in overhangs:
        mark = scene.assembled.piece(each.label).mark
        side = "left" if each.end == each.low[0] else "right"
        far = length_in(each.far, reader)
        yield say(reader, "drawing-step-overhang", piece=mark, far=far, side=side)
