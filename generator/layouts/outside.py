"""Engines of other libraries, each run in a process of its own.

A crash, an endless loop or a nonsensical answer of an outside engine thus ends with that process;
here it is an ``EngineError`` like any other.
"""

from __future__ import annotations

import importlib.util
import math
import random
import subprocess
import sys
from collections import Counter
from dataclasses import dataclass, replace
from importlib.metadata import version

from generator.layouts.engine import EngineError, Job, Packed
from generator.layouts.filling import Found
from generator.layouts.offcut import LAST, drawn_together
from generator.layouts.pose import Kind, kinds_of, pose_of
from generator.layouts.question import (
    Answer,
    AskedKind,
    AskedRoom,
    Question,
    answer_from,
    question_text,
)
from generator.layouts.room import Room, rooms_of
from generator.layouts.spots import spots
from generator.layouts.thinning import filled_with
from generator.layouts.verify import packing_faults

_COMMAND = (sys.executable, "-m", "generator.layouts.child")
_PATIENCE = 20.0
"""Seconds given beyond those asked for: starting the process, a loaded machine."""


@dataclass(frozen=True, slots=True)
class OutsideEngine:
    """An engine by the name of its library: ``packingsolver``, or ``spyrrow`` for one sheet.

    One that is ``spaced`` is asked to keep the gap; the others are given pieces grown by half of
    it.
    """

    library: str
    spaced: bool = False

    @property
    def present(self) -> bool:
        """Tell whether the library is installed."""
        return importlib.util.find_spec(self.library) is not None

    def pack(self, job: Job) -> Packed:
        """Place all blanks; see ``Engine``. The result is proved before it is returned."""
        if not self.present:
            raise EngineError(f"`{self.library}` is not installed")
        rooms = rooms_of(job.bed)
        kinds = kinds_of(job, rooms)
        if not kinds or not all(kind.poses for kind in kinds):
            raise EngineError("there are pieces too large for every sheet, or none at all")
        answer = answered(self._question(job))
        _check_answer(answer, kinds, rooms)
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

    def _question(self, job: Job) -> Question:
        asked = replace(job, bed=replace(job.bed, gap=0.0)) if self.spaced else job
        rooms = rooms_of(asked.bed)
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
                for kind in kinds_of(asked, rooms)
            ),
            gap=job.bed.gap if self.spaced else 0.0,
            seconds=job.seconds,
            seed=job.seed,
        )


def answered(question: Question) -> Answer:
    """Return what the engine answers. Raises EngineError when it fails or takes too long."""
    try:
        done = subprocess.run(
            _COMMAND,
            input=question_text(question),
            capture_output=True,
            text=True,
            timeout=question.seconds + _PATIENCE,
            check=False,
        )
    except subprocess.TimeoutExpired as late:
        raise EngineError(f"`{question.engine}` took too long") from late
    if done.returncode != 0:
        told = done.stderr.strip().splitlines()
        raise EngineError(f"`{question.engine}` failed: {told[-1] if told else done.returncode}")
    answer = answer_from(done.stdout)
    if not answer:
        raise EngineError(f"`{question.engine}` placed not all pieces")
    return answer


def _check_answer(answer: Answer, kinds: tuple[Kind, ...], rooms: tuple[Room, ...]) -> None:
    """Raise EngineError for rooms or kinds that are not there, and for pieces too many or few."""
    counts = Counter(kind for _, places in answer for kind, *_ in places)
    if counts != Counter({n: len(kind.labels) for n, kind in enumerate(kinds)}):
        raise EngineError("the answer holds other pieces than were asked for")
    if not all(0 <= room < len(rooms) for room, _ in answer):
        raise EngineError("the answer uses sheets that there are not")
    if not all(math.isfinite(v) for _, places in answer for _, *at in places for v in at):
        raise EngineError("the answer holds places that are no numbers")


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
