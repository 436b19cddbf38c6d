"""Whether anything of a drawing shows in a window."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LinearRing
from shapely import box as shapely_box

from kerfolio.basis.reader import METRIC
from kerfolio.drawing.measuring_view import measuring_view
from kerfolio.drawing.vocabulary import Drawing, Label, Stroke
from kerfolio.drawing.window import shows
from kerfolio.geometry.flatten import points
from kerfolio.geometry.shapes import circle, rectangle


def drawn(*items: Stroke | Label) -> Drawing:
    return Drawing(box=(0, 0, 100, 100), items=items)


SQUARE = drawn(Stroke(contour=rectangle(10, 10, 90, 90)))


@pytest.mark.parametrize(
    ("window", "found"),
    [
        ((20, 20, 80, 80), False),  # inside, no edge in sight
        ((0, 0, 5, 5), False),
        ((5, 5, 15, 15), True),
        ((85, 40, 95, 60), True),
        ((0, 0, 100, 100), True),
    ],
)
def test_a_line_shows_where_it_passes(
    window: tuple[float, float, float, float], found: bool
) -> None:
    assert shows(SQUARE, window) is found


def test_a_label_shows_too() -> None:
    words = drawn(Label(text="A1", at=(50, 50), height=6))
    assert shows(words, (49, 49, 60, 60))
    assert not shows(words, (0, 0, 20, 20))


def test_an_opening_in_a_fill_shows() -> None:
    face = Stroke(contour=rectangle(0, 0, 100, 100), holes=(circle((50, 50), 10),))
    assert shows(drawn(face), (44, 44, 56, 56))


@given(st.floats(0, 90), st.floats(0, 90), st.floats(1, 40), st.floats(1, 40))
def test_it_agrees_with_shapely(x: float, y: float, wide: float, high: float) -> None:
    ring = circle((50, 50), 60)
    window = (x, y, x + wide, y + high)
    line = LinearRing(points(ring, 0.1))
    if line.distance(shapely_box(*window)) > 1e-6 or line.crosses(shapely_box(*window)):
        expected = bool(line.intersects(shapely_box(*window)))
        assert shows(drawn(Stroke(contour=ring)), window) is expected


def test_a_sheet_is_measured_at_eight_points() -> None:
    # EN 324-1: four corners and the middle of each side
    dots = [item for item in measuring_view(METRIC).items if isinstance(item, Stroke)]
    assert len(dots) == 1 + 8
