"""Joints that could go another way round just as well: what the maker has to say."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from math import dist

from kerfolio.assembly.links import Link
from kerfolio.assembly.placing import AS_GOOD, Walk
from kerfolio.basis.finding import Finding, warning
from kerfolio.basis.names import choice
from kerfolio.geometry.contour import Point
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Rigid, Vector
from kerfolio.settling.settled import SettledPart

_SAME = 0.1
"""Two places are the same within this, mm."""


def undecided(
    walks: Sequence[Walk],
    links: Sequence[Link],
    parts: Mapping[str, SettledPart],
    panels: Mapping[str, Panel],
) -> tuple[Finding, ...]:
    """Return a finding for each joint whose way round is a guess.

    Two placements count as one where every piece fills the same space in both, and where one is
    the other's mirror image and no piece has anything that tells its faces apart.
    """
    best = walks[0]
    others = [
        each
        for each in walks[1:]
        if each.cost <= best.cost + AS_GOOD
        and not _fill_alike(best, each, parts, panels)
        and not _mirrored(best, each, parts)
    ]
    others.sort(key=lambda each: _differing(best, each))
    return tuple(_asked_in_turn(best, others, links))


def _asked_in_turn(best: Walk, others: list[Walk], links: Sequence[Link]) -> Iterator[Finding]:
    """Yield what to ask: each answer rules placements out, until only the best one is left.

    Those that differ least come first: what else differs in the others may make no difference.
    """
    asked: dict[int, list[Walk]] = {}
    for each in others:
        differ = [index for index in best.ways if best.ways[index] != each.ways.get(index)]
        known = [index for index in differ if index in asked]
        asked.setdefault((known or [min(differ)])[0], []).append(each)
    for index in sorted(asked):
        yield _asked(links[index], [best, *asked[index]], index)


def _differing(one: Walk, other: Walk) -> int:
    return sum(one.ways[index] != other.ways.get(index) for index in one.ways)


def _asked(link: Link, walks: Sequence[Walk], index: int) -> Finding:
    """Return the question that a joint leaves open: which face, which way round, or both."""
    stated = link.joint.stated
    words = [link.ways[walk.ways[index]].words(link.kind) for walk in walks]
    face, looking = words[0]
    asked, taken = [], []
    if len({each for each, _ in words}) > 1:
        key, choices = ("side", "`show` or `back`") if link.kind.flat else ("show", "`out` or `in`")
        asked.append(f"`{key}:` with {choices}, for the show face of `{link.b.piece}`")
        out = {"back": "out", "show": "in"}[face]
        taken.append(f"`{key}: {face if link.kind.flat else out}`")
    looks = sorted({each for side, each in words if side == face})
    if len(looks) > 1:
        where = f"for the show face of `{link.a.piece}` as `{link.b.piece}` is drawn"
        asked.append(f"`looking:` with {choice(looks)}, {where}")
        taken.append(f"`looking: {looking}`")
    message = f"which way round do `{stated.a}` and `{stated.b}` meet?"
    advice = f"Add {'; and '.join(asked)}. Taken for now: {', '.join(taken)}."
    return warning("which-way-round", message, stated.place, advice, subject=stated.a.name)


def _fill_alike(
    one: Walk, other: Walk, parts: Mapping[str, SettledPart], panels: Mapping[str, Panel]
) -> bool:
    """Tell whether every piece fills the same space in both placements."""
    return all(
        _fills_alike(pose.inverse.after(other.poses[piece]), parts[piece], panels[piece])
        for piece, pose in one.poses.items()
    )


def _fills_alike(turned: Rigid, part: SettledPart, panel: Panel) -> bool:
    """Tell whether a piece, turned in its own frame, covers just the space it covers now."""
    if _is_still(turned, panel):
        return True
    if abs(turned.z[2]) < 1 - 1e-6 or (_has_faces(part) and turned.z[2] < 0):
        return False
    level = panel.thickness if turned.z[2] < 0 else 0.0
    if abs(turned.origin[2] - level) > _SAME:
        return False

    def put(point: Point) -> Point:
        x, y, _ = turned.point((point[0], point[1], 0.0))
        return x, y

    rings = (panel.shape.outer, *panel.shape.openings, *(r.shape.outer for r in panel.recesses))
    every = [point for ring in rings for point in ring]
    marks = [v[:2] for cut in part.cuts for c in cut.contours for v in c.vertices if cut.depth]
    return _onto_itself(every, put) and _onto_itself(marks, put)


def _is_still(turned: Rigid, panel: Panel) -> bool:
    return (
        all(dist(turned.point((x, y, 0.0)), (x, y, 0.0)) < _SAME for x, y in panel.shape.outer[:3])
        and turned.z[2] > 0
    )


def _onto_itself(points: Sequence[Point], put: Callable[[Point], Point]) -> bool:
    there = map(put, points)
    return all(any(dist(each, other) < _SAME for other in points) for each in there)


def _has_faces(part: SettledPart) -> bool:
    """Tell whether a part's two faces differ."""
    return any(cut.depth is not None for cut in part.cuts)


def _mirrored(one: Walk, other: Walk, parts: Mapping[str, SettledPart]) -> bool:
    """Tell whether one placement is the other's mirror image, and no piece tells its faces apart.

    The root lies at the origin in both; the mirror is the middle of its sheet.
    """
    if any(_has_faces(parts[piece]) for piece in one.poses):
        return False
    root = next(piece for piece, pose in one.poses.items() if pose == Rigid())
    middle = parts[root].thickness

    def image(point: Vector) -> Vector:
        return point[0], point[1], middle - point[2]

    return all(
        dist(
            image(pose.point((x, y, 0.0))), other.poses[piece].point((x, y, parts[piece].thickness))
        )
        < _SAME
        for piece, pose in one.poses.items()
        for x, y in ((0.0, 0.0), (100.0, 0.0), (0.0, 100.0))
    )
