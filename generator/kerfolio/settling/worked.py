"""What work by hand names: a part or a piece, and a side, a face or a feature of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.model.edge_treatment import BACK_FACE, SHOW_FACE
from kerfolio.settling.fastened import OUTWARD, is_meant
from kerfolio.settling.settled import SettledFeature, SettledPart

FACES = (SHOW_FACE, BACK_FACE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Worked:
    """A part with the pieces that are meant, and what of them: ``side``, ``face`` or ``features``.

    Without any of these the whole piece is meant.
    """

    part: SettledPart
    pieces: tuple[str, ...]
    side: str = ""
    face: str = ""
    features: tuple[SettledFeature, ...] = ()


def worked_on(name: str, parts: Sequence[SettledPart]) -> Worked | None:
    """Return what a name means, None where it means nothing.

    ``handle`` is every piece of that part, ``side.left`` one of them; ``side.left.top`` a side of
    it, ``top.show`` a face, ``side.left.rail-slot`` a feature with its copies. A feature comes
    before a side of its name.
    """
    for part, owner, pieces in owners(parts):
        if name == owner:
            return Worked(part=part, pieces=pieces)
    for part, owner, pieces in owners(parts):
        if not name.startswith(f"{owner}."):
            continue
        rest = name[len(owner) + 1 :]
        features = tuple(each for each in part.features if is_meant(each.name, rest))
        if features:
            return Worked(part=part, pieces=pieces, features=features)
        if rest in OUTWARD:
            return Worked(part=part, pieces=pieces, side=rest)
        if rest in FACES:
            return Worked(part=part, pieces=pieces, face=rest)
    return None


def owners(parts: Sequence[SettledPart]) -> Iterator[tuple[SettledPart, str, tuple[str, ...]]]:
    """Yield each piece and each part by its name, with the pieces that it means."""
    for part in parts:
        labels = tuple(each.label for each in part.pieces)
        yield from ((part, label, (label,)) for label in labels)
        if part.name not in labels and labels:
            yield part, part.name, labels


def names_worked_on(parts: Sequence[SettledPart]) -> tuple[str, ...]:
    """Return all that may be named: pieces, parts, and what each has."""
    return tuple(
        name
        for part, owner, _ in owners(parts)
        for name in (
            owner,
            *(f"{owner}.{each.name}" for each in part.features),
            *(f"{owner}.{each}" for each in (*OUTWARD, *FACES)),
        )
    )
