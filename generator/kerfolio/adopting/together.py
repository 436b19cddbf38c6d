"""Pieces put together by what fits what: every tab tried in every slot of its length.

A piece joins those that have their place where the most of its tabs, slots, notches and fingers
meet theirs, and nothing needs the same room. A few of the best arrangements are kept at each step,
since the first tab that fits need not be the right one. Of equals those come first in which pieces
of one part lie in a row, as uprights, shelves and dividers do.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from kerfolio.adopting.meeting import Body, Meet, meets_of, places_at
from kerfolio.geometry.panel_overlap import overlap_volumes
from kerfolio.geometry.panel_solid import Posed
from kerfolio.geometry.rigid import Rigid, Vector, scaled
from kerfolio.model.feature_kind import NOTCH, TAB

_CLASH = 250.0
"""Panels that share no more room, mm3, are drawn a little tight."""

_KEPT = 16
"""So many arrangements are followed side by side."""

_LEVEL, _LINED_UP = 0.9995, 0.5
"""Twins in a row are turned alike and no further apart, mm, along their faces."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Arrangement:
    """Pieces by their numbers with their places, and what meets there."""

    poses: Mapping[int, Rigid]
    bodies: Mapping[int, Body]
    meets: tuple[Meet, ...] = ()
    regular: int = 0
    """How many pairs of one part's pieces lie in a row, less those that cross each other."""

    @property
    def worth(self) -> int:
        """How many features meet."""
        return len(self.meets)


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece: the bodies it may be, of the likeliest sheet first; ``number`` tells twins apart.

    Twins have the same bodies, and are cut from one sheet.
    """

    bodies: tuple[Body, ...]
    number: int


def arranged(pieces: Sequence[Piece]) -> tuple[Arrangement, ...]:
    """Return how pieces go together, the best arrangement first, equals after it.

    Pieces that nothing joins to the others have no place.
    """
    if not pieces:
        return ()
    root = max(pieces, key=lambda p: (_openings(p.bodies[0]), -p.number))
    states = [
        Arrangement(poses={root.number: Rigid()}, bodies={root.number: body})
        for body in root.bodies
    ]
    while True:
        grown = [made for state in states for made in _grown(state, pieces)]
        if not grown:
            return tuple(_best(states, len(states), _whole_key))
        states = _best(grown, _KEPT, _key)


def _openings(body: Body) -> int:
    return len(body.part.slots) + len(body.part.notches)


_Key = tuple[object, ...]


def _best(
    states: Sequence[Arrangement], count: int, key: Callable[[Arrangement], _Key]
) -> list[Arrangement]:
    """Return the best arrangements, each once by its key."""
    found: dict[_Key, Arrangement] = {}
    for each in sorted(states, key=lambda each: (-each.worth, -each.regular)):
        found.setdefault(key(each), each)
    return list(found.values())[:count]


def _whole_key(state: Arrangement) -> _Key:
    """Return what tells a whole arrangement from others, whichever twin of the first came first."""
    root = state.bodies[next(iter(state.poses))].part
    twins = [n for n, body in state.bodies.items() if body.part is root]
    seen = [state.poses[n].inverse for n in twins]
    every = [replace(state, poses={n: a.after(p) for n, p in state.poses.items()}) for a in seen]
    return min(map(_key, every))


def _key(state: Arrangement) -> _Key:
    """Return what tells an arrangement from others: which shapes lie where, not which twin.

    It is the same where the whole is turned so that its first piece covers itself, and where it is
    its mirror image: no piece has a face that differs from the other.
    """
    root = next(iter(state.poses))
    selves, thick = state.bodies[root].selves, state.bodies[root].thickness
    one_sided = any(body.part.is_one_sided for body in state.bodies.values())
    both = (state.poses,) if one_sided else (state.poses, _mirrored(state, thick))
    every = [
        {n: each.after(pose) for n, pose in poses.items()} for poses in both for each in selves
    ]
    return min(_rows(poses, state.bodies) for poses in every)


def _rows(poses: Mapping[int, Rigid], bodies: Mapping[int, Body]) -> _Key:
    rows = []
    for number, pose in poses.items():
        body = bodies[number]
        alike = min(_rounded(pose.after(each)) for each in body.selves)
        rows.append((id(body.part), alike))
    return tuple(sorted(rows))


def _mirrored(state: Arrangement, thick: float) -> dict[int, Rigid]:
    """Return the poses of the mirror image, at the middle of the first piece's sheet."""

    def image(vector: Vector) -> Vector:
        return (vector[0], vector[1], 0.0 - vector[2])

    made = {}
    for number, pose in state.poses.items():
        x, y, z = pose.point((0.0, 0.0, state.bodies[number].thickness))
        turned = image(pose.x), image(pose.y), image(scaled(pose.z, -1.0))
        made[number] = Rigid((x, y, thick - z), *turned)
    return made


