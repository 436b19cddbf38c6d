"""The things a settled plan makes: each of them by itself, and the set of all with its counts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from kerfolio.model.plan import Assembly
from kerfolio.settling.settled import SettledBoard, SettledPart, SettledPiece, SettledPlan


def one_of(settled: SettledPlan, assembly: Assembly) -> SettledPlan:
    """Return one of the things a plan makes as a plan of its own; a plan of one thing is that.

    Hardware that no step uses belongs to all that it makes and to none of the things; so does a
    board that lies on no piece and that no fastening goes through.
    """
    if not settled.plan.is_set:
        return settled
    alone = replace(assembly, count=1)
    boards = tuple(_boards_of(settled, assembly))
    stated = replace(
        settled.plan,
        title=assembly.title or settled.plan.title,
        assemblies=(alone,),
        joints=alone.joints,
        fastenings=alone.fastenings,
        standing=alone.standing,
        steps=alone.steps,
        hardware=(),
        fastened=(),
        boards=tuple(each.use for each in boards),
    )
    parts = (_owned(part, assembly) for part in settled.parts)
    return replace(
        settled,
        plan=stated,
        parts=tuple(part for part in parts if part.pieces),
        boards=boards,
        joints=tuple(each for each in settled.joints if each.stated in alone.joints),
    )


def _boards_of(settled: SettledPlan, assembly: Assembly) -> Iterator[SettledBoard]:
    """Yield the boards in one of a thing, each as often as it is in one.

    Those are shared evenly by all things that have it; of what cannot be, nothing is known.
    """
    for board in settled.boards:
        having = [each for each in settled.plan.assemblies if _has(each, board)]
        things = sum(each.count for each in having)
        if assembly in having and board.use.count % things == 0:
            yield replace(board, use=replace(board.use, count=board.use.count // things))


def _has(assembly: Assembly, board: SettledBoard) -> bool:
    """Tell whether a board lies on a piece of a thing, or is in one of its fastenings."""
    ends = (end.name for each in assembly.fastenings for end in each.joins)
    lies = any(assembly.owns(each.piece) for each in board.places)
    return lies or board.use.name in ends


def set_of(settled: SettledPlan) -> SettledPlan:
    """Return a plan with the pieces of everything it makes; those of twins are told apart.

    ``leg.left`` of the second of two is ``2/leg.left`` and bears the mark ``2/A1``.
    """
    if all(each.count == 1 for each in settled.plan.made):
        return settled
    return replace(settled, parts=tuple(_counted(part, settled) for part in settled.parts))


def labels_made(label: str, assembly: Assembly) -> tuple[str, ...]:
    """Return the labels of a piece in the set, one for each time its assembly is made."""
    return tuple(_numbered(label, number, assembly) for number in range(1, assembly.count + 1))


def _owned(part: SettledPart, assembly: Assembly) -> SettledPart:
    pieces = tuple(piece for piece in part.pieces if assembly.owns(piece.label))
    return replace(part, pieces=pieces)


def _counted(part: SettledPart, settled: SettledPlan) -> SettledPart:
    pieces = tuple(
        SettledPiece(
            label=_numbered(piece.label, number, assembly),
            mark=_numbered(piece.mark, number, assembly),
        )
        for assembly in settled.plan.made
        for number in range(1, assembly.count + 1)
        for piece in part.pieces
        if assembly.owns(piece.label)
    )
    return replace(part, pieces=pieces)


def _numbered(name: str, number: int, assembly: Assembly) -> str:
    return name if assembly.count == 1 else f"{number}/{name}"
