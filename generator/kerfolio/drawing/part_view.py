"""A part as readers see it: its face, its mark, its overall sizes and its grain."""

from __future__ import annotations

from collections.abc import Mapping

from kerfolio.basis.lengths import both_text
from kerfolio.basis.reader import METRIC, Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.arrow import grain_arrow, leader
from kerfolio.drawing.edge_map import edge_key, edge_letters, edge_strokes
from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import box_of, extent, padded
from kerfolio.drawing.face import face_strokes, hidden_strokes, obstacles
from kerfolio.drawing.lettering import CAPITAL, text_width
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.shrinking import shrunk
from kerfolio.drawing.vocabulary import Anchor, Dimension, Drawing, Item, Label
from kerfolio.geometry.label_spot import label_spot
from kerfolio.geometry.measure import bounds
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.settling.titles import part_title
from kerfolio.shop.engraving import stroke_widths

ROOM = (120.0, 90.0)
_TEXT = 3.2
_SMALL_TEXT = 2.5
_SMALL_ROOM = 90.0
"""Rooms narrower than this, mm, get the small lettering."""
_AWAY = 6.5
_BIG_MARK = 11.0
_SMALL_MARK = 3.2
_AIRY = 1.5
"""How much more room than its own a mark looks for, so that it stands free of features."""
_AIR = 0.6
"""Round the picture, mm."""
_EDGE_LINE = 0.2
"""How much further the lines along edges reach than the part's own outline, mm."""
_KEY_OFF = 3.0
"""Between what is drawn and the key to its edges, mm."""


def part_view(
    settled: SettledPlan,
    part: SettledPart,
    room: tuple[float, float] = ROOM,
    reader: Reader = METRIC,
    scale: float = 0.0,
) -> Drawing:
    """Return a picture of the part to be shown at paper size, within ``room`` (mm) or smaller.

    ``reader`` is whom it is for, ``mm`` or ``in``. The part is never shown larger than it is;
    with a ``scale`` (mm on paper for a mm of wood) just at that, whatever room it takes.
    """
    text = _TEXT if room[0] >= _SMALL_ROOM else _SMALL_TEXT
    engraved = stroke_widths(settled, part)

    def made(scale: float) -> tuple[Item, ...]:
        return _items(part, scale, text, reader, room[0], engraved)

    if scale:
        items = made(scale)
    else:
        _, items = shrunk(made, lambda scale, box: _over(part, scale, box, room))
    return Drawing(
        box=padded(extent(items), _air(part)),
        items=items,
        title=say(
            reader,
            "drawing-part",
            plan=settled.plan.title,
            mark=part.mark,
            part=part_title(settled.plan, part.name, reader),
        ),
        description=_sentence(part, reader),
    )


def _air(part: SettledPart) -> float:
    """Return the room round the picture, mm: wider where lines along edges reach out."""
    return _AIR + (_EDGE_LINE if part.edges else 0.0)


def _over(
    part: SettledPart,
    scale: float,
    box: tuple[float, float, float, float],
    room: tuple[float, float],
) -> float:
    """Return by what the part must shrink, the lettering around it keeping its size."""
    shape = bounds(part.routed.outer)
    sides = ((shape.width, box[2] - box[0], room[0]), (shape.height, box[3] - box[1], room[1]))
    ratios = []
    for real, drawn, available in sides:
        around = drawn - real * scale + 2 * _air(part)
        ratios.append(real * scale / max(available - around, 0.1 * available))
    return max(ratios)


def _items(
    part: SettledPart,
    scale: float,
    text: float,
    reader: Reader,
    room: float,
    engraved: Mapping[str, float],
) -> tuple[Item, ...]:
    shape = bounds(part.routed.outer)
    seat = Seat(scale=scale, x=-shape.x0 * scale, y=-shape.y0 * scale)
    width, height = shape.width * scale, shape.height * scale
    across = Dimension(
        a=(0, 0), b=(width, 0), text=both_text(shape.width, reader), offset=-_AWAY, height=text
    )
    up = Dimension(
        a=(0, 0), b=(0, height), text=both_text(shape.height, reader), offset=_AWAY, height=text
    )
    mark = _mark(part, seat, width)
    right = max(width, extent(mark)[2])
    corner = (0.0, height + 2.5) if part.grain == "along x" else (right + 2.5, 0.0)
    drawn: tuple[Item, ...] = (across, up, *grain_arrow(corner, part.grain, reader), *mark)
    face = (
        *face_strokes(part, seat, engraved=engraved),
        *hidden_strokes(part, seat),
        *edge_strokes(part, seat),
    )
    if not part.edges:
        return (*face, *drawn)
    return (*face, *drawn, *_told_edges(part, seat, drawn, text, reader, room))


def _told_edges(
    part: SettledPart, seat: Seat, drawn: tuple[Item, ...], text: float, reader: Reader, room: float
) -> tuple[Item, ...]:
    """Return the letters at a part's edges, and below all that is drawn what they mean."""
    boxes = [box_of(each) for item in drawn for each in expanded(item)]
    letters = edge_letters(part, seat, text, reader, boxes)
    left, bottom, _, _ = extent((*drawn, *letters))
    return (*letters, *edge_key(part, (left, bottom - _KEY_OFF), text, room, reader))


def _mark(part: SettledPart, seat: Seat, width: float) -> tuple[Item, ...]:
    """Return the mark in the roomiest spot of the face, or beside it on a leader."""
    aspect = text_width(part.mark, 1.0, strong=True) / CAPITAL
    face = seat.region(part.routed)
    enough = _AIRY * _BIG_MARK * CAPITAL
    spot, room = label_spot(face, aspect, obstacles(part, seat), enough=enough)
    height = min(_BIG_MARK, room / CAPITAL)
    if height >= _SMALL_MARK:
        at = (spot[0], spot[1] - height * CAPITAL / 2)
        label = Label(text=part.mark, at=at, height=height, anchor=Anchor.MIDDLE, strong=True)
        return (label,)
    right = (width, bounds(face).centre[1])
    spot, _ = label_spot(face, 1.0, obstacles(part, seat), enough=1.0, towards=right)
    beside = (width + 5.0, spot[1] - 5.0 * CAPITAL / 2)
    return leader(spot, Label(text=part.mark, at=beside, height=5.0, strong=True))


def _sentence(part: SettledPart, reader: Reader) -> str:
    shape = bounds(part.routed.outer)
    wide, high = both_text(shape.width, reader), both_text(shape.height, reader)
    words = say(reader, "drawing-part-shows", wide=wide, high=high)
    if not part.grained:
        return words
    grain = part.grain.replace(" ", "-")
    return f"{words} {say(reader, f'drawing-grain-{grain}')}"
