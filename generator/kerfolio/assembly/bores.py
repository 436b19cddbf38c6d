"""Holes that name their hardware, those that a face joint lays on each other, and their screws.

Only what the flat plan knows is looked at. Washers, what is bored by hand, and boards are not in
the plan's shapes.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from kerfolio.assembly.ends import end_of, pieces_of
from kerfolio.basis.place import Place
from kerfolio.basis.said import Words, named
from kerfolio.model.feature import Hole
from kerfolio.model.feature_kind import HOLE
from kerfolio.model.joint_kind import EDGE_JOINT
from kerfolio.model.stock import HardwareStock
from kerfolio.settling.fastened import is_meant
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan


@dataclass(frozen=True, slots=True, kw_only=True)
class Bore:
    """A hole that names its hardware; ``grip`` is the wood in mm its head draws on."""

    part: SettledPart
    feature: SettledFeature
    item: HardwareStock
    is_pilot: bool

    @property
    def grip(self) -> float:
        """The sheet's thickness less the counterbore."""
        return self.part.thickness - sunk(self.feature)

    @property
    def called(self) -> Words:
        """What the hole is called in a remark."""
        return named(f"{self.part.name}.{self.feature.name}")


def bores_of(settled: SettledPlan, part: SettledPart) -> Iterator[Bore]:
    """Yield the holes of a part that name their hardware."""
    stated = settled.plan.part(part.name)
    holes = {each.name: each.cutting for each in stated.features if isinstance(each.cutting, Hole)}
    for feature in part.features:
        hole = holes.get(feature.name.partition(".")[0])
        named = hole and (hole.for_ or hole.pilot)
        item = settled.stock.item(named.name) if named else None
        if hole is not None and item is not None:
            pilot = hole.pilot is not None
            yield Bore(part=part, feature=feature, item=item, is_pilot=pilot)


def unfastened(settled: SettledPlan, part: SettledPart, feature: SettledFeature) -> bool:
    """Tell whether no fastening goes through a feature: those are looked at where they stand."""
    labels = [each.label for each in part.pieces]
    ends = [end.name for each in settled.plan.fastenings for end in each.joins]
    return not any(
        end.startswith(f"{label}.") and is_meant(feature.name, end[len(label) + 1 :])
        for label in labels
        for end in ends
    )


def sunk(feature: SettledFeature) -> float:
    """Return the depth in mm of a hole's counterbore, 0 without one."""
    return feature.counterbore[1].value if feature.counterbore else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Lapped:
    """Two holes that a face joint lays on each other, and where the joint is stated."""

    one: Bore | None
    other: Bore | None
    parts: tuple[SettledPart, SettledPart]
    features: tuple[SettledFeature, SettledFeature]
    place: Place


def lapped(settled: SettledPlan) -> Iterator[Lapped]:
    """Yield the pairs of holes that face joints lay on each other."""
    pieces = pieces_of(settled)
    for joint in settled.plan.joints:
        a, b = end_of(joint.a.name, pieces), end_of(joint.b.name, pieces)
        if not joint.kind.flat or a is None or b is None:
            continue
        for mine, theirs in zip(a.features, b.features, strict=False):
            if mine.kind is theirs.kind is HOLE:
                yield Lapped(
                    one=_bore_of(settled, a.part, mine),
                    other=_bore_of(settled, b.part, theirs),
                    parts=(a.part, b.part),
                    features=(mine, theirs),
                    place=joint.place,
                )


@dataclass(frozen=True, slots=True, kw_only=True)
class Screwed:
    """A screw through one part into another: its bite is what is left of it for the second."""

    pilot: Bore
    grip: float
    place: Place

    @property
    def bite(self) -> float:
        """How deep the screw goes into the part with the pilot hole, mm."""
        return (self.pilot.item.length or 0.0) - self.grip


def screwed(settled: SettledPlan) -> Iterator[Screwed]:
    """Yield the screws that face joints drive through one part into another."""
    for lap in lapped(settled):
        for index, bore in enumerate((lap.one, lap.other)):
            if bore and bore.is_pilot and bore.item.length:
                over, hole = lap.parts[1 - index], lap.features[1 - index]
                grip = over.thickness - sunk(hole)
                yield Screwed(pilot=bore, grip=grip, place=lap.place)


@dataclass(frozen=True, slots=True, kw_only=True)
class ScrewedEdge:
    """A screw through one part into the edge of another, mm deep."""

    part: SettledPart
    bore: Bore

    @property
    def bite(self) -> float:
        """How deep the screw goes into the edge, mm."""
        return (self.bore.item.length or 0.0) - self.bore.grip


def screwed_edges(settled: SettledPlan) -> Iterator[ScrewedEdge]:
    """Yield the screws that butt joints drive into edges."""
    pieces = pieces_of(settled)
    for joint in settled.plan.joints:
        a, b = end_of(joint.a.name, pieces), end_of(joint.b.name, pieces)
        if joint.kind is not EDGE_JOINT or a is None or b is None:
            continue
        for hole in b.features:
            bore = _bore_of(settled, b.part, hole)
            if bore and bore.item.kind == "screw" and bore.item.length:
                yield ScrewedEdge(part=a.part, bore=bore)


def _bore_of(settled: SettledPlan, part: SettledPart, feature: SettledFeature) -> Bore | None:
    return next((each for each in bores_of(settled, part) if each.feature == feature), None)
