"""Draws a wedge in its slot twice for ``docs``: as it bears, and turned the wrong way round.

The cut goes through the tenon, along it: the post and the tenon are cut, the wedge is seen on its
face. All sizes are the trestle's own, as its plan settles.
"""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.assembly.wedged import Wedged
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.lettering import CAPITAL
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Dimension, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.shapes import rectangle
from kerfolio.writing.svg import svg_bytes

_SCALE = 0.9
_APART = 104.0
_TEXT = 3.2
_POST = 45.0
_HEAD, _FOOT = 102.0, 78.0


def wedge_picture(wedge: Wedged) -> bytes:
    """Return the drawing as an SVG."""
    items: list[Item] = []
    for index, turned in enumerate((False, True)):
        seat = Seat(scale=_SCALE, x=index * _APART)
        items += _cut(wedge, seat)
        items += _wedge(wedge, seat, turned=turned)
        items += _words(wedge, seat, turned=turned)
    drawing = Drawing(
        box=padded(extent(items), 2.0),
        items=tuple(items),
        title="A wedge in its slot",
        description="On the left its straight side bears on the post, on the right its slanted one "
        "meets its upper edge alone.",
    )
    return svg_bytes(drawing)


def _ends(wedge: Wedged) -> tuple[float, float, float]:
    """Return where the post's face, the slot's two ends are, mm from the slot's middle."""
    assert wedge.inside is not None
    half = wedge.slot.length.value / 2
    return wedge.inside - half, -half, half


def _cut(wedge: Wedged, seat: Seat) -> Iterator[Stroke]:
    """Yield the post and the tenon, cut along the tenon."""
    face, inner, outer = _ends(wedge)
    thick = wedge.slotted.thickness
    assert wedge.behind is not None
    tip = outer + wedge.behind
    for box in (
        (face - thick, thick / 2, face, _POST),
        (face - thick, -_POST, face, -thick / 2),
    ):
        yield Stroke(contour=seat.contour(rectangle(*box)), fill=Ink.WOOD_DARK)
    for box in (
        (face - thick - 22, -thick / 2, inner, thick / 2),
        (outer, -thick / 2, tip, thick / 2),
    ):
        yield Stroke(contour=seat.contour(rectangle(*box)), fill=Ink.WOOD)


def _wedge(wedge: Wedged, seat: Seat, *, turned: bool) -> Iterator[Stroke]:
    """Yield the wedge driven home; ``at`` is its point in the slot's middle where it is drawn."""
    at = wedge.joint.at
    assert at is not None
    outline = wedge.part.plain.outer.vertices
    face, _, outer = _ends(wedge)
    wide = max(x for x, y, _ in outline if y == 0.0)
    # where it is as wide as there is room between the post and the slot's end
    stops = (outer - face - wide) / wedge.taper

    def placed(x: float, y: float) -> Point:
        if not turned:
            return x - at[0], y - at[1] - wedge.to_drive
        return outer - x, y - stops + _POST  # it stops at the post's upper edge

    points = tuple((*placed(x, y), 0.0) for x, y, _ in outline)
    yield Stroke(contour=seat.contour(Contour(points)), fill=Ink.NEW_LIGHT, ink=Ink.NEW_LINE)


def _words(wedge: Wedged, seat: Seat, *, turned: bool) -> Iterator[Item]:
    face, inner, outer = _ends(wedge)
    head = f"{'The other way' if turned else 'As it bears'}"
    x, y = seat.point(((face + outer) / 2, _HEAD))
    yield Label(text=head, at=(x, y), height=_TEXT + 0.6, anchor=Anchor.MIDDLE, strong=True)
    if turned:
        told = ("it stops at an edge of the post", f"looking: {_other(wedge)}")
    else:
        told = ("the straight side lies on the post", f"looking: {wedge.joint.stated.looking}")
    for row, text in enumerate(told):
        at = (x, seat.point((0.0, -_FOOT))[1] - 1.5 * _TEXT * row)
        yield Label(text=text, at=at, height=_TEXT, anchor=Anchor.MIDDLE)
    if turned:
        return
    low = -wedge.slotted.thickness / 2
    a, b = seat.point((inner, low)), seat.point((face, low))
    yield Dimension(a=a, b=b, text=f"{wedge.inside:.1f}", offset=-7.0, height=_TEXT)
    a, b = seat.point((outer, low)), seat.point((outer + (wedge.behind or 0.0), low))
    yield Dimension(a=a, b=b, text=f"{wedge.behind:.1f}", offset=-7.0, height=_TEXT)
    right = (outer + (wedge.behind or 0.0), 0.0)
    sx, sy = seat.point(right)
    yield Label(text="tenon", at=(sx + 2.0, sy - _TEXT * CAPITAL / 2), height=_TEXT)
    arrow = seat.point((3.0, 80.0)), seat.point((3.0, 66.0))
    yield Stroke(contour=open_path(*arrow), ink=Ink.NEW_LINE, width=0.5)
    (tx, ty) = arrow[1]
    wings = open_path((tx - 1.2, ty + 2.2), (tx, ty), (tx + 1.2, ty + 2.2))
    yield Stroke(contour=wings, ink=Ink.NEW_LINE, width=0.5)


def _other(wedge: Wedged) -> str:
    return {"up": "down", "down": "up"}[wedge.joint.stated.looking]
