"""A page with a part, or a tile of it, at full size: how to lay it, what it is, how true it is."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from kerfolio.basis.figured import joined, widest
from kerfolio.basis.saying import say
from kerfolio.drawing.vocabulary import Ink
from kerfolio.paper.check_length import SMALLEST, check_lengths
from kerfolio.paper.frame import frame
from kerfolio.paper.template_title import Titled
from kerfolio.paper.tiling import (
    EDGE,
    MARGIN,
    OVERLAP,
    Size,
    Spot,
    Tile,
    Tiling,
    full_step,
    tile_name,
)
from kerfolio.writing.page import Mark, Page, Passage, Replay, Role, Rule, Run, Text
from kerfolio.writing.setting import shortened
from kerfolio.writing.typeface import Face, Style, width_of

_WORDS = Style(face=Face.SANS, points=SMALLEST)
_BESIDE_LENGTHS = 115.0
"""mm taken by the check lengths."""
_BASE = EDGE + 1.4
"""Height of the words' baseline over the lower edge of the paper, mm."""
_TILE = Style(face=Face.SANS_STRONG, points=20, ink=Ink.FAINT)
_JOINT = Style(face=Face.SANS, points=SMALLEST, ink=Ink.SOFT)
_CROSS = 4.0
_CROSSES = (0.2, 0.7)
"""Where crosses stand along a seam, as shares of a full step."""
_BESIDE, _CAPITALS = 1.2, 1.9
"""How far lettering stands from a seam, and how high it is, mm."""
_SMALLEST = (200.0, 130.0)
"""Room for the check lengths and the words, mm."""


def roll_page(titled: Titled, where: str) -> Page:
    """Return one page as large as the part, for a roll; ``where`` tells which page it is."""
    size = tuple(
        max(side + 2 * MARGIN, least) for side, least in zip(titled.paper, _SMALLEST, strict=True)
    )
    x, y = ((room - side) / 2 for room, side in zip(size, titled.paper, strict=True))
    body = (Replay(x=x, y=y, drawing=titled.drawing, once=True),)
    whole = f"{say(titled.reader, 'tiles-whole')} · {where}"
    return _page(titled, body, (size[0], size[1]), ("", whole), (titled.part, 0))


def tile_page(titled: Titled, tiling: Tiling, spot: Spot, where: str) -> Page:
    """Return the page of one tile; ``where`` tells which page it is."""
    tile = tiling.tile(spot)
    wide, high = tiling.window
    replay = Replay(
        x=MARGIN - tile.left,
        y=MARGIN - tile.bottom,
        drawing=titled.drawing,
        once=True,
        clip=(MARGIN, MARGIN, MARGIN + wide, MARGIN + high),
    )
    reader = titled.reader
    place = say(
        reader,
        "tiles-place",
        tile=tile.name,
        row=spot[1] + 1,
        rows=tiling.rows,
        column=spot[0] + 1,
        columns=tiling.columns,
    )
    alone = len(tiling.printed) == 1
    bookmark = (titled.part, 0) if alone else (say(reader, "tiles-tile", tile=tile.name), 1)
    words = ("" if alone else tile.name, f"{place} · {where}")
    return _page(titled, (replay, *_joints(tiling, tile)), tiling.page, words, bookmark)


def _page(
    titled: Titled,
    body: Iterable[Mark],
    size: Size,
    named: tuple[str, str],
    bookmark: tuple[str, int],
) -> Page:
    name, where = named
    large = Text(
        x=MARGIN + 2.5,
        y=size[1] - MARGIN - 9.0,
        runs=(Run(f"{titled.mark} {name}".rstrip(), _TILE),),
    )
    entry, level = bookmark
    alt = say(titled.reader, "tiles-full-size", part=titled.part, where=where)
    head = Passage(marks=(large,), role=Role.DECORATION, bookmark=entry, level=level)
    passages = (
        Passage(marks=tuple(body), role=Role.FIGURE, alt=alt),
        Passage(marks=_window(size), role=Role.DECORATION, once=True),
        head,
        Passage(marks=(_words(titled, where, size), _overall(titled, size))),
        Passage(marks=check_lengths(size, titled.reader), once=True),
    )  # the wood of the drawing hides what it stands on
    return Page(width=size[0], height=size[1], passages=passages)


