"""A step that clamps: the work together, clamps over its joints, and which way they press."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from kerfolio.assembly.assembled import Assembled, BuildStep
from kerfolio.assembly.clamping import JAW, Clamp
from kerfolio.basis.figures import minutes_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import listed, say
from kerfolio.drawing.callout import lines_block, note_lines
from kerfolio.drawing.motion import arrow_along
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import HOME, Scene
from kerfolio.drawing.tool_solid import screw_of, tool
from kerfolio.drawing.view_choice import candidates
from kerfolio.drawing.vocabulary import Drawing, Stroke
from kerfolio.drawing.work_page import WorkPage, work_drawing
from kerfolio.geometry.rigid import Vector, added, dot, length, scaled
from kerfolio.geometry.shown import sharp_edges, shown_shares
from kerfolio.geometry.view import View
from kerfolio.model.handwork import Handwork

_ARROW, _OFF = 8.0, 1.0
"""How long a pressing arrow is, and how far before a clamp its tip stands, mm on paper."""
_PROBE, _SHOWN = (3.0, 63.0), 0.9
"""An arrow is drawn where what lies so far before a clamp's end, mm, is seen to this share."""
_EDGES = 12
_USUAL = 0.9
"""A view shows clamps well enough with this share of the most that any view does."""

_End = tuple[Vector, Vector]
"""Where a clamp ends, and which way it presses there."""


def clamp_view(
    assembled: Assembled,
    step: BuildStep,
    clamps: Sequence[Clamp],
    stated: Handwork,
    *,
    lying: bool = False,
    reader: Reader = METRIC,
    title: str = "",
) -> Drawing:
    """Return the picture of work that is clamped, at paper size; ``lying`` shows its mat."""
    labels = {*step.standing, *step.added}
    pieces = tuple(each for each in assembled.pieces if each.label in labels)
    bodies = tuple(tool(f"clamp-{n}", each.body) for n, each in enumerate(clamps, 1))
    shown = (*pieces, *bodies)
    away = {each.label: HOME for each in shown}
    scene = Scene(assembled, shown, away, frozenset(step.added), tuple(map(screw_of, clamps)))
    tools = frozenset(each.label for each in bodies)
    lines = [*_told(stated, len(clamps), reader)]
    look = _best_view(scene, clamps)
    ends = _seen_ends(scene, clamps, look)
    page = WorkPage(
        scene=scene,
        look=look,
        blocks=(lines_block(lines),),
        marked=frozenset(step.added),
        tools=tools,
        over=lambda seat: tuple(_arrows(ends, seat)),
        on_mat=lying,
    )
    marks = listed(reader, [each.mark for each in pieces])
    return work_drawing(
        page,
        title=title,
        description=say(reader, "drawing-clamps-show", count=len(clamps), pieces=marks),
    )


def _told(stated: Handwork, drawn: int, reader: Reader) -> Iterator[tuple[str, str]]:
    count = stated.count or drawn
    yield f"{count} ×", say(reader, "drawing-clamp", count=count)
    if stated.minutes:
        time = minutes_text(stated.minutes, reader)
        yield "", say(reader, "drawing-clamped-for", time=time)
    yield from (("", line) for line in note_lines(stated.note))


def _best_view(scene: Scene, clamps: Sequence[Clamp]) -> View:
    """Return the first view from above that shows the clamps well enough."""
    views = [each for each in candidates() if not each.from_below]
    solids = scene.solids()
    edges = tuple(line for each in clamps for line in sharp_edges(each.body, _EDGES))
    worth = [shown_shares(solids, view, (edges,))[0] for view in views]
    enough = _USUAL * max(worth)
    return next(view for view, share in zip(views, worth, strict=True) if share >= enough)


def _arrows(ends: Sequence[_End], seat: PaperSeat) -> Iterator[Stroke]:
    """Yield an arrow that presses at each end; none where it would point at the eye."""
    for at, way in ends:
        yield from arrow_along(seat, at, way, (-_OFF - _ARROW, -_OFF))


def _seen_ends(scene: Scene, clamps: Sequence[Clamp], look: View) -> list[_End]:
    """Return the ends of clamps before which nothing hides an arrow."""
    ends = []
    for clamp in clamps:
        low, high = -JAW, clamp.opening + max(end for _, end, _ in clamp.screw_stretches)
        for at, sign in ((low, 1.0), (high, -1.0)):
            ends.append((clamp.frame.point((at, 0.0, 0.0)), scaled(clamp.frame.x, sign)))
    outward = [
        ((added(at, scaled(way, -_PROBE[0])), added(at, scaled(way, -_PROBE[1]))),)
        for at, way in ends
    ]
    level = [length(_flat(way, look)) for _, way in ends]
    shares = shown_shares(scene.solids(), look, outward)
    return [
        end for end, share, most in zip(ends, shares, level, strict=True) if share > _SHOWN * most
    ]


def _flat(way: Vector, look: View) -> Vector:
    return added(way, scaled(look.to_viewer, -dot(way, look.to_viewer)))
