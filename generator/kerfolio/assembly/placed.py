"""All fastenings and boards of a plan put together, placed once for whoever asks."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.boards import PosedBoard, posed_boards
from kerfolio.assembly.fastened import PosedFastening, posed_fastenings
from kerfolio.settling.settled import SettledPlan


@dataclass(frozen=True, slots=True)
class Placed:
    """The fastenings of a plan in their places, and its boards."""

    fastenings: tuple[PosedFastening, ...]
    boards: tuple[PosedBoard, ...]


def placed_in(settled: SettledPlan, assembled: Assembled) -> Placed:
    """Return what of a plan's fastenings and boards has a place."""
    fastenings = posed_fastenings(settled, assembled)
    return Placed(fastenings, posed_boards(settled, assembled, fastenings))
