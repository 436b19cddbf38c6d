"""What carries in a span: a panel or board, lying flat or on edge, section by section."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from kerfolio.geometry.cross_section import Strip, between, cross_sections
from kerfolio.model.span import Span
from kerfolio.settling.settled import (
    Operation,
    SettledBoard,
    SettledFeature,
    SettledPart,
    SettledPlan,
)
from kerfolio.shop.beam import Layer, rectangle_inertia
from kerfolio.shop.body import body_of, end_tabs
from kerfolio.shop.fibre import CRUSHING_SHARE, Fibre, Under, board_fibre, sheet_fibre

_STUB = 0.5
"""An end lower than this share of a web is a stub: it hangs the web up and carries no bending."""


_NEAR = 1.0
"""A support no farther than this from tabs, mm, holds them."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """Where a span runs, along its axis: its ends and the middles of equal steps between, mm."""

    ends: tuple[float, float]
    stations: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TabSet:
    """The tabs at one end of a member: how many, their width in all, how far they reach in, mm."""

    count: int
    width: float
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Member:
    """A carrying part: its material, ``count`` alike, its section at every station, mm.

    ``height`` is how high it stands in the span, from ``foot`` (its lower edge as drawn).
    ``thickness`` is the whole panel's; ``on_edge`` tells which way it bends. A section is empty
    where it does not reach. ``tabs`` are those that hold its first and its last end; None where
    it lies on something there.
    """

    what: str
    fibre: Fibre
    density: float
    thickness: float
    sections: tuple[tuple[Strip, ...], ...]
    height: float
    foot: float = 0.0
    on_edge: bool = False
    count: int = 1
    tabs: tuple[TabSet | None, TabSet | None] = (None, None)

    def area(self, station: int) -> float:
        """Return the area of all alike at a station, mm2."""
        return self.count * math.fsum(
            each.width * each.thickness for each in self.sections[station]
        )

    def layer(self, station: int, base: float = 0.0) -> Layer:
        """Return the section at a station as a layer whose underside lies at ``base``.

        Flat, each strip bends by itself; on edge they bend together about their common middle.
        """
        strips = self.sections[station]
        if not strips:
            return Layer(
                stiffness=self.fibre.stiffness, area=0.0, inertia=0.0, middle=base, half=0.0
            )
        if not self.on_edge:
            inertia = math.fsum(rectangle_inertia(each.width, each.thickness) for each in strips)
            middle, half = self.thickness / 2, self.thickness / 2
        else:
            inertia, middle, half = _on_edge(strips)
        return Layer(
            stiffness=self.fibre.stiffness,
            area=self.area(station),
            inertia=self.count * inertia,
            middle=base + middle - self.foot,
            half=half,
        )

    @property
    def mean_mass(self) -> float:
        """The mass of 1 mm of span on average, kg."""
        stations = range(len(self.sections))
        return math.fsum(map(self.area, stations)) / len(stations) * self.density * 1e-9

    @property
    def bearing(self) -> float | None:
        """What bears its tabs, N/mm2: pressure on its face, or on edge on its edge."""
        if not self.on_edge:
            return self.fibre.bearing
        return None if self.fibre.strength is None else self.fibre.strength * CRUSHING_SHARE


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


def carrier_member(
    part: SettledPart, settled: SettledPlan, span: Span, line: Line
) -> Member | None:
    """Return the part that a span is stated of, None where its sheet has no stiffness.

    Tabs on its long edges carry no bending; at its ends the tabs alone are there.
    """
    axis, on_edge, stations = span.axis, span.kind == "rail", line.stations
    sheet, body = settled.sheet(part.sheet), body_of(part)
    fibre = sheet_fibre(sheet.stock, part.grain, axis, _under(span, settled), on_edge=on_edge)
    if fibre is None:
        return None
    low, high = (body.x0, body.x1) if axis == "x" else (body.y0, body.y1)
    foot, top = (body.y0, body.y1) if axis == "x" else (body.x0, body.x1)
    sections = tuple(
        between(strips, foot, top) if low <= at <= high else strips
        for at, strips in zip(stations, _sections(part, axis, stations), strict=True)
    )
    return Member(
        what=part.name,
        fibre=fibre,
        density=sheet.stock.density,
        thickness=part.thickness,
        sections=sections,
        height=top - foot if on_edge else part.thickness,
        foot=foot if on_edge else 0.0,
        on_edge=on_edge,
        tabs=_tabs_at(part, settled, axis, line.ends),
    )


def under_member(
    part: SettledPart,
    settled: SettledPlan,
    span: Span,
    line: Line,
    *,
    lies: str,
    count: int,
) -> Member | None:
    """Return a part that lies under another, its middle under the middle of the span.

    Its tabs carry no bending, nor does a web where it is only a stub.
    """
    sheet, body, on_edge = settled.sheet(part.sheet), body_of(part), lies == "edge"
    fibre = sheet_fibre(sheet.stock, part.grain, "x", _under(span, settled), on_edge=on_edge)
    if fibre is None:
        return None
    shift = body.centre[0] - math.fsum(line.ends) / 2
    along = tuple(at + shift for at in line.stations)
    sections = [
        between(strips, body.y0, body.y1) if body.x0 <= at <= body.x1 else ()
        for at, strips in zip(along, _sections(part, "x", along), strict=True)
    ]
    return Member(
        what=part.name,
        fibre=fibre,
        density=sheet.stock.density,
        thickness=part.thickness,
        sections=_without_stubs(sections) if on_edge else tuple(sections),
        height=body.height if on_edge else part.thickness,
        foot=body.y0 if on_edge else 0.0,
        on_edge=on_edge,
        count=count,
        tabs=_tabs_at(part, settled, "x", (line.ends[0] + shift, line.ends[1] + shift)),
    )


def board_member(
    board: SettledBoard, settled: SettledPlan, span: Span, stations: Sequence[float]
) -> Member | None:
    """Return a board as it carries along its length, None where it has no stiffness."""
    fibre, on_edge = board_fibre(board.stock, _under(span, settled)), span.kind == "rail"
    if fibre is None:
        return None
    strip = Strip(0.0, board.stock.width, board.stock.thickness)
    return Member(
        what=board.use.name,
        fibre=fibre,
        density=board.stock.density,
        thickness=board.stock.thickness,
        sections=((strip,),) * len(stations),
        height=board.stock.width if on_edge else board.stock.thickness,
        on_edge=on_edge,
    )


def _under(span: Span, settled: SettledPlan) -> Under:
    return Under(lasting=span.lasting, climate=settled.plan.climate)


def _sections(
    part: SettledPart, axis: str, stations: tuple[float, ...]
) -> tuple[tuple[Strip, ...], ...]:
    recesses = tuple(
        (contour, cut.depth)
        for cut in part.cuts
        if cut.depth is not None and cut.operation is not Operation.ENGRAVE
        for contour in cut.contours
    )
    return cross_sections(part.routed, recesses, part.thickness, axis, stations)


def _reach_in(tab: SettledFeature, settled: SettledPlan) -> float:
    """Return how far a tab reaches into what it is said to go through, mm."""
    depth = tab.length.value
    return min(depth, settled.sheet(tab.takes).thickness) if tab.takes else depth


def _without_stubs(sections: Sequence[tuple[Strip, ...]]) -> tuple[tuple[Strip, ...], ...]:
    """Return sections of a web with its low ends left out."""
    heights = [math.fsum(each.width for each in strips) for strips in sections]
    full = [
        index for index, each in enumerate(heights) if each > 0 and each >= _STUB * max(heights)
    ]
    if not full:
        return tuple(sections)
    first, last = full[0], full[-1]
    return tuple(strips if first <= index <= last else () for index, strips in enumerate(sections))


def _tabs_at(
    part: SettledPart, settled: SettledPlan, axis: str, ends: tuple[float, float]
) -> tuple[TabSet | None, TabSet | None]:
    """Return the tabs at both ends of the stations, where the supports hold it by its tabs."""
    index = "xy".index(axis)
    low, high = end_tabs(part, axis)
    first, last = ends if ends[0] <= ends[1] else ends[::-1]
    found = []
    for tabs, at, way in ((low, first, -1), (high, last, 1)):
        depth = min((_reach_in(each, settled) for each in tabs), default=0.0)
        held = tabs and -_NEAR <= (at - tabs[0].at[index]) * way <= depth + _NEAR
        width = math.fsum(each.width.value for each in tabs)
        found.append(TabSet(count=len(tabs), width=width, depth=depth) if held else None)
    return found[0], found[1]
