"""The things a settled plan makes: each of them by itself, and the set of all with its counts."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.model.plan import Assembly
from kerfolio.settling.settled import SettledPart, SettledPiece, SettledPlan


def one_of(settled: SettledPlan, assembly: Assembly) -> SettledPlan:
    """Return one of the things a plan makes as a plan of its own; a plan of one thing is that.

    Boards, and hardware that no step uses, belong to all that it makes and to none of the things.
    """
    if not settled.plan.is_set:
        return settled
    alone = replace(assembly, count=1)
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
        boards=(),
    )
    parts = (_owned(part, assembly) for part in settled.parts)
    return replace(
        settled,
        plan=stated,
        parts=tuple(part for part in parts if part.pieces),
        boards=(),
        joints=tuple(each for each in settled.joints if each.stated in alone.joints),
    )


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
