"""What was written comes back: the readers of the agreement check."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.drawing.vocabulary import Drawing, Label, Layer, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import length, signed_area
from kerfolio.geometry.shapes import circle, polygon, rounded_slot
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.read_dxf import read_dxf
from kerfolio.writing.read_svg import read_svg
from kerfolio.writing.svg import svg_bytes
from tests.geometry.shape_cases import difference_area, solid
from tests.lettering import dxf_notes, svg_notes

LAYERS = (Layer(name="opening_through", purpose="p"), Layer(name="note", purpose="p"))


def drawing(*contours: Contour, notes: tuple[str, ...] = ()) -> Drawing:
    strokes = [Stroke(contour=each, layer="opening_through") for each in contours]
    labels = [Label(text=note, at=(0, 9), height=5, layer="note") for note in notes]
    return Drawing(box=(-12.5, -7.25, 300, 200), items=(*strokes, *labels), layers=LAYERS)


def test_dxf_gives_the_same_vertices_to_four_decimals_and_bulges_to_eight() -> None:
    contours = (polygon([(0, 0, 5), (90, 0, 0), (60, 50, 12)]), circle((30, 20), 6.6))
    found = read_dxf(dxf_bytes(drawing(*contours))).layers["opening_through"]
    for one, other in zip(contours, found, strict=True):
        assert other.closed
        for (*spot, bulge), (*there, bent) in zip(one.vertices, other.vertices, strict=True):
            assert there == pytest.approx(spot, abs=0.500001e-4)
            assert bent == pytest.approx(bulge, abs=0.500001e-8)


def flat(contour: Contour) -> list[float]:
    return [each for vertex in contour.vertices for each in vertex]


SIZES = st.floats(1, 150, allow_nan=False)


@settings(max_examples=60, deadline=None)
@given(x=SIZES, y=SIZES, width=SIZES, longer=SIZES, angle=st.floats(-180, 180))
def test_svg_keeps_every_shape_within_a_hundredth(
    x: float, y: float, width: float, longer: float, angle: float
) -> None:
    shape = rounded_slot((x, y), width + longer, width, angle)
    (found,) = read_svg(svg_bytes(drawing(shape))).layers["opening_through"]
    assert difference_area(solid(shape), solid(found)) < 0.002 * length(shape)
    assert signed_area(found) > 0, "y points up again"


def test_an_open_line_comes_back_open() -> None:
    line = Contour(((1.0, 2.0, 0.0), (30.0, 2.0, -0.4), (30.0, 20.0, 0.0)), closed=False)
    for made in (read_svg(svg_bytes(drawing(line))), read_dxf(dxf_bytes(drawing(line)))):
        (found,) = made.layers["opening_through"]
        assert not found.closed
        assert flat(found) == pytest.approx(flat(line), abs=1e-3)


def test_a_shape_with_holes_comes_back_as_its_contours() -> None:
    stroke = Stroke(
        contour=circle((50, 50), 40), holes=(circle((50, 50), 10),), layer="opening_through"
    )
    made = Drawing(box=(0, 0, 100, 100), items=(stroke,), layers=LAYERS)
    for found in (read_svg(svg_bytes(made)).layers, read_dxf(dxf_bytes(made)).layers):
        assert len(found["opening_through"]) == 2


def test_notes_are_lettered_as_they_were_meant() -> None:
    notes = ("Café table & <bench>", "Cut for 17.85 mm ply (0.703 in)")
    made = drawing(notes=notes)
    assert svg_notes(svg_bytes(made)) == notes
    assert dxf_notes(dxf_bytes(made)) == notes


@pytest.mark.parametrize("thickness", [17.85, 18.25625, 18.0, None])
def test_the_thickness_a_file_is_for_comes_back_as_data(thickness: float | None) -> None:
    made = replace(drawing(), thickness=thickness)
    meant = None if thickness is None else pytest.approx(thickness, abs=0.0001)
    assert read_svg(svg_bytes(made)).thickness == meant
    assert read_dxf(dxf_bytes(made)).thickness == meant
