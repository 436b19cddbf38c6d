"""A plan with a feature of it put elsewhere, as a maker would write it: its amounts changed."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from kerfolio.assembly.blame import Culprit
from kerfolio.assembly.feature_kinds import Freedom
from kerfolio.assembly.pairing import TOLERANCE
from kerfolio.basis.digits import rounded
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.geometry.contour import Point
from kerfolio.geometry.rigid import added, scaled
from kerfolio.model.feature import Cutting, Feature, Groove, Hole, Notch, Pocket, Slot, Tabs, Window
from kerfolio.model.outline import Rectangle
from kerfolio.model.part import Part
from kerfolio.model.plan import Plan
from kerfolio.model.statement import Amount, Spot
from kerfolio.settling.making import one_of
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledFeature, SettledPlan


def settled_with(settled: SettledPlan, culprits: Iterable[Culprit]) -> SettledPlan | None:
    """Return a settled plan, or the one thing that it is of a set, with culprits put right.

    None where no amount says where one lies, or it does not settle so.
    """
    plan: Plan | None = settled.plan
    for each in culprits:
        plan = None if plan is None else amended(plan, each)
    return None if plan is None else settled_as(settled, plan)


def settled_as(settled: SettledPlan, plan: Plan) -> SettledPlan | None:
    """Return another plan settled where one is; None where it does not settle there."""
    made, _ = settle(plan, settled.stock, settled.variant)
    if made is None:
        return None
    return one_of(made, made.plan.assemblies[0]) if made.plan.is_set else made


def amended(plan: Plan, culprit: Culprit) -> Plan | None:
    """Return a plan with a culprit put right; None where no amount of it says where it lies."""
    suspect = culprit.suspect
    part = next((each for each in plan.parts if each.name == suspect.part.name), None)
    if part is None or abs(culprit.by[2]) > TOLERANCE or not suspect.features:
        return None
    made: Part | None = part
    outward, along, _ = culprit.by
    off = added(scaled(suspect.axes[0], outward), scaled(suspect.axes[1], along))
    if suspect.freedom.on_edge:
        if abs(outward) > TOLERANCE:
            if suspect.freedom is Freedom.OUTLINE:
                made = _longer(part, suspect.outward, outward, plan.units)
            else:
                made = _deeper(part, culprit, -outward, plan.units)
        off = scaled(suspect.axes[1], along)
    if made is not None and max(abs(off[0]), abs(off[1])) > TOLERANCE:
        made = _shifted(made, culprit, (off[0], off[1]), plan.units)
    if made is None:
        return None
    return replace(plan, parts=tuple(made if each is part else each for each in plan.parts))


def _longer(part: Part, outward: Point, by: float, units: str) -> Part | None:
    """Return a rectangular part made longer; only what is measured from the far side follows."""
    shape = part.shape
    if not isinstance(shape, Rectangle):
        return None
    if abs(outward[0]) > abs(outward[1]):
        return replace(part, shape=replace(shape, width=_more(shape.width, by, units)))
    return replace(part, shape=replace(shape, height=_more(shape.height, by, units)))


def _deeper(part: Part, culprit: Culprit, by: float, units: str) -> Part | None:
    """Return a part with its notches deeper; None for one of several, which have one depth."""
    suspect = culprit.suspect
    name = suspect.features[0].partition(".")[0]
    feature = next((each for each in part.features if each.name == name), None)
    mine = [f for f in suspect.part.features if f.name.partition(".")[0] == name]
    if feature is None or not isinstance(feature.cutting, Notch):
        return None
    if len(suspect.features) != len(mine):
        return None
    deeper = replace(feature.cutting, depth=_more(feature.cutting.depth, by, units))
    there = replace(feature, cutting=deeper)
    features = tuple(there if each is feature else each for each in part.features)
    return replace(part, features=features)


def _shifted(part: Part, culprit: Culprit, by: Point, units: str) -> Part | None:
    suspect = culprit.suspect
    name = suspect.features[0].partition(".")[0]
    feature = next((each for each in part.features if each.name == name), None)
    if feature is None:
        return None
    mine = [f for f in suspect.part.features if f.name.partition(".")[0] == name]
    whole = len(suspect.features) == len(mine)
    if feature.mirror is not None or (feature.repeat is not None and not whole):
        return part  # no amount moves one copy alone, nor both of a mirrored pair alike
    number = None if whole else int(suspect.features[0].rpartition(".")[2]) - 1
    first = next(f for f in mine if f.name == suspect.features[0])
    made = _moved(feature, number, by, first, units)
    if made is None:
        return None
    features = tuple(made if each is feature else each for each in part.features)
    return replace(part, features=features)


def _moved(
    feature: Feature, number: int | None, by: Point, settled: SettledFeature, units: str
) -> Feature | None:
    def spots(stated: tuple[Spot, ...]) -> tuple[Spot, ...]:
        return tuple(
            _at(each, by, units) if number in (None, n) else each for n, each in enumerate(stated)
        )

    def along(stated: tuple[Amount, ...], mm: float) -> tuple[Amount, ...]:
        return tuple(
            _more(each, mm, units) if number in (None, n) else each for n, each in enumerate(stated)
        )

    cutting = feature.cutting
    made: Cutting
    match cutting:
        case Slot() | Pocket() | Hole():
            made = replace(cutting, at=spots(cutting.at))
        case Window():
            made = replace(cutting, at=_at(cutting.at, by, units))
        case Groove():
            ends = (_at(each, by, units) for each in (cutting.start, cutting.end))
            start, end = ends
            made = replace(cutting, start=start, end=end)
        case Notch() | Tabs() if settled.ruler is not None:
            (x0, y0), (x1, y1) = settled.ruler
            size = ((x1 - x0) ** 2 + (y1 - y0) ** 2) ** 0.5
            mm = (by[0] * (x1 - x0) + by[1] * (y1 - y0)) / size
            made = replace(cutting, at=along(cutting.at, mm))
        case _:
            return None
    return replace(feature, cutting=made)


def _at(spot: Spot, by: Point, units: str) -> Spot:
    return replace(spot, x=_more(spot.x, by[0], units), y=_more(spot.y, by[1], units))


def _more(amount: Amount, mm: float, units: str) -> Amount:
    return replace(amount, text=f"({amount.text}) + ({rounded(mm / float(MM_PER_UNIT[units]), 4)})")
