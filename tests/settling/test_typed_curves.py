"""Curves of typed paths against the curves themselves, by the definitions of SVG.

Cubic curves are evaluated by Bernstein's polynomials (SVG 2, section 9.3.6, and any textbook); the
distance to the settled outline is measured by a geometry library.
"""

from __future__ import annotations

import pytest
import shapely

from kerfolio.geometry.contour import Point
from kerfolio.geometry.curve import Bezier
from kerfolio.model.outline import PathText
from kerfolio.settling.outline import outline_contour
from kerfolio.settling.scope import Scope
from tests.settling.panels import flat

TOLERANCE = 0.01
"""How far chords may lie off their curve, mm (``geometry/curve.py``)."""

WAVE: tuple[Point, ...] = ((20, 8), (15, 14), (5, 2), (0, 8))


def bernstein(t: float, points: tuple[Point, ...]) -> Point:
    """Return a point of a cubic Bezier curve."""
    weights = ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3)
    x, y = (sum(w * p[axis] for w, p in zip(weights, points, strict=True)) for axis in (0, 1))
    return x, y


def off_curve(line: shapely.Geometry, mm: float) -> float:
    """Return how far a line lies off the exact wave at most, mm."""
    exact = [bernstein(number / 5000, WAVE) for number in range(5001)]
    spots = shapely.points([(x * mm, y * mm) for x, y in exact])
    return float(shapely.distance(spots, line).max())


def typed(unit: str) -> shapely.Geometry:
    """Return the outline of a path that is typed with the wave in it, in mm."""
    (x0, y0), *rest = WAVE
    curve = " ".join(f"{x} {y}" for x, y in rest)
    text = f"M 0 0 L 20 0 L {x0} {y0} C {curve} Z"
    scope = Scope(unit=unit)
    made = outline_contour(PathText(text=text), scope, "outline", centred=False)
    return flat(made).exterior


@pytest.mark.parametrize(("unit", "mm"), [("mm", 1.0), ("in", 25.4)])
def test_a_typed_curve_is_followed_as_closely_in_any_unit(unit: str, mm: float) -> None:
    assert off_curve(typed(unit), mm) <= TOLERANCE


def test_the_measure_sees_chords_that_are_too_long() -> None:
    """Chords made in inches to a tolerance of 0.01 were 0.01 in, a quarter of a millimetre, off."""
    outline = Bezier(WAVE)
    coarse = [(x * 25.4, y * 25.4) for x, y, _ in outline.vertices(TOLERANCE)]
    line = shapely.LineString([*coarse, (WAVE[-1][0] * 25.4, WAVE[-1][1] * 25.4)])
    assert off_curve(line, 25.4) > 10 * TOLERANCE
