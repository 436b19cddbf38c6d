"""Bands: strips of a page that are never cut, stacked from top to bottom."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from kerfolio.drawing.vocabulary import Anchor, Ink
from kerfolio.paper.type import FINE
from kerfolio.writing.page import Mark, Passage, Role, Rule, Run, Text, moved
from kerfolio.writing.setting import lines


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """A strip ``height`` mm high; its marks are relative to its upper left corner, y up.

    ``space`` above it is dropped at the top of a page; ``stick`` keeps it with the next band;
    ``fresh`` begins a page; ``head`` is set again where a page breaks between bands that share it.
    """

    height: float
    passages: tuple[Passage, ...] = ()
    space: float = 0.0
    stick: bool = False
    fresh: bool = False
    head: tuple[Band, ...] = ()


Bands = tuple[Band, ...]


def shifted(passage: Passage, x: float, y: float) -> Passage:
    """Return the passage with every mark moved."""
    return replace(passage, marks=tuple(moved(mark, x, y) for mark in passage.marks))


def indented(bands: Sequence[Band], x: float) -> Bands:
    """Return the bands moved to the right, their repeated heads too."""
    return tuple(
        replace(
            band,
            passages=tuple(shifted(passage, x, 0) for passage in band.passages),
            head=indented(band.head, x) if band.head else (),
        )
        for band in bands
    )


def spaced(bands: Sequence[Band], space: float) -> Bands:
    """Return the bands with that much space above the first."""
    return (replace(bands[0], space=space), *bands[1:]) if bands else ()


def kept(bands: Sequence[Band], *, with_next: bool = False) -> Bands:
    """Return the bands glued to each other, and to what follows where asked."""
    if not bands:
        return ()
    glued = tuple(replace(band, stick=True) for band in bands[:-1])
    return (*glued, replace(bands[-1], stick=with_next))


def fresh(bands: Sequence[Band]) -> Bands:
    """Return the bands beginning on a new page."""
    return (replace(bands[0], fresh=True), *bands[1:]) if bands else ()


def bookmarked(bands: Sequence[Band], entry: str, level: int = 0) -> Bands:
    """Return the bands with an entry of the outline at the first passage."""
    first, *others = bands[0].passages
    named = replace(first, bookmark=entry, level=level)
    return (replace(bands[0], passages=(named, *others)), *bands[1:])


def total(bands: Sequence[Band]) -> float:
    """Return the height of bands stacked on one page, the first one's space left out."""
    return math.fsum(band.height + band.space for band in bands) - (
        bands[0].space if bands else 0.0
    )


def blank(height: float) -> Band:
    """Return an empty band."""
    return Band(height=height)


def marked(height: float, marks: Sequence[Mark], role: Role, alt: str = "") -> Band:
    """Return a band of one passage."""
    return Band(height=height, passages=(Passage(marks=tuple(marks), role=role, alt=alt),))


def ruled(width: float, thickness: float = FINE, ink: Ink = Ink.INK) -> Band:
    """Return a line across the column, kept with what it stands above."""
    rule = Rule(x=0, y=0, to_x=width, to_y=0, width=thickness, ink=ink)
    return replace(marked(0.0, (rule,), Role.DECORATION), stick=True)


def paragraph(
    runs: Sequence[Run],
    measure: float,
    leading: float,
    *,
    role: Role = Role.PARAGRAPH,
    anchor: Anchor = Anchor.START,
) -> Bands:
    """Return the lines of a paragraph; two at least stay together at either end of a page."""
    broken = lines(runs, measure)
    x = {Anchor.START: 0.0, Anchor.MIDDLE: measure / 2, Anchor.END: measure}[anchor]
    bands = []
    for index, line in enumerate(broken):
        text = Text(x=x, y=-baseline(line, leading), runs=line, anchor=anchor)
        passage = Passage(marks=(text,), role=role, continues=index > 0)
        stick = index == 0 or index == len(broken) - 2
        stick = stick and index < len(broken) - 1
        bands.append(Band(height=leading, passages=(passage,), stick=stick))
    return tuple(bands)


def baseline(line: Sequence[Run], leading: float) -> float:
    """Return how far under the top of its line a text's baseline lies.

    Half of what the leading exceeds the size goes above; letters stand 0.75 of it over the base.
    """
    em = max((run.style.em for run in line), default=0.0)
    return (leading - em) / 2 + 0.78 * em


def beside(left: Sequence[Band], right: Sequence[Band]) -> Bands:
    """Return two columns side by side; the left one stays whole beside the start of the right.

    Both are placed already; spaces inside the left column count, the first one's does not.
    """
    if not left:
        return tuple(right)
    passages, depth = _stacked(left)
    bands = list(right) or [blank(0.0)]
    first = replace(bands[0], passages=(*passages, *bands[0].passages))
    bands[0] = first
    covered = 0.0
    for index, band in enumerate(bands):
        covered += band.height + (band.space if index else 0.0)
        if covered >= depth - 1e-6:
            return tuple(bands)
        if index < len(bands) - 1:
            bands[index] = replace(band, stick=True)
    after = replace(blank(depth - covered), stick=bands[-1].stick)
    bands[-1] = replace(bands[-1], stick=True)
    return (*bands, after)


def _stacked(bands: Sequence[Band]) -> tuple[tuple[Passage, ...], float]:
    passages: list[Passage] = []
    depth = 0.0
    for index, band in enumerate(bands):
        depth += band.space if index else 0.0
        passages += [shifted(passage, 0, -depth) for passage in band.passages]
        depth += band.height
    return tuple(passages), depth
