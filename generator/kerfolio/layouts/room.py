"""The room on a sheet: where footprints, half the gap larger than their pieces, may lie."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.geometry.packing import boxes_area
from kerfolio.geometry.slabs import NO_SLABS, Slabs, box_slab
from kerfolio.layouts.engine import Bed, Box, Stack


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """A sheet without its margins, with half a gap all round, mm; ``stack`` it comes from.

    ``zones`` are kept clear: boxes half a gap larger, in the room's frame; ``barred`` are the same
    as slabs. ``area`` (mm2) is what is left beside them.
    """

    stack: int
    width: float
    height: float
    worth: float
    zones: tuple[Box, ...]
    barred: Slabs
    area: float


def rooms_of(bed: Bed) -> tuple[Room, ...]:
    """Return the room on a sheet of each stack."""
    return tuple(_room(bed, number, stack) for number, stack in enumerate(bed.stacks))


def corner(bed: Bed) -> float:
    """Return how far a room's 0,0 lies from its sheet's, in x and in y, mm."""
    return bed.margin - bed.gap / 2


def _room(bed: Bed, number: int, stack: Stack) -> Room:
    edge = corner(bed)
    width, height = stack.size[0] - 2 * edge, stack.size[1] - 2 * edge
    zones = [_within(each, edge, bed.gap / 2, (width, height)) for each in stack.barred]
    zones = [each for each in zones if each[0] < each[2] and each[1] < each[3]]
    barred = NO_SLABS
    for each in zones:
        barred = barred.joined(box_slab(*each))
    return Room(
        stack=number,
        width=width,
        height=height,
        worth=stack.worth,
        zones=tuple(zones),
        barred=barred,
        area=width * height - boxes_area(zones),
    )


def _within(zone: Box, edge: float, grown: float, size: tuple[float, float]) -> Box:
    x0, y0, x1, y1 = zone
    return (
        max(x0 - grown - edge, 0.0),
        max(y0 - grown - edge, 0.0),
        min(x1 + grown - edge, size[0]),
        min(y1 + grown - edge, size[1]),
    )
