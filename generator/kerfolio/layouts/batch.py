"""A batch: several copies of a plan as one plan, to be laid out and cut together."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.basis.words import counted
from kerfolio.settling.settled import SettledBoard, SettledPart, SettledPiece, SettledPlan


def several(settled: SettledPlan, copies: int) -> SettledPlan:
    """Return a plan with the pieces of so many copies, each named by its copy: ``2/side.left``."""
    title = f"{settled.plan.title}, {counted(copies, 'copy', 'copies')}"
    return replace(
        settled,
        plan=replace(settled.plan, title=title),
        parts=tuple(_part(each, copies) for each in settled.parts),
        boards=tuple(_board(each, copies) for each in settled.boards),
    )


def _part(part: SettledPart, copies: int) -> SettledPart:
    pieces = tuple(
        SettledPiece(label=f"{copy}/{each.label}", mark=f"{copy}/{each.mark}", copy=copy)
        for copy in range(1, copies + 1)
        for each in part.pieces
    )
    return replace(part, pieces=pieces)


def _board(board: SettledBoard, copies: int) -> SettledBoard:
    return replace(board, use=replace(board.use, count=board.use.count * copies))
