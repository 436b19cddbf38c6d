"""Pages that fill: where each begins, and how high pictures are, chosen for all pages together.

What was measured in a draft is spread over pages at the least cost, as lines are broken in a
paragraph: what stays blank counts, and so does how far pictures are from the size they ought to
have. A page may begin with any box; within one that may be parted only where the last is full.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, NamedTuple

from kerfolio.booklet.measure import Measure
from kerfolio.booklet.rows import MOST, PictureRow

_LINE = 5.0
"""mm of what goes over pages that stay together."""
_HANG = 2
"""How many lines or rows stay together at either end of what goes over pages."""
_SHORT = 0.2
"""A last page filled by less than this share of it is as bad as a blank one."""
BLANK = 1 / 3
"""Share of a page that may stand blank at its foot."""
_NEAR = 0.02
"""How much less than that is aimed at: a draft is not quite as high as what is printed."""
_OVER, _HALF, _EARLY = 16.0, 4.0, 8.0
"""What it costs that a page cannot hold what must stand on it; that more of its foot is blank than
may be; that it ends within a box although more of that would go on it, as no page does."""
_LEFT = {"chapter": 0.0, "section": 0.04, "": 0.12}
"""What it costs that the next page begins with what would still go on this one, by its rank."""
_ALONE = 0.2
"""What it costs that a row of a table is parted from all others."""
_SHRUNK, _GROWN = 1.0, 0.5
"""What it costs that pictures are smaller or larger than they ought to be."""
_NOTHING = 0.1
"""mm that are no height."""
_STEPS = 12


@dataclass(frozen=True, slots=True, kw_only=True)
class Atom:
    """What no page parts: ``height`` in mm, and the space ``after`` it where more follows.

    ``box`` is the number of the box that begins with it, -1 within one. One that ``sticks`` stands
    on the page of the next, a ``fresh`` one begins a page; after a ``lone`` one no page should end,
    though it may. ``rank`` says what begins with it: a chapter, a section. ``again`` is what stands
    anew before it at the head of a page, mm. ``rows`` are those rows of pictures in it.
    """

    height: float
    after: float = 0.0
    box: int = -1
    sticks: bool = False
    lone: bool = False
    fresh: bool = False
    rank: str = ""
    again: float = 0.0
    rows: tuple[PictureRow, ...] = ()

    @property
    def rest(self) -> float:
        """Its height without pictures, mm."""
        return self.height - sum(row.drawn for row in self.rows)


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """The boxes with which pages begin, and the share of its room that each row of pictures has."""

    breaks: frozenset[int] = frozenset()
    shares: Mapping[int, float] = field(default_factory=dict)


def atoms_of(edges: Sequence[Mapping[str, Any]], rows: Sequence[PictureRow]) -> list[Atom]:
    """Return atoms from the places of boxes and their parts, in the order of the document.

    A draft has no foot: all stands on one page but what follows the cover.
    """
    boxes: list[list[Mapping[str, Any]]] = []
    for edge in edges:
        if edge["at"] == "start":
            boxes.append([])
        boxes[-1].append(edge)
    found: list[Atom] = []
    for box, following in zip(boxes, [*boxes[1:], None], strict=True):
        after = 0.0
        if following is not None:
            start, end = following[0], box[-1]
            gap = start["y"] - end["y"] if start["page"] == end["page"] else start["above"]
            after = max(0.0, gap)
        held = tuple(row for row in rows if row.box == box[0]["box"])
        found += _atoms(box, held, after)
    return found


def _atoms(
    box: Sequence[Mapping[str, Any]], rows: tuple[PictureRow, ...], after: float
) -> Iterator[Atom]:
    start, end = box[0], box[-1]
    parts = [_Part(end["y"] - start["y"])]
    if not start["whole"] and not rows:
        parts = _parted(box)
    for index, part in enumerate(parts):
        first, last = index == 0, index == len(parts) - 1
        yield Atom(
            height=part.height,
            after=after if last else 0.0,
            box=start["box"] if first else -1,
            sticks=start["sticks"] if last else part.tied,
            lone=part.lone,
            fresh=first and start["fresh"],
            rank=start["rank"] if first else "",
            again=0.0 if first else start["again"],
            rows=rows,
        )


class _Part(NamedTuple):
    """A part of a box: its height, mm, whether it is tied to the next, whether it is left alone."""

    height: float
    tied: bool = False
    lone: bool = False


def _parted(box: Sequence[Mapping[str, Any]]) -> list[_Part]:
    """Return what a page may part: rows of a table, entries of a list, lines of text."""
    places = list(_places(box))
    runs = [
        _lines(other["y"] - one["y"], whole=one["whole"])
        for one, other in zip(places, [*places[1:], box[-1]], strict=True)
        if other["y"] - one["y"] > _NOTHING
    ]
    last = len(runs) - 1
    return [
        part._replace(lone=last > 0 and at in (0, last - 1) and index == len(run) - 1)
        for at, run in enumerate(runs)
        for index, part in enumerate(run)
    ]


def _places(box: Sequence[Mapping[str, Any]]) -> Iterator[Mapping[str, Any]]:
    """Yield the places at which parts begin, but for those of what is held together."""
    held = 0
    for edge in box[:-1]:
        if edge["at"] == "held":
            held += edge["by"]
        elif not held:
            yield edge


def _lines(height: float, *, whole: bool) -> list[_Part]:
    count = 1 if whole else max(1, round(height / _LINE))
    last = count - 1
    tied = (index < min(_HANG - 1, last) or last - _HANG < index < last for index in range(count))
    return [_Part(height / count, tied=each) for each in tied]


def half_empty(edges: Sequence[Mapping[str, Any]], measure: Measure) -> int:
    """Return how many pages end with more than a third of them blank.

    The last may, and so may one before what begins a page.
    """
    starts = [each for each in edges if each["at"] == "start"]
    ends = [each for each in edges if each["at"] == "end"]
    foot = measure.top + (1.0 - BLANK) * measure.height
    return sum(
        after["page"] > end["page"] and not after["fresh"] and end["y"] < foot
        for end, after in zip(ends, starts[1:], strict=False)
    )


def planned(atoms: Sequence[Atom], page: float) -> Plan:
    """Return pages at the least cost; ``page`` is how much of a page's height is counted on, mm."""
    shares: dict[int, float] = {}
    breaks: set[int] = set()
    for run in _runs(atoms):
        for start, end, share in _pages(run, page):
            if run[start].box >= 0:
                breaks.add(run[start].box)
            for atom in run[start:end]:
                held = (row for row in atom.rows if not row.fixed)
                shares |= {row.number: row.within(share) for row in held}
    return Plan(breaks=frozenset(breaks), shares=shares)


