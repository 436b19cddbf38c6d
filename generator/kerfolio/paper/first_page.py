"""The page to print alone before a template: is the print true, and how do the tiles lie?"""

from __future__ import annotations

from collections.abc import Sequence

from kerfolio.basis.lengths import inch_text, length_in, mm_text
from kerfolio.basis.said import ByUnit, said
from kerfolio.basis.thickness import precise_in
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink
from kerfolio.model.stock import PaperStock
from kerfolio.paper.band import Band, Bands, beside, indented, paragraph, shifted, spaced
from kerfolio.paper.check_length import check_lengths
from kerfolio.paper.grid import Grid
from kerfolio.paper.ledger import Column, table
from kerfolio.paper.running_text import plain
from kerfolio.paper.section import foot
from kerfolio.paper.template_title import Titled
from kerfolio.paper.tiling import Tile, Tiling
from kerfolio.paper.type import (
    CAPS_LEADING,
    CELL_STRONG,
    HAIR,
    NOTE,
    NOTE_LEADING,
    SECTION,
    caps,
)
from kerfolio.writing.page import Mark, Page, Panel, Passage, Replay, Role, Rule, Run, Text
from kerfolio.writing.typeface import Face, Style

SQUARES = {"mm": 100.0, "in": 101.6}
"""Side of the check square by the unit shown first, mm: 100 mm, or 4 in."""
CARD = (85.60, 53.98)
"""A bank card, mm: size ID-1 of ISO/IEC 7810 (from memory)."""

_TEXT = Style(face=Face.SERIF, points=9.6)
_MAP_HIGH = 58.0
_GAP = 8.0


def first_page(
    drawing: Drawing,
    titled: Titled,
    tiles: Tiling,
    printed: Sequence[Tile],
    paper: PaperStock,
) -> Page:
    """Return the page: check square, card gauge, what to do when one direction is off, the map."""
    grid, first = Grid(paper=paper, top=18.0, bottom=18.0), titled.first
    bands = (
        *_titles(titled, grid),
        *_checks(grid, first),
        *spaced(_remedies(tiles, grid, first), _GAP),
        *spaced(_map(drawing, tiles, printed, grid, first), _GAP),
    )
    top, passages = grid.ceiling, []
    for band in bands:
        top -= band.space
        passages += [shifted(passage, grid.side, top) for passage in band.passages]
        top -= band.height
    size = (paper.width, paper.height)
    rest = f"{titled.release} · {titled.fit} · {titled.part} · print at 100 %"
    pages = len(printed) + 1
    return Page(
        width=size[0],
        height=size[1],
        passages=(
            *passages,
            Passage(marks=check_lengths(size, first)),
            *foot(titled.title, rest, grid)(1, pages),
        ),
    )


def _titles(titled: Titled, grid: Grid) -> Bands:
    title = paragraph(
        (Run("Print this page alone first", SECTION),), grid.width, 9.0, role=Role.TITLE
    )
    words = (
        f"Template {titled.part}, for a sheet of {titled.sheet}. {titled.overall}. Print at "
        "100 %: “actual size”, without fitting to the page."
    )
    line = Rule(x=0, y=0, to_x=grid.width, to_y=0, width=HAIR * 2)
    ruled = Band(height=4.0, passages=(Passage(marks=(line,), role=Role.DECORATION),), space=2.0)
    return (*title, *spaced(plain(words, grid.width, _TEXT), 0.5), ruled)


def _checks(grid: Grid, first: str) -> Bands:
    """Return the square with, beside it, the card and what to look for."""
    x = SQUARES[first] + (14.0 if first == "in" else 9.0)  # clear of the other length's name
    room = grid.width - x
    square = _square(first)
    words = (
        *paragraph((caps("Measure the square"),), room, CAPS_LEADING),
        *spaced(plain(_MEASURE.told(first), room, _TEXT), 0.8),
        *spaced(paragraph((caps("No rule at hand?"),), room, CAPS_LEADING), 4.0),
        *spaced(plain(_CARD.told(first), room, _TEXT), 0.8),
    )
    return beside(indented(words, x), (square,))


