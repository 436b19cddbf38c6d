"""A step of putting together: what stands, what is new, and how it comes home."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import islice
from math import dist

from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.lying import Shown
from kerfolio.assembly.overhangs import Overhang
from kerfolio.assembly.wall import Wall
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.anchors import engraved_boxes, flat_on_paper, held_anchors, piece_anchors
from kerfolio.drawing.balloons import balloons
from kerfolio.drawing.callout import (
    Block,
    hardware_block,
    people_block,
    seen_from_block,
)
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import box_of, extent, padded
from kerfolio.drawing.fitting_inset import fitting_details
from kerfolio.drawing.inset import Detail, Pointer
from kerfolio.drawing.joint_edges import edges_of, shares_seen
from kerfolio.drawing.joint_inset import joint_details
from kerfolio.drawing.lettering import Box
from kerfolio.drawing.loose import apart_dimensions, apart_sentences, stand_apart
from kerfolio.drawing.mat import mat_corners, mat_stroke, with_mat
from kerfolio.drawing.motion import arrow_strokes, guide_strokes, line_of, lots_moved
from kerfolio.drawing.mounted import mounted
from kerfolio.drawing.overhang import overhang_lines, overhang_sentences, overhang_sizes
from kerfolio.drawing.page_plan import PagePlan, page_plan, page_seat
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import OpenJoint, Scene, step_scene
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.turn_block import turn_block
from kerfolio.drawing.vocabulary import Drawing, Item, Stroke
from kerfolio.drawing.wall import is_shown, shown_wall, wall_areas, wall_strokes, with_wall
from kerfolio.drawing.wall_height import (
    height_dimension,
    height_line,
    height_on,
    height_sentence,
)
from kerfolio.geometry.facing import extent_of
from kerfolio.geometry.hidden_lines import Seen, seen
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.view import View
from kerfolio.settling.titles import board_title

ROOM = (120.0, 95.0)
"""A booklet's column, mm."""
_MOST_INSETS = 2
_SMALLER = 0.7
"""A second thing is not drawn larger where the picture itself would be smaller than this share."""


def step_view(
    shown: Shown,
    *,
    look: View,
    hardware: Sequence[tuple[str, int]] = (),
    overhangs: Sequence[Overhang] = (),
    alike: tuple[str, int] = ("", 1),
    reader: Reader = METRIC,
    room: tuple[float, float] = ROOM,
    title: str = "",
) -> Drawing:
    """Return the picture of a step at paper size, within ``room`` (mm).

    ``hardware`` are (title, count) of what the step takes, ``overhangs`` the ends of what it lays
    down, ``alike`` what is made and how often. The pieces new in the step are in the
    accent, drawn out against their moves, with their marks in balloons, and so is its hardware;
    guide lines lead to where they go. What is too small to see on the page, a fastening else a
    joint, is drawn larger beside the picture. Work that lies is shown on a mat, where ``look`` is
    from above.
    """
    ground = (0.0, 0.0, *room)
    looked = _looked(shown, look, overhangs, ground)
    scene, found, wall = looked.scene, looked.found, looked.wall
    blocks = _side_blocks(shown, look, hardware, reader)
    blocks += [hardware_block([alike])] if alike[1] > 1 else []
    areas = [*(each.shape for each in found.areas), *wall_areas(wall, look)]
    larger = _larger(shown, looked, reader)
    larger, plan = _planned(look, looked.box, ground, larger, blocks, areas)
    insets = [
        each.drawn(spot).turned_to(plan.seat, at)
        for each, spot, at in zip(larger, plan.spots, plan.boxes, strict=False)
    ]
    pointers = [each.pointer(plan.seat, at) for each, at in zip(insets, plan.boxes, strict=False)]
    apart, height = stand_apart(scene, shown.step, look), height_on(wall, shown, look)
    sizes = (
        *apart_dimensions(apart, plan.seat, reader),
        *(height_dimension(height, plan.seat, reader) if height else ()),
        *overhang_sizes(overhangs, scene, plan.seat, reader),
    )
    strokes = guide_strokes(found, plan.seat)
    items = (
        *((mat_stroke(looked.mat, plan.seat),) if looked.mat else ()),
        *(wall_strokes(wall, plan.seat) if wall else ()),
        *((height_line(height, plan.seat),) if height else ()),
        *solid_strokes(found, plan.seat, set(scene.coloured)),
        *strokes,
        *(item for each in pointers for item in (each.line, each.ring)),
        *_beside([*(each.block for each in insets), *blocks], plan),
        *sizes,
        *_over(scene, shown, found, plan, ground, strokes, pointers, sizes),
    )
    sentences = (
        *_sentences(scene, shown, look, reader),
        *apart_sentences(apart, reader),
        *([height_sentence(height, reader)] if height else []),
        *overhang_sentences(overhangs, scene, reader),
        *(each.words for each in larger),
    )
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=title or say(reader, "drawing-step", step=shown.step.number),
        description=" ".join(sentences),
    )


@dataclass(frozen=True, slots=True)
class _Looked:
    """A step as its view sees it, before anything stands on a page.

    ``box`` is its extent, ``first`` the seat of a page that has nothing beside it. Of what is
    ``found`` the guides are left as lines; ``reach`` tells how far those of ``joints`` and of the
    hardware are seen on paper, ``shares`` how much of the joints' edges.
    """

    scene: Scene
    mat: tuple[Vector, ...]
    wall: Wall | None
    joints: Sequence[OpenJoint]
    box: Box
    first: PaperSeat
    found: Seen
    reach: Sequence[float]
    shares: Sequence[float]


