"""What the two ends of a joint mean: pieces of the settled plan and features of theirs."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from kerfolio.basis.names import split_feature
from kerfolio.settling.fastened import OUTWARD, is_meant
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class End:
    """One end of a joint: the piece, its part, and the features named, in the plan's order.

    ``side`` is the side of the part where the end names one (``shelf.left``).
    """

    piece: str
    part: SettledPart
    features: tuple[SettledFeature, ...] = ()
    side: str = ""

    def name(self, index: int) -> str:
        """Return what the feature of that index is called in a remark."""
        if self.features:
            return f"{self.piece}.{self.features[index].name}"
        return f"{self.piece}.{self.side}" if self.side else self.piece


SIDES = tuple(OUTWARD)


def pieces_of(settled: SettledPlan) -> dict[str, SettledPart]:
    """Return the part of every piece, by the piece's label."""
    return {piece.label: part for part in settled.parts for piece in part.pieces}


def end_of(name: str, pieces: Mapping[str, SettledPart]) -> End | None:
    """Return what a joint's end means, None when there is no such piece or feature.

    ``rail.left-tabs`` means all of ``left-tabs.1``, ``left-tabs.2`` ... where there are several.
    """
    if name in pieces:
        return End(piece=name, part=pieces[name])
    piece, wanted = split_feature(name, pieces)
    if not piece:
        return None
    part = pieces[piece]
    found = tuple(each for each in part.features if is_meant(each.name, wanted))
    if found:
        return End(piece=piece, part=part, features=found)
    return End(piece=piece, part=part, side=wanted) if wanted in SIDES else None
