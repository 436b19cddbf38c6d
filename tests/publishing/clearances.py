"""Clearances of joints measured in written DXF files, which ezdxf reads."""

from __future__ import annotations

import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache
from math import inf

import ezdxf

from kerfolio.assembly.ends import end_of, pieces_of
from kerfolio.edition.names import cut_part_name
from kerfolio.geometry.contour import Point
from kerfolio.model.feature_kind import NOTCH, POCKET, SLOT, TAB
from kerfolio.settling.settled import SettledFeature, SettledPlan

_LEAN = 2e-4
"""By how much, mm, a wall may lean: both its ends are written to 0.0001 mm."""


@dataclass(frozen=True, kw_only=True)
class Play:
    """How much wider, or longer, than what goes in something is, mm; half of it on either side.

    ``meant`` is what the settled plan states.
    """

    what: str
    takes: str
    mm: float
    meant: float


class Walls:
    """The straight lines of a part's file, and the thickness it was cut for, both as written."""

    def __init__(self, text: str) -> None:
        document = ezdxf.read(io.StringIO(text))
        self.thickness = float(dict(document.header.custom_vars.properties)["thickness_mm"])
        self._lines: list[tuple[Point, Point]] = []
        for line in document.modelspace().query("LWPOLYLINE"):
            spots = list(line.get_points("xyb"))
            ends = [*spots[1:], *(spots[:1] if line.closed else ())]
            pairs = zip(spots, ends, strict=False)
            self._lines += [((x, y), (u, v)) for (x, y, bulge), (u, v, _) in pairs if not bulge]

    def across(self, at: Point, way: Point) -> float:
        """Return how far apart the nearest walls are that stand across a way through a point."""
        ahead, behind = inf, inf
        for reach in self._reaches(at, way):
            if reach > 0:
                ahead = min(ahead, reach)
            else:
                behind = min(behind, -reach)
        return ahead + behind

    def _reaches(self, at: Point, way: Point) -> Iterator[float]:
        """Yield how far ahead each wall is that a line through the point crosses squarely."""
        for start, end in self._lines:
            (a, one), (b, other) = _seen(start, at, way), _seen(end, at, way)
            if abs(a - b) <= _LEAN and one * other <= 0 and one != other:
                yield (a + b) / 2


def _seen(spot: Point, at: Point, way: Point) -> Point:
    """Return how far ahead and how far to the left a spot is for who looks along a way."""
    x, y = spot[0] - at[0], spot[1] - at[1]
    return (x * way[0] + y * way[1], y * way[0] - x * way[1])


def plays(settled: SettledPlan, files: Mapping[str, str]) -> Iterator[Play]:
    """Yield the play of each slot, notch and pocket across, and of each tab along its slot.

    ``settled`` says where to measure, ``files`` are those of one point by name.
    """
    label = next(iter(files)).split("/")[1]
    walls = {
        part.name: _read(files[cut_part_name(label, part.name, "dxf")]) for part in settled.parts
    }
    yield from _across(settled, walls)
    yield from _along(settled, walls)


@lru_cache(maxsize=64)
def _read(text: str) -> Walls:
    return Walls(text)


def _across(settled: SettledPlan, walls: Mapping[str, Walls]) -> Iterator[Play]:
    thick = {part.sheet: walls[part.name].thickness for part in settled.parts}
    for part in settled.parts:
        for each in part.features:
            if each.takes and each.kind in (SLOT, POCKET, NOTCH):
                at = _ahead(each, each.length.value / 2) if each.kind is NOTCH else each.at
                wide = walls[part.name].across(at, _aside(each))
                name = f"{part.name}.{each.name}"
                meant = each.width.value - settled.sheet(each.takes).thickness
                yield Play(what=name, takes=each.takes, mm=wide - thick[each.takes], meant=meant)


def _along(settled: SettledPlan, walls: Mapping[str, Walls]) -> Iterator[Play]:
    pieces = pieces_of(settled)
    for joint in settled.plan.joints:
        tab, slot = end_of(joint.a.name, pieces), end_of(joint.b.name, pieces)
        if tab is None or slot is None:
            continue
        for male, female in zip(tab.features, slot.features, strict=False):
            if male.kind is TAB and female.kind is SLOT and female.takes:
                wide = walls[tab.part.name].across(
                    _ahead(male, male.length.value / 2), _aside(male)
                )
                long = walls[slot.part.name].across(female.at, female.direction)
                name = f"{tab.name(0)} along {slot.part.name}.{female.name}"
                meant = female.length.value - male.width.value
                yield Play(what=name, takes=female.takes, mm=long - wide, meant=meant)


def _aside(feature: SettledFeature) -> Point:
    return (-feature.direction[1], feature.direction[0])


def _ahead(feature: SettledFeature, by: float) -> Point:
    """Return the point so many mm ahead of where a feature is."""
    (x, y), (dx, dy) = feature.at, feature.direction
    return (x + by * dx, y + by * dy)
