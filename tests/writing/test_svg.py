"""SVG files: real sizes, arcs, layers, lettering.

Reference: SVG 2 "Coordinate Systems" and CSS Values: 1 in = 96 user units = 25.4 mm; the reading
library svgelements stands for any other program that opens the file.
"""

from __future__ import annotations

import io
from math import pi
from xml.etree import ElementTree

import pytest
from svgelements import SVG, Path, Shape

from kerfolio.drawing.palette import PALETTE
from kerfolio.drawing.vocabulary import Anchor, Dimension, Drawing, Ink, Label, Layer, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.writing.svg import svg_bytes

NS = {"s": "http://www.w3.org/2000/svg"}
MM_PER_UNIT = 25.4 / 96


def drawing(*items: Stroke | Label | Dimension, box=(0.0, 0.0, 120.0, 80.0), **words) -> Drawing:
    layers = tuple(
        Layer(name=name, purpose=f"what {name} is for")
        for name in dict.fromkeys(item.layer for item in items if item.layer)
    )
    return Drawing(box=box, items=items, layers=layers, **words)


def root_of(content: bytes) -> ElementTree.Element:
    return ElementTree.fromstring(content)


def shapes(content: bytes) -> list[Shape]:
    """Read the file as a program at 96 units to the inch does."""
    svg = SVG.parse(io.BytesIO(content), ppi=96)
    return [each for each in svg.elements() if isinstance(each, Shape)]


def test_width_and_view_box_make_one_unit_one_millimetre() -> None:
    root = root_of(svg_bytes(drawing(box=(-3.0, -2.0, 117.4567, 80.25))))
    assert root.get("width") == "120.457mm"
    assert root.get("height") == "82.25mm"
    assert root.get("viewBox") == "0 0 120.457 82.25"


def test_a_square_of_one_inch_is_96_user_units_in_another_program() -> None:
    square = Stroke(contour=rectangle(10, 20, 35.4, 45.4))
    left, top, right, bottom = shapes(svg_bytes(drawing(square)))[0].bbox()
    assert right - left == pytest.approx(96, rel=1e-5)
    assert bottom - top == pytest.approx(96, rel=1e-5)
    assert left * MM_PER_UNIT == pytest.approx(10)
    assert top * MM_PER_UNIT == pytest.approx(80 - 45.4), "y points down only in the file"


def test_without_real_size_the_page_decides() -> None:
    root = root_of(svg_bytes(drawing(), real_size=False))
    assert root.get("width") is None
    assert root.get("viewBox") == "0 0 120 80"


def test_arcs_stay_arcs_and_keep_their_side() -> None:
    # a D: a straight left side and a half circle of radius 20 bulging to the right
    shape = Contour(((30.0, 10.0, 1.0), (30.0, 50.0, 0.0)))
    content = svg_bytes(drawing(Stroke(contour=shape)))
    assert b"A20 20 0 0 0 50 50" in content
    path = Path(shapes(content)[0])
    assert path.bbox()[2] * MM_PER_UNIT == pytest.approx(50, abs=0.001)
    assert path.length() * MM_PER_UNIT == pytest.approx(40 + pi * 20, rel=1e-4)


def test_an_arc_over_half_a_turn_keeps_its_centre() -> None:
    # three quarters of a circle of radius 7.123 about 40,40: bulge tan(270/4 degrees)
    r = 7.123
    shape = Contour(((40 + r, 40.0, 2.414213562373095), (40.0, 40 - r, 0.0)), closed=False)
    left, top, _, _ = shapes(svg_bytes(drawing(Stroke(contour=shape))))[0].bbox()
    assert left * MM_PER_UNIT == pytest.approx(40 - r, abs=0.0015)
    assert top * MM_PER_UNIT == pytest.approx(80 - 40 - r, abs=0.0015)


def test_a_full_circle_is_a_circle() -> None:
    content = svg_bytes(drawing(Stroke(contour=circle((12, 30), 8))))
    found = root_of(content).find("s:circle", NS)
    assert found is not None
    assert (found.get("cx"), found.get("cy"), found.get("r")) == ("12", "50", "4")


