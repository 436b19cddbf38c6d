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

_ROOT = 0.5  # mm a tab reaches into its part, and a notch out of it, so that the shapes join
_UP = (0.0, 1.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Bench:
    """What a feature is made from besides its own statement."""

    fitting: Fitting
    outline: Contour
    stock: Stock
    drawings: tuple[Drawing, ...]


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


def _notches(cutting: Notch, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    fitting = bench.fitting
    frame = edge_frame(cutting.edge, bench.outline, fitting.scope)
    width = fitting.width(cutting.takes, cutting.width)
    depth = fitting.notch_depth(cutting.depth, cutting.takes)
    for stated in cutting.at:
        s = fitting.scope.mm(stated)
        a, b = s - width.value / 2, s + width.value / 2
        bottom = [frame.point(end, -depth.value) for end in (a, b)]
        mating = tuple(Mating(at=each, eaten=frame.along) for each in bottom)
        at = frame.point(s, -depth.value)
        yield Shaped(
            feature=_settled(
                feature, "notch", at, frame.outward, width, depth, takes=cutting.takes
            ),
            taken=(frame.box(a, b, -depth.value, _ROOT),),
            mating=mating if cutting.takes else (),
            stands_on=(frame.box(a, b, -min(_ROOT, depth.value), -1e-4),),
        )


def _tabs(cutting: Tabs, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    fitting = bench.fitting
    frame = edge_frame(cutting.edge, bench.outline, fitting.scope)
    wide = fitting.scope.positive(cutting.width, "width")
    width = Sized(wide, f"stated: {cutting.width.text}")
    depth = fitting.tab_depth(cutting.depth, cutting.takes)
    radius = fitting.scope.mm(cutting.round) if cutting.round else 0.0
    for stated in cutting.at:
        s = fitting.scope.mm(stated)
        roots = [frame.point(end, 0.0) for end in (s, s + wide)]
        at = frame.point(s + wide / 2, 0.0)
        yield Shaped(
            feature=_settled(feature, "tab", at, frame.outward, width, depth, takes=cutting.takes),
            added=(frame.box(s, s + wide, -_ROOT, depth.value, radius),),
            mating=tuple(Mating(at=each, eaten=frame.along) for each in roots),
            stands_on=(frame.box(s, s + wide, -_ROOT, -1e-4),),
        )


def _fingers(cutting: Fingers, feature: Feature, bench: Bench) -> Shaped:
    fitting = bench.fitting
    frame = edge_frame(cutting.edge, bench.outline, fitting.scope)
    count = fitting.scope.count(cutting.count, least=2)
    span = frame.last - frame.first
    gap = fitting.finger_gap(span / count, cutting.takes)
    depth = fitting.tab_depth(None, cutting.takes)
    gaps = list(_gaps(frame, count, gap.value, first_is_gap=cutting.first == "gap"))
    ends = [s for a, b in gaps for s in (a, b) if frame.first < s < frame.last]
    return Shaped(
        feature=_settled(
            feature,
            "fingers",
            frame.point((frame.first + frame.last) / 2, 0.0),
            frame.outward,
            Sized(span, f"{count} fingers and gaps, each gap {gap.reason}"),
            depth,
            takes=cutting.takes,
        ),
        taken=tuple(frame.box(a, b, -depth.value, _ROOT) for a, b in gaps),
        mating=tuple(Mating(at=frame.point(s, -depth.value), eaten=frame.along) for s in ends),
        stands_on=(frame.box(frame.first, frame.last, -_ROOT, -1e-4),),
    )


def _gaps(
    frame: EdgeFrame, count: int, gap: float, *, first_is_gap: bool
) -> Iterator[tuple[float, float]]:
    """Yield where gaps begin and end; one at the edge's end runs out of the part."""
    pitch = (frame.last - frame.first) / count
    play = (gap - pitch) / 2
    for index in range(0 if first_is_gap else 1, count, 2):
        start = frame.first + index * pitch
        yield (
            start - (_ROOT if index == 0 else play),
            start + pitch + (_ROOT if index == count - 1 else play),
        )


def _holes(cutting: Hole, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    scope = bench.fitting.scope
    diameter = _diameter(cutting, bench)
    depth = None if cutting.depth is None else _depth(cutting.depth, bench)
    for spot in cutting.at:
        at = scope.point(spot)
        round_hole = circle(at, diameter.value)
        cuts = list(_counterbore(cutting, feature, bench, at))
        if depth is not None:
            cuts.append(_cut(Operation.HOLE, depth.value, feature, round_hole))
        yield Shaped(
            feature=_settled(feature, "hole", at, _UP, diameter, diameter, depth),
            taken=(round_hole,) if depth is None else (),
            cuts=tuple(cuts),
        )


def _diameter(cutting: Hole, bench: Bench) -> Sized:
    if cutting.diameter is not None:
        stated = bench.fitting.scope.positive(cutting.diameter, "diameter")
        return Sized(stated, f"stated: {cutting.diameter.text}")
    if cutting.pilot is not None:
        item = _item(cutting.pilot, bench)
        return _of_item(item.pilot, item, "pilot hole", cutting.pilot)
    assert cutting.for_ is not None, "a form lets nothing pass that states no size"
    item = _item(cutting.for_, bench)
    return _of_item(item.clearance, item, "clearance hole", cutting.for_)


def _item(named: Named, bench: Bench) -> HardwareStock:
    found = bench.stock.item(named.name)
    if found is None:
        advice = did_you_mean(named.name, (each.name for each in bench.stock.hardware))
        raise unsettled("unknown-hardware", f"no hardware `{named.name}`", named.place, advice)
    return found


def _of_item(diameter: float | None, item: HardwareStock, what: str, named: Named) -> Sized:
    if diameter is None:
        message = f"`{item.name}` has no {what} in the stock"
        raise unsettled("no-hole-size", message, named.place, "State a `diameter` instead.")
    return Sized(diameter, f"{what} for {item.title}")


def _counterbore(cutting: Hole, feature: Feature, bench: Bench, at: Point) -> Iterator[Cut]:
    if cutting.counterbore_diameter is None or cutting.counterbore_depth is None:
        return
    diameter = bench.fitting.scope.positive(cutting.counterbore_diameter, "diameter")
    depth = _depth(cutting.counterbore_depth, bench)
    yield _cut(Operation.POCKET, depth.value, feature, circle(at, diameter))


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


def _depth(stated: Amount, bench: Bench) -> Sized:
    return Sized(bench.fitting.scope.positive(stated, "depth"), f"stated: {stated.text}")


def _extent(contour: Contour) -> tuple[Sized, Sized]:
    """Return the width (across) and length (along) of a shape before it is turned."""
    box = bounds(contour)
    return Sized(box.height, "as drawn"), Sized(box.width, "as drawn")


def _cut(operation: Operation, depth: float, feature: Feature, contour: Contour) -> Cut:
    return Cut(operation=operation, depth=depth, contours=(contour,), feature=feature.name)


def _settled(
    feature: Feature,
    kind: str,
    at: Point,
    direction: Point,
    width: Sized,
    length: Sized,
    depth: Sized | None = None,
    takes: Named | None = None,
) -> SettledFeature:
    return SettledFeature(
        name=feature.name,
        kind=kind,
        at=at,
        direction=direction,
        width=width,
        length=length,
        depth=depth,
        takes=takes.name if takes else "",
        place=feature.place,
    )
