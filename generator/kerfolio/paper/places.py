"""Where holes, slots and recesses lie on a part, by two edges: a table under the map of tiles."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil, floor

from kerfolio.basis.cutting_lengths import drill_in
from kerfolio.basis.exact_figures import exact_in
from kerfolio.basis.names import headed, set_name
from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.model.feature_kind import BORE, HOLE
from kerfolio.paper.band import Band, Bands, paragraph, spaced
from kerfolio.paper.grid import Grid
from kerfolio.paper.type import CAPS_LEADING, CELL, CELL_LEADING, NOTE, NOTE_LEADING, caps
from kerfolio.settling.settled import SettledFeature, SettledPart
from kerfolio.shop.places import MARKED
from kerfolio.writing.page import Passage, Run, Text
from kerfolio.writing.setting import shortened

_PLACED = (HOLE, BORE, *MARKED)
_COLUMNS = 2
_GAP = 8.0
_ROW = CELL_LEADING + 0.8
_FIGURES = 21.0
"""How wide the column of a figure is, mm: it tells up to 9999.99 mm."""
_HEADS = ("middle", "left", "below")


@dataclass(frozen=True, slots=True, kw_only=True)
class PlacedAt:
    """What lies where: its middle, a notch's at its bottom, from the left and the lower edge."""

    what: str
    across: str
    up: str


def places_of(part: SettledPart, reader: Reader) -> tuple[PlacedAt, ...]:
    """Return what is cut into a part, in the order of its plan, places as figures in one unit."""
    return tuple(
        PlacedAt(
            what=_called(each, reader),
            across=exact_in(each.at[0], reader),
            up=exact_in(each.at[1], reader),
        )
        for each in part.features
        if each.kind in _PLACED
    )


def _called(feature: SettledFeature, reader: Reader) -> str:
    name = headed(set_name(feature.name))
    round_one = feature.kind.round
    return f"{name}, ø {drill_in(feature.width.value, reader)}" if round_one else name


def places_bands(places: Sequence[PlacedAt], grid: Grid, most: float, reader: Reader) -> Bands:
    """Return the table, no higher than ``most`` mm; what it has no room for is counted."""
    head, more = CAPS_LEADING + 1.2, NOTE_LEADING + 1.2
    lines = min(ceil(len(places) / _COLUMNS), floor((most - head - more) / _ROW))
    if lines < 1:
        return ()
    shown = places[: lines * _COLUMNS]
    step = (grid.width + _GAP) / _COLUMNS
    heads = [say(reader, f"tiles-head-{each}") for each in _HEADS * _COLUMNS]
    bands = [_row([(caps(each),) for each in heads], step, CAPS_LEADING)]
    for line in range(lines):
        entries = shown[line::lines]
        cells = [(_cell(text, step),) for e in entries for text in (e.what, e.across, e.up)]
        bands += spaced((_row(cells, step, _ROW),), 0.0 if line else 1.2)
    if left := len(places) - len(shown):
        words = say(reader, "tiles-more", count=left)
        bands += spaced(paragraph((Run(words, NOTE),), grid.width, NOTE_LEADING), 1.2)
    return tuple(bands)


def _cell(text: str, step: float) -> Run:
    return Run(shortened(text, CELL, step - _GAP - 2 * _FIGURES - 2.0), CELL)


def _row(cells: Sequence[tuple[Run, ...]], step: float, high: float) -> Band:
    """Return cells in their columns, each from its left: figures may change their room."""
    first = step - _GAP - 2 * _FIGURES
    starts = (0.0, first, first + _FIGURES)
    marks = tuple(
        Text(x=step * (number // 3) + starts[number % 3], y=-0.72 * high, runs=runs)
        for number, runs in enumerate(cells)
    )
    return Band(height=high, passages=(Passage(marks=marks),))
