"""Names in a column beside a part, each on a leader to what it names."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.expand import NARROW
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.vocabulary import Anchor, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.shapes import circle

NAME, WORDS = 3.2, 2.8
"""Sizes of a name and of what is said below it, mm."""

Lines = tuple[tuple[str, float, bool], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Tag:
    """Features of one name: what is said of them, and where each lies on paper."""

    lines: Lines
    members: tuple[Box, ...]
    inside: bool


def leader_end(tag: Tag, goes_right: bool) -> Point:
    """Return where a leader from that side ends: at the nearest member."""
    box = max(tag.members, key=lambda each: (each[2] if goes_right else -each[0], each[3]))
    return (box[2] if goes_right else box[0]), (box[1] + box[3]) / 2


def spread(wanted: Sequence[float], apart: float) -> list[float]:
    """Return heights, falling, as near to those wanted as being ``apart`` allows.

    Neighbours that come too near are taken together, about the middle of what they want (pool of
    adjacent violators, least squares).
    """
    pools: list[tuple[float, int]] = []  # the height of the first if it stood alone, how many
    for number, y in enumerate(wanted):
        level, count = y + number * apart, 1
        while pools and pools[-1][0] < level:
            before, many = pools.pop()
            level = (before * many + level * count) / (many + count)
            count += many
        pools.append((level, count))
    levels = [level for level, count in pools for _ in range(count)]
    return [level - number * apart for number, level in enumerate(levels)]


def beside(tag: Tag, at: Point, goes_right: bool) -> Iterator[Item]:
    """Yield a set's lines in a column, and a leader from there to the set."""
    way, anchor = (1.0, Anchor.START) if goes_right else (-1.0, Anchor.END)
    x, y = at
    bend = (x - way * 4.0, y + NAME * 0.3)
    end = leader_end(tag, goes_right)
    yield Stroke(contour=open_path((x - way * 1.2, bend[1]), bend, end), ink=Ink.INK, width=NARROW)
    yield Stroke(contour=circle(end, 0.9), width=None, fill=Ink.INK)
    for text, height, strong in tag.lines:
        ink = Ink.INK if strong else Ink.SOFT
        yield Label(text=text, at=(x, y), height=height, strong=strong, ink=ink, anchor=anchor)
        y -= WORDS * 1.2
