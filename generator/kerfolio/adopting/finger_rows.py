"""Rows of fingers along whole sides of a part, as the corners of a box have them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.stretch import Stretch

_EVEN = 0.25
"""Fingers of a row differ by no more, mm: those cut with play are narrower than gaps."""

_LEVEL = 0.05
_FEW = 3

OUT: dict[str, Point] = {
    "left": (-1.0, 0.0),
    "right": (1.0, 0.0),
    "bottom": (0.0, -1.0),
    "top": (0.0, 1.0),
}
"""The way out of a part at each side of its box."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FingerRow:
    """Fingers along a side of a part: ``count`` fingers and gaps in all, equally wide.

    ``finger_first`` tells whether a finger begins at the lower or left end; ``depth`` is how deep
    its gaps are and ``start``, ``end`` where the side begins and ends, on the fingers' tips, mm.
    """

    side: str
    count: int
    finger_first: bool
    depth: float
    start: Point
    end: Point

    @property
    def middle(self) -> Point:
        """The middle of the side, on the fingers' tips."""
        return ((self.start[0] + self.end[0]) / 2, (self.start[1] + self.end[1]) / 2)

    @property
    def out(self) -> Point:
        """The unit vector out of the part."""
        return OUT[self.side]

    @property
    def along(self) -> Point:
        """The unit vector along the side, with the part below it."""
        return (self.out[1], 0.0 - self.out[0])

    @property
    def pattern(self) -> tuple[bool, ...]:
        """Where fingers are, in the order of ``along``."""
        rising = sum(self.along) > 0
        row = tuple(self.finger_first == (index % 2 == 0) for index in range(self.count))
        return row if rising else row[::-1]

    @property
    def pitch(self) -> float:
        """How wide a finger or a gap is, mm."""
        return max(abs(self.end[0] - self.start[0]), abs(self.end[1] - self.start[1])) / self.count


def finger_rows(outline: Contour, depths: Iterable[float], slack: float) -> tuple[FingerRow, ...]:
    """Return the rows of an outline whose gaps are as deep as one of the ``depths`` (mm)."""
    known = tuple(depths)
    return tuple(
        row
        for side in ("left", "right", "bottom", "top")
        for row in _on_side(outline, side, known, slack)
    )


def _on_side(
    outline: Contour, side: str, depths: tuple[float, ...], slack: float
) -> Iterator[FingerRow]:
    """Yield the row on a side of a part's box, if it has one."""
    box = bounds(outline)
    upright = side in ("left", "right")
    level = {"left": box.x0, "right": box.x1, "bottom": box.y0, "top": box.y1}[side]
    inward = 1.0 if side in ("left", "bottom") else -1.0
    flat = []
    for edge in edges(outline):
        across = (edge.start[0], edge.end[0]) if upright else (edge.start[1], edge.end[1])
        along = (edge.start[1], edge.end[1]) if upright else (edge.start[0], edge.end[0])
        if not edge.bulge and abs(across[0] - across[1]) < _LEVEL:
            flat.append(((across[0] - level) * inward, min(along), max(along)))
    for depth in depths:
        row = sorted(
            (low, high, deep > _LEVEL)
            for deep, low, high in flat
            if deep < _LEVEL or abs(deep - depth) <= slack
        )
        made = _tiling(row)
        if made is None:
            continue
        low, high, count, gap_first = made
        deep = next(d for d, *_ in flat if abs(d - depth) <= slack)
        ends = ((level, low), (level, high)) if upright else ((low, level), (high, level))
        yield FingerRow(
            side=side,
            count=count,
            finger_first=not gap_first,
            depth=deep,
            start=ends[0],
            end=ends[1],
        )
        return


def _tiling(row: list[tuple[float, float, bool]]) -> tuple[float, float, int, bool] | None:
    """Return (low, high, count, gap first) of stretches that tile a side by turns, else None."""
    if len(row) < _FEW:
        return None
    pairs = list(pairwise(row))
    if any(abs(one[1] - two[0]) > _LEVEL or one[2] == two[2] for one, two in pairs):
        return None
    widths = [high - low for low, high, _ in row]
    if max(widths) - min(widths) > 2 * _EVEN:
        return None
    return row[0][0], row[-1][1], len(row), row[0][2]


def is_of_fingers(stretch: Stretch, rows: Iterable[FingerRow], slack: float) -> bool:
    """Tell whether a notch or a tab opens within the bands of rows of fingers, at either end."""
    known = list(rows)
    return all(
        any(_is_in_band(end, row, slack) for row in known) for end in (stretch.start, stretch.end)
    )


def _is_in_band(spot: Point, row: FingerRow, slack: float) -> bool:
    (x, y), (x0, y0), (x1, y1), (ux, uy) = spot, row.start, row.end, row.out
    inward = (x0 - x) * ux + (y0 - y) * uy
    along = (x - x0) * abs(uy) + (y - y0) * abs(ux)
    size = (x1 - x0) * abs(uy) + (y1 - y0) * abs(ux)
    near = -slack <= inward <= row.depth + slack
    return near and -slack <= along <= size + slack
