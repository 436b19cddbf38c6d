"""The page after the test print: what to know before a part is sawn by hand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.edition.by_hand import ByHand
from kerfolio.paper.band import Band, Bands, bookmarked, fresh, kept, paragraph, spaced
from kerfolio.paper.beside_tiles import TEXT
from kerfolio.paper.grid import Grid
from kerfolio.paper.running_text import plain
from kerfolio.paper.section import hung
from kerfolio.paper.template_title import Paged, Titled
from kerfolio.paper.type import SECTION
from kerfolio.settling.sawn_joint import TEST_JOINT
from kerfolio.writing.page import Role, Run

_TITLE = "Before you saw"
_SPACE = 5.0
_LEADING = 9.0

_SAW_FIRST = (
    "Saw the test joint first, twice, from an offcut of the very sheet and with the saw you will "
    "use: one must go into the other with the push of a hand. Too tight: take a hair more of the "
    "line; too loose: leave it standing. Saw it again until it goes, then saw the parts so."
)


def before_sawing(parts: Sequence[tuple[Titled, Paged]], hand: ByHand | None, grid: Grid) -> Bands:
    """Return what to know, on a new page; ``hand`` says whether the plan can be cut by hand."""
    title = paragraph((Run(_TITLE, SECTION),), grid.width, _LEADING, role=Role.TITLE)
    bands: list[Band] = [*kept(bookmarked(title, _TITLE), with_next=True)]
    if hand is not None:
        for head, text in _judged(hand):
            bands += spaced(hung(head, plain(text, grid.main, TEXT), grid), _SPACE)
    if any(titled.name.startswith(TEST_JOINT) for titled, _ in parts):
        bands += spaced(hung("Test joint", plain(_SAW_FIRST, grid.main, TEXT), grid), _SPACE)
    return fresh(bands)


def _judged(hand: ByHand) -> Iterator[tuple[str, str]]:
    yield "By hand?", f"{hand.words} {hand.effort}"
    yield from ((each.head, each.text) for each in hand.reasons)