def _looked(shown: Shown, look: View, overhangs: Sequence[Overhang], ground: Box) -> _Looked:
    scene = step_scene(shown.assembled, shown.step)
    mat = mat_corners(scene) if shown.lying and not look.from_below else ()
    wall = shown_wall(shown, scene) if is_shown(look) else None
    if shown.fittings:
        rough = page_seat(look, extent_of(scene.solids(), look), ground).scale
        scene = mounted(scene, shown.fittings, shown.step.number, look, rough)
    solids = scene.solids()
    joints = [each for each in scene.open_joints() if each.straight]
    axes = [each.guide for each in scene.fittings if each.guide]
    edges = edges_of(scene, joints)
    guides = [*(each.ends for each in joints), *axes, *overhang_lines(overhangs, scene, look)]
    box = with_wall(with_mat(extent_of(solids, look), mat, look), wall, look)
    first = page_seat(look, box, ground)
    found = seen(
        solids,
        look,
        apart=APART / first.scale,
        first=scene.coloured,
        extra=[*guides, *(line for pair in edges for lines in pair for line in lines)],
    )
    reach = _reach(found, len(joints) + len(axes), first.scale)
    shares = shares_seen(edges, found.extra, len(guides))
    found = replace(found, extra=tuple(each for each in found.extra if each[0] < len(guides)))
    return _Looked(scene, mat, wall, joints, box, first, found, reach, shares)


def _beside(blocks: Sequence[Block], plan: PagePlan) -> Iterator[Item]:
    """Yield what stands beside the picture."""
    for block, at in zip(blocks, plan.boxes, strict=True):
        yield from block.items((at[0], at[1]))


def _larger(shown: Shown, looked: _Looked, reader: Reader) -> list[Detail]:
    """Return what is drawn larger beside the picture: hardware, else joints, two things at most.

    Of joints that come together by one move after another the picture has no guide.
    """
    scene, joints, reach = looked.scene, looked.joints, looked.reach
    count = len(joints)
    hardware = [*fitting_details(shown, scene, reach[count:], looked.first, reader)]
    if hardware:
        return hardware
    askew = [each for each in scene.open_joints() if not each.straight]
    unseen = [0.0] * len(askew)
    found = joint_details(
        scene,
        shown.step,
        [*joints, *askew],
        [*reach[:count], *unseen],
        [*looked.shares, *unseen],
        looked.first,
        reader,
    )
    return [*islice(found, _MOST_INSETS)]


def _planned(
    look: View,
    box: Box,
    ground: Box,
    larger: list[Detail],
    blocks: Sequence[Block],
    areas: Sequence[Flat],
) -> tuple[list[Detail], PagePlan]:
    """Return what is drawn larger, as much as there is room for, and where all of it goes."""
    nears = [[look.spot(spot) for spot in each.spots] for each in larger]
    every = [*(each.room for each in larger), *blocks]
    plan = page_plan(look, box, ground, every, areas, nears)
    if len(larger) < 2:
        return larger, plan
    fewer = _planned(look, box, ground, larger[:-1], blocks, areas)
    smaller = plan.seat.scale < _SMALLER * fewer[1].seat.scale
    return fewer if smaller or not plan.fits(ground) else (larger, plan)


def _over(
    scene: Scene,
    shown: Shown,
    found: Seen,
    plan: PagePlan,
    ground: Box,
    guides: Sequence[Stroke],
    pointers: Sequence[Pointer],
    sizes: Sequence[Item],
) -> Iterator[Item]:
    """Yield what lies over the picture: the arrows, and the balloons of what is new or held."""
    thin, leaders = [line_of(each) for each in guides], [line_of(each.line) for each in pointers]
    rings = [box_of(each.ring) for each in pointers]
    taken = Occupied([flat_on_paper(each.shape, plan.seat) for each in found.areas])
    arrows = tuple(
        arrow_strokes(
            scene, shown.step.moves, found, plan.seat, ground, thin, (*plan.boxes, *rings), leaders
        )
    )
    for arrow in arrows:
        yield from (arrow.stroke, *arrow.items)
    anchors = (
        *piece_anchors(scene, found, plan.seat, scene.new),
        *held_anchors(scene, found, plan.seat, shown.held),
    )
    kept_clear = (
        *plan.boxes,
        *(box for each in arrows for box in each.boxes),
        *engraved_boxes(found, plan.seat),
        *(box_of(each) for size in sizes for each in expanded(size)),
    )
    lines = [*leaders, *(side for each in arrows for side in each.outline)]
    for each in balloons(anchors, ground, taken, kept_clear, lines, thin, rings):
        yield from each.items


def _side_blocks(
    shown: Shown,
    look: View,
    hardware: Sequence[tuple[str, int]],
    reader: Reader,
) -> list[Block]:
    blocks = [hardware_block(hardware)] if hardware else []
    blocks += [people_block(shown.people)] if shown.people > 1 else []
    blocks += [turn_block(shown, look, reader)] if shown.turned else []
    return blocks + ([seen_from_block(reader, "below")] if look.from_below else [])


def _reach(found: Seen, count: int, scale: float) -> list[float]:
    """Return how far each of the first lines asked about is seen, mm on paper."""
    reach = [0.0] * count
    for number, a, b in found.extra:
        if number < count:
            reach[number] += dist(a, b) * scale
    return reach


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
    for lots in lots_moved(scene, step.moves):
        if lots > 1:
            yield say(reader, "drawing-step-alike", count=lots)
    mark = {each.label: each.mark for each in scene.pieces}
    for turn in sorted({move.turn for move in step.moves} - {0}):
        there = {piece for move in step.moves if move.turn == turn for piece in move.pieces}
        pieces = ", ".join(mark[label] for label in mark if label in there)
        yield say(reader, "drawing-step-turn", turn=turn, pieces=pieces)
    if shown.held:
        held = listed(reader, [mark[label] for label in shown.held])
        yield say(reader, "drawing-step-held", pieces=held)
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
