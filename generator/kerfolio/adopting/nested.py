"""Which closed shapes are pieces and which are openings in them: by what lies in what."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass, replace
from math import dist

from kerfolio.adopting.depths import depth_of
from kerfolio.adopting.roundness import diameter_of
from kerfolio.adopting.shape import Dropped, Question, Shape
from kerfolio.basis.digits import digits
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.measure import Box, area, bounds
from kerfolio.geometry.nesting import holders, overlapping, parents
from kerfolio.geometry.squared import squared
from kerfolio.model.outline import DrawnText

_RELIEF = 8.0
"""A circle over a corner of no larger radius, mm, is a dog-bone (common practice, no source)."""

_SOLD = 2.0
"""A border may be so much larger or smaller, mm, than a sheet is sold."""

_COVERED = 0.2
"""Pieces fill at least this share of a sheet that they are drawn on."""

_SHEET, _PART = "the sheet", "a part"


@dataclass(frozen=True, slots=True, kw_only=True)
class Cutting:
    """One piece as it is drawn: its outline, its openings, lines and words on it.

    The outline runs counter-clockwise, openings clockwise, corners without the maker's reliefs;
    ``reliefs`` are the radii of those, mm.
    """

    outline: Shape
    openings: tuple[Shape, ...] = ()
    lines: tuple[Shape, ...] = ()
    texts: tuple[DrawnText, ...] = ()
    reliefs: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Nested:
    """The pieces of a drawing, the borders of its sheets (their sides, mm), what is left over."""

    cuttings: tuple[Cutting, ...]
    sheets: tuple[tuple[float, float], ...] = ()
    lines: tuple[Shape, ...] = ()
    texts: tuple[DrawnText, ...] = ()
    dropped: tuple[Dropped, ...] = ()
    questions: tuple[Question, ...] = ()


def nested(
    closed: Sequence[Shape],
    lines: Sequence[Shape],
    texts: Sequence[DrawnText],
    sold: Collection[tuple[float, float]] = (),
    answers: dict[str, str] | None = None,
) -> Nested:
    """Return the pieces that closed shapes are, with the lines and texts that lie on each.

    What lies in a piece is an opening, what lies in an opening a piece again. ``sold`` are the
    sizes sheets are sold in, mm.
    """
    bones = dict(_bones(closed))
    shapes = [each for index, each in enumerate(closed) if index not in bones]
    borders, questions = _borders(shapes, sold, answers or {})
    inner = [each for index, each in enumerate(shapes) if index not in borders]
    above = parents([each.contour for each in inner])
    depth = [_depth(above, index) for index in range(len(inner))]
    cuttings = []
    for index, each in enumerate(inner):
        if depth[index] % 2 == 0:
            mine = [inner[i] for i, parent in enumerate(above) if parent == index]
            near = [bone for bone in bones.values() if _belongs(bone, each, mine)]
            cuttings.append(_cutting(each, mine, near))
    places = [_inside_of(cuttings, [each.contour.vertices[0][:2] for each in lines])]
    places.append(_inside_of(cuttings, [each.at for each in texts]))
    whole = tuple(
        _with(cutting, lines, texts, [places[0], places[1]], index)
        for index, cutting in enumerate(cuttings)
    )
    loose = tuple(each for each, at in zip(lines, places[0], strict=True) if at is None)
    words = tuple(each for each, at in zip(texts, places[1], strict=True) if at is None)
    dropped = tuple(_border_dropped(shapes[index]) for index in sorted(borders))
    sides = tuple(
        (bounds(shapes[i].contour).width, bounds(shapes[i].contour).height) for i in sorted(borders)
    )
    return Nested(
        cuttings=whole,
        sheets=sides,
        lines=loose,
        texts=words,
        dropped=dropped,
        questions=tuple(questions),
    )


@dataclass(frozen=True, slots=True)
class _Bone:
    """A loose circle over a corner."""

    centre: Point
    radius: float


def _bones(closed: Sequence[Shape]) -> Iterator[tuple[int, _Bone]]:
    """Yield the circles that lie over a corner of another shape, half in it, half out."""
    contours = [each.contour for each in closed]
    rounds = {i: _bone(each) for i, each in enumerate(contours)}
    for one, other in overlapping(contours):
        for index, over in ((one, other), (other, one)):
            bone = rounds[index]
            if bone is None or bone.radius > _RELIEF or rounds[over] is not None:
                continue
            reach = bone.radius * 1.1 + 0.05
            if any(dist(bone.centre, v[:2]) <= reach for v in contours[over].vertices):
                yield index, bone


def _bone(contour: Contour) -> _Bone | None:
    across = diameter_of(contour)
    return None if across is None else _Bone(bounds(contour).centre, across / 2)


def _belongs(bone: _Bone, outline: Shape, openings: Sequence[Shape]) -> bool:
    reach = bone.radius * 1.1 + 0.05
    return any(
        dist(bone.centre, vertex[:2]) <= reach
        for each in (outline, *openings)
        for vertex in each.contour.vertices
    )


def _borders(
    shapes: Sequence[Shape], sold: Collection[tuple[float, float]], answers: dict[str, str]
) -> tuple[set[int], list[Question]]:
    """Return which shapes are the borders of sheets, and questions where that is not plain."""
    above = parents([each.contour for each in shapes])
    tops = [index for index, parent in enumerate(above) if parent is None]
    inside: dict[int, list[int]] = {top: [] for top in tops}
    for index, parent in enumerate(above):
        if parent in inside:
            inside[parent].append(index)
    frames = [top for top in tops if len(inside[top]) > 1 and _is_rectangle(shapes[top].contour)]
    borders, questions = set(), []
    alone = all(top in frames for top in tops)
    for top in frames:
        box = bounds(shapes[top].contour)
        if is_sold((box.width, box.height), sold):
            borders.add(top)
            continue
        covered = sum(area(shapes[each].contour) for each in inside[top])
        likely = alone and covered > _COVERED * box.width * box.height
        deep = any(above[i] in inside[top] for i in range(len(shapes)))
        if not (likely or (alone and deep)):
            continue
        question = Question(
            key=f"border {round(box.x0)} {round(box.y0)}",
            words=f"is the rectangle of {_size(box)} the sheet, or a part?",
            answers=(_SHEET, _PART),
            at=(box.x0, box.y0),
            place=shapes[top].place,
        )
        questions.append(question)
        if answers.get(question.key, question.default) == _SHEET:
            borders.add(top)
    return borders, questions


def _size(box: Box) -> str:
    return f"{digits(box.width, 1)} x {digits(box.height, 1)} mm"


def is_sold(size: tuple[float, float], sold: Collection[tuple[float, float]]) -> bool:
    """Tell whether sheets are sold of this size, mm, either way round."""
    return any(
        all(abs(a - b) <= _SOLD for a, b in zip(sorted(size), sorted(each), strict=True))
        for each in sold
    )


def _is_rectangle(contour: Contour) -> bool:
    box = bounds(contour)
    return len(contour.vertices) == 4 and area(contour) > 0.999 * box.width * box.height


def _border_dropped(shape: Shape) -> Dropped:
    box = bounds(shape.contour)
    return Dropped(
        what=f"rectangle of {_size(box)}",
        why="it is the sheet's border",
        at=(box.x0, box.y0),
        place=shape.place,
    )


def _depth(above: Sequence[int | None], index: int) -> int:
    depth, parent = 0, above[index]
    while parent is not None:
        depth, parent = depth + 1, above[parent]
    return depth


def _cutting(outline: Shape, openings: Sequence[Shape], bones: Sequence[_Bone]) -> Cutting:
    """Return a piece with the reliefs taken out of its corners."""
    radii = [each.radius for each in bones]
    made = []
    for each, clockwise in ((outline, False), *((each, True) for each in openings)):
        plain = squared(tidy(each.contour, clockwise=clockwise))
        radii += plain.radii
        contour = tidy(plain.contour, clockwise=clockwise)
        made.append(Shape(contour=contour, names=each.names, place=each.place))
    return Cutting(outline=made[0], openings=tuple(made[1:]), reliefs=tuple(radii))


def _inside_of(cuttings: Sequence[Cutting], spots: Sequence[Point]) -> tuple[int | None, ...]:
    return holders(spots, [each.outline.contour for each in cuttings])


def _with(
    cutting: Cutting,
    lines: Sequence[Shape],
    texts: Sequence[DrawnText],
    places: Sequence[Sequence[int | None]],
    index: int,
) -> Cutting:
    own = [each for each, at in zip(texts, places[1], strict=True) if at == index]
    inside = holders([each.at for each in own], [each.contour for each in cutting.openings])
    notes: dict[int, list[str]] = {}
    for text, opening in zip(own, inside, strict=True):
        if opening is not None and depth_of([text.text]) is not None:
            notes.setdefault(opening, []).append(text.text)
    openings = enumerate(cutting.openings)
    words = {text for each in notes.values() for text in each}
    return replace(
        cutting,
        openings=tuple(replace(e, names=(*notes.get(i, ()), *e.names)) for i, e in openings),
        lines=tuple(each for each, at in zip(lines, places[0], strict=True) if at == index),
        texts=tuple(each for each in own if each.text not in words),
    )
