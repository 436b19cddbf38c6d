"""A plan put together for its maker: its sizes, its pieces by name, and what is not joined yet."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.extent import box_of
from kerfolio.basis.lengths import length_in
from kerfolio.basis.reader import Reader
from kerfolio.drawing.anchors import engraved_boxes, flat_on_paper, piece_anchors
from kerfolio.drawing.assembled_view import AROUND, overall_dimensions
from kerfolio.drawing.balloons import balloons
from kerfolio.drawing.block import seated
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.exploded_view import LOOK
from kerfolio.drawing.extent import box_of as on_paper
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import face_strokes
from kerfolio.drawing.lettering import CAPITAL, Box, text_width
from kerfolio.drawing.paper_seat import fitted
from kerfolio.drawing.scene import Scene, home_scene
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.solid_strokes import APART, solid_strokes
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Label
from kerfolio.geometry.facing import extent_of
from kerfolio.geometry.hidden_lines import seen
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.occupied import Occupied
from kerfolio.settling.settled import SettledPart, SettledPlan

ROOM = (190.0, 145.0)
"""What one thing is drawn in, mm of paper; the names of its pieces stand beside it."""
_LOOSE, _ALONE = 42.0, 88.0
"""The largest side of a part that is not joined, mm of paper: beside others that are, and alone."""
_HEAD, _TEXT, _PITCH, _GAP = 4.6, 3.2, 5.0, 9.0
_SMALL = 2.8


@dataclass(frozen=True, slots=True, kw_only=True)
class Whole:
    """One of the things a plan makes as far as its joints put it together, under its title."""

    title: str
    assembled: Assembled


def named_whole(
    settled: SettledPlan, wholes: Sequence[Whole], changed: Collection[str] = ()
) -> Drawing | None:
    """Return everything that a plan makes, one below another, in the plan's own unit.

    Pieces of the parts named in ``changed`` are tinted. Below them stand the parts of which no
    piece is joined to another. None where there is no part at all.
    """
    joined = {piece.part for each in wholes for piece in each.assembled.pieces}
    loose = [part for part in settled.parts if part.name not in joined]
    items: list[Item] = []
    for each in wholes:
        items += _below(tuple(_thing(each, Reader(unit=settled.plan.units), changed)), items)
    if loose:
        items += _below(tuple(_loose(loose, told=bool(wholes))), items)
    if not items:
        return None
    return Drawing(
        box=padded(extent(items), 2.0),
        items=tuple(items),
        title=f"{settled.plan.title}: the whole",
        description=_sentence(wholes, loose),
    )


def _thing(whole: Whole, reader: Reader, changed: Collection[str]) -> Iterator[Item]:
    assembled = whole.assembled
    home = home_scene(assembled)
    new = frozenset(each.label for each in assembled.pieces if each.part in changed)
    scene, solids = Scene(assembled, home.pieces, home.away, new), home.solids()
    left, bottom, right, top = AROUND
    seat = fitted(LOOK, extent_of(solids, LOOK), (left, bottom, ROOM[0] - right, ROOM[1] - top))
    found = seen(solids, LOOK, apart=APART / seat.scale, first=scene.coloured)
    low, high = box_of(scene.corners())
    sizes = [(length_in(b - a, reader),) for a, b in zip(low, high, strict=True)]
    measured = tuple(overall_dimensions(low, high, sizes, seat))
    taken = Occupied([flat_on_paper(each.shape, seat) for each in found.areas])
    anchors = piece_anchors(scene, found, seat, set(scene.away))
    lettering = (part for item in measured for part in expanded(item) if isinstance(part, Label))
    words = [on_paper(each) for each in lettering]  # a slanted line's box would bar all below it
    marks = balloons(anchors, (0.0, 0.0, *ROOM), taken, [*words, *engraved_boxes(found, seat)])
    drawn: list[Item] = [*solid_strokes(found, seat, set(scene.coloured)), *measured]
    drawn += (item for each in marks for item in each.items)
    yield from drawn
    box = extent(drawn)
    yield Label(text=whole.title, at=(box[0], box[3] + 4.0), height=_HEAD, strong=True)
    yield from _key(assembled, box, new)


def _key(assembled: Assembled, box: Box, new: Collection[str]) -> Iterator[Item]:
    """Yield what the marks stand for, in columns to the right of a box."""
    rows = max(1, int((box[3] - box[1]) / _PITCH))
    x, pieces = box[2] + _GAP, assembled.pieces
    for start in range(0, len(pieces), rows):
        column = pieces[start : start + rows]
        indent = max(text_width(each.mark, _TEXT, strong=True) for each in column) + 2.0
        for row, each in enumerate(column):
            y = box[3] - row * _PITCH - _TEXT * CAPITAL
            ink = Ink.ACCENT if each.label in new else Ink.INK
            yield Label(text=each.mark, at=(x, y), height=_TEXT, strong=True, ink=ink)
            yield Label(text=each.label, at=(x + indent, y), height=_TEXT, ink=ink)
        x += indent + max(text_width(each.label, _TEXT) for each in column) + _GAP


def _loose(parts: Sequence[SettledPart], *, told: bool) -> Iterator[Item]:
    """Yield parts side by side at one scale, their names below them, in rows."""
    sizes = [bounds(part.routed) for part in parts]
    scale = (_LOOSE if told else _ALONE) / max(max(each.width, each.height) for each in sizes)
    x = y = high = 0.0
    if told:
        yield Label(text="Not joined yet", at=(0.0, 5.0), height=_HEAD, strong=True)
    for part, box in zip(parts, sizes, strict=True):
        name = f"{part.mark}  {part.name}"
        wide = max(box.width * scale, text_width(name, _SMALL))
        if x and x + wide > ROOM[0]:
            x, y, high = 0.0, y - high - 3 * _SMALL, 0.0
        top = y - box.height * scale
        yield from face_strokes(
            part, Seat(scale=scale, x=x - box.x0 * scale, y=top - box.y0 * scale)
        )
        yield Label(text=name, at=(x, top - _SMALL * 1.4), height=_SMALL)
        x, high = x + wide + _GAP, max(high, box.height * scale)


def _below(items: Sequence[Item], others: Sequence[Item]) -> Iterator[Item]:
    """Yield items moved below others."""
    if not others:
        yield from items
        return
    (left, bottom, _, _), (own, _, _, top) = extent(others), extent(items)
    seat = Seat(x=left - own, y=bottom - _GAP - top)
    yield from (seated(part, seat) for each in items for part in expanded(each))


def _sentence(wholes: Sequence[Whole], loose: Sequence[SettledPart]) -> str:
    labels = [each.label for whole in wholes for each in whole.assembled.pieces]
    told = f"Put together: {', '.join(labels)}." if labels else "Nothing is put together yet."
    rest = f" Not joined yet: {', '.join(each.name for each in loose)}." if loose else ""
    return f"{told}{rest}"