def _window(size: Size) -> tuple[Rule, ...]:
    """Return the frame within which the drawing lies."""
    wide, high = (side - 2 * MARGIN for side in size)
    return frame((MARGIN, MARGIN), (wide, high), 0.1, Ink.FAINT)


def _words(titled: Titled, where: str, size: Size) -> Text:
    """Return the line under the drawing; a long title is shortened, the rest is not."""
    print_at = say(titled.reader, "tiles-print-at")
    told = (titled.release, titled.thickness, titled.part, where, print_at)
    rest, room = joined(" · ", told), size[0] - 2 * MARGIN
    needed = width_of(widest(rest), _WORDS)
    title = shortened(titled.title, _WORDS, max(room - needed, room / 4))
    share = min(1.0, room / (width_of(title, _WORDS) + needed))
    style = replace(_WORDS, points=_WORDS.points * share)
    return Text(x=MARGIN, y=_BASE, runs=(Run(joined("", (title, rest)), style),))


def _overall(titled: Titled, size: Size) -> Text:
    """Return the part's true size, beside the check lengths."""
    y = size[1] - EDGE - 2.4
    return Text(x=MARGIN + _BESIDE_LENGTHS, y=y, runs=(Run(titled.overall, _WORDS),))


def _joints(tiling: Tiling, tile: Tile) -> Iterator[Mark]:
    """Yield, on every side where a tile follows, the seam and its crosses."""
    (wide, high), half = tiling.window, OVERLAP / 2
    step = full_step(tiling.page)
    for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        other = (tile.column + dx, tile.row + dy)
        if other not in tiling.printed:
            continue
        name = " / ".join(sorted((tile.name, tile_name(other))))
        next_ = tiling.tile(other)
        if dx:
            x = MARGIN + half + (next_.left - tile.left if dx > 0 else 0.0)
            yield _middle_line(x, MARGIN, x, MARGIN + high)
            spots = [(x, MARGIN + OVERLAP + share * step[1]) for share in _CROSSES]
        else:
            y = MARGIN + half + (next_.bottom - tile.bottom if dy < 0 else 0.0)
            yield _middle_line(MARGIN, y, MARGIN + wide, y)
            spots = [(MARGIN + OVERLAP + share * step[0], y) for share in _CROSSES]
        for spot in spots:
            yield from _cross(spot, name, (dx, dy))


def _middle_line(x: float, y: float, to_x: float, to_y: float) -> Rule:
    return Rule(x=x, y=y, to_x=to_x, to_y=to_y, width=0.1, ink=Ink.SOFT, dash=(1.5, 1.5))


def _cross(spot: tuple[float, float], name: str, way: tuple[int, int]) -> Iterator[Mark]:
    """Yield a cross, and the names of the two tiles along the seam on the side that is cut off."""
    x, y = spot
    half, (dx, dy) = _CROSS / 2, way
    yield Rule(x=x - half, y=y, to_x=x + half, to_y=y, width=0.18, ink=Ink.ACCENT)
    yield Rule(x=x, y=y - half, to_x=x, to_y=y + half, width=0.18, ink=Ink.ACCENT)
    if dx:
        beside = x + (_BESIDE + _CAPITALS if dx > 0 else -_BESIDE)
        yield Text(x=beside, y=y + half + 1.0, runs=(Run(name, _JOINT),), angle=90.0)
    else:
        beside = y + (_BESIDE if dy < 0 else -_BESIDE - _CAPITALS)
        yield Text(x=x + half + 1.0, y=beside, runs=(Run(name, _JOINT),))
