"""Random shapes for the property tests, on coarse grids too, where edges meet and coincide."""

from __future__ import annotations

import math
from collections.abc import Sequence

import shapely
from hypothesis import strategies as st

from kerfolio.geometry import shapes
from kerfolio.geometry.boolean import difference
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.relief import InsideCorner, relief_contour

FINE = 0.0005
STEPS = st.sampled_from((0.5, 1.0, 5.0, 0.0173))
ANGLES = st.sampled_from((0.0, 17.3, 30.0, 45.0, 90.0, 180.0))


@st.composite
def tools(draw: st.DrawFn) -> Contour:
    """Return a shape of some kind, some size, somewhere about a 100 mm square."""
    step = draw(STEPS)

    def measure(low: float, high: float) -> float:
        return step * draw(st.integers(math.ceil(low / step), math.floor(high / step)))

    x, y = measure(-10, 110), measure(-10, 110)
    kind = draw(st.sampled_from(("circle", "rounded", "slot", "rectangle", "polygon")))
    if kind == "circle":
        return shapes.circle((x, y), measure(2, 40))
    if kind == "rounded":
        width = measure(2, 20)
        return shapes.rounded_slot((x, y), width + measure(0, 40), width, draw(ANGLES))
    if kind == "slot":
        direction = draw(st.sampled_from(((1.0, 0.0), (0.0, 1.0), (1.0, 1.0), (3.0, 4.0))))
        return shapes.slot((x, y), direction, measure(2, 40), measure(2, 20))
    if kind == "rectangle":
        width, height = measure(5, 40), measure(5, 40)
        rounding = draw(st.sampled_from((0.0, 1.0, 2.5)))
        return shapes.rectangle(x, y, x + width, y + height, round=rounding)
    corners = [(x, y, 0.0), (x + 20, y, 3.0), (x + 25, y + 10, 0.0), (x + 8, y + 20, 2.0)]
    return shapes.polygon(corners)


OUTERS = st.sampled_from(
    (
        shapes.rectangle(0, 0, 100, 100),
        shapes.rectangle(0, 0, 100, 100, round=10),
        shapes.circle((50, 50), 100),
        shapes.ellipse((50, 50), 100, 60),
        shapes.rounded_slot((50, 50), 100, 60),
    )
)


def solid(shape: Contour | Region) -> shapely.Geometry:
    """Return a shape as the reference library's polygon, flattened more finely than ours."""
    rings = (shape.outer, *shape.openings) if isinstance(shape, Region) else (shape,)
    outer, *openings = [points(each, FINE) for each in rings]
    return shapely.make_valid(shapely.Polygon(outer, openings))


def relieved(region: Region, corners: Sequence[InsideCorner], radius: float, style: str) -> Region:
    """Return a region with all of some inside corners relieved in one style."""
    return difference(region, [relief_contour(each, radius, style) for each in corners])


def difference_area(one: shapely.Geometry, other: shapely.Geometry) -> float:
    """Return the area covered by just one of two; on a grid where edges all but coincide."""
    try:
        return float(shapely.symmetric_difference(one, other).area)
    except shapely.GEOSException:
        return float(shapely.symmetric_difference(one, other, grid_size=1e-7).area)
