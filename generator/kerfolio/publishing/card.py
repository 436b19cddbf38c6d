"""A settings card written where the maker wants it."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from kerfolio.disk.put import put
from kerfolio.model.workshop import Workshop
from kerfolio.paper.settings_card import settings_card
from kerfolio.trials.best import Answer


def write_card(target: Path, found: Sequence[Answer], workshop: Workshop) -> int:
    """Write a page for each answer that has cuts behind it; return how many, none for 0.

    On the workshop's paper, in its language. Raises DiskError when the disk refuses.
    """
    answers = [each for each in found if each.cuts]
    paper = workshop.stock.paper(workshop.identity.paper)
    if answers and paper:
        put(target, settings_card(answers, workshop.identity, paper))
    return len(answers)
