"""The wall that a thing is fixed to, as a short stretch behind it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.boards import PosedBoard
from kerfolio.assembly.extent import box_of, corners
from kerfolio.assembly.placed import Placed, placed_in
from kerfolio.geometry.rigid import Vector
from kerfolio.model.use import WALL
from kerfolio.settling.settled import SettledPlan

_TOUCHES = 3.0
"""A board nearer to the wall than this, mm, is on it: more is no play (common practice)."""


@dataclass(frozen=True, slots=True)
class Wall:
    """A wall behind a thing: it faces the front in the plane y = ``at``; ``low`` and ``high`` are
    the ends of what is fixed to it, x and z; mm.

    It is there from step ``since`` on, the one that fixes something to it; 0 where none does.
    """

    at: float
    low: tuple[float, float]
    high: tuple[float, float]
    since: int = 0

    def moved(self, by: Vector) -> Wall:
        """Return it moved away from the thing, mm."""
        return replace(self, at=self.at + by[1])


def wall_behind(settled: SettledPlan, assembled: Assembled) -> Wall | None:
    """Return the wall behind a plan put together; None where it is not placed at one."""
    if settled.plan.placed != WALL:
        return None
    placed = placed_in(settled, assembled)
    spots = [spot for each in assembled.pieces for spot in corners(each)]
    low, high = box_of([*spots, *(spot for each in placed.boards for spot in each.corners)])
    steps = sorted(_fixing(placed, high[1]))
    since = steps[0] if steps else 0
    return Wall(high[1], (low[0], low[2]), (high[0], high[2]), since)


def board_on_wall(settled: SettledPlan, assembled: Assembled) -> str:
    """Return the name of the board that a plan is fixed to the wall by, empty for none."""
    wall = wall_behind(settled, assembled)
    boards = placed_in(settled, assembled).boards if wall else ()
    return next((each.board.use.name for each in boards if wall and is_on(each, wall.at)), "")


def _fixing(placed: Placed, at: float) -> set[int]:
    """Return the steps that fix something to the wall."""
    screwed = {each.step for each in placed.fastenings if each.settled.last.is_wall}
    lying = {each.step for each in placed.boards if is_on(each, at)}
    return (screwed | lying) - {0}


def is_on(board: PosedBoard, at: float) -> bool:
    """Tell whether a board lies on the wall in the plane y = ``at``."""
    return at - max(spot[1] for spot in board.corners) < _TOUCHES
