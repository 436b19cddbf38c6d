"""All pieces on one sheet, as short a strip as an engine for strips finds.

Straight-edged pieces often fit where not a hair is to spare, and no search that lets pieces overlap
less and less ever meets such a place. They are asked for as they are and then a hair too small;
what overlaps is parted exactly, on as little more of the strip as that takes, and the shorter strip
is taken.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from kerfolio.geometry.packing import Flat, level_share, shrunk
from kerfolio.geometry.slabs import Numbers
from kerfolio.layouts.asking import answered
from kerfolio.layouts.easing import eased, snug
from kerfolio.layouts.engine import Bed, EngineError, Stack
from kerfolio.layouts.pose import Pose, pose_of
from kerfolio.layouts.question import Answer, AskedKind, Question
from kerfolio.layouts.room import Room, rooms_of

_STRAIGHT = 0.5
"""Pieces are straight-edged when more of their outlines than this runs level or upright."""

_HAIR = 0.001
"""By how much they are asked too small, as a share of the strip's height."""

_LONGER = 0.002
_STEPS = 40
_PLAIN = 1 / 5
"""This share of the time they are asked as they are: few pieces soon lie as well as they can."""

_REACH = 0.05
"""A piece moves no further at once, as a share of the strip's height."""


@dataclass(frozen=True, slots=True)
class _Strip:
    answer: Answer
    length: float


def strip_laid(question: Question) -> Answer:
    """Return all pieces on the question's first room, drawn to the left and down.

    Raises EngineError when the engine fails, when its strip is longer than the room, or the room
    has zones to be kept clear, of which such engines know nothing.
    """
    if question.rooms[0].zones:
        raise EngineError(f"`{question.engine}` knows nothing of zones kept clear")
    if not _straight(question.kinds):
        return _laid(question, 0.0).answer
    found: list[_Strip] = []
    failed: list[EngineError] = []
    for share, hair in ((_PLAIN, 0.0), (1.0 - _PLAIN, _HAIR)):
        brief = replace(question, seconds=share * question.seconds)
        try:
            found.append(_laid(brief, hair * question.rooms[0].height))
        except EngineError as error:
            failed.append(error)
    if not found:
        raise failed[0]
    return min(found, key=lambda strip: strip.length).answer


def _laid(question: Question, hair: float) -> _Strip:
    """Return the strip that the engine makes of pieces smaller by a hair, and of their true size.

    Raises EngineError when there is none, or its pieces cannot be parted.
    """
    asked = question.rooms[0]
    ((_, found),) = answered(_smaller(question, hair) if hair else question)
    poses = [_pose(question.kinds[kind], turn) for kind, turn, *_ in found]
    corners = np.array([pose.corner for pose in poses])
    places = np.array([[x, y] for *_, x, y in found]) + corners + hair / 2
    stack = Stack(size=(asked.width, asked.height))
    (room,) = rooms_of(Bed(stacks=(stack,), margin=0.0, gap=0.0))
    if hair:
        places = _parted(poses, places, room)
    places = snug(poses, places, room, _REACH * room.height)
    moved = zip(found, (places - corners).tolist(), strict=True)
    answer = ((0, tuple((kind, turn, x, y) for (kind, turn, *_), (x, y) in moved)),)
    return _Strip(answer, _end(poses, places) - float(places[:, 0].min()))


def _straight(kinds: Sequence[AskedKind]) -> bool:
    """Tell whether most pieces, by their area, are straight-edged."""
    flats = [Flat(kind.outer) for kind in kinds]
    weights = [flat.area * kind.count for flat, kind in zip(flats, kinds, strict=True)]
    shares = [level_share(flat) for flat in flats]
    return float(np.average(shares, weights=weights)) > _STRAIGHT


def _smaller(question: Question, hair: float) -> Question:
    """Return a question for the same pieces, each smaller by a hair, on a strip as much lower."""
    first, *others = question.rooms
    return replace(
        question,
        rooms=(replace(first, height=first.height - hair), *others),
        kinds=tuple(
            replace(kind, outer=shrunk(Flat(kind.outer), hair / 2).outer) for kind in question.kinds
        ),
    )


def _pose(kind: AskedKind, turn: float) -> Pose:
    return pose_of(Flat(kind.outer, kind.openings), turn)


def _parted(poses: Sequence[Pose], places: Numbers, room: Room) -> Numbers:
    """Return places without overlap on the least length of the strip that parts the pieces."""
    length = _end(poses, places)
    for step in range(_STEPS):
        width = min(length * (1 + _LONGER * step), room.width)
        made = eased(poses, places, replace(room, width=width), _REACH * room.height)
        if not made.missing:
            return made.places
    raise EngineError("the pieces of the strip could not be parted")


def _end(poses: Sequence[Pose], places: Numbers) -> float:
    return float(max(x + pose.width for pose, (x, _) in zip(poses, places.tolist(), strict=True)))