def test_holes_are_left_out_of_the_fill() -> None:
    ring = Stroke(contour=circle((30, 30), 40), holes=(circle((30, 30), 20),), fill=Ink.WOOD)
    path = root_of(svg_bytes(drawing(ring))).find("s:path", NS)
    assert path is not None
    assert path.get("fill-rule") == "evenodd"
    assert path.get("fill") == PALETTE[Ink.WOOD]
    assert (path.get("d") or "").count("Z") == 2


def test_each_layer_is_one_group_with_its_name_and_purpose() -> None:
    items = (
        Stroke(contour=circle((9, 9), 4), layer="hole_through"),
        Stroke(contour=rectangle(0, 0, 50, 50), layer="pocket_6.0mm"),
        Stroke(contour=circle((19, 9), 4), layer="hole_through"),
    )
    groups = root_of(svg_bytes(drawing(*items), id_prefix="a-")).findall("s:g", NS)
    assert [group.get("id") for group in groups] == ["a-hole_through", "a-pocket_6.0mm"]
    assert len(groups[0].findall("s:circle", NS)) == 2
    assert groups[1].findtext("s:desc", None, NS) == "what pocket_6.0mm is for"


def test_classes_let_a_page_choose_the_colours() -> None:
    stroke = Stroke(contour=rectangle(0, 0, 9, 9), ink=Ink.SOFT, fill=Ink.WOOD_DARK)
    path = root_of(svg_bytes(drawing(stroke), class_prefix="d-")).find("s:path", NS)
    assert path is not None
    assert path.get("class") == "d-line-soft d-fill-wood-dark"
    assert path.get("stroke") == PALETTE[Ink.SOFT], "a page without the styles still shows it"
    assert b"class=" not in svg_bytes(drawing(stroke))


def test_lettering_keeps_its_width_in_any_font() -> None:
    label = Label(text="A & <B>\x07", at=(60, 40), height=5, anchor=Anchor.MIDDLE, angle=90)
    text = root_of(svg_bytes(drawing(label))).find("s:text", NS)
    assert text is not None
    assert text.text == "A & <B>"
    assert text.get("transform") == "rotate(-90 60 40)"
    assert text.get("lengthAdjust") == "spacingAndGlyphs"
    assert float(text.get("textLength") or 0) > 10


def test_outlined_lettering_needs_no_font_and_stands_where_the_text_does() -> None:
    label = Label(text="H", at=(20, 30), height=100)
    content = svg_bytes(drawing(label), outlined=True)
    assert b"<text" not in content
    left, top, right, bottom = (each * MM_PER_UNIT for each in shapes(content)[0].bbox())
    # Source Sans Pro, letter H: stems from 0.090 to 0.562 em, capitals 0.656 em high
    # (the glyph as drawn in the font file; the table value of the capitals is 0.660)
    assert (left, right) == pytest.approx((20 + 9.0, 20 + 56.2), abs=0.15)
    assert bottom == pytest.approx(80 - 30, abs=0.01)
    assert bottom - top == pytest.approx(65.6, abs=0.5)


def test_a_dimension_is_written_as_lines_and_lettering() -> None:
    one = Dimension(a=(10, 10), b=(60, 10), text="50", offset=-8)
    root = root_of(svg_bytes(drawing(one)))
    assert len(root.findall("s:path", NS)) == 5, "two extension lines, one line, two arrows"
    assert [each.text for each in root.findall("s:text", NS)] == ["50"]


def test_a_title_and_a_description_speak_for_the_picture() -> None:
    content = svg_bytes(drawing(title='Part A, "side" & more', description="360 mm wide"))
    root = root_of(content)
    assert root.get("role") == "img"
    assert root.get("aria-label") == 'Part A, "side" & more'
    assert root.findtext("s:title", None, NS) == 'Part A, "side" & more'
    assert root.findtext("s:desc", None, NS) == "360 mm wide"
