"""How long a router takes to cut a sheet, or a part where there is no layout, and what it cuts."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise

from kerfolio.basis.measures import acceleration, feed, length, number
from kerfolio.basis.said import Text, phrase, said
from kerfolio.geometry.contour import Point
from kerfolio.geometry.transform import turned_point
from kerfolio.settling.settled import Operation, SettledPlan
from kerfolio.shop.assumption import COMMON_PRACTICE, Assumption, named_fact
from kerfolio.shop.cut_setting import Setting, settings_of
from kerfolio.shop.machine import SMALL_ROUTER, Machine, path_seconds, travel_seconds
from kerfolio.shop.tool_path import Stroke, Uncut, strokes_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A piece on its sheet: turned by ``turn`` degrees about the part's 0,0, then moved, mm."""

    part: str
    x: float = 0.0
    y: float = 0.0
    turn: float = 0.0

    def point(self, at: Point) -> Point:
        """Return where a point of the part lies on the sheet."""
        x, y = turned_point(at, self.turn)
        return (x + self.x, y + self.y)


@dataclass(frozen=True, slots=True, kw_only=True)
class OperationTime:
    """One operation with one setting: how many cuts, metres of cut, seconds along and down."""

    operation: Operation
    setting: str
    cutter: str
    cuts: int
    most_passes: int
    metres: float
    feed_seconds: float
    plunge_seconds: float


@dataclass(frozen=True, slots=True, kw_only=True)
class CutTime:
    """What cutting takes, in seconds; ``uncut`` tells what is not in it and why (once each).

    ``rapid_seconds`` are the ways above the sheet, ``change_seconds`` the changes of cutter.
    Loading, fixing and turning the sheet and sweeping are in none of it.
    """

    operations: tuple[OperationTime, ...]
    rapid_seconds: float
    changes: int
    change_seconds: float
    uncut: tuple[Uncut, ...]
    assumptions: tuple[Assumption, ...]

    @property
    def known(self) -> bool:
        """Whether any setting was stated, so that there is a time at all."""
        return bool(self.operations)

    @property
    def cutting_seconds(self) -> float:
        """The time with the cutter in the wood."""
        return math.fsum(each.feed_seconds + each.plunge_seconds for each in self.operations)

    @property
    def minutes(self) -> float:
        """All of it, in minutes."""
        return (self.cutting_seconds + self.rapid_seconds + self.change_seconds) / 60

    @property
    def metres(self) -> float:
        """What is cut in all passes, m."""
        return math.fsum(each.metres for each in self.operations)


def sheet_time(
    settled: SettledPlan, sheet: str, placed: Sequence[Placed], machine: Machine = SMALL_ROUTER
) -> CutTime:
    """Return what a sheet takes, its pieces where ``placed`` says.

    The order is that of the message ``grounds-order-is``. Raises KeyError for a sheet or part the
    plan has not.
    """
    settings = settings_of(settled, sheet)
    parts = {part.name: part for part in settled.parts}
    names = dict.fromkeys(each.part for each in placed)
    made = {name: tuple(strokes_of(parts[name], settings, machine)) for name in names}
    every = [each for name in names for each in made[name]]
    uncut = dict.fromkeys(each for each in every if isinstance(each, Uncut))
    used = _in_order_of_use(every, settings)
    blocks = [_block(made[piece.part], piece, setting) for setting in used for piece in placed]
    route = _route([each for each in blocks if each], used)
    cutters = [each.cutter.name for each in used]
    changes = sum(a != b for a, b in pairwise(cutters))
    return CutTime(
        operations=_operations((each for each, _ in route), machine),
        rapid_seconds=_rapid_seconds(route, machine),
        changes=changes,
        change_seconds=changes * machine.change,
        uncut=tuple(uncut),
        assumptions=_assumptions(used, machine),
    )


_Leg = tuple[Stroke, Placed]


def _in_order_of_use(
    every: Iterable[Stroke | Uncut], settings: Sequence[Setting]
) -> tuple[Setting, ...]:
    """Return the settings in use, those that stop at a depth first."""
    used = dict.fromkeys(each.setting for each in every if isinstance(each, Stroke))
    return tuple(sorted(used, key=lambda each: (each.through, settings.index(each))))


def _block(made: Iterable[Stroke | Uncut], piece: Placed, setting: Setting) -> list[_Leg]:
    strokes = (each for each in made if isinstance(each, Stroke) and each.setting == setting)
    return [(each, piece) for each in strokes]


def _route(blocks: Sequence[list[_Leg]], used: Sequence[Setting]) -> tuple[_Leg, ...]:
    """Return every stroke in that order."""
    here: Point = (0.0, 0.0)
    route: list[_Leg] = []
    for setting in used:
        left = [each for each in blocks if each[0][0].setting == setting]
        while left:
            block = min(left, key=lambda legs: min(_way(here, leg) for leg in legs))
            left.remove(block)
            for operation in Operation:
                open_legs = [leg for leg in block if leg[0].operation is operation]
                while open_legs:
                    leg = min(open_legs, key=lambda each: _way(here, each))
                    open_legs.remove(leg)
                    route.append(leg)
                    here = leg[1].point(leg[0].end)
    return tuple(route)


