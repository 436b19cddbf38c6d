"""Weight, and where the centre of gravity of a part lies."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from kerfolio.geometry.boolean import intersection
from kerfolio.geometry.contour import Region
from kerfolio.geometry.measure import area, centroid
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan
from kerfolio.shop.lists import hardware_counts


@dataclass(frozen=True, slots=True, kw_only=True)
class PartMass:
    """One piece of a part: kg, and its centre of gravity in mm in the part's frame.

    x and y in its face; ``z`` from its rear face towards the show face, into which recesses are
    cut.
    """

    part: str
    mass: float
    x: float
    y: float
    z: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Weight:
    """What a copy weighs, kg: panels, boards, hardware; ``unweighed`` names items without a mass.

    Finish and glue are in none of it.
    """

    panels: float
    boards: float
    hardware: float
    unweighed: tuple[str, ...] = ()

    @property
    def total(self) -> float:
        """All of it, kg."""
        return self.panels + self.boards + self.hardware


def part_mass(part: SettledPart) -> PartMass:
    """Return a part's mass and centre of gravity; engravings weigh nothing.

    Moments of the whole panel less those of its recesses; where recesses overlap, the deeper one
    counts.
    """
    thick = part.thickness
    lumps = [(area(part.routed) * thick, centroid(part.routed), thick / 2)]
    for layer, top, depth in _removed(part):
        lumps += [(-area(each) * depth, centroid(each), top - depth / 2) for each in layer]
    volume = math.fsum(size for size, _, _ in lumps)
    return PartMass(
        part=part.name,
        mass=part.mass,
        x=math.fsum(size * at[0] for size, at, _ in lumps) / volume,
        y=math.fsum(size * at[1] for size, at, _ in lumps) / volume,
        z=math.fsum(size * z for size, _, z in lumps) / volume,
    )


def _removed(part: SettledPart) -> Iterable[tuple[tuple[Region, ...], float, float]]:
    """Yield what recesses take, layer by layer: its areas, where its top lies, how deep it is."""
    recesses = [
        (cut.depth, contour)
        for cut in part.cuts
        if cut.depth is not None and cut.operation is not Operation.ENGRAVE
        for contour in cut.contours
    ]
    above = 0.0
    for depth in sorted({depth for depth, _ in recesses}):
        deeper = [contour for reach, contour in recesses if reach >= depth]
        yield intersection(part.routed, deeper), part.thickness - above, depth - above
        above = depth


def weight_of(settled: SettledPlan) -> Weight:
    """Return what one copy weighs."""
    items = [
        (name, settled.stock.item(name), count)
        for name, count in hardware_counts(settled.plan).items()
    ]
    known = [(item.mass, count) for _, item, count in items if item and item.mass is not None]
    return Weight(
        panels=math.fsum(part.mass * len(part.pieces) for part in settled.parts),
        boards=math.fsum(board.mass * board.use.count for board in settled.boards),
        hardware=math.fsum(mass * count for mass, count in known),
        unweighed=tuple(name for name, item, _ in items if item is None or item.mass is None),
    )
