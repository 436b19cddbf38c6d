"""Bores by hand into an edge: nothing of them is in a cut file, and no contour knows of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from kerfolio.basis.said import phrase
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.model.feature import EdgeBore, Feature
from kerfolio.settling.bench import Bench, settled_feature
from kerfolio.settling.edge import edge_frame
from kerfolio.settling.edge_feature import at_edge
from kerfolio.settling.fitted import stated_as
from kerfolio.settling.hole import bored_width
from kerfolio.settling.settled import Sized
from kerfolio.settling.shaped import Shaped


def edge_bores(cutting: EdgeBore, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield a bore for each place along its edge. Raises SettlingError, ShapeError."""
    scope = bench.fitting.scope
    frame = edge_frame(cutting.edge, bench.outline, scope)
    width, depth = bored_width(cutting, bench), bench.depth(cutting.depth)
    level = _level(cutting, bench)
    for middle in map(scope.mm, cutting.at):
        a, b = middle - width.value / 2, middle + width.value / 2
        made = settled_feature(
            *(feature, frame.point(middle, 0.0), frame.outward, (width, depth)),
            *((frame.box(a, b, -depth.value, 0.0),), depth),
            ruler=frame.ruler,
        )
        stands_on, stands_out = at_edge(frame, a, b)
        yield Shaped(
            feature=replace(made, level=level),
            stands_on=(stands_on,),
            stands_out=(stands_out,),
            edge=frame,
            span=(frame.point(a, 0.0), frame.point(b, 0.0)),
        )


def _level(cutting: EdgeBore, bench: Bench) -> Sized:
    """Return how high a bore's axis lies above the rear face. Raises SettlingError, ShapeError."""
    sheet = bench.fitting.into
    if sheet is None:
        raise ShapeError("a bore needs a sheet")
    if cutting.from_face is None:
        return Sized(sheet.thickness / 2, phrase("reasons-mid-thickness"))
    away = bench.fitting.scope.positive(cutting.from_face, "from-face")
    if away >= sheet.thickness:
        raise ShapeError("the bore lies beside its sheet", limit=sheet.thickness)
    return Sized(sheet.thickness - away, stated_as(cutting.from_face))
