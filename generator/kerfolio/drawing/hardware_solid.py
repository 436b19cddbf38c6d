"""Pieces of hardware as simple solids, of the measures that the stock has of them.

Their z is the way they go in. A bolt's 0 is where its head bears, a screw's and a dowel's its very
end, a washer's and a nut's the face nearer to the head, a barrel nut's its middle; of that z runs
along the nut and x along the bolt that goes through it.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache
from math import sqrt

from kerfolio.geometry.turned import ROUND, Frustum, Thread, Turned, Well
from kerfolio.model.stock import HardwareStock
from kerfolio.shop.hardware_size import HardwareSize, hardware_size

_PITCH = 0.16
"""How far apart the lines of a drawn thread are, in diameters: about the coarse series' pitch."""
_CHAMFER = 0.1
"""What is taken off an end's rim, in diameters."""
_SLOT = 0.18
"""How wide the slot for a screwdriver is in the end of a barrel nut, in diameters (drawn so; makers
differ): it runs the way the bolt goes."""
_HEXAGON = 6


@lru_cache(maxsize=512)
def hardware_solid(item: HardwareStock, facets: int = ROUND) -> Turned | None:
    """Return the solid of a piece of hardware, None where its entry does not say enough.

    ``facets`` are those of a full turn.
    """
    size = hardware_size(item)
    return replace(_made(item, size), facets=facets) if size else None


def _made(item: HardwareStock, size: HardwareSize) -> Turned:
    match item.kind:
        case "bolt":
            return _bolt(size, item.head)
        case "screw" | "connector":
            return _screw(size)
        case "nut" | "lock-nut":
            return _nut(size, collar=item.kind == "lock-nut")
        case "washer":
            radius = size.wide / 2
            return Turned(
                (Frustum(0.0, size.high, radius, radius),), Well(0.0, size.high, size.hole / 2)
            )
        case "barrel-nut":
            return _barrel(size)
        case "dowel":
            return _dowel(size)
        case "tee-nut":
            return _tee(size)
        case "insert":
            return _insert(size)
        case _:
            return _pin(size)


def _bolt(size: HardwareSize, head: str) -> Turned:
    radius, chamfer = size.thread / 2, _CHAMFER * size.thread
    outer = size.wide / 2
    flat = head and "socket" not in head and "hexagon" in head
    top = (
        Frustum(-size.high, 0.0, _corners(size.wide), _corners(size.wide), _HEXAGON)
        if flat
        else Frustum(-size.high, 0.0, outer, outer)
    )
    depth = 0.5 * size.high
    end = size.length - chamfer
    return Turned(
        (
            top,
            Frustum(0.0, end, radius, radius),
            Frustum(end, size.length, radius, radius - chamfer),
        ),
        None if flat else Well(-size.high, depth - size.high, _corners(size.key), _HEXAGON),
        Thread(size.plain, end, radius, _PITCH * size.thread),
    )


def _screw(size: HardwareSize) -> Turned:
    radius, point = size.thread / 2, min(size.thread * 1.5, size.length / 3)
    shoulder, tip = size.high, size.length - point
    return Turned(
        (
            Frustum(0.0, shoulder, size.wide / 2, radius),
            Frustum(shoulder, tip, radius, radius),
            Frustum(tip, size.length, radius, 0.0),
        ),
        Well(0.0, 0.6 * shoulder, min(_corners(size.key), 0.6 * radius), _HEXAGON),
        Thread(max(shoulder, size.plain), tip, radius, 2 * _PITCH * size.thread),
    )


def _nut(size: HardwareSize, *, collar: bool) -> Turned:
    across, rim = _corners(size.wide), 0.44 * size.wide
    frusta: tuple[Frustum, ...] = (Frustum(0.0, size.high, across, across, _HEXAGON),)
    if collar:
        neck = 0.7 * size.high
        frusta = (
            Frustum(0.0, neck, across, across, _HEXAGON),
            Frustum(neck, size.high, rim, 0.9 * rim),
        )
    return Turned(frusta, Well(0.0, size.high, size.hole / 2))


def _barrel(size: HardwareSize) -> Turned:
    radius, half = size.wide / 2, size.high / 2
    slot = _SLOT * size.wide
    return Turned((Frustum(-half, half, radius, radius),), across=size.hole / 2, slot=slot)


def _dowel(size: HardwareSize) -> Turned:
    radius, chamfer = size.thread / 2, 0.15 * size.thread
    end = size.length - chamfer
    return Turned(
        (
            Frustum(0.0, chamfer, radius - chamfer, radius),
            Frustum(chamfer, end, radius, radius),
            Frustum(end, size.length, radius, radius - chamfer),
        )
    )


def _tee(size: HardwareSize) -> Turned:
    flange, barrel = size.wide / 2, size.plain / 2
    return Turned(
        (
            Frustum(-size.high, 0.0, flange, flange),
            Frustum(0.0, size.length, barrel, barrel),
        ),
        Well(-size.high, size.length, size.hole / 2),
    )


def _insert(size: HardwareSize) -> Turned:
    radius = size.wide / 2
    return Turned(
        (Frustum(0.0, size.high, radius, radius),),
        Well(0.0, size.high, size.hole / 2),
        Thread(0.0, size.high, radius, 0.25 * size.wide),
    )


def _pin(size: HardwareSize) -> Turned:
    radius, collar = size.thread / 2, size.wide / 2
    return Turned(
        (
            Frustum(-size.high, 0.0, radius, radius),
            Frustum(0.0, 1.5, collar, collar),
            Frustum(1.5, size.length, radius, radius),
        )
    )


def _corners(flats: float) -> float:
    """Return the radius to the corners of a hexagon of a width across its flats."""
    return flats / sqrt(3)