_SIDE, _OTHER = ByUnit("100 mm", "4 in"), ByUnit("4 in", "100 mm")
_MEASURE = said(
    "Lay a steel rule along both sides. Each must be {} to within {} (common practice for "
    "cutting by hand). The marks at {} serve {} rule.",
    _SIDE,
    ByUnit("0.5 mm", "1/64 in"),
    _OTHER,
    ByUnit("an inch", "a metric"),
)
_CARD_SIZE = ByUnit("85.60 × 53.98 mm", "3.370 × 2.125 in")
_CARD = said("A bank card covers the outline in the square exactly: {}.", _CARD_SIZE)


def _box(x: float, y: float, wide: float, high: float, thick: float, ink: Ink) -> tuple[Mark, ...]:
    corners = ((x, y), (x + wide, y), (x + wide, y + high), (x, y + high))
    return tuple(
        Rule(x=a[0], y=a[1], to_x=b[0], to_y=b[1], width=thick, ink=ink)
        for a, b in zip(corners, (*corners[1:], corners[0]), strict=True)
    )


def _square(first: str) -> Band:
    square = SQUARES[first]
    left = (square - CARD[0]) / 2
    card_y = -square + 10.0
    side = (Run(_SIDE.told(first), CELL_STRONG),)
    marks: list[Mark] = [
        *_box(0, -square, square, square, 0.18, Ink.INK),
        *_box(left, card_y, *CARD, 0.18, Ink.ACCENT),
        *_ticks(first),
        Text(x=square / 2, y=-7.0, runs=side, anchor=Anchor.MIDDLE),
        Text(x=7.0, y=-square / 2, runs=side, anchor=Anchor.MIDDLE, angle=90),
        Text(
            x=square / 2,
            y=card_y + CARD[1] / 2,
            runs=(Run(f"a bank card, {_CARD_SIZE.told(first)}", NOTE),),
            anchor=Anchor.MIDDLE,
        ),
    ]
    passage = Passage(marks=tuple(marks), role=Role.FIGURE, alt=_ALT.told(first))
    return Band(height=max(SQUARES.values()), passages=(passage,))


_ALT = said("A square of {} with a card", _SIDE)


def _ticks(first: str) -> tuple[Mark, ...]:
    """Return the ends of the other length from the square's upper left corner, on both sides."""
    end = SQUARES["mm" if first == "in" else "in"]
    name = (Run(_OTHER.told(first), NOTE),)
    return (
        Rule(x=end, y=-3.0, to_x=end, to_y=0.0, width=0.13, ink=Ink.SOFT),
        Text(x=max(SQUARES.values()) + 0.8, y=-2.6, runs=name),
        Rule(x=0.0, y=-end, to_x=3.0, to_y=-end, width=0.13, ink=Ink.SOFT),
        Text(x=4.0, y=-max(SQUARES.values()) - 2.2, runs=name),
    )


_WRONG = (
    "Both sides wrong by the same: the program scaled the page; look for “fit”, “shrink” or "
    "“scale” and set 100 %. Only one side wrong: the printer feeds paper too far or not far "
    "enough. Use thicker paper, a slower setting or the straight feed, or have the roll page "
    "printed at a shop. "
)
_WRONG_TILES = said(
    "If it stays, lay the tiles by their true distance instead of by the crosses. Measure the {}"
    " at the upper and the left edge of a tile, and move each next tile in the wrong direction"
    " by the length in the table: apart when the print is short, together when it is long. ",
    _SIDE,
)
_WRONG_ALONE = said(
    "If it stays, correct the outline by hand: the part’s true size stands above, and the {} "
    "at the edges of its page show the error. ",
    _SIDE,
)


def _remedies(tiles: Tiling, grid: Grid, first: str) -> Bands:
    """Return what to do when both directions, or only one, come out wrong."""
    alone = len(tiles.tiles) == 1
    how = (_WRONG_ALONE if alone else _WRONG_TILES).told(first)
    words = f"{_WRONG} {how} Slots follow your sheet, not paper."
    if alone:
        return (
            *paragraph((caps("When only one direction is off"),), grid.width, CAPS_LEADING),
            *spaced(plain(words, grid.width, _TEXT), 0.8),
        )
    left = (grid.width - 8.0) * 0.6
    right = grid.width - 8.0 - left
    text = (
        *paragraph((caps("When only one direction is off"),), left, CAPS_LEADING),
        *spaced(plain(words, left, _TEXT), 0.8),
    )
    return beside(indented(_shifts(tiles, right, first), left + 8.0), text)


