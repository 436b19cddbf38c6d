"""Pictures side by side, each with what is said of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from kerfolio.drawing.block import seated
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.lettering import wrapped
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Label
from kerfolio.geometry.contour import Point

ROOM = (94.0, 74.0)
"""What each picture is drawn in, mm of paper."""
_COLUMNS, _GAP = 4, 10.0
_HEAD, _TEXT, _LEADING = 4.6, 3.3, 1.35
"""Sizes of lettering, mm, and from line to line."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """A picture at paper size within ``ROOM``; its title, what it is called by, and a sentence."""

    title: str
    name: str
    text: str
    picture: Drawing


def gallery(entries: Sequence[Entry], title: str) -> Drawing:
    """Return pictures in rows from the upper left; those of a row stand on one line."""
    items: list[Item] = []
    y = 0.0
    for start in range(0, len(entries), _COLUMNS):
        row = entries[start : start + _COLUMNS]
        y -= max(each.picture.height for each in row)
        made = [
            item
            for column, each in enumerate(row)
            for item in _entry(each, (column * (ROOM[0] + _GAP), y))
        ]
        items += made
        y = extent(made)[1] - _GAP
    names = ", ".join(each.name for each in entries)
    return Drawing(
        box=padded(extent(items), _GAP / 2),
        items=tuple(items),
        title=title,
        description=f"Pictures of {names}.",
    )


def _entry(each: Entry, at: Point) -> Iterator[Item]:
    """Yield a picture whose lower left is at a point, its words below it."""
    x, y = at
    left, bottom, *_ = each.picture.box
    seat = Seat(x=x + (ROOM[0] - each.picture.width) / 2 - left, y=y - bottom)
    yield from (seated(part, seat) for item in each.picture.items for part in expanded(item))
    y -= _HEAD * _LEADING
    yield Label(text=each.title, at=(x, y), height=_HEAD, strong=True)
    y -= _TEXT * _LEADING
    yield Label(text=each.name, at=(x, y), height=_TEXT, ink=Ink.ACCENT)
    for line in wrapped(each.text, _TEXT, ROOM[0]):
        y -= _TEXT * _LEADING
        yield Label(text=line, at=(x, y), height=_TEXT)
