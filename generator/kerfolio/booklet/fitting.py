"""Pages that fill: pictures give way or grow, within bounds, so that no page stands half empty.

Boxes are spread over pages at the least cost, as lines are broken in a paragraph: what stays blank
counts, and so does how far pictures are from the size they ought to have.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from kerfolio.booklet.measure import Measure
from kerfolio.booklet.rows import MOST, PictureRow

_LINE = 5.0
"""mm of what goes over pages that stay together."""
_HANG = 2
"""How many of those stay together at either end."""
_SHORT = 0.2
"""A last page filled by less than this share of it is as bad as a blank one."""
_OVER = 4.0
"""What it costs that a page cannot hold what must stand on it."""
_EARLY = 8.0
"""What it costs that a page ends although more would go on it: typst goes on."""
_STEPS = 16
_BLANK = 1 / 3
"""Share of a page that may stand blank at its foot."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Box:
    """What was set: ``height`` with the space after it, mm; ``whole`` goes on one page.

    One that ``sticks`` stands on the page of the next, a ``fresh`` one begins a page.
    """

    number: int
    height: float
    whole: bool = True
    sticks: bool = False
    fresh: bool = False


def boxes_of(edges: Sequence[Mapping[str, Any]], measure: Measure) -> list[Box]:
    """Return boxes from the places where each begins and ends, in the order of the document."""
    starts = [each for each in edges if each["at"] == "start"]
    ends = [each for each in edges if each["at"] == "end"]
    boxes: list[Box] = []
    for index, (start, end) in enumerate(zip(starts, ends, strict=True)):
        after = starts[index + 1] if index + 1 < len(starts) else None
        height = end["y"] - start["y"] + (end["page"] - start["page"]) * measure.height
        if after and after["page"] == end["page"]:
            height += after["y"] - end["y"]
        elif after:
            height += max(start["below"], after["above"])
        manners = {name: start[name] for name in ("whole", "sticks", "fresh")}
        boxes.append(Box(number=start["box"], height=max(0.0, height), **manners))
    return boxes


def half_empty(edges: Sequence[Mapping[str, Any]], measure: Measure) -> int:
    """Return how many pages end with more than a third of them blank.

    The last may, and so may one before what begins a page.
    """
    starts = [each for each in edges if each["at"] == "start"]
    ends = [each for each in edges if each["at"] == "end"]
    foot = measure.top + (1.0 - _BLANK) * measure.height
    return sum(
        after["page"] > end["page"] and not after["fresh"] and end["y"] < foot
        for end, after in zip(ends, starts[1:], strict=False)
    )


@dataclass(frozen=True, slots=True)
class _Atom:
    """A part of a box that no page parts; ``rows`` are those of pictures in it."""

    height: float
    rows: tuple[PictureRow, ...]
    sticks: bool


def fitted(boxes: Sequence[Box], rows: Sequence[PictureRow], page: float) -> Mapping[int, float]:
    """Return the share of its room for each row of pictures by its place among ``rows``.

    ``page`` is how much of a page's height, mm, is counted on.
    """
    places = {id(row): place for place, row in enumerate(rows)}
    shares: dict[int, float] = {}
    for run in _runs(boxes):
        atoms = [atom for box in run for atom in _atoms(box, rows)]
        for start, end, share in _pages(atoms, page):
            for atom in atoms[start:end]:
                shares |= {places[id(row)]: row.within(share) for row in atom.rows if not row.fixed}
    return shares


def _runs(boxes: Sequence[Box]) -> Iterator[list[Box]]:
    """Yield boxes from one that begins a page to the next."""
    run: list[Box] = []
    for box in boxes:
        if box.fresh and run:
            yield run
            run = []
        run.append(box)
    if run:
        yield run


def _atoms(box: Box, rows: Sequence[PictureRow]) -> Iterator[_Atom]:
    held = tuple(row for row in rows if row.box == box.number)
    count = 1 if box.whole or held else max(1, round(box.height / _LINE))
    for index in range(count):
        tied = count > 1 and (index < _HANG - 1 or count - _HANG <= index < count - 1)
        last = index == count - 1
        yield _Atom(box.height / count, held, tied or (last and box.sticks))


def _pages(atoms: Sequence[_Atom], page: float) -> list[tuple[int, int, float]]:
    """Return the pages of a run at the least cost: its first atom, the one after it, the share."""
    tails = _tails(atoms)
    best: list[tuple[float, int, float]] = [(0.0, 0, 1.0)]
    for end in range(1, len(atoms) + 1):
        found = (float("inf"), end - 1, 1.0)
        rest, rows = 0.0, list[PictureRow]()
        for start in range(end - 1, -1, -1):
            atom = atoms[start]
            rest += atom.height - sum(row.drawn for row in atom.rows)
            rows += atom.rows
            if _high(rest, rows, 0.0) > page and start < end - 1:
                break
            if start and atoms[start - 1].sticks:
                continue
            cost, share = _filled(rest, rows, page, (start == 0, end == len(atoms)))
            if _high(rest, rows, share) + tails[end] <= page:
                cost += _EARLY
            found = min(found, (best[start][0] + cost, start, share))
        best.append(found)
    pages, end = [], len(atoms)
    while end:
        _, start, share = best[end]
        pages.append((start, end, share))
        end = start
    return pages


def _tails(atoms: Sequence[_Atom]) -> list[float]:
    """Return of each place how high what stands together from there on is; at the end no end."""
    tails = [float("inf")]
    for atom in reversed(atoms):
        tails.append(atom.height + (tails[-1] if atom.sticks else 0.0))
    return tails[::-1]


def _high(rest: float, rows: Sequence[PictureRow], share: float) -> float:
    return rest + sum([row.at(share) for row in rows]) if rows else rest


def _filled(
    rest: float, rows: Sequence[PictureRow], page: float, whole: tuple[bool, bool]
) -> tuple[float, float]:
    """Return the cost of a page and the share of their room for its pictures.

    ``rest`` is what stands on it besides, mm; ``whole`` whether it begins and ends its run.
    """
    begins, ends = whole
    if _high(rest, rows, 0.0) > page:
        return _OVER, 1.0
    share = (
        1.0 if not rows or (ends and _high(rest, rows, 1.0) <= page) else _share(rest, rows, page)
    )
    used = _high(rest, rows, share) / page
    cost = (share - 1.0) ** 2 if rows else 0.0
    if not ends:
        cost += 2 * (1.0 - used) ** 2
    elif used < _SHORT and not begins:
        cost += 1.0
    return cost, share


def _share(rest: float, rows: Sequence[PictureRow], page: float) -> float:
    """Return the largest share, within bounds, at which the page holds everything."""
    least, most = 0.0, MOST
    if _high(rest, rows, most) <= page:
        return most if _high(rest, rows, most) > _high(rest, rows, 1.0) else 1.0
    for _ in range(_STEPS):
        middle = (least + most) / 2
        least, most = (middle, most) if _high(rest, rows, middle) <= page else (least, middle)
    return least
