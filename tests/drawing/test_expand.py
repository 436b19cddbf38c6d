"""Dimensions: lines where they belong, lettering readable from below or from the right.

The reading directions are those of ISO 129-1 (from memory); the numbers are plain geometry.
"""

from __future__ import annotations

import pytest

from kerfolio.drawing.expand import expanded
from kerfolio.drawing.extent import box_of
from kerfolio.drawing.lettering import label_box
from kerfolio.drawing.vocabulary import Anchor, Dimension, Ink, Label, Stroke
from kerfolio.geometry.contour import Contour, Point


def taken_apart(**given: object) -> tuple[list[Stroke], list[Stroke], Label]:
    """Return the lines, the arrows and the lettering."""
    parts = expanded(Dimension(**{"text": "100", "offset": 8.0, **given}))  # type: ignore[arg-type]
    strokes = [each for each in parts if isinstance(each, Stroke)]
    (label,) = [each for each in parts if isinstance(each, Label)]
    return [s for s in strokes if s.fill is None], [s for s in strokes if s.fill], label


def ends(stroke: Stroke) -> tuple[Point, Point]:
    first, last = stroke.contour.vertices[0], stroke.contour.vertices[-1]
    return first[:2], last[:2]


def test_the_line_lies_to_the_left_of_a_to_b() -> None:
    lines, arrows, label = taken_apart(a=(0, 0), b=(100, 0), layer="words", ink=Ink.ACCENT)
    assert ends(lines[-1]) == ((0, 8), (100, 8))
    assert [ends(each) for each in lines[:2]] == [((0, 0.8), (0, 9.5)), ((100, 0.8), (100, 9.5))]
    assert [each.contour.vertices[0][:2] for each in arrows] == [(0, 8), (100, 8)]
    assert label.at[0] == 50
    assert label.at[1] > 8
    assert {label.layer, *(each.layer for each in (*lines, *arrows))} == {"words"}
    assert {each.fill for each in arrows} == {Ink.ACCENT}


def test_a_negative_offset_lies_to_the_right() -> None:
    lines, _, _ = taken_apart(a=(0, 0), b=(100, 0), offset=-8.0)
    assert ends(lines[-1]) == ((0, -8), (100, -8))
    assert ends(lines[0]) == ((0, -0.8), (0, -9.5))


@pytest.mark.parametrize(
    ("b", "angle"),
    [
        ((100, 0), 0),
        ((-100, 0), 0),
        ((0, 100), 90),
        ((0, -100), 90),
        ((100, 100), 45),
        ((-100, -100), 45),
        ((100, -100), -45),
        ((-100, 100), -45),
    ],
)
def test_lettering_never_stands_on_its_head(b: Point, angle: float) -> None:
    _, _, label = taken_apart(a=(0, 0), b=b)
    assert label.angle == pytest.approx(angle)


@pytest.mark.parametrize("offset", [8.0, -8.0])
@pytest.mark.parametrize("b", [(100, 0), (-100, 0), (0, 100), (0, -100)])
def test_lettering_stands_clear_of_its_lines(b: Point, offset: float) -> None:
    lines, arrows, label = taken_apart(a=(0, 0), b=b, offset=offset, text="100 mm (3 15/16 in)")
    frame = label_box(label)
    for each in (*lines, *arrows):
        left, bottom, right, top = box_of(each)
        assert right < frame[0] or frame[2] < left or top < frame[1] or frame[3] < bottom


@pytest.mark.parametrize("length", [2.0, 5.0, 9.0, 15.0])
@pytest.mark.parametrize("way", [(1, 0), (-1, 0), (0, 1), (0, -1)])
def test_where_it_does_not_fit_lettering_stands_beside(length: float, way: Point) -> None:
    b = (way[0] * length, way[1] * length)
    lines, arrows, label = taken_apart(a=(0, 0), b=b, text="100 mm (3 15/16 in)")
    frame = label_box(label)
    for each in (*lines, *arrows):
        left, bottom, right, top = box_of(each)
        assert right < frame[0] or frame[2] < left or top < frame[1] or frame[3] < bottom
    if way[0] == 0:
        assert label.angle == 0, "an upright one gets level lettering"
        assert label.anchor is (Anchor.END if way[1] > 0 else Anchor.START)


def test_short_dimensions_have_their_arrows_outside() -> None:
    _, (first, second), _ = taken_apart(a=(0, 0), b=(4, 0), text="4")
    assert max(x for x, *_ in first.contour.vertices) == 0
    assert min(x for x, *_ in second.contour.vertices) == 4


def test_a_dimension_of_no_length_draws_nothing() -> None:
    assert expanded(Dimension(a=(1, 1), b=(1, 1), text="0", offset=5)) == ()


def test_anything_else_stays_as_it_is() -> None:
    stroke = Stroke(contour=Contour(((0.0, 0.0, 0.0), (1.0, 0.0, 0.0)), closed=False))
    assert expanded(stroke) == (stroke,)
