"""The page before a part's tiles: the whole in small, and how the tiles lie on it."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.figured import joined
from kerfolio.basis.lengths import length_in
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.vocabulary import Ink
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Band, Bands, bookmarked, paragraph, spaced, total
from kerfolio.paper.beside_tiles import TEXT, figured_lines, template_grid, template_pages
from kerfolio.paper.check_length import SMALLEST
from kerfolio.paper.frame import frame
from kerfolio.paper.grid import Grid
from kerfolio.paper.places import places_bands
from kerfolio.paper.running_text import plain
from kerfolio.paper.template_title import Paged, Titled
from kerfolio.paper.tiling import OVERLAP, Size, Spot, Tiling, tile_name
from kerfolio.paper.type import CAPS_LEADING, SECTION, caps
from kerfolio.writing.page import Mark, Page, Panel, Passage, Replay, Role, Run, Text
from kerfolio.writing.typeface import Face, Style

_GAP = 7.0
_LEADING = 9.0
_FRAME = 0.13
_LEAST_MAP = 110.0
"""What the map has at least, mm high; a list of places takes what is over."""


def map_page(titled: Titled, tiling: Tiling, paper: PaperStock, paged: Paged, pages: int) -> Page:
    """Return the page that tells how a part's tiles lie; ``paged`` are that part's own pages."""
    grid, reader = template_grid(paper), titled.reader
    words = (*_title(titled, grid), *spaced(_laying(tiling, paged, grid, reader), _GAP))
    left = grid.height - total(words) - _GAP
    places = spaced(places_bands(titled.places, grid, left - _GAP - _LEAST_MAP, reader), _GAP)
    room = (grid.width, left - (total(places) + _GAP if places else 0.0))
    bands = (*words, *spaced((_map(titled, tiling, room),), _GAP), *places)
    (page,) = template_pages(bands, titled, titled.part, grid, pages, before=paged.first - 1)
    return page


def _title(titled: Titled, grid: Grid) -> Bands:
    title = paragraph((Run(titled.part, SECTION),), grid.width, _LEADING, role=Role.TITLE)
    words = joined(", ", (titled.cut.capitalize(), titled.sheet, titled.overall))
    return (*bookmarked(title, titled.part), *figured_lines(words, grid.width))


def _laying(tiling: Tiling, paged: Paged, grid: Grid, reader: Reader) -> Bands:
    blank = len(tiling.left_out)
    words = (
        say(
            reader,
            "tiles-on-pages",
            tiles=len(tiling.printed),
            first=paged.first + 1,
            last=paged.last,
        ),
        *([say(reader, "tiles-blank", blank=blank)] if blank else []),
        say(reader, "tiles-laying", overlap=length_in(OVERLAP, reader)),
    )
    head = paragraph((caps(say(reader, "tiles-lie")),), grid.width, CAPS_LEADING)
    return (*head, *spaced(plain(" ".join(words), grid.width, TEXT), 0.8))


def _map(titled: Titled, tiling: Tiling, room: Size) -> Band:
    """Return the whole part in small under the frames of its tiles."""
    left, bottom, right, top = tiling.covered
    scale = min(room[0] / (right - left), room[1] / (top - bottom), 1.0)
    at = ((room[0] - (right + left) * scale) / 2, -top * scale)
    marks = [mark for spot in tiling.spots for mark in _framed(tiling, spot, at, scale)]
    replay = Replay(x=at[0], y=at[1], drawing=titled.drawing, once=True, scale=scale)
    names = ", ".join(map(tile_name, tiling.printed))
    alt = say(titled.reader, "tiles-side-by-side", tiles=names)
    figure = Passage(marks=(replay, *marks), role=Role.FIGURE, alt=alt)
    return Band(height=(top - bottom) * scale, passages=(figure,))


def _framed(tiling: Tiling, spot: Spot, at: tuple[float, float], scale: float) -> Iterator[Mark]:
    """Yield a tile's frame and name, on a grey ground where it is not printed."""
    tile = tiling.tile(spot)
    x, y = at[0] + tile.left * scale, at[1] + tile.bottom * scale
    wide, high = (side * scale for side in tiling.window)
    shown = spot not in tiling.left_out
    if not shown:
        yield Panel(x=x, y=y, width=wide, height=high, ink=Ink.WASTE)
    yield from frame((x, y), (wide, high), _FRAME, Ink.SOFT)
    size = max(SMALLEST, min(13.0, high * 0.9))
    style = Style(face=Face.SANS_STRONG, points=size, ink=Ink.ACCENT if shown else Ink.FAINT)
    yield Text(x=x + 2.2, y=y + high - 0.3 * size - 1.4, runs=(Run(tile_name(spot), style),))
