"""Engines of other libraries behind the interface of the own one; see ``asking``."""

from __future__ import annotations

import importlib.util
import random
from dataclasses import dataclass, replace
from importlib.metadata import version

from kerfolio.layouts.asking import answered
from kerfolio.layouts.engine import EngineError, Job, Packed
from kerfolio.layouts.filling import Found
from kerfolio.layouts.offcut import LAST, drawn_together
from kerfolio.layouts.pose import Kind, kinds_of, pose_of
from kerfolio.layouts.question import AskedKind, AskedRoom, Question
from kerfolio.layouts.room import rooms_of
from kerfolio.layouts.spots import spots
from kerfolio.layouts.strip import strip_laid
from kerfolio.layouts.thinning import filled_with
from kerfolio.layouts.verify import job_faults, packing_faults


@dataclass(frozen=True, slots=True)
class OutsideEngine:
    """An engine by the name of its library: ``packingsolver``, or ``spyrrow`` for a ``strip``.

    One that is ``spaced`` is asked to keep the gap; the others are given pieces grown by half of
    it. One for a strip lays all pieces on the first sheet.
    """

    library: str
    spaced: bool = False
    strip: bool = False

    @property
    def present(self) -> bool:
        """Tell whether the library is installed."""
        return importlib.util.find_spec(self.library) is not None

    def pack(self, job: Job) -> Packed:
        """Place all blanks; see ``Engine``. Job and result are proved, before and after."""
        if not self.present:
            raise EngineError(f"`{self.library}` is not installed")
        for fault in job_faults(job):
            raise EngineError(fault)
        rooms = rooms_of(job.bed)
        kinds = kinds_of(job, rooms)
        if not kinds or not all(kind.poses for kind in kinds):
            raise EngineError("there are pieces too large for every sheet, or none at all")
        question = self._question(job, kinds)
        answer = strip_laid(question) if self.strip else answered(question)
        edge = job.bed.gap / 2 if self.spaced else 0.0
        places = [_places(each, kinds, edge) for _, each in answer]
        sheets = filled_with([rooms[room] for room, _ in answer], places, kinds)
        chance = random.Random(job.seed)
        sheets = drawn_together(sheets, kinds, chance, int(LAST * job.moves))
        packed = Packed(
            spots=tuple(spots(job.bed, kinds, [each.places for each in sheets])),
            engine=f"{self.library}-{version(self.library)}",
            sheets=tuple(each.room.stack for each in sheets),
        )
        faults = packing_faults(job, packed)
        if faults:
            raise EngineError(faults[0])
        return packed

    def _question(self, job: Job, kinds: tuple[Kind, ...]) -> Question:
        asked = replace(job, bed=replace(job.bed, gap=0.0)) if self.spaced else job
        rooms = rooms_of(asked.bed)
        alike = kinds_of(asked, rooms) if self.spaced else kinds
        return Question(
            engine=self.library,
            rooms=tuple(
                AskedRoom(
                    width=room.width,
                    height=room.height,
                    count=stack.count,
                    worth=stack.worth,
                    zones=room.zones,
                )
                for room, stack in zip(rooms, job.bed.stacks, strict=True)
            ),
            kinds=tuple(
                AskedKind(
                    outer=kind.shape.outer,
                    openings=kind.shape.openings,
                    turns=kind.turns,
                    count=len(kind.labels),
                )
                for kind in alike
            ),
            gap=job.bed.gap if self.spaced else 0.0,
            seconds=job.seconds,
            seed=job.seed,
        )


def _places(
    places: tuple[tuple[int, float, float, float], ...], kinds: tuple[Kind, ...], edge: float
) -> list[Found]:
    """Return places in the room; ``edge`` is how much further out the room begins, mm."""
    found = []
    for number, turn, x, y in places:
        kind = kinds[number]
        # A turn comes back as a float that need not be the very one asked for.
        exact = min(kind.turns, key=lambda each: abs((each - turn + 180.0) % 360.0 - 180.0))
        pose = pose_of(kind.shape, exact)
        left, low = pose.corner
        found.append(Found(kind=number, pose=pose, x=x + left + edge, y=y + low + edge))
    return found
