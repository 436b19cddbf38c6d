"""Stated features made into shapes; one function a kind."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import assert_never

from generator.basis.names import did_you_mean
from generator.geometry.contour import Contour, Point
from generator.geometry.measure import bounds
from generator.geometry.shape_error import ShapeError
from generator.geometry.shapes import circle, slot, unit
from generator.geometry.transform import moved, turned
from generator.model.feature import (
    Cutting,
    Engraving,
    Feature,
    Fingers,
    Groove,
    Hole,
    Notch,
    Pocket,
    Slot,
    Tabs,
    Window,
)
from generator.model.outline import Drawing
from generator.model.statement import Amount, Named
from generator.model.stock import HardwareStock, Stock
from generator.settling.edge import EdgeFrame, edge_frame
from generator.settling.engraving import engraved
from generator.settling.fitted import Fitting
from generator.settling.outline import outline_contour
from generator.settling.scope import misshapen, unsettled
from generator.settling.settled import Cut, Operation, SettledFeature, Sized
from generator.settling.shaped import Mating, Shaped

def shapes_of(feature: Feature, bench: Bench) -> tuple[Shaped, ...]:
    """Return a feature's shapes before repeats and mirrors. Raises SettlingError."""
    try:
        return tuple(_shapes(feature.cutting, feature, bench))
    except ShapeError as fault:
        raise misshapen(f"`{feature.name}`", fault, feature.place) from fault


def _shapes(cutting: Cutting, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    match cutting:
        case Slot():
            yield _slot(cutting, feature, bench)
        case Notch():
            yield from _notches(cutting, feature, bench)
        case Hole():
            yield from _holes(cutting, feature, bench)
        case Window():
            yield _window(cutting, feature, bench)
        case Pocket():
            yield _pocket(cutting, feature, bench)
        case Groove():
            yield _groove(cutting, feature, bench)
        case Tabs():
            yield from _tabs(cutting, feature, bench)
        case Fingers():
            yield _fingers(cutting, feature, bench)
        case Engraving():
            yield engraved(cutting, feature, bench.fitting.scope, bench.drawings)
        case _:
            assert_never(cutting)


def slot_corners(at: Point, along: Point, length: float, width: float) -> tuple[Mating, ...]:
    """Return the four corners of a slot; a sideways relief eats past its end walls."""
    across = (0.0 - along[1], along[0])
    spots = ((a * length / 2, b * width / 2) for a in (-1, 1) for b in (-1, 1))
    return tuple(
        Mating(
            at=(at[0] + u * along[0] + v * across[0], at[1] + u * along[1] + v * across[1]),
            eaten=across,
        )
        for u, v in spots
    )


def _slot(cutting: Slot, feature: Feature, bench: Bench) -> Shaped:
    fitting = bench.fitting
    at, along = fitting.scope.point(cutting.at), unit(fitting.scope.plain(cutting.angle))
    width = fitting.width(cutting.takes, cutting.width)
    length = fitting.length(cutting.length, cutting.takes)
    corners = slot_corners(at, along, length.value, width.value)
    return Shaped(
        feature=_settled(feature, "slot", at, along, width, length, takes=cutting.takes),
        taken=(slot(at, along, length.value, width.value),),
        mating=corners if cutting.takes else (),
    )


def _window(cutting: Window, feature: Feature, bench: Bench) -> Shaped:
    scope = bench.fitting.scope
    at, angle = scope.point(cutting.at), scope.plain(cutting.angle)
    made = outline_contour(cutting.outline, scope, f"`{feature.name}`", centred=True)
    placed = moved(turned(made, angle), *at)
    width, length = _extent(made)
    return Shaped(
        feature=_settled(feature, "window", at, unit(angle), width, length), taken=(placed,)
    )


def _pocket(cutting: Pocket, feature: Feature, bench: Bench) -> Shaped:
    fitting = bench.fitting
    scope = fitting.scope
    at, angle = scope.point(cutting.at), scope.plain(cutting.angle)
    depth = _depth(cutting.depth, bench)
    if cutting.takes is not None and cutting.length is not None:
        width = fitting.width(cutting.takes, None)
        length = fitting.length(cutting.length, cutting.takes)
        placed = slot(at, unit(angle), length.value, width.value)
        corners = slot_corners(at, unit(angle), length.value, width.value)
    else:
        assert cutting.outline is not None, "a form lets nothing pass that states no shape"
        made = outline_contour(cutting.outline, scope, f"`{feature.name}`", centred=True)
        placed, corners = moved(turned(made, angle), *at), ()
        width, length = _extent(made)
    return Shaped(
        feature=_settled(feature, "pocket", at, unit(angle), width, length, depth, cutting.takes),
        cuts=(_cut(Operation.POCKET, depth.value, feature, placed),),
        pocketed=corners,
    )


def _groove(cutting: Groove, feature: Feature, bench: Bench) -> Shaped:
    fitting = bench.fitting
    (x0, y0), (x1, y1) = fitting.scope.point(cutting.start), fitting.scope.point(cutting.end)
    size = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
    if size < 1e-6:
        raise unsettled("zero-area", f"groove `{feature.name}` has no length", feature.place)
    along, at = ((x1 - x0) / size, (y1 - y0) / size), ((x0 + x1) / 2, (y0 + y1) / 2)
    width = fitting.width(cutting.takes, cutting.width)
    fit = fitting.sheet(cutting.takes).fit if cutting.takes else 0.0
    length = Sized(size + 2 * fit, "from end to end" + (", + 2 x fit" if fit else ""))
    depth = _depth(cutting.depth, bench)
    corners = slot_corners(at, along, length.value, width.value)
    return Shaped(
        feature=_settled(feature, "groove", at, along, width, length, depth, cutting.takes),
        cuts=(
            _cut(
                Operation.POCKET, depth.value, feature, slot(at, along, length.value, width.value)
            ),
        ),
        pocketed=corners if cutting.takes else (),
    )


def _extent(contour: Contour) -> tuple[Sized, Sized]:
    """Return the width (across) and length (along) of a shape before it is turned."""
    box = bounds(contour)
    return Sized(box.height, "as drawn"), Sized(box.width, "as drawn")
