"""The router a cut time is reckoned for, and how long it takes along a path."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from kerfolio.geometry.contour import Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Machine:
    """A small router: ``rapid`` mm/min between cuts, ``acceleration`` mm/s2 in every direction.

    It stops at corners sharper than ``stop_angle`` degrees. It lifts ``clearance`` mm above the
    sheet between cuts. Pockets are cleared with steps of ``step_over`` cutter diameters; a change
    of cutter takes ``change`` seconds. Common practice for small machines, no single source.
    """

    rapid: float = 6000.0
    acceleration: float = 500.0
    stop_angle: float = 30.0
    clearance: float = 5.0
    step_over: float = 0.4
    change: float = 120.0


SMALL_ROUTER = Machine()


def travel_seconds(length: float, feed: float, acceleration: float) -> float:
    """Return the time of a straight run from rest to rest: a trapezoid of speed, or a triangle.

    Length mm, feed mm/min, acceleration mm/s2. L/v + v/a where the speed v is reached, else
    2 sqrt(L/a) (motion under constant acceleration).
    """
    speed = feed / 60
    if length >= speed**2 / acceleration:
        return length / speed + speed / acceleration
    return 2 * math.sqrt(length / acceleration)


@lru_cache(maxsize=4096)
def path_seconds(path: tuple[Point, ...], feed: float, machine: Machine) -> float:
    """Return the time along a path of chords from rest to rest, feed in mm/min.

    Each chord is a trapezoid of speed. Between two chords the speed is at most what keeps the
    sideways acceleration v2/R within the machine's, R being the shorter chord over the turn in
    radians; at a corner sharper than the stop angle it is 0.
    """
    points = [path[0], *(after for before, after in pairwise(path) if before != after)]
    lengths = [math.dist(a, b) for a, b in pairwise(points)]
    most = feed / 60
    speeds = [0.0, *_corner_speeds(points, lengths, most, machine), 0.0]
    for _ in range(2):  # what can be reached from the start, then what can be braked to the end
        for index, length in enumerate(lengths):
            reach = math.sqrt(speeds[index] ** 2 + 2 * machine.acceleration * length)
            speeds[index + 1] = min(speeds[index + 1], reach)
        speeds.reverse()
        lengths.reverse()
    chords = zip(lengths, pairwise(speeds), strict=False)
    return math.fsum(_chord_seconds(length, *ends, most, machine) for length, ends in chords)


def _corner_speeds(
    points: Sequence[Point], lengths: Sequence[float], most: float, machine: Machine
) -> list[float]:
    found = []
    for index in range(1, len(points) - 1):
        turn = _turn(*points[index - 1 : index + 2])
        if turn > math.radians(machine.stop_angle):
            found.append(0.0)
        else:
            radius = min(lengths[index - 1], lengths[index]) / max(turn, 1e-9)
            found.append(min(most, math.sqrt(machine.acceleration * radius)))
    return found


def _turn(before: Point, here: Point, after: Point) -> float:
    ax, ay = here[0] - before[0], here[1] - before[1]
    bx, by = after[0] - here[0], after[1] - here[1]
    return abs(math.atan2(ax * by - ay * bx, ax * bx + ay * by))


def _chord_seconds(length: float, start: float, end: float, most: float, machine: Machine) -> float:
    push = machine.acceleration
    peak = min(most, math.sqrt(push * length + (start**2 + end**2) / 2))
    even = length - (2 * peak**2 - start**2 - end**2) / (2 * push)
    return (2 * peak - start - end) / push + max(0.0, even) / peak
