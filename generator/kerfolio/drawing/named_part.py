"""A part drawn large for its maker: sizes, rulers along its edges, what each feature is called."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from kerfolio.basis.lengths import length_in, place_decimal
from kerfolio.basis.reader import Reader
from kerfolio.basis.words import listed
from kerfolio.drawing.arrow import grain_arrow, open_path
from kerfolio.drawing.edge_ruler import edge_rulers
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import OUTLINE, face_strokes, hidden_strokes
from kerfolio.drawing.lettering import label_box
from kerfolio.drawing.name_tags import Tags
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Dimension, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds, centroid
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.model.joint_kind import WEDGE_JOINT
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.shop.engraving import stroke_widths

ROOM = (190.0, 170.0)
"""What the part itself is drawn in, mm of paper; what is written round it has its own."""
_LARGEST = 3.0
"""A small part is drawn so many times its size, at most."""
_TEXT, _HEAD, _SMALL = 3.2, 4.6, 2.8
_AWAY = 6.5
_BLANK = 0.35
_AXIS = 9.0


def named_part(
    settled: SettledPlan,
    part: SettledPart,
    changed: Collection[str] = (),
    *,
    headed: bool = True,
) -> Drawing:
    """Return a part with all that its maker calls by name, numbers in the plan's own unit.

    Features named in ``changed`` are tinted. Its own name stands above where it is ``headed``. The
    names stand on the part where there is room, else
    beside it on leaders; those of tabs, notches and fingers on rulers along their edges.
    """
    upright = part.grain == "along y"
    reader, shape = Reader(unit=settled.plan.units), bounds(part.routed)
    scale = min(ROOM[0] / shape.width, ROOM[1] / shape.height, _LARGEST)
    seat = Seat(scale=scale, x=-shape.x0 * scale, y=-shape.y0 * scale)
    face: list[Item] = [
        *face_strokes(part, seat, engraved=stroke_widths(settled, part)),
        *_tinted(part, seat, changed),
        *hidden_strokes(part, seat),
    ]
    origin = tuple(_origin(seat))
    tags = Tags(part=part, seat=seat, reader=reader, tinted=changed, taken=[extent(origin)])
    tags.write()
    for point in _wedged(settled, part):
        x, y = (place_decimal(each, reader.unit) for each in point)
        tags.tell(point, f"at {x}, {y}", "in the slot; the lower end goes in first")
    for lost in part.left_off:
        for point in lost.at:
            tags.tell(point, lost.name, "left out: see what was found of it")
    rulers = edge_rulers(part, seat, reader, tags.taken)
    drawn: list[Item] = [*face, *tags.items, *rulers, *origin]
    drawn += _overall(seat, part, reader, drawn)
    drawn += grain_arrow((extent(drawn)[2] + 3.0, 0.0), "along y" if upright else "", reader)
    drawn += tags.columns(extent(drawn))
    drawn += _head(part, reader, drawn, headed=headed)
    return Drawing(
        box=padded(extent(drawn), 2.0),
        items=tuple(_cleared(drawn, tags)),
        title=f"{settled.plan.title}: {part.name}",
        description=_sentence(part, reader),
    )


def _cleared(items: list[Item], tags: Tags) -> Iterator[Item]:
    """Yield items so that no line runs through a word: lines, then blanks, then all words.

    Words on the wood have a blank of wood, those beside the part one of paper.
    """
    every = [each for item in items for each in expanded(item)]
    yield from (each for each in every if isinstance(each, Stroke))
    words = [each for each in every if isinstance(each, Label)]
    on_part = [label_box(each) for each in tags.items if isinstance(each, Label)]
    for box in map(label_box, words):
        if box in tags.on_wood or box not in on_part:
            fill = Ink.WOOD if box in tags.on_wood else Ink.PAPER
            yield Stroke(contour=rectangle(*padded(box, _BLANK)), width=None, fill=fill)
    yield from words


def _tinted(part: SettledPart, seat: Seat, changed: Collection[str]) -> Iterator[Item]:
    for each in part.features:
        if each.name in changed:
            for contour in each.shape:
                fill = Ink.NEW_LIGHT if contour.closed else None
                shape = seat.contour(contour)
                yield Stroke(contour=shape, ink=Ink.NEW_LINE, width=2 * OUTLINE, fill=fill)


def _origin(seat: Seat) -> Iterator[Item]:
    """Yield the part's 0,0 with the ways that x and y count."""
    x, y = seat.point((0.0, 0.0))
    yield Stroke(contour=circle((x, y), 1.8), width=None, fill=Ink.ACCENT)
    for tip, wings in (
        ((x + _AXIS, y), ((x + _AXIS - 2, y + 0.8), (x + _AXIS - 2, y - 0.8))),
        ((x, y + _AXIS), ((x + 0.8, y + _AXIS - 2), (x - 0.8, y + _AXIS - 2))),
    ):
        yield Stroke(contour=open_path((x, y), tip), ink=Ink.ACCENT, width=OUTLINE)
        yield Stroke(contour=open_path(wings[0], tip, wings[1]), ink=Ink.ACCENT, width=OUTLINE)


