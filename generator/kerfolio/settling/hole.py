"""Holes: stated by a diameter, or by what goes through or into them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from kerfolio.geometry.shapes import circle
from kerfolio.model.feature import EdgeBore, Feature, Hole
from kerfolio.model.statement import Named
from kerfolio.model.stock import HardwareStock
from kerfolio.settling.bench import Bench, cut_to, settled_feature
from kerfolio.settling.scope import unknown, unsettled
from kerfolio.settling.settled import Operation, Sized
from kerfolio.settling.shaped import Shaped

_UP = (0.0, 1.0)


def holes(cutting: Hole, feature: Feature, bench: Bench) -> Iterator[Shaped]:
    """Yield a hole at each of its points. Raises SettlingError."""
    diameter = bored_width(cutting, bench)
    depth = None if cutting.depth is None else bench.depth(cutting.depth)
    wider = _counterbore(cutting, bench)
    for spot in cutting.at:
        at = bench.fitting.scope.point(spot)
        bore = circle(at, diameter.value)
        cuts = []
        if wider is not None:
            wide, deep = (each.value for each in wider)
            cuts.append(cut_to(Operation.POCKET, deep, feature, circle(at, wide)))
        if depth is not None:
            cuts.append(cut_to(Operation.HOLE, depth.value, feature, bore))
        made = settled_feature(feature, at, _UP, (diameter, diameter), (bore,), depth)
        yield Shaped(
            feature=replace(made, counterbore=wider),
            taken=(bore,) if depth is None else (),
            cuts=tuple(cuts),
        )


def bored_width(cutting: Hole | EdgeBore, bench: Bench) -> Sized:
    """Return the diameter of a hole: as stated, or that of what it is for. Raises SettlingError."""
    if cutting.diameter is not None:
        return bench.positive(cutting.diameter, "diameter")
    if cutting.pilot is not None:
        item = _item(cutting.pilot, bench)
        return _of_item(item.pilot, item, "pilot hole", cutting.pilot)
    assert cutting.for_ is not None, "a form lets nothing pass that states no size"
    item = _item(cutting.for_, bench)
    return _of_item(item.clearance, item, "clearance hole", cutting.for_)


def _item(named: Named, bench: Bench) -> HardwareStock:
    found = bench.stock.item(named.name)
    if found is None:
        raise unknown("hardware", named, (each.name for each in bench.stock.hardware))
    return found


def _of_item(diameter: float | None, item: HardwareStock, what: str, named: Named) -> Sized:
    if diameter is None:
        message = f"`{item.name}` has no {what} in the stock"
        raise unsettled("no-hole-size", message, named.place, "State a `diameter` instead.")
    return Sized(diameter, f"{what} for {item.title}")


def _counterbore(cutting: Hole, bench: Bench) -> tuple[Sized, Sized] | None:
    """Return the diameter and the depth of the wider bore, None where none is stated."""
    if cutting.counterbore_diameter is None or cutting.counterbore_depth is None:
        return None
    diameter = bench.positive(cutting.counterbore_diameter, "diameter")
    return diameter, bench.depth(cutting.counterbore_depth)
