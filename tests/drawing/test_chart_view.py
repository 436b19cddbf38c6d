"""Charts: dots where their values are, each readable by its row and its shape."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.drawing.chart_view import WIDE, Chart, Dot, Line, Ruler, Sign, chart_view, ticks
from kerfolio.drawing.vocabulary import Drawing, Label, Stroke
from kerfolio.writing.circle import circle_of
from tests.drawing.overlap import outside, overlapping

ROWS = ("Clean", "Nearly clean", "To sand", "To mend", "Spoiled")
CHART = Chart(
    title="Edge over chip load",
    description="five cuts",
    rows=ROWS,
    scale="mm for each edge",
    dots=tuple(Dot(value=0.05 * 2**n, row=n, sign=sign) for n, sign in enumerate(Sign)),
    ratios=True,
    zone=(0.09, 0.11),
    lines=(Line(value=0.2, words="tip"),),
)


def strokes(drawing: Drawing) -> list[Stroke]:
    return [each for each in drawing.items if isinstance(each, Stroke)]


def labels(drawing: Drawing) -> list[Label]:
    return [each for each in drawing.items if isinstance(each, Label)]


def discs(drawing: Drawing) -> list[tuple[float, float]]:
    found = (circle_of(each.contour) for each in strokes(drawing))
    return [each[0] for each in found if each]


def of(*values: float, row: int = 0, **more: object) -> Chart:
    dots = tuple(Dot(value=each, row=row, sign=Sign.DISC) for each in values)
    plain = replace(CHART, dots=dots, zone=None, lines=(), ratios=False)
    return replace(plain, **more)  # type: ignore[arg-type]


def test_words_lie_apart_and_within_the_drawing() -> None:
    drawing = chart_view(CHART)
    assert overlapping(drawing) == []
    assert outside(drawing) == []
    assert {*ROWS, "tip", "mm for each edge"} <= {each.text for each in labels(drawing)}


def test_every_grade_has_a_shape_of_its_own() -> None:
    """Told apart without colours: by what is drawn, not in which ink."""
    shapes = set()
    for sign in Sign:
        dot = Dot(value=1.0, row=0, sign=sign)
        drawn = strokes(chart_view(replace(of(1.0), dots=(dot,))))
        without = strokes(chart_view(replace(of(1.0), dots=(replace(dot, row=1),))))
        own = [each for each in drawn if each not in without]
        shapes.add(
            tuple((len(each.contour.vertices), each.contour.closed, each.fill) for each in own)
        )
    assert len(shapes) == len(Sign)


def test_equal_ratios_are_equally_long_and_equal_steps_too() -> None:
    x = [at[0] for at in discs(chart_view(of(0.05, 0.1, 0.2, ratios=True)))]
    assert x[1] - x[0] == pytest.approx(x[2] - x[1])
    x = [at[0] for at in discs(chart_view(of(5.0, 7.5, 10.0)))]
    assert x[1] - x[0] == pytest.approx(x[2] - x[1])


def test_dots_of_one_place_stand_above_each_other() -> None:
    places = discs(chart_view(of(7.87, 7.87, 7.87, 12.0)))
    assert all(math.dist(a, b) > 2 for n, a in enumerate(places) for b in places[:n])


def test_a_scale_in_inches_is_told_in_inches() -> None:
    texts = [each.text for each in labels(chart_view(of(2.54, 12.7, ruler=Ruler(per=25.4))))]
    assert {"0.2", "0.4"} <= set(texts)
    german = labels(chart_view(of(2.54, 12.7, ruler=Ruler(per=25.4, mark=","))))
    assert "0,2" in [each.text for each in german]


@given(st.floats(0.0001, 1000), st.floats(1.001, 500), st.booleans())
def test_there_are_a_few_even_ticks_within_the_ends(low: float, ratio: float, ratios: bool) -> None:
    high = low * ratio
    found = ticks(low, high, ratios=ratios)
    assert len(found) <= 10
    assert all(low * (1 - 1e-6) <= each <= high * (1 + 1e-6) for each in found)


@given(st.lists(st.tuples(st.floats(0.01, 30), st.integers(0, 4)), min_size=1, max_size=60))
def test_every_dot_stays_within_the_drawing(dots: list[tuple[float, int]]) -> None:
    chart = replace(of(1.0), dots=tuple(Dot(value=v, row=r, sign=Sign.DISC) for v, r in dots))
    drawing = chart_view(chart)
    assert len(discs(drawing)) == len(dots)
    assert all(0 < x < WIDE and 0 < y < drawing.box[3] for x, y in discs(drawing))