def _shifts(tiles: Tiling, measure: float, first: str) -> Bands:
    square, step = SQUARES[first], _WRONG_BY[first]
    columns = (
        Column(head=f"{_SIDE.told(first)} reads", grows=True),
        Column(head="Across", number=True),
        Column(head="Up", number=True),
    )
    rows = [
        (
            precise_in(square + times * step, first),
            *(_shift(abs(times) * step / square * each, first) for each in tiles.step),
        )
        for times in (-2, -1, 1, 2)
    ]
    words = "Shift from one tile to the next."
    return (*table(columns, rows, measure), *spaced(_small(words, measure), 1.2))


def _shift(mm: float, first: str) -> str:
    return inch_text(mm, 64) if first == "in" else mm_text(mm)


_WRONG_BY = {"mm": 0.5, "in": 25.4 / 64}
"""Steps of the table, mm."""


def _small(text: str, measure: float) -> Bands:
    return paragraph((Run(text, NOTE),), measure, NOTE_LEADING)


def _map(drawing: Drawing, tiles: Tiling, printed: Sequence[Tile], grid: Grid, first: str) -> Bands:
    """Return the whole part in small with every tile's name, beside how to lay them."""
    right = 58.0
    wide = grid.width - right - 8.0
    across = tiles.columns * tiles.step[0] + (tiles.window[0] - tiles.step[0])
    up = tiles.rows * tiles.step[1] + (tiles.window[1] - tiles.step[1])
    scale = min(wide / across, _MAP_HIGH / up)
    corner = tiles.tiles[(tiles.rows - 1) * tiles.columns]
    marks: list[Mark] = []
    for tile in tiles.tiles:
        marks += _map_tile(tiles, tile, corner, scale, up, tile in printed)
    replay = Replay(
        x=-corner.left * scale, y=-up * scale - corner.bottom * scale, drawing=drawing, scale=scale
    )
    alt = f"The tiles {', '.join(tile.name for tile in printed)} laid side by side"
    figure = Passage(marks=(replay, *marks), role=Role.FIGURE, alt=alt)
    words = (
        *paragraph((caps("How the tiles lie"),), right, CAPS_LEADING),
        *spaced(plain(_laying(tiles, printed, first), right, _TEXT), 0.8),
    )
    picture = Band(height=up * scale, passages=(figure,))
    return beside(indented(words, grid.width - right), (picture,))


def _laying(tiles: Tiling, printed: Sequence[Tile], first: str) -> str:
    count = len(printed)
    if count == 1:
        return "One page holds the whole part."
    blank = len(tiles.tiles) - count
    left_out = (
        f" {blank} without a line {'is' if blank == 1 else 'are'} grey and not printed."
        if blank
        else ""
    )
    return (
        f"{count} pages: letters from left to right, numbers from top to bottom.{left_out} Trim "
        f"one of two neighbours along the dashed line, lay cross on cross, and tape. Neighbours "
        f"share {length_in(tiles.window[0] - tiles.step[0], first)}."
    )


def _map_tile(
    tiles: Tiling, tile: Tile, corner: Tile, scale: float, up: float, shown: bool
) -> list[Mark]:
    x = (tile.left - corner.left) * scale
    y = -up * scale + (tile.bottom - corner.bottom) * scale
    wide, high = tiles.window[0] * scale, tiles.window[1] * scale
    ground: list[Mark] = []
    if not shown:
        ground = [Panel(x=x, y=y, width=wide, height=high, ink=Ink.WASTE)]
    size = max(6.0, min(11.0, high * 0.9))
    style = Style(face=Face.SANS_STRONG, points=size, ink=Ink.ACCENT if shown else Ink.FAINT)
    name = Text(x=x + 2.2, y=y + high - 0.3 * size - 1.4, runs=(Run(tile.name, style),))
    return [*ground, *_box(x, y, wide, high, 0.13, Ink.SOFT), name]
