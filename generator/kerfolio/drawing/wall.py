"""A wall behind a picture's scene: a light stretch of it, cut off with hatched edges."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot

from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.lying import Shown
from kerfolio.assembly.wall import Wall
from kerfolio.drawing.extent import box_of_spots, union
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import Scene
from kerfolio.drawing.vocabulary import Ink, Stroke
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.view import View

_RIM = 0.05
"""How far a wall reaches past what is fixed to it, and how thick it is drawn, of the way across
that."""
_HANGS = 600.0
"""What is lower than this, mm, is shown hung: the wall goes on below it (our own choice)."""
_APART = 1.5
"""Between the lines of its hatching on paper, mm."""

_Face = tuple[Vector, Vector, Vector]
"""A corner of a face of the wall, and the two ways along its sides, mm."""

_CORNERS = ((0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0))
"""Of a face, in shares of its sides."""


def shown_wall(shown: Shown, scene: Scene) -> Wall | None:
    """Return the wall of a step: behind all that is drawn out to the rear, pieces and boards."""
    wall = shown.wall
    if wall is None:
        return None
    gone = [
        each.drawn_out(scene.away.get(each.follows, (0.0, 0.0, 0.0)))[1]
        for each in shown.fittings
        if each.role is Role.BOARD and each.step == shown.step.number
    ]
    rear = max((y for _, y, _ in scene.corners()), default=wall.at)
    return wall.moved((0.0, max(0.0, rear - wall.at, *gone), 0.0))


def is_shown(view: View) -> bool:
    """Tell whether a view may show a wall: from the front, where it hides nothing."""
    return abs(view.azimuth) < 90 and not view.from_below


def with_wall(box: Box, wall: Wall | None, view: View) -> Box:
    """Return a box of the picture plane grown to hold a wall."""
    if wall is None:
        return box
    x0, z0, x1, z1, deep = _stretch(wall)
    ends = [(x, y, z) for x in (x0, x1) for y in (wall.at, wall.at + deep) for z in (z0, z1)]
    return union((box, box_of_spots(map(view.spot, ends))))


def wall_areas(wall: Wall | None, view: View) -> tuple[Flat, ...]:
    """Return what a wall covers of the picture plane, mm."""
    faces = _faces(wall, view) if wall else ()
    return tuple(Flat(tuple(view.spot(_at(face, *at)) for at in _CORNERS)) for face in faces)


def wall_strokes(wall: Wall, seat: PaperSeat) -> Iterator[Stroke]:
    """Yield the wall on paper; all else stands before it, so it is drawn before all else."""
    front, *cuts = _faces(wall, seat.view)
    yield _area(front, seat, Ink.WASTE)
    for face in cuts:
        yield _area(face, seat, Ink.PAPER)
        yield from _hatched(face, seat)


def _faces(wall: Wall, view: View) -> tuple[_Face, _Face, _Face]:
    """Return a wall's front and the two cut edges that a view from the front and above sees."""
    x0, z0, x1, z1, deep = _stretch(wall)
    across, up, into = (x1 - x0, 0.0, 0.0), (0.0, 0.0, z1 - z0), (0.0, deep, 0.0)
    x = x1 if view.to_viewer[0] > 0 else x0
    front = ((x0, wall.at, z0), across, up)
    return front, ((x0, wall.at, z1), across, into), ((x, wall.at, z0), up, into)


def _stretch(wall: Wall) -> tuple[float, float, float, float, float]:
    """Return the stretch of a wall that is drawn, x and z from and to, and its thickness, mm."""
    (x0, z0), (x1, z1) = wall.low, wall.high
    rim = _RIM * hypot(x1 - x0, z1 - z0)
    below = 0.0 if reaches_floor(wall) else rim
    return x0 - rim, z0 - below, x1 + rim, z1 + rim, rim


def reaches_floor(wall: Wall) -> bool:
    """Tell whether a wall ends at the floor, as what is fixed to it stands there."""
    return wall.high[1] - wall.low[1] >= _HANGS


def wall_ends(wall: Wall) -> Box:
    """Return how far a wall is drawn: left, bottom, right, top; x and z in mm."""
    x0, z0, x1, z1, _ = _stretch(wall)
    return x0, z0, x1, z1


def _area(face: _Face, seat: PaperSeat, fill: Ink) -> Stroke:
    spots = [seat.view.spot(_at(face, *at)) for at in _CORNERS]
    return Stroke(contour=seat.path((*spots, spots[0])), ink=Ink.SOFT, width=0.2, fill=fill)


def _hatched(face: _Face, seat: PaperSeat) -> Iterator[Stroke]:
    """Yield lines across a cut edge at 45 degrees."""
    _, along, inward = face
    long, deep = (hypot(*way) for way in (along, inward))
    step, share = _APART / seat.scale / long, deep / long
    count = int((1 + share) / step)
    for number in range(1, count + 1):
        end = number * step
        begin = end - share
        a = (max(begin, 0.0), (max(begin, 0.0) - begin) / share)
        b = (min(end, 1.0), 1.0 - (end - min(end, 1.0)) / share)
        spots = [seat.view.spot(_at(face, *at)) for at in (a, b)]
        yield Stroke(contour=seat.path(spots), ink=Ink.SOFT, width=0.13)


def _at(face: _Face, a: float, b: float) -> Vector:
    (x, y, z), along, inward = face
    return (
        x + a * along[0] + b * inward[0],
        y + a * along[1] + b * inward[1],
        z + a * along[2] + b * inward[2],
    )
