"""A whole plan drawn apart: every piece back along the way it came, with its mark."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from kerfolio.assembly.assembled import Assembled, BuildOrder
from kerfolio.assembly.fitting import Fitting
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.anchors import engraved_boxes, flat_on_paper, piece_anchors
from kerfolio.drawing.balloons import balloons
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.motion import guide_strokes, line_of
from kerfolio.drawing.mounted import mounted
from kerfolio.drawing.page_plan import page_seat
from kerfolio.drawing.scene import apart_scene
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.geometry.facing import extent_of
from kerfolio.geometry.hidden_lines import seen
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.view import View

ROOM = (170.0, 130.0)
LOOK = View(-32.0, 28.0)


def exploded_view(
    assembled: Assembled,
    order: BuildOrder,
    *,
    fittings: Sequence[Fitting] = (),
    reader: Reader = METRIC,
    look: View = LOOK,
    room: tuple[float, float] = ROOM,
    title: str = "",
) -> Drawing:
    """Return the picture of a plan drawn apart, at paper size within ``room`` (mm).

    Pieces go back along the moves of ``order``, ``fittings`` along their axes; guide lines lead to
    where they belong, and every piece that can be seen has its mark in a balloon.
    """
    scene, ground = apart_scene(assembled, order), (0.0, 0.0, *room)
    if fittings:
        rough = page_seat(look, extent_of(scene.solids(), look), ground).scale
        scene = replace(mounted(scene, fittings, None, look, rough), new=frozenset())
    solids, joints = scene.solids(), [each for each in scene.open_joints() if each.straight]
    axes = [each.guide for each in scene.fittings if each.guide]
    seat = page_seat(look, extent_of(solids, look), ground)
    found = seen(
        solids,
        look,
        apart=APART / seat.scale,
        extra=[*(each.ends for each in joints), *axes],
    )
    taken = Occupied([flat_on_paper(each.shape, seat) for each in found.areas])
    anchors = piece_anchors(scene, found, seat, set(scene.away))
    guides = guide_strokes(found, seat)
    thin = [line_of(each) for each in guides]
    marks = balloons(anchors, ground, taken, engraved_boxes(found, seat), guides=thin)
    items = (
        *solid_strokes(found, seat, ()),
        *guides,
        *(item for each in marks for item in each.items),
    )
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=title or say(reader, "drawing-apart"),
        description=say(
            reader, "drawing-apart-shows", pieces=", ".join(each.mark for each in marks)
        ),
    )
