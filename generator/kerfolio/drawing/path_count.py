"""What a toolpath program should find on each cut layer: so many contours, so long, so large."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from kerfolio.basis.digits import rounded
from kerfolio.drawing.layer import INKS
from kerfolio.drawing.vocabulary import Drawing, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import area, bounds, length
from kerfolio.settling.settled import Operation


@dataclass(frozen=True, slots=True, kw_only=True)
class PathCount:
    """The contours of a cut layer: how many, how long along the drawn lines, mm.

    ``area`` is what pockets clear, mm2; ``diameters`` are those of holes in mm, with how many each.
    """

    layer: str
    operation: Operation
    contours: int
    length: float
    area: float = 0.0
    diameters: tuple[tuple[float, int], ...] = ()


def path_counts(layers: Mapping[str, Sequence[Contour]]) -> tuple[PathCount, ...]:
    """Return what lies on each layer that is cut, in cutting order."""
    cut = {name: Operation(name.split("_")[0]) for name in layers if _is_cut(name)}
    ranks = list(INKS)
    return tuple(
        _count(name, cut[name], layers[name])
        for name in sorted(cut, key=lambda each: (ranks.index(cut[each]), each))
    )


def drawn_counts(drawing: Drawing) -> tuple[PathCount, ...]:
    """Return what lies on each cut layer of a drawing."""
    layers: dict[str, list[Contour]] = {each.name: [] for each in drawing.layers if each.cuts}
    for item in drawing.items:
        if isinstance(item, Stroke) and item.layer in layers:
            layers[item.layer].append(item.contour)
    return path_counts(layers)


def _is_cut(layer: str) -> bool:
    return layer.split("_")[0] in list(Operation)


def _count(name: str, operation: Operation, contours: Sequence[Contour]) -> PathCount:
    holes: Counter[float] = Counter()
    if operation is Operation.HOLE:
        holes.update(rounded(bounds(each).width, 2) for each in contours)
    pocketed = contours if operation is Operation.POCKET else ()
    return PathCount(
        layer=name,
        operation=operation,
        contours=len(contours),
        length=math.fsum(map(length, contours)),
        area=math.fsum(map(area, pocketed)),
        diameters=tuple(sorted(holes.items())),
    )
