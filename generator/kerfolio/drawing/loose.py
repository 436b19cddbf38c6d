"""How far apart things stand that a step sets down and no joint holds: the picture has the size."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.assembly.assembled import BuildStep, PosedPiece
from kerfolio.assembly.extent import box_around
from kerfolio.basis.lengths import length_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.lots import lots_of
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import Scene
from kerfolio.drawing.space_dimension import space_dimension
from kerfolio.drawing.vocabulary import Item
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.view import View

_LEVEL = 1.0
"""Things whose ends lie no farther from one another than this, mm, stand side by side."""
_SQUARE = 0.999


@dataclass(frozen=True, slots=True)
class Apart:
    """Two pieces that stand loose: from middle to middle across their faces, mm of the world.

    ``a`` and ``b`` lie on the ground at those of their ends that face the eye, in the middle of
    each piece's thickness; ``out`` is the way that these ends look.
    """

    one: PosedPiece
    other: PosedPiece
    far: float
    a: Vector
    b: Vector
    out: Vector


def stand_apart(scene: Scene, step: BuildStep, view: View) -> tuple[Apart, ...]:
    """Return the pieces that a step sets down side by side, each to the next.

    Each stands on an edge by itself, its faces towards the other's and its ends level with the
    other's; in the step nothing moves, and no joint holds one to the other.
    """
    there = {*step.standing, *step.added}
    lots = lots_of(scene, there)
    if step.moves or any(len(each) > 1 for each in lots) or not {*step.added} & there:
        return ()
    pieces = [piece for each in lots for piece in scene.pieces if piece.label in each]
    found = []
    for axis in (0, 1):
        row = [each for each in pieces if abs(each.pose.z[axis]) > _SQUARE]
        row.sort(key=lambda each: box_around([each])[0][axis])
        found += [_apart(one, other, axis, view) for one, other in pairwise(row)]
    return tuple(each for each in found if each)


def _apart(one: PosedPiece, other: PosedPiece, axis: int, view: View) -> Apart | None:
    along = 1 - axis
    boxes = box_around([one]), box_around([other])
    (low, high), (least, most) = boxes
    level = max(abs(low[along] - least[along]), abs(high[along] - most[along]))
    if level > _LEVEL or abs(low[2] - least[2]) > _LEVEL or least[axis] <= high[axis]:
        return None
    near = view.to_viewer[along] > 0
    middles = [(near_by[0][axis] + near_by[1][axis]) / 2 for near_by in boxes]
    end = max(high[along], most[along]) if near else min(low[along], least[along])
    a, b = (_spot(axis, across, end, low[2]) for across in middles)
    side = 1.0 if near else -1.0
    out: Vector = (0.0, side, 0.0) if axis == 0 else (side, 0.0, 0.0)
    return Apart(one, other, middles[1] - middles[0], a, b, out)


def _spot(axis: int, across: float, along: float, up: float) -> Vector:
    return (across, along, up) if axis == 0 else (along, across, up)


def apart_dimensions(apart: Sequence[Apart], seat: PaperSeat, reader: Reader) -> Iterator[Item]:
    """Yield the size of each distance, on the ground before the pieces."""
    for each in apart:
        yield from space_dimension(each.a, each.b, each.out, [length_in(each.far, reader)], seat)


def apart_sentences(apart: Sequence[Apart], reader: Reader) -> Iterator[str]:
    """Yield what the sizes say."""
    for each in apart:
        far = length_in(each.far, reader)
        marks = {"one": each.one.mark, "other": each.other.mark}
        yield say(reader, "drawing-step-apart", far=far, **marks)
