"""The page after the test print: what to know before a part is sawn by hand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.hand_views import lines_view, offcut_view
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.edition.by_hand import ByHand, Verdict
from kerfolio.paper.band import (
    Band,
    Bands,
    beside,
    bookmarked,
    fresh,
    indented,
    kept,
    marked,
    paragraph,
    spaced,
)
from kerfolio.paper.beside_tiles import TEXT
from kerfolio.paper.grid import Grid
from kerfolio.paper.running_text import plain
from kerfolio.paper.section import hung
from kerfolio.paper.template_title import Paged, Titled
from kerfolio.paper.type import SECTION
from kerfolio.settling.sawn_joint import TEST_JOINT
from kerfolio.writing.page import Replay, Role, Run

_SPACE = 5.0
_GAP = 6.0
_LEADING = 9.0

_LINES = ("edge", "drill", "hole", "bars")


def before_sawing(parts: Sequence[tuple[Titled, Paged]], hand: ByHand | None, grid: Grid) -> Bands:
    """Return what to know, on a new page; ``hand`` says whether the plan can be cut by hand."""
    reader = parts[0][0].reader
    words = say(reader, "sawing-title")
    title = paragraph((Run(words, SECTION),), grid.width, _LEADING, role=Role.TITLE)
    bands: list[Band] = [*kept(bookmarked(title, words), with_next=True)]
    lines = [
        f"{number}  {say(reader, f'sawing-line-{each}')}" for number, each in enumerate(_LINES, 1)
    ]
    bands += _told(say(reader, "sawing-lines"), _pictured(lines_view(reader), lines, grid), grid)
    own = (say(reader, "sawing-offcut"),)
    bands += _told(say(reader, "sawing-own"), _pictured(offcut_view(reader), own, grid), grid)
    if any(titled.name.startswith(TEST_JOINT) for titled, _ in parts):
        first = plain(say(reader, "sawing-first"), grid.main, TEXT)
        bands += _told(say(reader, "sawing-test-joint"), first, grid)
    if hand is not None:
        for head, text in _judged(hand, reader):
            bands += _told(head, plain(text, grid.main, TEXT), grid)
    return fresh(bands)


def _told(head: str, body: Bands, grid: Grid) -> Bands:
    return spaced(hung(head, body, grid), _SPACE)


def _pictured(drawing: Drawing, texts: Sequence[str], grid: Grid) -> Bands:
    """Return paragraphs with a picture at their left."""
    picture = Replay(x=0.0, y=-drawing.height, drawing=drawing, still=True)
    left = marked(drawing.height, (picture,), Role.FIGURE, drawing.description)
    room = grid.main - drawing.width - _GAP
    words: list[Band] = []
    for text in texts:
        words += spaced(plain(text, room, TEXT), 1.4)
    return beside((left,), indented(words, drawing.width + _GAP))


def _judged(hand: ByHand, reader: Reader) -> Iterator[tuple[str, str]]:
    """Yield what is told of the plan; what only has to be known is told of the lines already."""
    yield say(reader, "sawing-by-hand"), f"{hand.words} {hand.effort}"
    told = (each for each in hand.reasons if each.weighs is not Verdict.YES)
    yield from ((each.head, each.text) for each in told)
