"""How the whole stands: which of its sides is down, and which looks to the front."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import permutations, product

from kerfolio.assembly.named_sides import Opposites, agreement, opposites
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import WAYS, Rigid, Vector, cross, dot, scaled
from kerfolio.model.joint import Standing
from kerfolio.settling.settled import SettledPart

_ALONG = 0.9


def stood(
    poses: Mapping[str, Rigid],
    parts: Mapping[str, SettledPart],
    panels: Mapping[str, Panel],
    standing: Standing | None,
) -> dict[str, Rigid]:
    """Return the placements turned upright and moved to lie at 0,0,0 and beyond; z is up.

    Without a statement the whole is turned by quarter turns until pieces lie as their names say,
    what is drawn upright stands upright, and show faces look to the front and up, as far as they
    can.
    """
    turn = _turn(poses, parts, standing)
    turned = {piece: turn.after(pose) for piece, pose in poses.items()}
    least = _least(turned, panels)
    return {piece: pose.moved(scaled(least, -1.0)) for piece, pose in turned.items()}


def uprightness(
    poses: Mapping[str, Rigid], parts: Mapping[str, SettledPart], standing: Standing | None
) -> float:
    """Return how much of the whole stands as it is drawn: the more, the more does; mm2."""
    return _likeness(_turn(poses, parts, standing), poses, parts, ())[1]


def _turn(
    poses: Mapping[str, Rigid], parts: Mapping[str, SettledPart], standing: Standing | None
) -> Rigid:
    """Return the turn by which placements come to stand as said, or as they seem meant."""
    if standing is not None and standing.piece.name in poses:
        return _stated(poses[standing.piece.name], standing)
    named = opposites(poses)
    return max(_quarter_turns(), key=lambda each: _likeness(each, poses, parts, named))


def _stated(pose: Rigid, standing: Standing) -> Rigid:
    """Return the turn that makes a piece look and stand as said."""
    looks = WAYS[standing.looks]
    usual = "up" if standing.looks in ("front", "back", "left", "right") else "back"
    top = WAYS[standing.top or usual]
    wanted = Rigid((0.0, 0.0, 0.0), cross(top, looks), top, looks)
    now = Rigid((0.0, 0.0, 0.0), pose.x, pose.y, pose.z)
    return wanted.after(now.inverse)


def _quarter_turns() -> list[Rigid]:
    axes = list(WAYS.values())
    return [
        Rigid((0.0, 0.0, 0.0), x, y, cross(x, y))
        for x, y in permutations(axes, 2)
        if abs(dot(x, y)) < 0.5
    ]


def _likeness(
    turn: Rigid,
    poses: Mapping[str, Rigid],
    parts: Mapping[str, SettledPart],
    named: Sequence[Opposites],
) -> tuple[float, ...]:
    """Return how like names and drawings the whole stands; then upright, then what looks where."""
    upright = front = 0.0
    for piece, pose in poses.items():
        x, y, z = (turn.vector(axis) for axis in (pose.x, pose.y, pose.z))
        area = parts[piece].area
        if abs(z[2]) > _ALONG:
            upright += area * (0.5 + 0.25 * z[2])
            front += area * 0.5 * (y[1] + x[0])
        else:
            upright += area * y[2]
            front += area * (-z[1] + 0.1 * x[0])
    turned = {piece: turn.after(pose) for piece, pose in poses.items()} if named else {}
    return agreement(named, turned, parts), round(upright, 3), round(front, 3)


def _least(poses: Mapping[str, Rigid], panels: Mapping[str, Panel]) -> Vector:
    corners = [
        pose.point((x, y, z))
        for piece, pose in poses.items()
        for (x, y), z in product(panels[piece].shape.outer, (0.0, panels[piece].thickness))
    ]
    x, y, z = (min(axis) for axis in zip(*corners, strict=True))
    return x, y, z
