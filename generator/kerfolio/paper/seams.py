"""Choosing how a part's tiles lie: the fewest pages, and seams that run clear of what is cut."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from math import floor

from kerfolio.drawing.kept_whole import kept_whole
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.drawing.window import shows
from kerfolio.model.stock import PaperStock
from kerfolio.paper.tiling import OVERLAP, Size, Spot, Tiling, even_tiling

_CLEAR = 1.5
"""How far a seam keeps from what it must not cross, mm: scissors and tape stray that far."""
_RIM = 1.0
"""How far the drawing keeps from the rim of the outer tiles, mm, where there is room."""
_TRIED = 1.0
"""How far apart, mm, the places are that are tried."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TiledOn:
    """A paper with how the tiles of each part, by its name, lie on it."""

    paper: PaperStock
    tilings: Mapping[str, Tiling]


def tiled_on(drawings: Sequence[Mapping[str, Drawing]], paper: PaperStock) -> TiledOn:
    """Return how the tiles of all parts lie, for drawings by part at the ends of a range."""
    names = drawings[0].keys()
    tilings = {name: tiling_of([each[name] for each in drawings], paper) for name in names}
    return TiledOn(paper=paper, tilings=tilings)


def tiling_of(drawings: Sequence[Drawing], paper: PaperStock) -> Tiling:
    """Return one tiling for all these drawings of a part, at the ends of its range and between.

    The paper stands or lies, whichever needs fewer pages, standing when both are equal. Seams are
    moved within what is to spare, so that as few holes, slots, tabs and words lie on one as can
    be. Tiles on which no drawing has a line are left out where the others still hang together.
    """
    sides = (paper.width, paper.height)
    ways = [_way(drawings, page) for page in (sides, sides[::-1])]
    return min(ways, key=lambda way: len(way.printed))


def _way(drawings: Sequence[Drawing], page: Size) -> Tiling:
    largest = (max(each.width for each in drawings), max(each.height for each in drawings))
    even = even_tiling(largest, page)
    boxes = [list(kept_whole(each)) for each in drawings]
    across, up = (
        _share(even, [_Along.of(*each, axis) for each in zip(drawings, boxes, strict=True)], axis)
        for axis in (0, 1)
    )
    return _without_blanks(replace(even, share=(across, up)), drawings)


@dataclass(frozen=True, slots=True)
class _Along:
    """What lies along one axis of a drawing: where boxes begin and where they end, in order."""

    length: float
    begin: list[float]
    end: list[float]

    @classmethod
    def of(cls, drawing: Drawing, boxes: Sequence[Box], axis: int) -> _Along:
        low = drawing.box[axis]
        return cls(
            length=drawing.box[axis + 2] - low,
            begin=sorted(box[axis] - low - _CLEAR for box in boxes),
            end=sorted(box[axis + 2] - low + _CLEAR for box in boxes),
        )

    def crossed(self, at: float) -> int:
        """Count the boxes that a seam crosses."""
        return bisect_left(self.begin, at) - bisect_right(self.end, at)


def _share(even: Tiling, along: Sequence[_Along], axis: int) -> float:
    """Return the share of the spare at the low end that leaves most boxes whole."""
    count = (even.columns, even.rows)[axis]
    least = min(_spare(even, each.length, axis) for each in along)
    if count == 1 or least <= 2 * _RIM:
        return 0.5
    tried = floor((least - 2 * _RIM) / _TRIED)
    shares = [0.5, *((_RIM + number * _TRIED) / least for number in range(tried + 1))]

    def cost(share: float) -> tuple[int, float]:
        seams = [
            (each, number * even.step[axis] + OVERLAP / 2 - share * _spare(even, each.length, axis))
            for each in along
            for number in range(1, count)
        ]
        return sum(each.crossed(at) for each, at in seams), abs(share - 0.5)

    return min(shares, key=cost)


def _spare(even: Tiling, length: float, axis: int) -> float:
    return even.spare((length, length))[axis]


def _without_blanks(tiling: Tiling, drawings: Sequence[Drawing]) -> Tiling:
    """Return the tiling with blank tiles left out as long as all others keep touching."""
    for spot in tiling.spots:
        fewer = replace(tiling, left_out=tiling.left_out | {spot})
        if not any(_shows(each, tiling, spot) for each in drawings) and _hang_together(fewer):
            tiling = fewer
    return tiling


def _shows(drawing: Drawing, tiling: Tiling, spot: Spot) -> bool:
    left, bottom = drawing.box[:2]
    x0, y0, x1, y1 = tiling.box(tiling.tile(spot, (drawing.width, drawing.height)))
    return shows(drawing, (x0 + left, y0 + bottom, x1 + left, y1 + bottom))


def _hang_together(tiling: Tiling) -> bool:
    spots = set(tiling.printed)
    reached: set[Spot] = set()
    waiting = [min(spots)] if spots else []
    while waiting:
        column, row = waiting.pop()
        reached.add((column, row))
        around = ((column + 1, row), (column - 1, row), (column, row + 1), (column, row - 1))
        waiting += [each for each in around if each in spots and each not in reached]
    return bool(spots) and reached == spots
