"""The page after the test print: what to know before a part is sawn by hand."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

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

_TITLE = "Before you saw"
_SPACE = 5.0
_GAP = 6.0
_LEADING = 9.0

_LINES = (
    "1  The line is the finished edge, and its shaded side is waste: outside it round the part, "
    "inside it in slots, notches and windows. Saw in the shade, beside the line, and file to it.",
    "2  Bore the small circles first, with the drill that stands below the part: they open the "
    "corners of tabs and slots.",
    "3  A cross is the middle of a hole. Beside it stand its drills, in the order to bore in, and "
    "how deep each goes. What is tinted is not cut through: its depth stands at it.",
    "4  Measure from the two edges with the heavy bars; the map of a part lists what lies where.",
)
_OWN = (
    "A slot is drawn for the sheet named on page 1, with its play. For the very sheet you have, "
    "stand an offcut on its edge on the slot, one face on the line that is nearer to a bar, and "
    "mark along the other face: that is where the other line belongs. Saw within both, and file "
    "until the offcut goes in with the push of a hand. Notches are marked alike."
)
_SAW_FIRST = (
    "Saw the test joint first, twice, from an offcut of the very sheet and with the saw you will "
    "use: one must go into the other with the push of a hand. Too tight: take a hair more of the "
    "line; too loose: leave it standing. Saw it again until it goes, then saw the parts so."
)


def before_sawing(parts: Sequence[tuple[Titled, Paged]], hand: ByHand | None, grid: Grid) -> Bands:
    """Return what to know, on a new page; ``hand`` says whether the plan can be cut by hand."""
    title = paragraph((Run(_TITLE, SECTION),), grid.width, _LEADING, role=Role.TITLE)
    bands: list[Band] = [*kept(bookmarked(title, _TITLE), with_next=True)]
    bands += _told("The lines", _pictured(lines_view(), _LINES, grid), grid)
    bands += _told("Your own sheet", _pictured(offcut_view(), (_OWN,), grid), grid)
    if any(titled.name.startswith(TEST_JOINT) for titled, _ in parts):
        bands += _told("Test joint", plain(_SAW_FIRST, grid.main, TEXT), grid)
    if hand is not None:
        for head, text in _judged(hand):
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


def _judged(hand: ByHand) -> Iterator[tuple[str, str]]:
    """Yield what is told of the plan; what only has to be known is told of the lines already."""
    yield "By hand?", f"{hand.words} {hand.effort}"
    told = (each for each in hand.reasons if each.weighs is not Verdict.YES)
    yield from ((each.head, each.text) for each in told)
