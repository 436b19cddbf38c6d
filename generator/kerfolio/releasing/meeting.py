"""Whether two features meet that are of different releases, or off alike: what play allows."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from kerfolio.geometry.rigid import Rigid, between, dot
from kerfolio.model.joint_kind import NOTCH_JOINT, TAB_JOINT
from kerfolio.model.play import Play
from kerfolio.model.release_record import RecordedJoint, RecordedSeat
from kerfolio.releasing.recording import FASTENING

_PLAY = Play()
EXACT = 0.05
"""Features so near, mm, meet, whatever their play is (as where a plan is put together)."""

_SHOULDER = 0.1
"""So far, mm, a shoulder may stay off what it should touch, and a row of fingers off its gaps."""

_BOLT = 0.3
"""So far, mm, a bore may lie beside the hole of its bolt: half of what holes have over bolts (6.6
for M6: ISO 273, medium)."""

TURN = 1e-3
"""So far directions may differ, as 200 mm by 0.2 mm."""

_Seats = tuple[RecordedSeat, ...]
_Room = tuple[float, float] | None


def meet(
    stated: RecordedJoint, offs: tuple[Rigid, Rigid], mixed: _Seats, known: tuple[_Seats, _Seats]
) -> bool:
    """Tell whether a pair meets whose features lie ``offs`` from where the newer ones do.

    ``mixed`` are the features themselves, ``known`` the pairs of the older and the newer release.
    """
    first, second = offs
    room = _ROOMS.get(stated.kind, _no_room)(mixed, known)
    if room is None:
        return False
    x, y, z = (abs(each) for each in between(first.origin, second.origin))
    if stated.kind == FASTENING:
        return x * x + y * y <= _BOLT**2 and abs(dot(first.z, second.z)) > 1 - TURN
    near = (stated.slides or x <= room[0]) and y <= room[1] and z <= _SHOULDER
    return near and min(dot(first.x, second.x), dot(first.z, second.z)) > 1 - TURN**2


def _tab_room(mixed: _Seats, known: tuple[_Seats, _Seats]) -> _Room:
    """Return how far a tab may be off along and across what it goes into, None where it cannot."""
    ends, sides = (
        _clearance([_tab_play(seats, which) for seats in (mixed, *known)], most)
        for which, most in ((0, _PLAY.ends), (1, _PLAY.loose))
    )
    if ends is None or sides is None:
        return None
    over = [seats[0].size[2] - seats[1].size[2] for seats in (mixed, *known) if seats[1].size[2]]
    if len(over) == 3 and over[0] > max(over[1], over[2], 0.0) + EXACT:
        return None  # it meets the bottom before its shoulders touch
    return ends, sides


def _tab_play(seats: _Seats, which: int) -> float:
    return (seats[1].size[which] - seats[0].size[which]) / 2


def _notch_room(mixed: _Seats, known: tuple[_Seats, _Seats]) -> _Room:
    """Return how far two that cross may be off: the first across its notch, then the second."""
    found = []
    for which in (0, 1):
        plays = [(seats[which].size[1] - seats[1 - which].size[2]) / 2 for seats in (mixed, *known)]
        found.append(_clearance(plays, _PLAY.loose))
    first, second = found
    return None if first is None or second is None else (first, second)


def _clearance(plays: Sequence[float], most: float) -> float | None:
    """Return how far apart two features may lie that have the first of these plays, mm a side.

    The others are those that they had and have with their own mates. None where it is tighter than
    any of them and than nothing, or so loose that nothing places the piece.
    """
    mixed, *known = plays
    if mixed < min(0.0, *known) - EXACT / 5 or mixed > max(most, *known) + EXACT:
        return None
    return min(max(mixed, 0.0), most) + EXACT


def _no_room(mixed: _Seats, known: tuple[_Seats, _Seats]) -> _Room:  # noqa: ARG001 - see _ROOMS
    """Return how far features may be off that bear no play of their own."""
    return _SHOULDER, _SHOULDER


def same_row(then: RecordedSeat, there: RecordedSeat, shift: float) -> bool:
    """Tell whether a row of fingers has its gaps where the newer one has them."""
    return len(then.gaps) == len(there.gaps) and all(
        abs(was + shift - now) <= _SHOULDER for was, now in zip(then.gaps, there.gaps, strict=True)
    )


_ROOMS: dict[str, Callable[[_Seats, tuple[_Seats, _Seats]], _Room]] = {
    TAB_JOINT.name: _tab_room,
    NOTCH_JOINT.name: _notch_room,
}