def _runs(atoms: Sequence[Atom]) -> Iterator[list[Atom]]:
    """Yield atoms from one that begins a page to the next."""
    run: list[Atom] = []
    for atom in atoms:
        if atom.fresh and run:
            yield run
            run = []
        run.append(atom)
    if run:
        yield run


def _pages(atoms: Sequence[Atom], page: float) -> list[tuple[int, int, float]]:
    """Return the pages of a run at the least cost: its first atom, the one after it, the share."""
    tails = _tails(atoms)
    best: list[tuple[float, int, float]] = [(0.0, 0, 1.0)]
    for end in range(1, len(atoms) + 1):
        found = (float("inf"), end - 1, 1.0)
        rest, rows = -atoms[end - 1].after, list[PictureRow]()
        ends = end == len(atoms)
        follows = None if ends else atoms[end]
        for start in range(end - 1, -1, -1):
            atom = atoms[start]
            rest += atom.rest + atom.after
            rows += atom.rows
            if _high(rest, rows, 0.0) > page and start < end - 1:
                break
            if start and atoms[start - 1].sticks:
                continue
            cost, share, used = _filled(rest + atom.again, rows, page, (start == 0, ends))
            if follows is not None:
                fits = used + atoms[end - 1].after + tails[end] <= page
                within = follows.box < 0
                cost += fits * (_EARLY if within else _LEFT[follows.rank])
                cost += _ALONE * atoms[end - 1].lone
            found = min(found, (best[start][0] + cost, start, share))
        best.append(found)
    pages, end = [], len(atoms)
    while end:
        _, start, share = best[end]
        pages.append((start, end, share))
        end = start
    return pages


def _tails(atoms: Sequence[Atom]) -> list[float]:
    """Return of each place how high what stands together from there on is; at the end no end."""
    tails = [float("inf")]
    for atom in reversed(atoms):
        tails.append(atom.height + (atom.after + tails[-1] if atom.sticks else 0.0))
    return tails[::-1]


def _high(rest: float, rows: Sequence[PictureRow], share: float) -> float:
    return rest + sum([row.at(share) for row in rows]) if rows else rest


def _filled(
    rest: float, rows: Sequence[PictureRow], page: float, whole: tuple[bool, bool]
) -> tuple[float, float, float]:
    """Return the cost of a page, the share of their room for its pictures, and what is used, mm.

    ``rest`` is what stands on it besides, mm; ``whole`` whether it begins and ends its run.
    """
    begins, ends = whole
    least = _high(rest, rows, 0.0)
    if least > page:
        return _OVER, 1.0, least
    share = (
        1.0 if not rows or (ends and _high(rest, rows, 1.0) <= page) else _share(rest, rows, page)
    )
    used = _high(rest, rows, share)
    cost = (share - 1.0) ** 2 * (_SHRUNK if share < 1.0 else _GROWN) if rows else 0.0
    blank = 1.0 - used / page
    if not ends:
        cost += 2 * blank**2 + _HALF * (blank > BLANK - _NEAR)
    elif 1.0 - blank < _SHORT and not begins:
        cost += 1.0
    return cost, share, used


def _share(rest: float, rows: Sequence[PictureRow], page: float) -> float:
    """Return the largest share, within bounds, at which the page holds everything."""
    least, most = 0.0, MOST
    if _high(rest, rows, most) <= page:
        return most if _high(rest, rows, most) > _high(rest, rows, 1.0) else 1.0
    for _ in range(_STEPS):
        middle = (least + most) / 2
        least, most = (middle, most) if _high(rest, rows, middle) <= page else (least, middle)
    return least
