"""Choosing how a part's tiles lie: few pages, and seams that run clear of what is cut."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import product

from kerfolio.drawing.kept_whole import kept_whole
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.template_shape import WORDS
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.drawing.window import shows
from kerfolio.model.stock import PaperStock
from kerfolio.paper.seam_run import CLEAR, Along, SeamRun, seam_run
from kerfolio.paper.tiling import OVERLAP, Size, Spot, Tiling, tile_count, window_of

_WORTH = 0.25
"""What it is worth in pages to leave one line or label whole; a slot has several."""
_LOOKED_AT = 3
"""So many ways are looked at for tiles without a line."""


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


def seams_of(
    drawings: Sequence[Mapping[str, Drawing]], papers: Iterable[PaperStock]
) -> dict[str, list[Box]]:
    """Return for each part the strips along which any of these papers is cut, words left aside.

    ``drawings`` show the parts at the ends of a range; strips are in the parts' own frames.
    """
    bare = [{name: _without_words(each) for name, each in drawn.items()} for drawn in drawings]
    found: dict[str, list[Box]] = {name: [] for name in bare[0]}
    for paper in papers:
        for name, tiling in tiled_on(bare, paper).tilings.items():
            left, bottom, right, top = bare[0][name].box
            across, up = tiling.seams
            found[name] += [(left + x - CLEAR, bottom, left + x + CLEAR, top) for x in across]
            found[name] += [(left, bottom + y - CLEAR, right, bottom + y + CLEAR) for y in up]
    return found


def _without_words(drawing: Drawing) -> Drawing:
    return replace(drawing, items=tuple(e for e in drawing.items if e.layer != WORDS.name))


@dataclass(frozen=True, slots=True)
class _Way:
    """A way in which tiles may lie, and how many lines and labels its seams cross."""

    tiling: Tiling
    crossed: int

    @property
    def cost(self) -> float:
        """What it costs, in pages."""
        return len(self.tiling.printed) + _WORTH * self.crossed


def tiling_of(drawings: Sequence[Drawing], paper: PaperStock) -> Tiling:
    """Return one tiling for all these drawings of a part, at the ends of its range and between.

    The paper stands or lies, and there may be one more row or column than needed: what takes
    fewest pages, unless its seams cross holes, slots, tabs or words that others leave whole.
    Standing paper is taken where both cost the same. Tiles on which no drawing has a line are left
    out where the others still hang together.
    """
    sides = (paper.width, paper.height)
    boxes = [list(kept_whole(each)) for each in drawings]
    ways = [way for page in (sides, sides[::-1]) for way in _ways(drawings, boxes, page)]
    likely = sorted(ways, key=lambda way: way.cost)[:_LOOKED_AT]
    bare = [replace(way, tiling=_without_blanks(way.tiling, drawings)) for way in likely]
    return min(bare, key=lambda way: way.cost).tiling


def _ways(
    drawings: Sequence[Drawing], boxes: Sequence[Sequence[Box]], page: Size
) -> Iterator[_Way]:
    """Yield the ways for paper that stands or lies."""
    across, up = (_runs(drawings, boxes, window_of(page)[axis], axis) for axis in (0, 1))
    for column, row in product(across, up):
        tiling = Tiling(page=page, across=column.starts, up=row.starts[::-1])
        yield _Way(tiling, column.crossed + row.crossed)


def _runs(
    drawings: Sequence[Drawing], boxes: Sequence[Sequence[Box]], window: float, axis: int
) -> list[SeamRun]:
    """Return how tiles may lie along one side: as few as there can be, or one more."""
    along = [
        Along.of(
            (each.width, each.height)[axis],
            ((box[axis] - each.box[axis], box[axis + 2] - each.box[axis]) for box in found),
            window - OVERLAP,
        )
        for each, found in zip(drawings, boxes, strict=True)
    ]
    least = tile_count(max(each.length for each in along), window)
    counts = (least,) if least == 1 else (least, least + 1)
    return [seam_run(along, count, window) for count in counts]


def _without_blanks(tiling: Tiling, drawings: Sequence[Drawing]) -> Tiling:
    """Return the tiling with blank tiles left out as long as all others keep touching."""
    for spot in tiling.spots:
        fewer = replace(tiling, left_out=tiling.left_out | {spot})
        if not any(_shows(each, tiling, spot) for each in drawings) and _hang_together(fewer):
            tiling = fewer
    return tiling


def _shows(drawing: Drawing, tiling: Tiling, spot: Spot) -> bool:
    left, bottom = drawing.box[:2]
    x0, y0, x1, y1 = tiling.box(spot)
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
