"""How the whole stands, where pieces lie oblique to each other: as most are drawn, and firmly.

Where all lie square, the names and the drawings of a plan's pieces tell it. Where a roof or a
leaning leg comes first, quarter turns of that one leave the rest askew: then one that most others
lie square to is gone by.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import permutations

from kerfolio.adopting.sets import PartPlan
from kerfolio.adopting.shape import Question
from kerfolio.adopting.together import Arrangement
from kerfolio.geometry.flatten import points
from kerfolio.geometry.hull import convex_hull, encloses
from kerfolio.geometry.measure import area, centroid
from kerfolio.geometry.rigid import WAYS, Rigid, Vector, cross, dot

_SQUARE = 0.999
_DOUBT = 0.15
"""Two ways to stand are in doubt whose likeness to the drawing differs by a smaller share."""

_LEVEL = 1.0
_SAME = 0.3


@dataclass(frozen=True, slots=True)
class Standing:
    """How the whole stands: where a piece's show face looks, and where its drawing's top points."""

    piece: int
    looks: str
    top: str


@dataclass(frozen=True, slots=True)
class _Way:
    standing: Standing
    down: Vector
    firm: bool
    likeness: float
    front: float


def standing(
    parts: Sequence[PartPlan], arranged: Arrangement, answers: Mapping[str, str]
) -> tuple[Standing | None, tuple[Question, ...]]:
    """Return how the whole stands, and what is asked about it; None where all pieces lie square."""
    sizes = {n: area(p.made.draft.outline.contour) for p in parts for n in p.numbers}
    poses = arranged.poses
    square = {n: sum(sizes[m] for m in poses if _is_square(poses[n], poses[m])) for n in poses}
    total = sum(sizes[n] for n in poses)
    if not poses or all(each >= total - _LEVEL for each in square.values()):
        return None, ()
    piece = max(poses, key=lambda n: (square[n], sizes[n], -n))
    ways = sorted(_ways(piece, arranged, sizes), key=lambda w: (-w.firm, -w.likeness, -w.front))
    best = ways[0]
    others = [w for w in ways if w.firm == best.firm and dot(w.down, best.down) < _SAME]
    doubtful = [w for w in others if best.likeness - w.likeness < _DOUBT * total][:1]
    if not doubtful:
        return best.standing, ()
    label = {n: name for p in parts for n, name in zip(p.numbers, p.labels, strict=True)}[piece]
    told = {_in_words(each.standing): each for each in (best, *doubtful)}
    question = Question(
        key="stands", words=f"how does `{label}` stand in the whole?", answers=tuple(told)
    )
    return told.get(answers.get("stands", ""), best).standing, (question,)


def _in_words(how: Standing) -> str:
    return f"its show face looks {how.looks}, its top {how.top}"


def _is_square(one: Rigid, other: Rigid) -> bool:
    return all(
        max(abs(dot(axis, each)) for each in (one.x, one.y, one.z)) > _SQUARE
        for axis in (other.x, other.y, other.z)
    )


def _ways(piece: int, arranged: Arrangement, sizes: Mapping[int, float]) -> Iterator[_Way]:
    """Yield the ways to stand in which a piece lies square."""
    away = arranged.poses[piece].inverse
    corners = [each for n in arranged.poses for each in _corners(arranged, n)]
    middles = {n: _middle(arranged, n) for n in arranged.poses}
    for looks, top in permutations(WAYS, 2):
        z, y = WAYS[looks], WAYS[top]
        if abs(dot(z, y)) > _SAME:
            continue
        turn = Rigid((0.0, 0.0, 0.0), cross(y, z), y, z).after(away)
        upright = front = 0.0
        for number, pose in arranged.poses.items():
            own = turn.after(pose)
            if abs(own.z[2]) > _SQUARE:
                upright += sizes[number] * (0.5 + 0.25 * own.z[2])
            else:
                upright += sizes[number] * own.y[2]
                front += sizes[number] * (0.1 * own.x[0] - own.z[1])
        down = turn.inverse.vector((0.0, 0.0, -1.0))
        firm = _is_firm(turn, corners, middles, sizes)
        yield _Way(Standing(piece, looks, top), down, firm, upright, front)


def _is_firm(
    turn: Rigid,
    corners: Sequence[Vector],
    middles: Mapping[int, Vector],
    sizes: Mapping[int, float],
) -> bool:
    """Tell whether the whole, turned so, has its weight over what it stands on."""
    spots = [turn.point(each) for each in corners]
    floor = min(z for _, _, z in spots) + _LEVEL
    hull = convex_hull((x, y) for x, y, z in spots if z <= floor)
    total = sum(sizes[n] for n in middles)
    heavy = [(turn.point(middle), sizes[n] / total) for n, middle in middles.items()]
    return encloses(hull, (sum(p[0] * k for p, k in heavy), sum(p[1] * k for p, k in heavy)))


def _middle(arranged: Arrangement, number: int) -> Vector:
    body = arranged.bodies[number]
    return arranged.poses[number].point(body.mid(centroid(body.part.draft.outline.contour)))


def _corners(arranged: Arrangement, number: int) -> list[Vector]:
    body, pose = arranged.bodies[number], arranged.poses[number]
    outline = points(body.part.draft.outline.contour, 0.5)
    return [pose.point((x, y, z)) for x, y in outline for z in (0.0, body.thickness)]
