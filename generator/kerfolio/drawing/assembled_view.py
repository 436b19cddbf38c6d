"""A plan put together, with how wide, deep and high it is over all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.extent import box_of
from kerfolio.assembly.fitting import Fitting
from kerfolio.assembly.wall import Wall
from kerfolio.basis.lengths import both_text, length_in
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.exploded_view import LOOK
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.mounted import AT_HOME, mounted
from kerfolio.drawing.paper_seat import PaperSeat, fitted
from kerfolio.drawing.scene import home_scene
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.space_dimension import space_dimension
from kerfolio.drawing.vocabulary import Drawing, Item
from kerfolio.drawing.wall import wall_ends, wall_strokes, with_wall
from kerfolio.geometry.facing import Solids, extent_of
from kerfolio.geometry.hidden_lines import seen
from kerfolio.geometry.rigid import Vector, scaled
from kerfolio.geometry.view import View

ROOM = (120.0, 95.0)
Space = tuple[Vector, Vector]
"""The least and the greatest corner of a box in the world, mm."""

AROUND = (13.0, 13.0, 13.0, 3.0)
"""Room for the sizes: left, below, right, above, mm."""


def assembled_view(
    assembled: Assembled,
    *,
    fittings: Sequence[Fitting] = (),
    wall: Wall | None = None,
    reader: Reader = METRIC,
    look: View = LOOK,
    room: tuple[float, float] = ROOM,
    title: str = "",
) -> Drawing:
    """Return the picture of a plan put together, at paper size within ``room`` (mm).

    ``reader`` is whom it is for, ``mm`` or ``in``. The view must be from above and the front.
    ``fittings`` are its hardware and boards, ``wall`` what it is fixed to.
    """
    scene = home_scene(assembled)
    left, bottom, right, top = AROUND
    inner: Box = (left, bottom, room[0] - right, room[1] - top)
    if fittings:
        rough = fitted(look, extent_of(scene.solids(), look), inner).scale
        scene = mounted(scene, fittings, AT_HOME, look, rough)
    solids = scene.solids()
    seat = fitted(look, with_wall(extent_of(solids, look), wall, look), inner)
    found = seen(solids, look, apart=APART / seat.scale)
    low, high = box_of(scene.corners())
    sizes = [both_text(b - a, reader) for a, b in zip(low, high, strict=True)]
    short = [length_in(b - a, reader) for a, b in zip(low, high, strict=True)]
    told = [*zip(sizes, short, strict=True)]
    told_sizes = say(reader, "drawing-together-shows", wide=sizes[0], deep=sizes[1], high=sizes[2])
    items = (
        *(wall_strokes(wall, seat) if wall else ()),
        *solid_strokes(found, seat, ()),
        *overall_dimensions(low, high, told, seat, _taken(solids, wall)),
    )
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=title or say(reader, "drawing-together"),
        description=" ".join((told_sizes, *([say(reader, "drawing-wall-behind")] if wall else []))),
    )


def _taken(solids: Solids, wall: Wall | None) -> Space:
    """Return the box round all that is drawn of a whole, in the world, mm."""
    spots = solids.walls[:, 0]
    x0, y0, z0 = spots.min(axis=0).tolist()
    x1, y1, z1 = spots.max(axis=0).tolist()
    if wall is not None:
        left, bottom, right, top = wall_ends(wall)
        x0, z0, x1, z1 = min(x0, left), min(z0, bottom), max(x1, right), max(z1, top)
    return (x0, y0, z0), (x1, y1, z1)


def overall_dimensions(
    low: Vector,
    high: Vector,
    sizes: Sequence[Sequence[str]],
    seat: PaperSeat,
    taken: Space | None = None,
) -> Iterator[Item]:
    """Yield the three sizes: two along the ground before the object, the height at its side.

    Of each of ``sizes`` the first text is taken that its line has room for, else the last. Those on
    the ground stand clear of the box round all that is drawn, ``taken`` where that is more.
    """
    eye = seat.view.to_viewer
    far_x = low[0] if eye[0] > 0 else high[0]
    near_y = high[1] if eye[1] > 0 else low[1]
    out_x: Vector = (1.0 if eye[0] > 0 else -1.0, 0.0, 0.0)
    out_y: Vector = (0.0, 1.0 if eye[1] > 0 else -1.0, 0.0)
    first, last = taken or (low, high)
    before_y = last[1] if eye[1] > 0 else first[1]
    beside_x, ground = (last if eye[0] > 0 else first)[0], first[2]
    yield from space_dimension(
        (low[0], before_y, ground), (high[0], before_y, ground), out_y, sizes[0], seat
    )
    yield from space_dimension(
        (beside_x, low[1], ground), (beside_x, high[1], ground), out_x, sizes[1], seat
    )
    side, foot = scaled(out_x, -1.0), low[2]
    yield from space_dimension(
        (far_x, near_y, foot), (far_x, near_y, high[2]), side, sizes[2], seat
    )
