"""How high a board is fixed to the wall: the picture of the step that does it has the size."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.fitting import Fitting
from kerfolio.assembly.lying import Shown
from kerfolio.assembly.wall import Wall
from kerfolio.basis.digits import steps
from kerfolio.basis.lengths import length_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.expand import NARROW
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.space_dimension import space_dimension
from kerfolio.drawing.vocabulary import Ink, Item, Stroke
from kerfolio.drawing.wall import reaches_floor, wall_ends
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.view import View
from kerfolio.settling.titles import board_title

_SAME = 0.5
"""Upper edges no further apart than this, mm, are at one height."""


@dataclass(frozen=True, slots=True)
class OnWall:
    """The height of a board's upper edge above the floor, mm, and where it is drawn.

    ``far`` is a whole number: nobody marks a wall finer (common practice).
    ``end`` is the board's upper corner next to that side of the wall, ``low`` and ``high`` are on
    the wall's edge, at the floor and level with it; ``out`` leads away from the wall there.
    """

    board: str
    far: float
    end: Vector
    low: Vector
    high: Vector
    out: Vector


def height_on(wall: Wall | None, shown: Shown, look: View) -> OnWall | None:
    """Return the height of the boards that a step fixes to a wall which reaches the floor.

    None where there are none, or where they are not all at one height.
    """
    boards = [
        each
        for each in shown.fittings
        if each.role is Role.BOARD and each.step == shown.step.number
    ]
    if wall is None or not reaches_floor(wall) or not boards:
        return None
    tops = [max(z for _, _, z in _corners(each)) for each in boards]
    if max(tops) - min(tops) > _SAME:
        return None
    left, floor, right, _ = wall_ends(wall)
    near = look.to_viewer[0] > 0  # at the wall's edge that is seen, nothing stands before it
    ends = [x for each in boards for x, _, _ in _corners(each)]
    edge, end = (right, max(ends)) if near else (left, min(ends))
    top = tops[0]
    return OnWall(
        board=boards[0].name,
        far=float(steps(top - floor, 0)),
        end=(end, wall.at, top),
        low=(edge, wall.at, floor),
        high=(edge, wall.at, top),
        out=(1.0 if near else -1.0, 0.0, 0.0),
    )


def _corners(board: Fitting) -> Iterator[Vector]:
    assert isinstance(board.shape, Panel), "a board is cut to its length"
    for x, y in board.shape.shape.outer:
        for z in (0.0, board.shape.thickness):
            yield board.frame.point((x, y, z))


def height_line(height: OnWall, seat: PaperSeat) -> Stroke:
    """Return the line on the wall from the board to the wall's edge; all else stands before it."""
    path = open_path(seat.spot(height.end), seat.spot(height.high))
    return Stroke(contour=path, ink=Ink.SOFT, width=NARROW)


def height_dimension(height: OnWall, seat: PaperSeat, reader: Reader) -> tuple[Item, ...]:
    """Return the size, beside the wall."""
    text = length_in(height.far, reader)
    return tuple(space_dimension(height.low, height.high, height.out, [text], seat))


def height_sentence(height: OnWall, reader: Reader) -> str:
    """Return what the size says."""
    far = length_in(height.far, reader)
    return say(reader, "drawing-step-height", board=board_title(height.board), far=far)
