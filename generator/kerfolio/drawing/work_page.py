"""The page of a picture of work by hand: pieces, hatched places, tools, and the words beside."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass

from kerfolio.drawing.anchors import engraved_boxes, flat_on_paper, piece_anchors
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.balloons import balloons
from kerfolio.drawing.callout import Block
from kerfolio.drawing.extent import box_of, extent, padded
from kerfolio.drawing.mat import mat_corners, mat_stroke, with_mat
from kerfolio.drawing.page_plan import drawn_in, page_plan, page_seat
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import Scene
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Stroke
from kerfolio.geometry.facing import extent_of
from kerfolio.geometry.hidden_lines import Seen, seen
from kerfolio.geometry.occupied import Occupied
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.patch import Line, Patch, hatching, rim
from kerfolio.geometry.rigid import Vector
from kerfolio.geometry.view import View

ROOM = (120.0, 56.0)
"""What a picture of work by hand takes of a booklet's column, mm."""
HATCH = 1.1
"""Between lines of hatching on paper, mm."""
_LARGE = 500.0
"""Patches larger than this on paper, mm2, are hatched half as densely."""
HATCH_WIDTH, RIM_WIDTH = 0.25, 0.35
_LEAST = 0.3

Over = Callable[[PaperSeat], Sequence[Stroke]]
"""Makes what lies over a picture once its seat is known."""


@dataclass(frozen=True, slots=True, kw_only=True)
class WorkPage:
    """What a picture of work shows.

    ``patches`` are hatched where they are seen, ``lines`` drawn heavy. Pieces named in ``marked``
    get their marks; ``tools`` are pieces of the scene that are none of the plan. ``over`` makes the
    arrows. ``on_mat`` shows the mat that lying work rests on.
    """

    scene: Scene
    look: View
    patches: tuple[Patch, ...] = ()
    lines: tuple[Line, ...] = ()
    blocks: tuple[Block, ...] = ()
    marked: frozenset[str] = frozenset()
    tools: frozenset[str] = frozenset()
    over: Over | None = None
    on_mat: bool = False


def work_drawing(
    page: WorkPage, *, title: str, description: str, room: tuple[float, float] = ROOM
) -> Drawing:
    """Return the picture at paper size, within ``room`` (mm)."""
    scene, look, ground = page.scene, page.look, (0.0, 0.0, *room)
    solids = scene.solids()
    mat = mat_corners(scene) if page.on_mat else ()
    box = with_mat(extent_of(solids, look), mat, look)
    first = page_seat(look, box, ground)
    shown = [each for each in page.patches if each.facing(look)]
    heavy = (*page.lines, *_rims(shown))
    fine = [
        line
        for each in shown
        for line in hatching(each, look, _hatch(each, look, first.scale) / first.scale)
    ]
    found = seen(
        solids,
        look,
        apart=APART / first.scale,
        first=scene.coloured,
        extra=[*heavy, *fine],
    )
    areas = [each.shape for each in found.areas]
    plan = page_plan(look, box, ground, page.blocks, areas)
    over = tuple(page.over(plan.seat)) if page.over else ()
    taken = Occupied([flat_on_paper(each, plan.seat) for each in areas])
    anchors = piece_anchors(scene, found, plan.seat, page.marked)
    kept_clear = (*plan.boxes, *map(box_of, over), *engraved_boxes(found, plan.seat))
    marks = [item for each in balloons(anchors, ground, taken, kept_clear) for item in each.items]
    covered = [*areas, *([Flat(tuple(map(look.spot, mat)), ())] if mat else ())]
    plan = drawn_in(plan, box, ground, covered, [extent([each]) for each in (*over, *marks)])
    items: tuple[Item, ...] = (
        *((mat_stroke(mat, plan.seat),) if mat else ()),
        *solid_strokes(found, plan.seat, {*scene.coloured}, _tools(page)),
        *_hatched(found, plan.seat, len(heavy)),
        *(
            item
            for block, at in zip(page.blocks, plan.boxes, strict=True)
            for item in block.items(at[:2])
        ),
        *over,
        *marks,
    )
    return Drawing(
        box=padded(extent(items), 0.6), items=items, title=title, description=description
    )


def _hatch(patch: Patch, look: View, scale: float) -> float:
    """Return how far apart a patch's hatching is on paper, mm: wider where there is much of it."""
    return HATCH * (2 if patch.area * patch.facing(look) * scale**2 > _LARGE else 1)


def _rims(patches: Sequence[Patch]) -> list[Line]:
    """Return the sides of patches but for those between two of them."""
    sides: dict[frozenset[Vector], list[Line]] = {}
    for each in patches:
        for a, b in rim(each):
            sides.setdefault(frozenset((_rounded(a), _rounded(b))), []).append((a, b))
    return [lines[0] for lines in sides.values() if len(lines) == 1]


def _rounded(at: Vector) -> Vector:
    x, y, z = (round(each, 3) for each in at)
    return x, y, z


def _tools(page: WorkPage) -> Collection[int]:
    """Return the places of the tools among the solids: some pieces, and whatever is turned."""
    count = len(page.scene.pieces)
    return {
        *(i for i, each in enumerate(page.scene.pieces) if each.label in page.tools),
        *range(count, count + len(page.scene.fittings)),
    }


def _hatched(found: Seen, seat: PaperSeat, heavy: int) -> Sequence[Stroke]:
    """Return the seen stretches of the hatching, its rims heavier."""
    strokes = []
    for number, a, b in found.extra:
        (ax, ay), (bx, by) = seat.flat(a), seat.flat(b)
        if abs(bx - ax) + abs(by - ay) >= _LEAST:
            width = RIM_WIDTH if number < heavy else HATCH_WIDTH
            path = open_path((ax, ay), (bx, by))
            strokes.append(Stroke(contour=path, ink=Ink.ACCENT, width=width))
    return strokes
