"""Pictures of steps as a stranger sees them: nothing crosses or hides what it should not.

What is checked is found anew in the drawing's strokes, by their ink and shape: leaders run from a
balloon's rim or round a ring to a circle, arrows have seven corners in the accent.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache
from itertools import combinations

import pytest
import shapely

from kerfolio.drawing.inset import RADIUS
from kerfolio.drawing.lettering import LEGIBLE, label_box
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from tests.drawing.built import HAND_MADE, SAMPLE, areas_of, path_of, shown, views

STEPS = [(name, number) for name in (*SAMPLE, *HAND_MADE) for number in range(len(shown(name)))]


@dataclass(frozen=True)
class Shapes:
    """What lies over a picture, as plane shapes on paper."""

    leaders: tuple[shapely.LineString, ...]
    pointers: tuple[shapely.LineString, ...]
    arrows: tuple[shapely.Polygon, ...]
    balloons: tuple[shapely.Polygon, ...]
    circles: tuple[shapely.Polygon, ...]
    labels: tuple[shapely.Polygon, ...]


def area(stroke: Stroke) -> shapely.Polygon:
    return shapely.Polygon(path_of(stroke.contour))


def shapes(drawing: Drawing) -> Shapes:
    strokes = [each for each in drawing.items if isinstance(each, Stroke)]
    straight = [
        each
        for each in strokes
        if not each.contour.closed and not each.dash and len(each.contour.vertices) == 2
    ]
    leaders = [each for each in straight if each.ink is Ink.INK and each.width == 0.25]
    pointers = [each for each in straight if each.ink is Ink.SOFT and each.width == 0.2]
    paper = areas_of(drawing, {Ink.PAPER})
    discs = [each for each in paper if each.ink is Ink.INK and each.width == 0.35]
    circles = [
        each
        for each in paper
        if each.width is None and abs(area(each).area / (3.14159 * RADIUS**2) - 1) < 0.01
    ]
    arrows = [each for each in areas_of(drawing, {Ink.ACCENT}) if len(each.contour.vertices) == 7]
    rims = [area(each) for each in discs]
    return Shapes(
        tuple(
            line
            for line in (shapely.LineString(path_of(each.contour)) for each in leaders)
            if any(rim.exterior.distance(shapely.Point(line.coords[0])) < 0.01 for rim in rims)
        ),
        tuple(shapely.LineString(path_of(each.contour)) for each in pointers),
        tuple(area(each) for each in arrows),
        tuple(rims),
        tuple(area(each) for each in circles),
        tuple(shapely.box(*label_box(each)) for each in drawing.items if isinstance(each, Label)),
    )


def faults(drawing: Drawing) -> list[str]:
    """Return what of a picture crosses or hides something else."""
    found, its = [], shapes(drawing)
    assert len(its.leaders) == len(its.balloons)
    assert len(its.pointers) == len(its.circles)
    lines = (*its.leaders, *its.pointers)
    found += ["two leaders cross" for a, b in combinations(lines, 2) if a.crosses(b)]
    found += ["a leader over an arrow" for a in lines for b in its.arrows if a.intersects(b)]
    for balloon in its.balloons:
        inner = balloon.buffer(-0.01)
        found += ["a leader through a balloon" for each in lines if each.intersects(inner)]
        found += ["a balloon over an arrow" for each in its.arrows if each.intersects(balloon)]
        found += ["a balloon over an inset" for each in its.circles if each.intersects(balloon)]
        found += [
            "two balloons" for each in its.balloons if each != balloon and each.intersects(balloon)
        ]
    found += ["two balloons" for a, b in combinations(its.balloons, 2) if a.intersects(b)]
    found += ["two arrows" for a, b in combinations(its.arrows, 2) if a.intersects(b)]
    found += ["an arrow over an inset" for a in its.arrows for b in its.circles if a.intersects(b)]
    for line in lines:
        found += ["a leader through words" for each in its.labels if line.crosses(each)]
    for arrow in its.arrows:
        found += ["an arrow over words" for each in its.labels if each.intersects(arrow)]
    found += ["two labels" for a, b in combinations(its.labels, 2) if a.intersects(b)]
    return found


@cache
def picture(name: str, index: int) -> Drawing:
    return step_view(shown(name)[index], look=views(name)[index], hardware=[("Bolt M6 × 50 mm", 2)])


@pytest.mark.parametrize(("name", "index"), STEPS)
def test_nothing_crosses_or_hides_what_it_should_not(name: str, index: int) -> None:
    assert faults(picture(name, index)) == []


def moved(stroke: Stroke, to: shapely.Geometry) -> Stroke:
    """A stroke with its middle brought to that of something else."""
    here, there = area(stroke).centroid, to.centroid
    x, y = there.x - here.x, there.y - here.y
    spots = tuple((a + x, b + y, rise) for a, b, rise in stroke.contour.vertices)
    return replace(stroke, contour=replace(stroke.contour, vertices=spots))


def test_what_is_laid_over_something_else_is_found() -> None:
    drawing = picture("desk-rack", 1)
    its = shapes(drawing)
    (arrow,) = (each for each in areas_of(drawing, {Ink.ACCENT}) if len(each.contour.vertices) == 7)
    for over, said in (
        (its.balloons[0], "a balloon over an arrow"),
        (its.circles[0], "an arrow over an inset"),
        (its.leaders[1], "a leader over an arrow"),
        (its.labels[0], "an arrow over words"),
    ):
        spoiled = replace(drawing, items=(*drawing.items, moved(arrow, over)))
        assert said in faults(spoiled), said


@pytest.mark.parametrize(("name", "index"), STEPS)
def test_words_are_large_enough_to_read(name: str, index: int) -> None:
    """7.5 pt on paper; the smallest size is also that of German and English booklets."""
    heights = [each.height for each in picture(name, index).items if isinstance(each, Label)]
    assert min(heights) >= LEGIBLE
