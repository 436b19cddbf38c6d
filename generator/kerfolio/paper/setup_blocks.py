"""What setup sheets are made of: facts in a row, cutters with their work, cautions."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence

from kerfolio.basis.figured import together
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.layer import DASHES, INKS
from kerfolio.drawing.vocabulary import Anchor, Ink
from kerfolio.edition.setup import setup_cautions, setup_defer
from kerfolio.edition.setup_runs import RunLines, WorkLine
from kerfolio.paper.band import Band, Bands, beside, indented, paragraph, ruled, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.setup_type import SMALL, SMALL_SOFT, SetupType, leading
from kerfolio.paper.type import CAPS_LEADING, CAPS_LOUD, HAIR, caps
from kerfolio.writing.page import Mark, Passage, Role, Rule, Run, Text
from kerfolio.writing.setting import width
from kerfolio.writing.typeface import Style

SPACE = 3.9
"""Above every block, mm."""
_NEXT = 2.2
"""Above a cutter that follows another, mm."""
_GAP = 4.5
_SWATCH = (4.0, 1.2)
_SWATCH_GAP = 2.0


def hung(head: str, body: Bands, grid: Grid, first: Style) -> Bands:
    """Return a block: bands in the main column, a head on the baseline of their first line.

    ``first`` is the style of that line. Nothing for no bands.
    """
    if not body:
        return ()
    lowered = Band(height=max(0.0, 0.62 * (leading(first) - CAPS_LEADING)))
    label = (lowered, *paragraph((caps(head),), grid.label, CAPS_LEADING, role=Role.HEADING))
    return spaced(beside(label, indented(body, grid.main_x)), SPACE)


def lines(texts: Iterable[str], style: Style, measure: float) -> Bands:
    """Return plain lines, each as a paragraph."""
    set_lines = (paragraph((Run(text, style),), measure, leading(style)) for text in texts)
    return tuple(band for each in set_lines for band in each)


def facts(pairs: Sequence[tuple[str, str]], style: SetupType, grid: Grid) -> Bands:
    """Return facts side by side, each under its head."""
    step = grid.width / len(pairs)
    columns: Bands = ()
    for index, (head, text) in enumerate(pairs):
        column = (
            *paragraph((caps(head),), step - 4.0, CAPS_LEADING),
            *lines((text,), style.strong, step - 4.0),
        )
        placed = indented(column, index * step)
        columns = beside(columns, placed) if columns else placed
    return spaced(columns, SPACE)


def runs_blocks(
    runs: Sequence[RunLines], between: str, style: SetupType, grid: Grid, reader: Reader
) -> Bands | None:
    """Return each cutter with its work in order; None where a line is too long for the type.

    ``between`` is the time that is spent on neither, empty where none is known.
    """
    bands: list[Band] = []
    columns = _columns(runs, style)
    if math.fsum(columns) - _GAP > grid.main:
        return None
    for number, run in enumerate(runs, 1):
        head = say(reader, "printed-cutter" if run.cutter else "printed-cuts", number=number)
        works = [_work(each, columns, style, grid.main) for each in run.works]
        if number == len(runs) and between:
            works.append(_between(between, style, grid.main, reader))
        block = hung(head, (*_run_head(run, style, grid.main), *works), grid, style.strong)
        bands += spaced(block, _NEXT if number > 1 else SPACE)
    return tuple(bands)


def steps_blocks(
    steps: Sequence[str],
    runs: Sequence[RunLines],
    by_hand: Sequence[str],
    style: SetupType,
    grid: Grid,
    reader: Reader,
    after: str = "",
) -> Bands | None:
    """Return numbered steps and a remark ``after`` them, their cutters, and what hands must do.

    None where a line is too long for the type.
    """
    cut = runs_blocks(runs, "", style, grid, reader)
    if cut is None:
        return None
    numbered = [f"{number}. {text}" for number, text in enumerate(steps, 1)]
    remark = (after,) if after else ()
    steps_head, hand_head = say(reader, "printed-steps"), say(reader, "printed-by-hand")
    return (
        *hung(steps_head, lines((*numbered, *remark), style.words, grid.main), grid, style.words),
        *cut,
        *hung(hand_head, lines(by_hand, style.words, grid.main), grid, style.words),
    )


def _run_head(run: RunLines, style: SetupType, measure: float) -> Bands:
    if not run.cutter:
        return lines((run.figures,), style.soft, measure)
    details = lines((together(*run.details, between=" · "),), style.soft, measure)
    figures = f" · {run.figures}" if run.figures else ""
    named = (Run(run.cutter, style.strong), Run(figures, style.words))
    if width(named) <= measure:
        return (*paragraph(named, measure, leading(style.words)), *details)
    return (
        *lines((run.cutter,), style.strong, measure),
        *lines((run.figures,), style.words, measure),
        *details,
    )


def _between(minutes: str, style: SetupType, measure: float, reader: Reader) -> Band:
    high = leading(style.words)
    words, y = say(reader, "printed-between"), -0.72 * high
    texts: tuple[Mark, ...] = (
        Text(x=_SWATCH[0] + _SWATCH_GAP, y=y, runs=(Run(words, style.soft),)),
        Text(x=measure, y=y, runs=(Run(minutes, style.soft),), anchor=Anchor.END),
    )
    return Band(height=high, passages=(Passage(marks=texts),))


def _cells(work: WorkLine, style: SetupType) -> tuple[Run, ...]:
    texts = (work.side, work.depth, work.passes, work.bridges, work.minutes)
    return (Run(work.what, style.strong), *(Run(each, style.words) for each in texts))


def _columns(runs: Sequence[RunLines], style: SetupType) -> list[float]:
    """Return the widths of the columns of all work, each with the gap after it; 0 where empty."""
    rows = [_cells(work, style) for run in runs for work in run.works]
    wide = [max((width((row[n],)) for row in rows), default=0.0) for n in range(6)]
    return [_SWATCH[0] + _SWATCH_GAP, *(each + _GAP if each else 0.0 for each in wide)]


def _work(work: WorkLine, columns: Sequence[float], style: SetupType, measure: float) -> Band:
    high = leading(style.words)
    y = -0.72 * high
    middle = y + 0.7 + _SWATCH[1] / 2
    bar = Rule(
        x=0,
        y=middle,
        to_x=_SWATCH[0],
        to_y=middle,
        width=0.7,
        ink=INKS[work.operation],
        dash=DASHES[work.operation],
    )
    *cells, minutes = _cells(work, style)
    texts: list[Mark] = [
        Text(x=math.fsum(columns[: n + 1]), y=y, runs=(cell,))
        for n, cell in enumerate(cells)
        if cell.text
    ]
    if minutes.text:
        texts.append(Text(x=measure, y=y, runs=(minutes,), anchor=Anchor.END))
    swatch = Passage(marks=(bar,), role=Role.DECORATION)
    return Band(height=high, passages=(swatch, Passage(marks=tuple(texts))))


def cautions(grid: Grid, reader: Reader) -> Bands:
    """Return the usual cautions, for the foot of the page."""
    head = caps(f"{say(reader, 'printed-safety')}   ", CAPS_LOUD)
    usual = Run(f"{' '.join(setup_cautions(reader))} ", SMALL)
    text = (head, usual, Run(setup_defer(reader), SMALL_SOFT))
    body = paragraph(text, grid.width, leading(SMALL))
    return (ruled(grid.width, HAIR, Ink.SOFT), *spaced(body, 1.6))
