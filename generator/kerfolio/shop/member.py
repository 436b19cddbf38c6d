"""What carries in a span: a panel or board, lying flat or on edge, section by section."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.geometry.cross_section import Strip, cross_sections
from kerfolio.settling.settled import Operation, SettledBoard, SettledPart, SettledSheet
from kerfolio.shop.beam import Layer, rectangle_inertia
from kerfolio.shop.fibre import Fibre, board_fibre, sheet_fibre


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """A carrying part: its material, ``count`` alike, its section at every station, mm.

    ``thickness`` is the whole panel's; ``on_edge`` tells which way it bends.
    """

    what: str
    fibre: Fibre
    density: float
    thickness: float
    sections: tuple[tuple[Strip, ...], ...]
    on_edge: bool = False
    count: int = 1

    def area(self, station: int) -> float:
        """Return the area of all alike at a station, mm2."""
        return self.count * math.fsum(
            each.width * each.thickness for each in self.sections[station]
        )

    def layer(self, station: int, base: float = 0.0) -> Layer:
        """Return the section at a station as a layer; a flat panel's underside lies at ``base``.

        Flat, each strip bends by itself; on edge they bend together about their common middle.
        """
        strips = self.sections[station]
        if not self.on_edge:
            inertia = math.fsum(rectangle_inertia(each.width, each.thickness) for each in strips)
            middle, half = base + self.thickness / 2, self.thickness / 2
        else:
            inertia, middle, half = _on_edge(strips)
        return Layer(
            stiffness=self.fibre.stiffness,
            area=self.area(station),
            inertia=self.count * inertia,
            middle=middle,
            half=half,
        )

    @property
    def mean_mass(self) -> float:
        """The mass of 1 mm of span on average, kg."""
        stations = range(len(self.sections))
        return math.fsum(map(self.area, stations)) / len(stations) * self.density * 1e-9

    @property
    def shoulder(self) -> float:
        """The height of its upper edge where no tab stands up, mm; for members on edge."""
        return min(max(each.high for each in strips) for strips in self.sections)


def _on_edge(strips: Sequence[Strip]) -> tuple[float, float, float]:
    """Return inertia, height of the middle and reach from it of strips that bend together."""
    areas = [each.width * each.thickness for each in strips]
    middles = [(each.low + each.high) / 2 for each in strips]
    axis = math.fsum(a * m for a, m in zip(areas, middles, strict=True)) / math.fsum(areas)
    inertia = math.fsum(
        rectangle_inertia(strip.thickness, strip.width) + area * (middle - axis) ** 2
        for strip, area, middle in zip(strips, areas, middles, strict=True)
    )
    reach = max(strips[-1].high - axis, axis - strips[0].low)
    return inertia, axis, reach


def panel_member(
    part: SettledPart,
    sheet: SettledSheet,
    axis: str,
    stations: Sequence[float],
    *,
    on_edge: bool = False,
    count: int = 1,
) -> Member | None:
    """Return a part as it carries along its x or y, None where its sheet has no stiffness."""
    fibre = sheet_fibre(sheet.stock, part.grain, axis, on_edge=on_edge)
    recesses = [
        (contour, cut.depth)
        for cut in part.cuts
        if cut.depth is not None and cut.operation is not Operation.ENGRAVE
        for contour in cut.contours
    ]
    if fibre is None:
        return None
    return Member(
        what=part.name,
        fibre=fibre,
        density=sheet.stock.density,
        thickness=part.thickness,
        sections=cross_sections(part.routed, recesses, part.thickness, axis, stations),
        on_edge=on_edge,
        count=count,
    )


def board_member(board: SettledBoard, stations: Sequence[float], *, on_edge: bool) -> Member | None:
    """Return a board as it carries along its length, None where it has no stiffness."""
    fibre = board_fibre(board.stock)
    if fibre is None:
        return None
    strip = Strip(0.0, board.stock.width, board.stock.thickness)
    return Member(
        what=board.use.name,
        fibre=fibre,
        density=board.stock.density,
        thickness=board.stock.thickness,
        sections=((strip,),) * len(stations),
        on_edge=on_edge,
    )
