"""One stated thickness, measured back out of every file of the part it reaches.

Expected widths are sheet + 2 x fit, worked by hand from the plan's own text: nothing else in it
names a width.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from kerfolio.drawing.cut_sheet import cut_part
from kerfolio.drawing.template_shape import SHAPE
from kerfolio.drawing.vocabulary import Drawing
from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.read_back import Layers
from kerfolio.writing.read_dxf import read_dxf
from kerfolio.writing.read_svg import read_svg
from kerfolio.writing.svg import svg_bytes
from tests.drawing.templates import template_of
from tests.lettering import svg_notes
from tests.plans import settled_at


def between_walls(contour: Contour) -> float:
    """Return the distance between the outermost upright straight walls, reliefs left out."""
    walls = [
        edge.start[0]
        for edge in edges(contour)
        if not edge.bulge and abs(edge.start[0] - edge.end[0]) < 1e-3
    ]
    return max(walls) - min(walls)


def side_of(plan: SettledPlan) -> SettledPart:
    return next(part for part in plan.parts if part.name == "side")


FORMATS: dict[str, Callable[[Drawing], Layers]] = {
    "svg": lambda drawing: read_svg(svg_bytes(drawing)).layers,
    "dxf": lambda drawing: read_dxf(dxf_bytes(drawing)).layers,
}


@pytest.mark.parametrize("read", FORMATS.values(), ids=FORMATS.keys())
@pytest.mark.parametrize(("thickness", "width"), [(17.6, 17.8), (17.8, 18.0), (18.2, 18.4)])
def test_the_slot_follows_the_sheet(
    thickness: float, width: float, read: Callable[[Drawing], Layers]
) -> None:
    plan = settled_at(thickness)
    drawing = cut_part(plan, side_of(plan))
    (opening,) = read(drawing)["opening_through"]
    assert between_walls(opening) == pytest.approx(width, abs=0.0011)
    assert read_svg(svg_bytes(drawing)).thickness == thickness
    assert read_dxf(dxf_bytes(drawing)).thickness == thickness


@pytest.mark.parametrize(("thickness", "width"), [(17.6, 17.8), (18.2, 18.4)])
def test_the_paper_template_follows_too(thickness: float, width: float) -> None:
    plan = settled_at(thickness)
    drawing = template_of(plan, side_of(plan))
    shapes = read_svg(svg_bytes(drawing)).layers[SHAPE.name]
    openings = [each for each in shapes if len(each.vertices) == 4 and each.closed]
    assert between_walls(openings[-1]) == pytest.approx(width, abs=0.0011)
    notes = svg_notes(svg_bytes(drawing))
    assert f"{thickness:.2f} mm sheet + 2 x 0.100 mm fit" in notes
