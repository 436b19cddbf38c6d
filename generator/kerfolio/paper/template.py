"""Full-size templates: a part on tiles of paper, or whole on a roll, for cutting by hand."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink
from kerfolio.drawing.window import shows
from kerfolio.model.stock import PaperStock
from kerfolio.model.workshop import Identity
from kerfolio.paper.check_length import check_lengths
from kerfolio.paper.first_page import first_page
from kerfolio.paper.template_title import Titled
from kerfolio.paper.tiling import MARGIN, OVERLAP, Tile, Tiling, letters, tiling
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.writing.page import About, Mark, Page, Passage, Replay, Role, Rule, Run, Text
from kerfolio.writing.pdf import pdf_bytes
from kerfolio.writing.setting import shortened
from kerfolio.writing.typeface import Face, Style, width_of

_WORDS = Style(face=Face.SANS, points=6.2)
_WORDS_STRONG = Style(face=Face.SANS_STRONG, points=6.2)
_TILE = Style(face=Face.SANS_STRONG, points=20, ink=Ink.FAINT)
_JOINT = Style(face=Face.SANS, points=5.4, ink=Ink.SOFT)
_CROSS = 4.0
_WIDE_ENOUGH = 200.0
_BESIDE_LENGTHS = 112.0  # mm taken by the check lengths to the left of the words


def template_pdf(
    drawing: Drawing,
    settled: SettledPlan,
    part: SettledPart,
    paper: PaperStock | None,
    identity: Identity,
) -> bytes:
    """Return a part's template, which ``drawing`` shows at full size, as a PDF.

    On a paper: a first page to print alone, then tiles with 10 mm margins that overlap by 10 mm;
    tiles without a line are left out where the others still hang together. Without a paper: one
    page as large as the part, for a roll.
    """
    titled = Titled.of(settled, part, identity.unit_for(settled.plan))
    pages = (
        (_roll_page(drawing, titled),) if paper is None else _tiled_pages(drawing, titled, paper)
    )
    return pdf_bytes(_about(settled, titled, identity), pages)


def _about(settled: SettledPlan, titled: Titled, identity: Identity) -> About:
    plan = settled.plan
    return About(
        title=f"{plan.title}: template {titled.part}, {titled.fit}",
        author=identity.maker,
        subject=f"Full-size template for {plan.title}, release {plan.version}",
        language=identity.language,
        date=plan.released,
        full_size=True,
    )


def _roll_page(drawing: Drawing, titled: Titled) -> Page:
    size = (max(drawing.width + 2 * MARGIN, _WIDE_ENOUGH), max(drawing.height + 2 * MARGIN, 125.0))
    left = (size[0] - drawing.width) / 2
    replay = Replay(x=left, y=(size[1] - drawing.height) / 2, drawing=drawing)
    words = _words(titled, "whole", size)
    passages = _sheet_passages((replay,), words, size, "", titled.first)
    return Page(width=size[0], height=size[1], passages=passages)


def _tiled_pages(drawing: Drawing, titled: Titled, paper: PaperStock) -> tuple[Page, ...]:
    tiles = tiling(drawing.width, drawing.height, paper)
    printed = printed_tiles(drawing, tiles)
    pages = [_tile_page(drawing, titled, tiles, tile, printed) for tile in printed]
    return (first_page(drawing, titled, tiles, printed, paper), *pages)


def printed_tiles(drawing: Drawing, tiles: Tiling) -> tuple[Tile, ...]:
    """Return the tiles to print: blank ones go as long as all others keep touching, in order."""
    left, bottom = drawing.box[:2]
    kept = list(tiles.tiles)
    for tile in tiles.tiles:
        x0, y0, x1, y1 = tiles.box(tile)
        window = (x0 + left, y0 + bottom, x1 + left, y1 + bottom)
        fewer = [each for each in kept if each != tile]
        if not shows(drawing, window) and _hang_together(fewer):
            kept = fewer
    return tuple(kept)


def _hang_together(tiles: list[Tile]) -> bool:
    spots = {(tile.column, tile.row) for tile in tiles}
    reached: set[tuple[int, int]] = set()
    waiting = [min(spots)] if spots else []
    while waiting:
        column, row = waiting.pop()
        reached.add((column, row))
        around = ((column + 1, row), (column - 1, row), (column, row + 1), (column, row - 1))
        waiting += [each for each in around if each in spots and each not in reached]
    return bool(spots) and reached == spots


def _tile_page(
    drawing: Drawing, titled: Titled, tiles: Tiling, tile: Tile, printed: Iterable[Tile]
) -> Page:
    size, window = tiles.page, tiles.window
    replay = Replay(
        x=MARGIN - tile.left,
        y=MARGIN - tile.bottom,
        drawing=drawing,
        clip=(MARGIN, MARGIN, MARGIN + window[0], MARGIN + window[1]),
    )
    where = (
        f"tile {tile.name}: column {letters(tile.column)} of {letters(tiles.columns - 1)}, "
        f"row {tile.row + 1} of {tiles.rows}"
    )
    words = _words(titled, where, size)
    joints = _joints(tiles, tile, {(each.column, each.row) for each in printed})
    return Page(
        width=size[0],
        height=size[1],
        passages=_sheet_passages((replay, *joints), words, size, tile.name, titled.first),
    )


def _sheet_passages(
    body: Iterable[Mark], words: Iterable[Mark], size: tuple[float, float], name: str, first: str
) -> tuple[Passage, ...]:
    frame = _frame(size)
    big = Text(x=MARGIN + 2.5, y=size[1] - MARGIN - 9.0, runs=(Run(name, _TILE),))
    return (
        Passage(marks=(*frame, *((big,) if name else ())), role=Role.DECORATION),
        Passage(marks=tuple(words), bookmark=f"Tile {name}" if name else ""),
        Passage(marks=check_lengths(size, first)),
        Passage(marks=tuple(body), role=Role.FIGURE, alt="The part at full size"),
    )


def _frame(size: tuple[float, float]) -> tuple[Rule, ...]:
    x0, y0, x1, y1 = MARGIN, MARGIN, size[0] - MARGIN, size[1] - MARGIN
    corners = ((x0, y0, x1, y0), (x1, y0, x1, y1), (x1, y1, x0, y1), (x0, y1, x0, y0))
    return tuple(Rule(x=a, y=b, to_x=c, to_y=d, width=0.1, ink=Ink.FAINT) for a, b, c, d in corners)


def _words(titled: Titled, where: str, size: tuple[float, float]) -> tuple[Mark, ...]:
    """Return the two lines at the upper right; a long title is shortened, the rest is not."""
    room = size[0] - 2 * MARGIN - _BESIDE_LENGTHS
    title = shortened(titled.title, _WORDS_STRONG, room - width_of(titled.release, _WORDS_STRONG))
    rest = " · ".join((titled.fit, titled.part, where, "print at 100 %"))
    points = _WORDS.points * min(1.0, room / width_of(rest, _WORDS))
    lines = (
        Run(f"{title}{titled.release}", _WORDS_STRONG),
        Run(rest, replace(_WORDS, points=points)),
    )
    return tuple(
        Text(x=size[0] - MARGIN, y=size[1] - away, runs=(run,), anchor=Anchor.END)
        for run, away in zip(lines, (6.0, 8.7), strict=True)
    )


def _joints(tiles: Tiling, tile: Tile, printed: set[tuple[int, int]]) -> list[Mark]:
    """Return, on every side where a tile follows, the overlap's middle line and its crosses."""
    marks: list[Mark] = []
    wide, high = tiles.window
    for dx, dy in ((1, 0), (-1, 0), (0, 1), (0, -1)):
        other = (tile.column + dx, tile.row + dy)
        if other not in printed:
            continue
        name = " / ".join(sorted((tile.name, f"{letters(other[0])}{other[1] + 1}")))
        if dx:
            x = MARGIN + (wide - OVERLAP / 2 if dx > 0 else OVERLAP / 2)
            marks.append(_middle_line(x, MARGIN, x, MARGIN + high))
            spots = [(x, MARGIN + OVERLAP + share * tiles.step[1]) for share in (0.2, 0.7)]
        else:
            y = MARGIN + (OVERLAP / 2 if dy > 0 else high - OVERLAP / 2)
            marks.append(_middle_line(MARGIN, y, MARGIN + wide, y))
            spots = [(MARGIN + OVERLAP + share * tiles.step[0], y) for share in (0.2, 0.7)]
        for spot in spots:
            marks += _cross(spot, name, Anchor.END if dx > 0 else Anchor.START)
    return marks


def _middle_line(x: float, y: float, to_x: float, to_y: float) -> Rule:
    return Rule(x=x, y=y, to_x=to_x, to_y=to_y, width=0.1, ink=Ink.SOFT, dash=(1.5, 1.5))


def _cross(spot: tuple[float, float], name: str, side: Anchor) -> list[Mark]:
    """Return a cross with the names of the two tiles beside it, inside the window."""
    x, y = spot
    half = _CROSS / 2
    away = -0.8 if side is Anchor.END else 0.8
    return [
        Rule(x=x - half, y=y, to_x=x + half, to_y=y, width=0.18, ink=Ink.ACCENT),
        Rule(x=x, y=y - half, to_x=x, to_y=y + half, width=0.18, ink=Ink.ACCENT),
        Text(x=x + away, y=y + 0.8, runs=(Run(name, _JOINT),), anchor=side),
    ]
