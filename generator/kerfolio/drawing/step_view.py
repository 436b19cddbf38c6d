"""A step of putting together: what stands, what is new, and how it comes home."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.assembly.assembled import BuildStep
from kerfolio.assembly.fastened import Role
from kerfolio.assembly.lying import Shown
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.anchors import engraved_boxes, flat_on_paper, piece_anchors
from kerfolio.drawing.balloons import balloons
from kerfolio.drawing.callout import (
    Block,
    from_below_block,
    hardware_block,
    people_block,
)
from kerfolio.drawing.extent import box_of, extent, padded
from kerfolio.drawing.inset import Inset, fitting_inset, inset_of
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.mat import mat_corners, mat_stroke, with_mat
from kerfolio.drawing.motion import arrow_strokes, guide_strokes
from kerfolio.drawing.mounted import mounted
from kerfolio.drawing.page_plan import PagePlan, page_plan, page_seat
from kerfolio.drawing.scene import Scene, step_scene
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.turn_block import turn_block
from kerfolio.drawing.vocabulary import Drawing, Item, Stroke
from kerfolio.drawing.wall import is_shown, shown_wall, wall_areas, wall_strokes, with_wall
from kerfolio.geometry.contour import Point
from kerfolio.geometry.facing import extent_of
from kerfolio.geometry.hidden_lines import Seen, seen
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.view import View
from kerfolio.settling.titles import board_title

ROOM = (120.0, 95.0)
"""A booklet's column, mm."""


def step_view(
    shown: Shown,
    *,
    look: View,
    hardware: Sequence[tuple[str, int]] = (),
    reader: Reader = METRIC,
    room: tuple[float, float] = ROOM,
    title: str = "",
) -> Drawing:
    """Return the picture of a step at paper size, within ``room`` (mm).

    ``hardware`` are (title, count) of what the step takes. The pieces new in the step are in the
    accent, drawn out against their moves, with their marks in balloons, and so is its hardware;
    guide lines lead to where they go. What is too small to see on the page, a fastening else a
    joint, is drawn larger beside the picture. Work that lies is shown on a mat, where ``look`` is
    from above.
    """
    assembled, step = shown.assembled, shown.step
    scene, ground = step_scene(assembled, step), (0.0, 0.0, *room)
    mat = mat_corners(scene) if shown.lying and not look.from_below else ()
    wall = shown_wall(shown, scene) if is_shown(look) else None
    if shown.fittings:
        rough = page_seat(look, extent_of(scene.solids(), look), ground).scale
        scene = mounted(scene, shown.fittings, step.number, look, rough)
    solids = scene.solids()
    joints = [each for each in scene.open_joints() if each.straight]
    axes = [each.guide for each in scene.fittings if each.guide]
    box = with_wall(with_mat(extent_of(solids, look), mat, look), wall, look)
    first = page_seat(look, box, ground)
    found = seen(
        solids,
        look,
        apart=APART / first.scale,
        first=scene.coloured,
        extra=[*(each.ends for each in joints), *axes],
    )
    inset = fitting_inset(shown, scene, found, first, len(joints)) or inset_of(
        assembled, step, joints, found, first, reader
    )
    blocks = _side_blocks(shown, inset, look, hardware, reader)
    near = look.spot(inset.spot) if inset else None
    areas = [*(each.shape for each in found.areas), *wall_areas(wall, look)]
    plan = page_plan(look, box, ground, blocks, areas, near)
    guides = guide_strokes(found, plan.seat)
    pointer = inset.pointer(plan.seat, plan.boxes[0]) if inset else ()
    beside = [
        item
        for block, at in zip(blocks, plan.boxes, strict=True)
        for item in block.items((at[0], at[1]))
    ]
    items = (
        *((mat_stroke(mat, plan.seat),) if mat else ()),
        *(wall_strokes(wall, plan.seat) if wall else ()),
        *solid_strokes(found, plan.seat, set(scene.coloured)),
        *guides,
        *pointer,
        *beside,
        *_over(scene, step, found, plan, ground, guides, pointer[:1]),
    )
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=title or say(reader, "drawing-step", step=step.number),
        description=" ".join(_sentences(scene, shown, look, reader)),
    )


def _over(
    scene: Scene,
    step: BuildStep,
    found: Seen,
    plan: PagePlan,
    ground: Box,
    guides: Sequence[Stroke],
    pointer: Sequence[Stroke],
) -> Iterator[Item]:
    """Yield what lies over the picture: the arrows, and the balloons of the new pieces."""
    lines = [_line(each) for each in (*guides, *pointer)]
    taken = Occupied([flat_on_paper(each.shape, plan.seat) for each in found.areas])
    arrows = tuple(arrow_strokes(scene, step.moves, found, plan.seat, ground, lines, plan.boxes))
    yield from arrows
    anchors = piece_anchors(scene, found, plan.seat, scene.new)
    kept_clear = (
        *plan.boxes,
        *(box_of(each) for each in arrows),
        *engraved_boxes(found, plan.seat),
    )
    for each in balloons(anchors, ground, taken, kept_clear, [_line(each) for each in pointer]):
        yield from each.items


def _side_blocks(
    shown: Shown,
    inset: Inset | None,
    look: View,
    hardware: Sequence[tuple[str, int]],
    reader: Reader,
) -> list[Block]:
    blocks = [inset.block] if inset else []
    blocks += [hardware_block(hardware)] if hardware else []
    blocks += [people_block(shown.people)] if shown.people > 1 else []
    blocks += [turn_block(shown, look, reader)] if shown.turned else []
    return blocks + ([from_below_block(reader)] if look.from_below else [])


def _line(stroke: Stroke) -> tuple[Point, Point]:
    a, b = stroke.contour.vertices[0], stroke.contour.vertices[-1]
    return (a[0], a[1]), (b[0], b[1])


def _sentences(scene: Scene, shown: Shown, look: View, reader: Reader) -> Iterator[str]:
    """Yield what the picture shows for those who cannot see it."""
    step = shown.step
    marks = [each.mark for each in scene.pieces if each.label in scene.new]
    told: dict[str, str | int] = {
        "count": len(marks),
        "pieces": ", ".join(marks),
        "below": int(look.from_below),
    }
    ways = sorted({_way(move.direction) for move in step.moves})
    if not marks:
        yield say(reader, "drawing-step-hardware", standing=len(step.standing))
    elif ways:
        way = listed(reader, [say(reader, f"drawing-way-{each}") for each in ways])
        yield say(reader, "drawing-step-moving", **told, way=way, standing=len(step.standing))
    else:
        yield say(reader, "drawing-step-set-down", **told)
    boards = [
        each.name for each in shown.fittings if each.role is Role.BOARD and each.step == step.number
    ]
    if boards:
        called = listed(reader, [board_title(each) for each in dict.fromkeys(boards)])
        yield say(reader, "drawing-step-boards", boards=called)
    if shown.wall:
        yield say(reader, "drawing-wall-behind")
    if shown.lying:
        lying = shown.assembled.piece(shown.lying).mark
        yield say(reader, "drawing-step-lying", piece=lying)
    if shown.turned:
        yield say(reader, "drawing-step-turned")


def _way(direction: Vector) -> str:
    """Name a direction by the world's axis nearest to it."""
    names = (("left", "right"), ("to-front", "to-back"), ("down", "up"))
    axis = max(range(3), key=lambda each: abs(direction[each]))
    return names[axis][direction[axis] > 0]
