"""A step that bores by hand into edges: the pieces, the bits before their places, how deep."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.clamping import holding
from kerfolio.basis.cutting_lengths import depth_in, drill_in
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.anchors import flat_on_paper, piece_anchors
from kerfolio.drawing.balloons import balloons
from kerfolio.drawing.callout import hardware_block
from kerfolio.drawing.exploded_view import LOOK
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.hidden_bore import Bore, bore_strokes
from kerfolio.drawing.motion import guide_strokes
from kerfolio.drawing.page_plan import drawn_in, page_plan, page_seat
from kerfolio.drawing.scene import HOME, Scene, ShownFitting
from kerfolio.drawing.side_by_side import side_by_side
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.step_view import ROOM
from kerfolio.drawing.tool_solid import screw_of, tool
from kerfolio.drawing.vocabulary import Drawing, Item
from kerfolio.geometry.facing import PosedTurned, extent_of
from kerfolio.geometry.hidden_lines import seen
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.rigid import Rigid, Vector, added, cross, scaled
from kerfolio.geometry.turned import Frustum, Thread, Turned
from kerfolio.geometry.view import View
from kerfolio.settling.bored import Bored
from kerfolio.settling.settled import SettledFeature

_OUT, _SHAFT = 14.0, 30.0
"""How far a bit stands before its place, and how long it is over the depth of the bore, mm."""
_COLLAR, _WIDER = 6.0, 1.5
"""The stop on a bit: how long, mm, and how much wider than the bit."""


def bore_view(
    assembled: Assembled,
    bored: Sequence[Bored],
    *,
    clamped: Collection[str] = (),
    reader: Reader = METRIC,
    room: tuple[float, float] = ROOM,
    title: str = "",
) -> Drawing:
    """Return the picture of a step that bores, at paper size within ``room`` (mm).

    Of each part one piece is shown as it stands in the whole, its marks those of all its pieces;
    a bit with a stop for the depth stands before each bore, which is drawn through the wood. Pieces
    that are ``clamped`` are held down on the edge of a bench.
    """
    ground = (0.0, 0.0, *room)
    scene, walls = _beside(assembled, bored, clamped, LOOK, room)
    solids = scene.solids()
    box = extent_of(solids, LOOK)
    first = page_seat(LOOK, box, ground)
    found = seen(
        solids,
        LOOK,
        apart=APART / first.scale,
        first=scene.coloured,
        extra=[each.guide for each in scene.fittings if each.guide],
    )
    areas = [each.shape for each in found.areas]
    counted = _counted(bored, reader)
    block = hardware_block(counted)
    plan = page_plan(LOOK, box, ground, [block], areas)
    taken = Occupied([flat_on_paper(each, plan.seat) for each in areas])
    named = [each for each in scene.pieces if each.mark]
    anchors = piece_anchors(scene, found, plan.seat, {each.label for each in named})
    marks = [item for each in balloons(anchors, ground, taken, plan.boxes) for item in each.items]
    plan = drawn_in(plan, box, ground, areas, [extent([each]) for each in marks])
    left, bottom, *_ = plan.boxes[0]
    items: tuple[Item, ...] = (
        *solid_strokes(found, plan.seat, set(scene.coloured), _tools(scene)),
        *bore_strokes(walls, plan.seat),
        *guide_strokes(found, plan.seat),
        *block.items((left, bottom)),
        *marks,
    )
    sizes = listed(reader, [f"{count} × {size}" for size, count in counted])
    pieces = listed(reader, [each.mark for each in named])
    return Drawing(
        box=padded(extent(items), 0.6),
        items=items,
        title=title,
        description=say(reader, "drawing-bores-show", pieces=pieces, bores=sizes),
    )


def _counted(bored: Sequence[Bored], reader: Reader) -> list[tuple[str, int]]:
    """Return each size of bore in words, with how often it is made."""
    counts: dict[str, int] = {}
    for each in bored:
        for bore in each.bores:
            assert bore.depth is not None, "a bore into an edge ends"
            wide, deep = drill_in(bore.width.value, reader), depth_in(bore.depth.value, reader)
            words = say(reader, "drawing-bore", wide=wide, deep=deep)
            counts[words] = counts.get(words, 0) + len(each.pieces)
    return list(counts.items())


def _beside(
    assembled: Assembled,
    bored: Sequence[Bored],
    clamped: Collection[str],
    look: View,
    room: tuple[float, float],
) -> tuple[Scene, list[Bore]]:
    """Return one piece of each part with its bits, beside one another."""
    alone, walls = [], []
    for each in bored:
        piece = _marked([assembled.piece(label) for label in each.pieces])
        made = [_bit(bore, piece.pose) for bore in each.bores]
        bits = tuple(shown for shown, _ in made)
        walls.append([wall for _, wall in made])
        pieces, screws = _held(piece, each, held=bool({*each.pieces} & {*clamped}))
        still = {one.label: HOME for one in pieces}
        alone.append(Scene(assembled, pieces, still, frozenset(), (*bits, *screws)))
    moves = side_by_side(alone, look, room)
    shown = [*zip(alone, moves, strict=True)]
    scene = Scene(
        assembled,
        tuple(piece for one, _ in shown for piece in one.pieces),
        {label: by for one, by in shown for label in one.away},
        frozenset(),
        tuple(_moved(each, by) for one, by in shown for each in one.fittings),
    )
    return scene, [
        (added(a, by), added(b, by), radius)
        for (_, by), mine in zip(shown, walls, strict=True)
        for a, b, radius in mine
    ]


def _held(
    piece: PosedPiece, bored: Bored, *, held: bool
) -> tuple[tuple[PosedPiece, ...], tuple[ShownFitting, ...]]:
    """Return a piece, if it is ``held`` with its clamp and what it lies on, and the screw."""
    if not held:
        return (piece,), ()
    clamp, rest = holding(piece, [(each.at, each.direction) for each in bored.bores])
    bodies = (tool(f"rest-{piece.label}", rest), tool(f"clamp-{piece.label}", clamp.body))
    return (piece, *bodies), (screw_of(clamp),)


def _tools(scene: Scene) -> set[int]:
    """Return the places of the clamps and of what they hold to among the solids of a scene."""
    count = len(scene.pieces)
    return {
        *(i for i, each in enumerate(scene.pieces) if not each.mark),
        *(count + i for i, each in enumerate(scene.fittings) if not each.new),
    }


def _marked(pieces: Sequence[PosedPiece]) -> PosedPiece:
    """Return the first of like pieces with the marks of all: ``A1, A2``, ``A1–A4``."""
    first, *_, last = (pieces[0], *pieces)
    marks = {2: f"{first.mark}, {last.mark}", 1: first.mark}
    return replace(first, mark=marks.get(len(pieces), f"{first.mark}–{last.mark}"))


def _moved(shown: ShownFitting, by: Vector) -> ShownFitting:
    posed = replace(shown.posed, pose=shown.posed.pose.moved(by))
    guide = (added(shown.guide[0], by), added(shown.guide[1], by)) if shown.guide else None
    return ShownFitting(posed, shown.new, guide)


def _bit(bore: SettledFeature, pose: Rigid) -> tuple[ShownFitting, Bore]:
    assert bore.level is not None, "a bore into an edge has a level"
    assert bore.depth is not None, "a bore into an edge ends"
    mouth = pose.point((*bore.at, bore.level.value))
    inward = scaled(pose.vector((*bore.direction, 0.0)), -1.0)
    across = pose.z
    solid = bit_solid(bore.width.value, bore.depth.value)
    tip = added(mouth, scaled(inward, -_OUT))
    frame = Rigid(tip, across, cross(inward, across), inward)
    shown = ShownFitting(PosedTurned(solid, frame), new=True, guide=(tip, mouth))
    end = added(mouth, scaled(inward, bore.depth.value))
    return shown, (mouth, end, bore.width.value / 2)


def bit_solid(wide: float, deep: float) -> Turned:
    """Return a bit with a stop that leaves ``deep`` mm of it free; its tip is at 0, z goes in."""
    radius, point = wide / 2, 0.35 * wide
    back = -deep - _COLLAR
    return Turned(
        (
            Frustum(back - _SHAFT, back, radius, radius),
            Frustum(back, -deep, _WIDER * radius, _WIDER * radius),
            Frustum(-deep, -point, radius, radius),
            Frustum(-point, 0.0, radius, 0.0),
        ),
        thread=Thread(-deep, -point, radius, 1.6 * wide),
    )
