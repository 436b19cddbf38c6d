"""A step that glues: what stands and what comes, side by side, with the faces that get glue."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from kerfolio.assembly.assembled import Assembled, BuildStep, PosedJoint
from kerfolio.assembly.handworked import Coated, coated
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.callout import hatched_block
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.drawing.work_page import work_drawing
from kerfolio.drawing.work_things import Thing, laid_out


def glue_view(
    assembled: Assembled,
    step: BuildStep,
    joints: Sequence[PosedJoint],
    *,
    note: str = "",
    reader: Reader = METRIC,
    title: str = "",
) -> Drawing | None:
    """Return the picture of what a step glues, at paper size; None where no faces meet.

    What stands is one thing, what comes to it another or several; each is turned so that its glue
    shows. The faces that get glue are hatched.
    """
    things = [*_things(assembled, step, coated(assembled, joints))]
    if not things:
        return None
    page, pieces = laid_out(assembled, things, step.added)
    return work_drawing(
        replace(page, blocks=(hatched_block(say(reader, "drawing-glue"), note),)),
        title=title,
        description=say(
            reader, "drawing-glue-shows", pieces=listed(reader, [each.mark for each in pieces])
        ),
    )


def _things(assembled: Assembled, step: BuildStep, coats: Sequence[Coated]) -> Iterator[Thing]:
    """Yield what stands, and what comes to it move by move, if any of it gets glue."""
    moved = [tuple(move.pieces) for move in step.moves]
    carried = {label for group in moved for label in group}
    rest = tuple(each for each in (*step.standing, *step.added) if each not in carried)
    for group in (rest, *moved):
        mine = tuple(each for each in coats if each.piece.label in group)
        if mine:
            yield Thing(tuple(each for each in assembled.pieces if each.label in group), mine)
