"""Full-size templates for cutting by hand: plain shapes, drill centres, sizes with reasons."""

from __future__ import annotations

from collections.abc import Iterator

from kerfolio.basis.cutting_lengths import drill_in
from kerfolio.basis.lengths import both_text
from kerfolio.drawing.arrow import open_path
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import FINE, OUTLINE
from kerfolio.drawing.feature_note import Ground, Notes, place_notes
from kerfolio.drawing.lettering import wrapped
from kerfolio.drawing.part_badge import badge
from kerfolio.drawing.vocabulary import Drawing, Ink, Item, Label, Layer, Stroke
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle
from kerfolio.model.feature_kind import HOLE
from kerfolio.settling.settled import Operation, SettledPart, SettledPlan

SHAPE = Layer(name="shape", purpose="The edges to cut by hand, recesses tinted.")
DRILL = Layer(name="drill", purpose="Centres to drill: holes, and inside corners.")
WORDS = Layer(name="words", purpose="Mark, show face, up, grain, sizes and their reasons.")

_CROSS = 3.0  # half a centre cross, mm
_LIST = 3.5
_LEAST_LIST_WIDTH = 120.0


def template(settled: SettledPlan, part: SettledPart, first: str = "mm") -> Drawing:
    """Return the part full size in mm for cutting by hand, seen from its show face.

    Inside corners are square; a drill of the sheet's cutter diameter at the marked centres opens
    them. Words stand where they cover no line; what finds no room is listed below the shape.
    ``first`` is the unit named first.
    """
    drill = settled.sheet(part.sheet).cutter.diameter
    ground = Ground(part.plain, _recesses(part), [_around(at) for at in _centres(part)])
    words = badge(part, ground, WORDS.name)
    notes = place_notes(part.features, ground, drill, WORDS.name, first)
    drawn: tuple[Item, ...] = (
        *_shape(part),
        *(item for at in part.drill_centres for item in _drill(at, drill)),
        *(item for at in _centres(part) for item in _cross(at, _CROSS)),
        *words,
        *notes.items,
    )
    items = (*drawn, *_list(part, notes, drill_in(drill, first), extent(drawn)[1]))
    return Drawing(
        box=padded(extent(items), 0.5),
        items=items,
        layers=(SHAPE, DRILL, WORDS),
        title=f"{settled.plan.title} {settled.plan.version}: template of {part.mark}, {part.name}",
        description=_sentence(part, first),
    )


def _recesses(part: SettledPart) -> tuple[Contour, ...]:
    return tuple(contour for cut in part.cuts if cut.depth is not None for contour in cut.contours)


def _centres(part: SettledPart) -> tuple[Point, ...]:
    return tuple(dict.fromkeys(each.at for each in part.features if each.kind is HOLE))


def _around(at: Point) -> tuple[float, float, float, float]:
    return at[0] - _CROSS, at[1] - _CROSS, at[0] + _CROSS, at[1] + _CROSS


def _shape(part: SettledPart) -> Iterator[Stroke]:
    for cut in part.cuts:
        if cut.depth is None:
            continue
        fill = None if cut.operation is Operation.ENGRAVE else Ink.WASTE
        ink = Ink.SOFT if cut.operation is Operation.ENGRAVE else Ink.INK
        for contour in cut.contours:
            yield Stroke(contour=contour, layer=SHAPE.name, ink=ink, width=FINE, fill=fill)
    for contour in (part.plain.outer, *part.plain.openings):
        yield Stroke(contour=contour, layer=SHAPE.name, width=OUTLINE)


def _drill(at: Point, diameter: float) -> tuple[Stroke, ...]:
    rim = Stroke(contour=circle(at, diameter), layer=DRILL.name, ink=Ink.ACCENT, width=FINE)
    return (rim, *_cross(at, min(_CROSS, diameter / 4), Ink.ACCENT))


def _cross(at: Point, reach: float, ink: Ink = Ink.INK) -> tuple[Stroke, Stroke]:
    x, y = at
    level, upright = (
        open_path((x - reach, y), (x + reach, y)),
        open_path((x, y - reach), (x, y + reach)),
    )
    return (
        Stroke(contour=level, layer=DRILL.name, ink=ink, width=FINE),
        Stroke(contour=upright, layer=DRILL.name, ink=ink, width=FINE),
    )


def _list(part: SettledPart, notes: Notes, drill: str, bottom: float) -> Iterator[Label]:
    """Yield the lines below the shape: how to use drill centres, and notes that found no room."""
    lines = [f"{key}: {said}" if key else said for key, said in notes.listed]
    if part.drill_centres:
        lines.insert(0, f"Drill ø {drill} at the small circles, then cut to the line.")
    box = bounds(part.plain.outer)
    room = max(box.width, _LEAST_LIST_WIDTH)
    broken = [row for line in lines for row in wrapped(line, _LIST, room)]
    for number, row in enumerate(broken, 1):
        at = (box.x0, bottom - 2.0 - 1.35 * _LIST * number)
        yield Label(text=row, at=at, height=_LIST, layer=WORDS.name)


def _sentence(part: SettledPart, first: str) -> str:
    box = bounds(part.plain.outer)
    size = f"{both_text(box.width, first)} by {both_text(box.height, first)}"
    return f"Full size, {size}. Square inside corners, to be cut by hand."
