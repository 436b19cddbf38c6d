"""A step that sands: the pieces, what of them is sanded, a block on it and which way it goes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from kerfolio.assembly.assembled import Assembled, BuildStep, PosedPiece
from kerfolio.assembly.handworked import Coated
from kerfolio.assembly.lots import lot_of
from kerfolio.assembly.sanded import sanded_patches
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.callout import hatched_block
from kerfolio.drawing.motion import arrow_along
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.tool_solid import tool
from kerfolio.drawing.vocabulary import Drawing, Stroke
from kerfolio.drawing.work_page import WorkPage, work_drawing
from kerfolio.drawing.work_things import Thing, laid_out
from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.panel_overlap import overlap_volumes
from kerfolio.geometry.panel_solid import Posed, solid_of
from kerfolio.geometry.patch import Patch
from kerfolio.geometry.rigid import Rigid, Vector, added, between, cross, dot, length, scaled
from kerfolio.model.handwork import Handwork
from kerfolio.settling.settled import SettledPart
from kerfolio.settling.worked import worked_on

_LONG, _WIDE, _HIGH = 110.0, 60.0, 30.0
"""A sanding block, mm: common practice, no single source."""
_SHARE = 0.6
"""A block is no longer than this share of what it stands on."""
_SEEN = 0.25
"""A block stands on what is seen at least so squarely (cosine)."""
_ARROW, _OFF = 7.0, 0.6
"""How long the arrows at a block are, and how far off its ends, mm on paper."""
_LIFT = 0.05
_BLOCK = "sanding-block"


def sand_view(
    assembled: Assembled,
    step: BuildStep,
    stated: Handwork,
    parts: Sequence[SettledPart],
    *,
    reader: Reader = METRIC,
    title: str = "",
) -> Drawing | None:
    """Return the picture of what a step sands, at paper size; None where none of it is there.

    Pieces that do not stand yet are alone, others with all that hangs together with them. What is
    sanded is hatched; a block stands on it, its arrows along the edge or, on a face, the grain.
    """
    coats = _coats(assembled, stated, parts)
    if not coats:
        return None
    page, pieces = laid_out(assembled, [*_things(assembled, step, coats)], step.added)
    grains = {part.name: part.grain for part in parts}
    block = _block(page, grains)
    if block:
        scene = page.scene
        shown = replace(
            scene,
            pieces=(*scene.pieces, block.piece),
            away={**scene.away, _BLOCK: (0.0, 0.0, 0.0)},
        )
        page = replace(
            page,
            scene=shown,
            tools=frozenset({_BLOCK}),
            over=lambda seat: tuple(_arrows(block, seat)),
        )
    words = say(reader, "drawing-sand", grit=stated.grit or 0)
    return work_drawing(
        replace(page, blocks=(hatched_block(words, stated.note),)),
        title=title,
        description=say(
            reader, "drawing-sand-shows", pieces=listed(reader, [each.mark for each in pieces])
        ),
    )


def _coats(assembled: Assembled, stated: Handwork, parts: Sequence[SettledPart]) -> list[Coated]:
    found: dict[str, list[Patch]] = {}
    for name in stated.of:
        worked = worked_on(name.name, parts)
        for piece in assembled.pieces:
            if worked and piece.label in worked.pieces:
                found.setdefault(piece.label, []).extend(sanded_patches(piece, worked))
    return [
        Coated(each, tuple(dict.fromkeys(found[each.label])))
        for each in assembled.pieces
        if found.get(each.label)
    ]


def _things(assembled: Assembled, step: BuildStep, coats: Sequence[Coated]) -> Iterator[Thing]:
    taken: set[str] = set()
    for each in coats:
        label = each.piece.label
        if label in taken:
            continue
        group = _hanging(assembled, step, label)
        taken |= group
        pieces = tuple(piece for piece in assembled.pieces if piece.label in group)
        yield Thing(pieces, tuple(coat for coat in coats if coat.piece.label in group))


def _hanging(assembled: Assembled, step: BuildStep, label: str) -> set[str]:
    """Return what stands and hangs together with a piece by joints."""
    there = {*step.standing}
    pairs = [(each.a, each.b) for each in assembled.joints if {each.a, each.b} <= there]
    return {*lot_of(label, pairs)}


@dataclass(frozen=True, slots=True)
class _Standing:
    """A block in its place, and the way it goes."""

    piece: PosedPiece
    way: Vector
    long: float


def _block(page: WorkPage, grains: dict[str, str]) -> _Standing | None:
    """Return the block on the largest patch that is seen and has room for it."""
    look, scene = page.look, page.scene
    solids = [scene.posed(each) for each in scene.pieces]
    seen = [each for each in page.patches if each.facing(look) > _SEEN]
    for patch in sorted(seen, key=lambda each: -round(each.area * each.facing(look), 2)):
        standing = _on(patch, _grain_of(patch, page, grains))
        body = standing.piece
        mine = Posed(solid_of(body.panel), body.pose)
        others = [(mine, Posed(solid_of(each.panel), each.pose)) for each in solids]
        if float(max(overlap_volumes(others))) < 1.0:
            return standing
    return None


def _grain_of(patch: Patch, page: WorkPage, grains: dict[str, str]) -> Vector | None:
    """Return the way of the grain of the face that a patch lies on, None of an edge."""
    for piece in page.scene.pieces:
        lies_on = abs(dot(piece.pose.z, patch.normal)) > 0.99
        if lies_on and grains.get(piece.part, "") in ("along x", "along y"):
            return piece.pose.x if grains[piece.part] == "along x" else piece.pose.y
    return None


def _on(patch: Patch, grain: Vector | None) -> _Standing:
    """Return a block on the middle of a patch, along its longest side or along the grain."""
    sides = [between(a, b) for a, b in zip(patch.loops[0], patch.loops[0][1:], strict=False)]
    longest = max(sides, key=lambda side: round(length(side), 6))
    way = grain or scaled(longest, 1 / length(longest))
    across = cross(patch.normal, way)
    reaches = [[dot(at, axis) for at in patch.loops[0]] for axis in (way, across)]
    size = [max(each) - min(each) for each in reaches]
    middle = scaled(patch.normal, dot(patch.loops[0][0], patch.normal) + _LIFT)
    for axis, each in zip((way, across), reaches, strict=True):
        middle = added(middle, scaled(axis, (max(each) + min(each)) / 2))
    long = min(_LONG, _SHARE * size[0])
    wide, high = long * _WIDE / _LONG, long * _HIGH / _LONG
    half = (long / 2, wide / 2)
    outline = ((-half[0], -half[1]), (half[0], -half[1]), half, (-half[0], half[1]))
    body = Panel(shape=Flat(outline), thickness=high)
    piece = tool(_BLOCK, PosedPanel(body, Rigid(middle, way, across, patch.normal)))
    return _Standing(piece, way, long)


def _arrows(block: _Standing, seat: PaperSeat) -> Iterator[Stroke]:
    """Yield an arrow at either end of a block, away from it."""
    pose, high = block.piece.pose, block.piece.panel.thickness
    middle = added(pose.origin, scaled(pose.z, high / 2))
    for sign in (1.0, -1.0):
        way = scaled(block.way, sign)
        end = added(middle, scaled(way, block.long / 2))
        yield from arrow_along(seat, end, way, (_OFF, _OFF + _ARROW))
