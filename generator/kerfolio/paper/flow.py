"""Bands onto pages."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field

from kerfolio.paper.band import Band, shifted, total
from kerfolio.paper.grid import Grid
from kerfolio.writing.page import Page, Passage

Foot = Callable[[int, int], tuple[Passage, ...]]
"""What stands at the foot of page x of y; x counts from 1."""


@dataclass(slots=True)
class _Leaf:
    """A page being filled; ``used`` mm from the top."""

    placed: list[tuple[float, Band]] = field(default_factory=list)
    used: float = 0.0


def leaves(bands: Sequence[Band], grid: Grid) -> list[list[tuple[float, Band]]]:
    """Spread bands over pages; return for each page its bands and how far down they begin, mm.

    Bands that stick together share a page where one page can hold them at all.
    """
    pages = [_Leaf()]
    for group in _groups(bands):
        need = total(group) + (group[0].space if pages[-1].used else 0.0)
        if pages[-1].used and (group[0].fresh or pages[-1].used + need > grid.height + 1e-6):
            pages.append(_begin(group[0], pages[-1]))
        for band in group:
            space = band.space if pages[-1].used else 0.0
            if pages[-1].used and pages[-1].used + space + band.height > grid.height + 1e-6:
                pages.append(_begin(band, pages[-1]))
                space = band.space if pages[-1].used else 0.0
            _put(pages[-1], band, space)
    return [page.placed for page in pages]


def _groups(bands: Sequence[Band]) -> Iterator[list[Band]]:
    group: list[Band] = []
    for band in bands:
        group.append(band)
        if not band.stick:
            yield group
            group = []
    if group:
        yield group


def _begin(band: Band, before: _Leaf) -> _Leaf:
    """Open a page; a table that goes on repeats its head."""
    page = _Leaf()
    last = before.placed[-1][1] if before.placed else None
    if band.head and last is not None and last.head == band.head:
        for each in band.head:
            _put(page, each, each.space if page.used else 0.0)
    return page


def _put(page: _Leaf, band: Band, space: float) -> None:
    page.placed.append((page.used + space, band))
    page.used += space + band.height


def page_of(placed: Sequence[tuple[float, Band]], grid: Grid, foot: tuple[Passage, ...]) -> Page:
    """Return one filled page with its foot."""
    body = tuple(
        shifted(passage, grid.side, grid.ceiling - down)
        for down, band in placed
        for passage in band.passages
    )
    return Page(width=grid.paper.width, height=grid.paper.height, passages=(*body, *foot))


def flowed(bands: Sequence[Band], grid: Grid, foot: Foot, *, before: int = 0) -> tuple[Page, ...]:
    """Return the bands as pages with feet; ``before`` pages stand in front of them."""
    spread = leaves(bands, grid)
    count = before + len(spread)
    return tuple(
        page_of(placed, grid, foot(before + index, count))
        for index, placed in enumerate(spread, start=1)
    )
