"""What the cutter runs along: a part's cuts as paths of its centre, with the passes they take."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.basis.said import Text, phrase
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.flatten import traced
from kerfolio.geometry.offset_path import TOLERANCE, cleared, inside, outside
from kerfolio.settling.settled import Cut, Operation, SettledPart
from kerfolio.shop.cut_setting import Setting, in_choice
from kerfolio.shop.machine import Machine

Path = tuple[Point, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """One contour as it is cut: the paths of one level in order, and the depths of its passes.

    A path ends where it was begun unless it is an engraved line. Points in the part's frame, mm.
    """

    operation: Operation
    setting: Setting
    paths: tuple[Path, ...]
    depths: tuple[float, ...]
    feature: str = ""

    @property
    def start(self) -> Point:
        """Where the cutter goes in first."""
        return self.paths[0][0]

    @property
    def end(self) -> Point:
        """Where it comes out last."""
        return self.paths[-1][-1]

    @property
    def level_length(self) -> float:
        """The length of one level's paths, with the steps from one to the next, mm."""
        steps = math.fsum(math.dist(a[-1], b[0]) for a, b in pairwise(self.paths))
        return math.fsum(map(path_length, self.paths)) + steps

    @property
    def metres(self) -> float:
        """What is cut in all passes, m."""
        return self.level_length * len(self.depths) / 1000


@dataclass(frozen=True, slots=True, kw_only=True)
class Uncut:
    """A cut for which no path could be made, and why, in words."""

    part: str
    operation: Operation
    feature: str
    why: Text


def path_length(path: Sequence[Point]) -> float:
    """Return the length of a path in mm."""
    return math.fsum(math.dist(a, b) for a, b in pairwise(path))


def strokes_of(
    part: SettledPart, settings: Sequence[Setting], machine: Machine
) -> Iterator[Stroke | Uncut]:
    """Yield a part's cuts as strokes in cutting order, or why one is not cut.

    Outlines are passed outside, openings and through holes inside, recesses cleared from their
    middle out, engravings followed on the line.
    """
    for cut in part.cuts:
        able = in_choice(cut, settings)
        for contour in cut.contours:
            yield _stroke(part, cut, contour, able, machine)


def _stroke(
    part: SettledPart, cut: Cut, contour: Contour, able: Sequence[Setting], machine: Machine
) -> Stroke | Uncut:
    for setting in able:
        paths = _paths(cut, contour, setting, machine)
        if paths:
            return Stroke(
                operation=cut.operation,
                setting=setting,
                paths=_chained(paths),
                depths=setting.passes(cut, part.thickness),
                feature=cut.feature,
            )
    why = phrase("cutting-too-narrow" if able else "cutting-no-setting")
    return Uncut(part=part.name, operation=cut.operation, feature=cut.feature, why=why)


def _paths(cut: Cut, contour: Contour, setting: Setting, machine: Machine) -> tuple[Path, ...]:
    """Return the paths of one level, every closed one ending where it begins."""
    diameter = setting.cutter.diameter
    if cut.operation is Operation.ENGRAVE:
        return (tuple(traced(contour, TOLERANCE)),)
    if cut.operation is Operation.OUTLINE:
        rings = outside(contour, diameter / 2)
    elif cut.depth is None:
        rings = inside(contour, diameter / 2)
    else:
        rings = cleared(contour, diameter / 2, machine.step_over * diameter)
    return tuple(map(_closed, rings))


def _closed(ring: Path) -> Path:
    return (*ring, ring[0])


def _chained(paths: tuple[Path, ...]) -> tuple[Path, ...]:
    """Return closed paths, each begun where it comes nearest to the end of the one before."""
    made = [paths[0]]
    for path in paths[1:]:
        here = made[-1][-1]
        nearest = min(range(len(path) - 1), key=lambda index: math.dist(path[index], here))
        made.append((*path[nearest:-1], *path[:nearest], path[nearest]))
    return tuple(made)