def _way(here: Point, leg: _Leg) -> float:
    return math.dist(here, leg[1].point(leg[0].start))


def _operations(strokes: Iterable[Stroke], machine: Machine) -> tuple[OperationTime, ...]:
    groups: dict[Setting, dict[Operation, list[Stroke]]] = {}
    for stroke in strokes:
        of_setting = groups.setdefault(stroke.setting, {each: [] for each in Operation})
        of_setting[stroke.operation].append(stroke)
    return tuple(
        OperationTime(
            operation=operation,
            setting=setting.name,
            cutter=setting.cutter.name,
            cuts=len(group),
            most_passes=max(len(each.depths) for each in group),
            metres=math.fsum(each.metres for each in group),
            feed_seconds=math.fsum(_along(each, machine) for each in group),
            plunge_seconds=math.fsum(_down(each, machine) for each in group),
        )
        for setting, of_setting in groups.items()
        for operation, group in of_setting.items()
        if group
    )


def _along(stroke: Stroke, machine: Machine) -> float:
    """Return the seconds of all passes along the paths."""
    feed = stroke.setting.feed
    level = math.fsum(path_seconds(each, feed, machine) for each in stroke.paths)
    level += math.fsum(
        travel_seconds(math.dist(a[-1], b[0]), feed, machine.acceleration)
        for a, b in pairwise(stroke.paths)
    )
    return level * len(stroke.depths)


def _down(stroke: Stroke, machine: Machine) -> float:
    """Return the seconds of going down to each pass, from the one before or else from the face."""
    anew = len(stroke.paths) > 1
    steps = stroke.depths if anew else [b - a for a, b in pairwise((0.0, *stroke.depths))]
    push = machine.acceleration
    return math.fsum(travel_seconds(each, stroke.setting.plunge, push) for each in steps)


def _rapid_seconds(route: Sequence[_Leg], machine: Machine) -> float:
    """Return the seconds above the sheet, from 0,0 through all cuts in order and back."""
    here: Point = (0.0, 0.0)
    total = 0.0
    for stroke, piece in route:
        start, end = piece.point(stroke.start), piece.point(stroke.end)
        total += _hop(here, start, 0.0, machine)
        levels = len(stroke.depths) if len(stroke.paths) > 1 else 1
        total += (levels - 1) * _hop(end, start, stroke.depths[-1], machine)
        total += travel_seconds(stroke.depths[-1], machine.rapid, machine.acceleration)
        here = end
    return total + _hop(here, (0.0, 0.0), 0.0, machine) if route else 0.0


def _hop(start: Point, end: Point, depth: float, machine: Machine) -> float:
    """Return the seconds of lifting out of a cut, going over and coming down to the face."""
    ways = (machine.clearance + depth, math.dist(start, end), machine.clearance)
    return math.fsum(
        travel_seconds(way, machine.rapid, machine.acceleration) for way in ways if way > 0
    )


def _assumptions(used: Sequence[Setting], machine: Machine) -> tuple[Assumption, ...]:
    stated = [
        Assumption(
            label=each.name,
            value=phrase(
                "grounds-setting",
                cutter=each.cutter.title,
                feed=feed("feed", each.feed),
                plunge=feed("plunge", each.plunge),
            ),
            source=phrase(f"grounds-settings{'' if each.plunge_stated else '-plunge'}"),
        )
        for each in used
    ]
    facts: list[tuple[str, Text, Text]] = []
    if any(each.depths is None for each in used):
        facts.append(("pass", phrase("grounds-pass-is"), COMMON_PRACTICE))
    step, change = 100 * machine.step_over, machine.change / 60
    facts += [
        ("which", phrase("grounds-which-is"), COMMON_PRACTICE),
        ("order", phrase("grounds-order-is"), COMMON_PRACTICE),
        ("rapid", said("{}", feed("rapid", machine.rapid)), COMMON_PRACTICE),
        (
            "acceleration",
            phrase("grounds-acceleration-is", acceleration=acceleration(machine.acceleration)),
            COMMON_PRACTICE,
        ),
        (
            "corners",
            phrase("grounds-corners-is", angle=number("angle", machine.stop_angle)),
            phrase("grounds-corners-source"),
        ),
        ("height", said("{}", length("clearance", machine.clearance)), COMMON_PRACTICE),
        ("pockets", phrase("grounds-pockets-is", share=number("step-over", step)), COMMON_PRACTICE),
        ("change", phrase("grounds-change-is", minutes=number("change", change)), COMMON_PRACTICE),
        ("left-out", phrase("grounds-left-out-is"), "-"),
    ]
    return (*stated, *map(named_fact, facts))