def _wedged(settled: SettledPlan, part: SettledPart) -> tuple[Point, ...]:
    """Return the points of a wedge that lie in slots, as its joints state them."""
    labels = {each.label for each in part.pieces}
    found = (
        each.at or centroid(part.plain)
        for each in settled.joints
        if each.stated.kind is WEDGE_JOINT and each.stated.a.name in labels
    )
    return tuple(dict.fromkeys(found))


def _overall(seat: Seat, part: SettledPart, reader: Reader, drawn: list[Item]) -> Iterator[Item]:
    """Yield the sizes over all, below and to the left of all that is drawn."""
    shape = bounds(part.routed)
    (x0, y0), (x1, y1) = seat.point((shape.x0, shape.y0)), seat.point((shape.x1, shape.y1))
    left, bottom, _, _ = extent(drawn)
    across, up = length_in(shape.width, reader), length_in(shape.height, reader)
    yield Dimension(a=(x0, y0), b=(x1, y0), text=across, offset=bottom - y0 - _AWAY, height=_TEXT)
    yield Dimension(a=(x0, y0), b=(x0, y1), text=up, offset=x0 - left + _AWAY, height=_TEXT)


def _head(part: SettledPart, reader: Reader, drawn: list[Item], *, headed: bool) -> Iterator[Item]:
    """Yield the part's name and what it is cut from, above all that is drawn."""
    left, _, _, top = extent(drawn)
    pieces = [each.label for each in part.pieces]
    thick = length_in(part.thickness, reader)
    made = f": {listed(pieces)}" if pieces != [part.name] else ""
    lost = [each.name for each in part.left_off if not each.at]
    without = f"; without {listed(lost)}" if lost else ""
    words = f"mark {part.mark}, {thick} {part.sheet}, {len(pieces)} of it{made}{without}"
    told = Label(text=words, at=(left, top + 5.0), height=_SMALL, ink=Ink.SOFT)
    yield told
    if headed:
        name = Label(text=part.name, at=(left, told.at[1] + 5.2), height=_HEAD, strong=True)
        yield name
    last = name if headed else told
    beside = (label_box(last)[2] + 8.0, last.at[1])
    grain = "along x" if part.grain == "along x" else ""
    yield from grain_arrow(beside, grain, reader, height=_SMALL)


def _sentence(part: SettledPart, reader: Reader) -> str:
    shape = bounds(part.routed)
    wide, high = length_in(shape.width, reader), length_in(shape.height, reader)
    names = ", ".join(each.name for each in part.features)
    told = f" Features: {names}." if names else ""
    lost = f" Left out: {', '.join(each.name for each in part.left_off)}." if part.left_off else ""
    return f"{wide} wide, {high} high, seen from the show face.{told}{lost}"
