"""Pieces that hang on screws alone: nothing else holds them up, and the screws are pulled."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.extent import Box, box_around
from kerfolio.assembly.fastened import PosedFastening
from kerfolio.model.fastening import SCREWED

_UPRIGHT = 0.99
_TOUCH = 1.0
"""Boxes nearer than this, mm, touch."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hanging:
    """A piece with the upright screws that it hangs on."""

    piece: PosedPiece
    screws: tuple[PosedFastening, ...]


def hanging_pieces(assembled: Assembled, fastenings: Sequence[PosedFastening]) -> Iterator[Hanging]:
    """Yield the pieces that hang on screws alone, whose way of bearing is plain.

    Its joints lay it flat on what it is screwed to, and nothing but screws fastens it: their heads
    are under it, or they bite in it from above. Nothing stands under it, and nothing else is joined
    to it. Of all others nothing is said: their screws share the load with something.
    """
    boxes = {each.label: box_around([each]) for each in assembled.pieces}
    for piece in assembled.pieces:
        own = [each for each in fastenings if piece.label in each.settled.pieces]
        held_to = {label for each in own for label in each.settled.pieces} - {piece.label}
        joints = [each for each in assembled.joints if piece.label in (each.a, each.b)]
        partners = {label for each in joints for label in (each.a, each.b)} - {piece.label}
        plain = all(each.kind.flat for each in joints) and partners <= held_to
        if own and held_to and plain and all(_pulled(each, piece.label) for each in own):
            others = [box for label, box in boxes.items() if label != piece.label]
            if not any(_stands_on(boxes[piece.label], box) for box in others):
                yield Hanging(piece=piece, screws=tuple(own))


def _pulled(each: PosedFastening, label: str) -> bool:
    """Tell whether a screw is pulled along its axis by the weight of a piece."""
    settled = each.settled
    if settled.kind is not SCREWED or settled.last.part is None or len(settled.pieces) != 2:
        return False
    up = each.direction[2]
    return up > _UPRIGHT if settled.first.piece == label else up < -_UPRIGHT


def _stands_on(box: Box, other: Box) -> bool:
    (x0, y0, low), (x1, y1, _) = box
    (a0, b0, _), (a1, b1, top) = other
    over = a0 < x1 and x0 < a1 and b0 < y1 and y0 < b1
    return over and abs(top - low) < _TOUCH
