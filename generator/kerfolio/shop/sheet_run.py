"""What is done to a sheet with each cutter in turn, and what no stated setting can do."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TypedDict

from kerfolio.basis.digits import rounded
from kerfolio.basis.said import Text
from kerfolio.geometry.measure import bounds
from kerfolio.model.plan import CutSetting
from kerfolio.settling.settled import Cut, Operation, SettledPart, SettledPlan
from kerfolio.shop.cut_setting import settings_of
from kerfolio.shop.cut_time import CutTime
from kerfolio.shop.machine import SMALL_ROUTER, Machine
from kerfolio.shop.tool_path import Stroke, strokes_of


@dataclass(frozen=True, slots=True, kw_only=True)
class Work:
    """One operation of a run; ``depths`` in mm from the face, None goes through.

    ``cuts`` over all pieces, the most ``passes`` of one; ``minutes`` with the cutter in the wood.
    Passes and minutes are None where no setting is stated; ``bridges`` are those of all pieces,
    the highest of them ``bridge_height`` mm.
    """

    operation: Operation
    depths: tuple[float | None, ...]
    cuts: int
    passes: int | None = None
    minutes: float | None = None
    bridges: int = 0
    bridge_height: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """What one cut setting does, in order; ``setting`` is None where the plan states none."""

    setting: CutSetting | None
    works: tuple[Work, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ByHand:
    """Cuts of a part that no stated setting makes: one operation, for one reason in words.

    ``widths`` are those of the cuts in mm, ``count`` how many there are on all pieces.
    """

    part: SettledPart
    operation: Operation
    depths: tuple[float | None, ...]
    widths: tuple[float, ...]
    count: int
    why: Text


@dataclass(frozen=True, slots=True)
class _Made:
    """One contour of a part, and how it is cut: a setting's name, else why not."""

    part: SettledPart
    cut: Cut
    width: float
    setting: str
    why: Text


def runs_of(
    settled: SettledPlan,
    sheet: str,
    counts: Mapping[str, int],
    time: CutTime,
    machine: Machine = SMALL_ROUTER,
) -> tuple[tuple[Run, ...], tuple[ByHand, ...]]:
    """Return the runs of a sheet in the order of ``time``, and what is left over.

    ``counts`` are the pieces of each part on it. A sheet for which no setting is stated has one
    run of all its operations. KeyError for a sheet or part the plan has not.
    """
    parts = {part.name: part for part in settled.parts}
    made = [each for name in counts for each in _made(settled, parts[name], machine)]
    if not time.known:
        return ((Run(setting=None, works=tuple(_bare(made, counts))),) if made else ()), ()
    stated = {each.name: each for each in settled.plan.cuts if each.sheet.name == sheet}
    names = dict.fromkeys(each.setting for each in time.operations)
    runs = tuple(
        Run(setting=stated[name], works=tuple(_works(stated[name], made, time, counts)))
        for name in names
    )
    return runs, tuple(_by_hand([each for each in made if not each.setting], counts))


def _made(settled: SettledPlan, part: SettledPart, machine: Machine) -> Iterator[_Made]:
    contours = ((cut, contour) for cut in part.cuts for contour in cut.contours)
    strokes = strokes_of(part, settings_of(settled, part.sheet), machine)
    for (cut, contour), stroke in zip(contours, strokes, strict=True):
        box = bounds(contour)
        yield _Made(
            part=part,
            cut=cut,
            width=min(box.width, box.height),
            setting=stroke.setting.name if isinstance(stroke, Stroke) else "",
            why="" if isinstance(stroke, Stroke) else stroke.why,
        )


def _works(
    setting: CutSetting, made: Sequence[_Made], time: CutTime, counts: Mapping[str, int]
) -> Iterator[Work]:
    for each in time.operations:
        if each.setting != setting.name:
            continue
        own = [one for one in made if one.setting == setting.name]
        yield Work(
            operation=each.operation,
            depths=_depths(one.cut for one in own if one.cut.operation is each.operation),
            cuts=each.cuts,
            passes=each.most_passes,
            minutes=(each.feed_seconds + each.plunge_seconds) / 60,
            **_bridges(own, each.operation, counts),
        )


def _bare(made: Sequence[_Made], counts: Mapping[str, int]) -> Iterator[Work]:
    for operation in Operation:
        own = [each for each in made if each.cut.operation is operation]
        if own:
            count = sum(counts[each.part.name] for each in own)
            depths = _depths(each.cut for each in own)
            held = _bridges(own, operation, counts)
            yield Work(operation=operation, depths=depths, cuts=count, **held)


class _Held(TypedDict):
    bridges: int
    bridge_height: float


def _bridges(made: Iterable[_Made], operation: Operation, counts: Mapping[str, int]) -> _Held:
    """Return how many bridges an operation leaves on all pieces, and how high they are."""
    parts = {each.part.name: each.part for each in made if each.cut.operation is operation}
    held = [
        (counts[name], bridge.height)
        for name, part in parts.items()
        for bridge in part.bridges
        if bridge.operation is operation
    ]
    count, height = sum(number for number, _ in held), max((high for _, high in held), default=0.0)
    return _Held(bridges=count, bridge_height=height)


def _by_hand(left: Sequence[_Made], counts: Mapping[str, int]) -> Iterator[ByHand]:
    groups: dict[tuple[str, Operation, Text], list[_Made]] = {}
    for each in left:
        groups.setdefault((each.part.name, each.cut.operation, each.why), []).append(each)
    for (name, operation, why), group in groups.items():
        yield ByHand(
            part=group[0].part,
            operation=operation,
            depths=_depths(each.cut for each in group),
            widths=tuple(sorted({rounded(each.width, 2) for each in group})),
            count=len(group) * counts[name],
            why=why,
        )


def _depths(cuts: Iterable[Cut]) -> tuple[float | None, ...]:
    """Return each depth once, shallow before deep, through last."""
    found = {each.depth for each in cuts}
    deep = sorted(each for each in found if each is not None)
    return (*deep, None) if None in found else tuple(deep)
