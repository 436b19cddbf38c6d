"""Two small pictures for those who cut by hand: a template's lines, and fitting one's own sheet."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.reader import Reader
from kerfolio.basis.saying import say
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.face import FINE, OUTLINE
from kerfolio.drawing.hatch import hatched
from kerfolio.drawing.template_shape import BAND, BAR, around
from kerfolio.drawing.vocabulary import Anchor, Drawing, Ink, Item, Label, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.shapes import circle, rectangle

_SIZE = 3.2
_SLOT = rectangle(25.0, 11.0, 46.0, 18.0)
_WOOD = rectangle(8.0, 5.0, 56.0, 38.0)
_HOLE = (17.0, 28.0)
_DRILL = 4.0


def lines_view(reader: Reader) -> Drawing:
    """Return a corner of a template with each kind of line, numbered 1 to 4, 56 mm wide."""
    return Drawing(
        box=(0.0, 0.0, 56.0, 40.0),
        items=tuple(_lines()),
        description=say(reader, "drawing-lines"),
    )


def _lines() -> Iterator[Item]:
    edges = (open_path((54.0, 5.0), (8.0, 5.0), (8.0, 38.0), (54.0, 38.0)), _SLOT)
    for edge in edges:
        yield Stroke(contour=edge, ink=Ink.FAINT, width=2 * BAND)
    yield Stroke(contour=_WOOD, holes=(_SLOT,), width=None, fill=Ink.PAPER)
    corner = (8.0 - BAND + BAR / 2, 5.0 - BAND + BAR / 2)
    for end in ((corner[0], 22.0), (25.0, corner[1])):
        yield Stroke(contour=open_path(corner, end), width=BAR)
    for edge in edges:
        yield Stroke(contour=edge, width=OUTLINE)
    inset = _DRILL / 2 * 0.7071
    for x in (25.0 + inset, 46.0 - inset):
        for y in (11.0 + inset, 18.0 - inset):
            yield Stroke(contour=circle((x, y), _DRILL), ink=Ink.ACCENT, width=FINE)
    yield Stroke(contour=circle(_HOLE, 11.0), width=FINE, fill=Ink.WOOD)
    yield Stroke(contour=circle(_HOLE, 5.0), width=OUTLINE)
    left, bottom, right, top = around(_HOLE)
    yield Stroke(contour=open_path((left, _HOLE[1]), (right, _HOLE[1])), width=FINE)
    yield Stroke(contour=open_path((_HOLE[0], bottom), (_HOLE[0], top)), width=FINE)
    for number, at in enumerate(((3.0, 29.0), (50.0, 13.4), (26.0, 27.0), (11.0, 8.0)), 1):
        yield _said(str(number), at, strong=True)


def offcut_view(reader: Reader) -> Drawing:
    """Return how an offcut on its edge marks a slot's width: from its end, and from above."""
    return Drawing(
        box=(0.0, 0.0, 56.0, 40.0),
        items=(*_from_the_end(reader), *_from_above(reader)),
        description=say(reader, "drawing-offcut"),
    )


def _from_the_end(reader: Reader) -> Iterator[Item]:
    yield from _sheet((1.0, 6.0, 24.0, 14.0))
    yield from _sheet((9.0, 14.0, 16.0, 34.0))
    for x, ink in ((9.0, Ink.INK), (16.0, Ink.ACCENT)):
        yield Stroke(contour=open_path((x, 9.0), (x, 14.0)), ink=ink, width=2 * OUTLINE)
    yield Stroke(contour=open_path((16.3, 14.3), (20.5, 24.0)), ink=Ink.ACCENT, width=OUTLINE)
    yield _said(say(reader, "drawing-an-offcut"), (12.5, 35.4))
    yield _said(say(reader, "drawing-a-mark"), (21.5, 25.0), Anchor.START, Ink.ACCENT)


def _from_above(reader: Reader) -> Iterator[Item]:
    shape = rectangle(36.0, 8.0, 43.0, 34.0)
    yield Stroke(contour=shape, ink=Ink.FAINT, width=FINE, dash=(1.2, 1.2))
    yield from _sheet((36.0, 11.0, 43.0, 31.0))
    yield Stroke(contour=open_path((36.0, 8.0), (36.0, 34.0)), width=2 * OUTLINE)
    yield Stroke(
        contour=open_path((43.0, 5.5), (43.0, 36.5)),
        ink=Ink.ACCENT,
        width=2 * OUTLINE,
        dash=(2.4, 1.2),
    )
    yield _said(say(reader, "drawing-a-line"), (35.0, 2.0), Anchor.END)
    yield _said(say(reader, "drawing-a-mark"), (44.5, 2.0), Anchor.START, Ink.ACCENT)


def _sheet(box: tuple[float, float, float, float]) -> Iterator[Item]:
    """Yield a sheet cut through, hatched as wood is."""
    yield Stroke(contour=rectangle(*box), width=OUTLINE, fill=Ink.WOOD)
    yield from hatched(box, ink=Ink.SOFT)


def _said(
    text: str,
    at: Point,
    anchor: Anchor = Anchor.MIDDLE,
    ink: Ink = Ink.INK,
    *,
    strong: bool = False,
) -> Label:
    return Label(text=text, at=at, height=_SIZE, ink=ink, anchor=anchor, strong=strong)
