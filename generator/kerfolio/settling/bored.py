"""What a step bores by hand: the bores that it names, by the parts that they are in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.model.feature_kind import BORE
from kerfolio.model.plan import Step
from kerfolio.settling.fastened import is_meant
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Bored:
    """A part with the bores that a step makes in it, and the pieces that get them."""

    part: SettledPart
    bores: tuple[SettledFeature, ...]
    pieces: tuple[str, ...]


def bores_of_part(part: SettledPart) -> tuple[SettledFeature, ...]:
    """Return the bores into the edges of a part."""
    return tuple(each for each in part.features if each.kind is BORE)


def bored_in(step: Step, settled: SettledPlan) -> tuple[Bored, ...]:
    """Return what a step bores, part by part in the order in which it names them.

    ``rail.left-bore`` names that of every rail, ``rail.front.left-bore`` that of one piece.
    """
    found: dict[tuple[str, tuple[str, ...]], list[SettledFeature]] = {}
    parts = {part.name: part for part in settled.parts}
    for name in step.bores:
        for part, pieces, bore in bores_meant(name.name, settled.parts):
            bores = found.setdefault((part.name, pieces), [])
            if bore not in bores:
                bores.append(bore)
    return tuple(
        Bored(part=parts[part], bores=tuple(bores), pieces=pieces)
        for (part, pieces), bores in found.items()
    )


def bores_meant(
    name: str, parts: Sequence[SettledPart]
) -> Iterator[tuple[SettledPart, tuple[str, ...], SettledFeature]]:
    """Yield the bores that a name means, each with its part and the pieces that have it."""
    for part in parts:
        labels = tuple(each.label for each in part.pieces)
        for owner, pieces in ((part.name, labels), *((each, (each,)) for each in labels)):
            if not name.startswith(f"{owner}.") or not pieces:
                continue
            wanted = name[len(owner) + 1 :]
            meant = [each for each in bores_of_part(part) if is_meant(each.name, wanted)]
            yield from ((part, pieces, each) for each in meant)
            if meant:
                break