def _rounded(pose: Rigid) -> tuple[float, ...]:
    turn = (round(v, 2) + 0.0 for v in (*pose.x, *pose.z))
    return (*(round(v) + 0.0 for v in pose.origin), *turn)


def _grown(state: Arrangement, pieces: Sequence[Piece]) -> list[Arrangement]:
    """Return an arrangement with one piece more, in the places where most of it meets.

    Of twins only the first without a place is tried.
    """
    left: dict[int, Piece] = {}
    for each in pieces:
        if each.number not in state.poses:
            left.setdefault(id(each.bodies), each)
    taken = {(m.other, m.second) for m in state.meets if m.kind is TAB}
    tried: list[tuple[int, int, int, Body, Rigid, tuple[Meet, ...]]] = []
    for piece in left.values():
        for body in _bodies(piece, state, pieces):
            for pose in _places(body, state, taken):
                meets = tuple(meets_of(piece.number, body, pose, state.poses, state.bodies))
                if meets:
                    regular = _regular(body, pose, meets, state)
                    tried.append((len(meets), regular, piece.number, body, pose, meets))
    tried.sort(key=lambda each: (-each[0], -each[1], each[2]))
    made: list[Arrangement] = []
    for count, regular, number, body, pose, meets in tried:
        if len(made) >= _KEPT or (made and count < len(made[0].meets) - len(state.meets)):
            break
        if not _clashes(body, pose, state):
            made.append(
                Arrangement(
                    poses={**state.poses, number: pose},
                    bodies={**state.bodies, number: body},
                    meets=(*state.meets, *meets),
                    regular=state.regular + regular,
                )
            )
    return made


def _regular(body: Body, pose: Rigid, meets: Sequence[Meet], state: Arrangement) -> int:
    """Return how many twins a piece lies in a row with, less those that it crosses."""
    twins = {n for n, other in state.bodies.items() if other.part is body.part}
    rows = sum(_in_a_row(body, state.poses[n].inverse.after(pose)) for n in twins)
    crossed = sum(m.kind is NOTCH and bool(twins & {m.one, m.other}) for m in meets)
    return rows - crossed


def _in_a_row(body: Body, onto: Rigid) -> bool:
    """Tell whether a piece lies straight before or behind a twin, in whose frame it lies."""
    for each in body.selves:
        x, y, _ = (own := onto.after(each)).origin
        if own.x[0] > _LEVEL and own.y[1] > _LEVEL and max(abs(x), abs(y)) < _LINED_UP:
            return True
    return False


def _bodies(piece: Piece, state: Arrangement, pieces: Sequence[Piece]) -> tuple[Body, ...]:
    """Return what a piece may be: what a twin is that has its place."""
    for each in pieces:
        if each.bodies is piece.bodies and each.number in state.bodies:
            return (state.bodies[each.number],)
    return piece.bodies


def _places(body: Body, state: Arrangement, taken: set[tuple[int, int]]) -> Iterator[Rigid]:
    """Yield the places, each once, that one feature of a piece may have at another piece."""
    seen: set[tuple[float, ...]] = set()
    for number, there in state.poses.items():
        for pose in places_at(body, number, state.bodies[number], there, taken):
            key = tuple(round(v, 1) for v in (*pose.origin, *pose.x, *pose.z))
            if key not in seen:
                seen.add(key)
                yield pose


def _clashes(body: Body, pose: Rigid, state: Arrangement) -> bool:
    """Tell whether a piece needs room that others fill."""
    mine = Posed(body.solid, pose)
    pairs = [(mine, Posed(state.bodies[n].solid, there)) for n, there in state.poses.items()]
    return bool((overlap_volumes(pairs) > _CLASH).any())
