"""Engravings: lines of text or drawings scratched into the face."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.names import did_you_mean
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shape_error import ShapeError
from kerfolio.geometry.shapes import unit
from kerfolio.geometry.stroke_text import outline_text, stroke_text
from kerfolio.geometry.transform import moved, scaled, turned
from kerfolio.model.feature import Engraving, Feature
from kerfolio.model.outline import Drawing
from kerfolio.settling.bench import Bench, settled_feature
from kerfolio.settling.fitted import stated_as
from kerfolio.settling.scope import unsettled
from kerfolio.settling.settled import Cut, Operation, Sized
from kerfolio.settling.shaped import Shaped

_LETTERS = {"stroke": stroke_text, "outline": outline_text}


def engraving(cutting: Engraving, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield an engraving's lines, its middle at the stated point. Raises SettlingError."""
    scope = bench.fitting.scope
    at, angle = scope.point(cutting.at), scope.plain(cutting.angle)
    height = scope.positive(cutting.height, "height")
    depth = scope.positive(cutting.depth, "depth")
    if cutting.text:
        lines = _text(cutting, feature, height, at, angle)
    else:
        lines = _drawing(cutting, feature, height, at, angle, bench.drawings)
    boxes = [bounds(each) for each in lines]
    wide = max(box.x1 for box in boxes) - min(box.x0 for box in boxes)
    cut = Cut(operation=Operation.ENGRAVE, depth=depth, contours=lines, feature=feature.name)
    sides = (Sized(height, stated_as(cutting.height)), Sized(wide, "as wide as its lines"))
    sized = Sized(depth, stated_as(cutting.depth))
    yield Shaped(
        feature=settled_feature(feature, at, unit(angle), sides, lines, sized),
        cuts=(cut,),
    )


def _text(
    cutting: Engraving, feature: Feature, height: float, at: Point, angle: float
) -> tuple[Contour, ...]:
    try:
        return _LETTERS[cutting.style](cutting.text, height, at, "middle", angle)
    except ShapeError as fault:
        advice = "Use plain letters, digits and signs." if fault.character else ""
        message = f"`{feature.name}`: {fault}"
        raise unsettled("no-such-letter", message, feature.place, advice) from fault


def _drawing(
    cutting: Engraving,
    feature: Feature,
    height: float,
    at: Point,
    angle: float,
    drawings: tuple[Drawing, ...],
) -> tuple[Contour, ...]:
    found = next((each for each in drawings if each.file == cutting.drawing), None)
    if found is None or not found.elements:
        advice = did_you_mean(cutting.drawing, (each.file for each in drawings))
        message = f"no lines in `{cutting.drawing}`"
        raise unsettled("no-drawing", message, feature.place, advice)
    lines = [Contour(each.vertices, closed=each.closed) for each in found.elements]
    boxes = [bounds(each) for each in lines]
    x0, x1 = min(box.x0 for box in boxes), max(box.x1 for box in boxes)
    y0, y1 = min(box.y0 for box in boxes), max(box.y1 for box in boxes)
    if y1 - y0 <= 0:
        raise unsettled("zero-area", f"`{cutting.drawing}` has no height", feature.place)
    middle, factor = ((x0 + x1) / 2, (y0 + y1) / 2), height / (y1 - y0)
    return tuple(
        moved(turned(scaled(moved(each, -middle[0], -middle[1]), factor), angle), *at)
        for each in lines
    )
