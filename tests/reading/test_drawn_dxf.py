"""Drawn parts read from DXF: units, arcs, layers, blocks, loose lines, damaged files."""

from __future__ import annotations

import math
from collections.abc import Callable
from contextlib import suppress
from pathlib import Path

import ezdxf
import pytest
from ezdxf import units
from ezdxf.document import Drawing as Document
from ezdxf.layouts import Modelspace
from ezdxf.math import BSpline
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from kerfolio.basis.finding import Finding, Severity, in_unit
from kerfolio.basis.place import Place
from kerfolio.geometry.arc import edges
from kerfolio.geometry.canonical import off_line, tidy
from kerfolio.geometry.measure import area, bounds
from kerfolio.geometry.shapes import circle, rectangle, rounded_slot
from kerfolio.model.outline import Drawing, DrawnElement
from kerfolio.model.statement import Named
from kerfolio.reading.drawn_dxf import MM_PER_UNIT, read_dxf
from kerfolio.reading.drawn_said import SaidOfDrawing
from tests.reading.drawings import contour, rules

Draw = Callable[[Modelspace], object]


class Dxf:
    """Writes a drawing with the DXF library and reads it back."""

    def __init__(self, folder: Path) -> None:
        self.path = folder / "part.dxf"

    def whole(self, document: Document) -> tuple[Drawing | None, tuple[Finding, ...]]:
        document.saveas(self.path)
        return read_dxf(self.path, "drawings/part.dxf")

    def read(
        self, draw: Draw, unit: int = units.MM, version: str = "R2010"
    ) -> tuple[Drawing | None, tuple[Finding, ...]]:
        document = ezdxf.new(version)
        document.units = unit
        draw(document.modelspace())
        return self.whole(document)

    def elements(self, draw: Draw, unit: int = units.MM) -> tuple[DrawnElement, ...]:
        drawing, _ = self.read(draw, unit)
        assert drawing is not None
        return drawing.elements


@pytest.fixture
def dxf(tmp_path: Path) -> Dxf:
    return Dxf(tmp_path)


def disc(space: Modelspace) -> None:
    space.add_circle((10, 20), 5, dxfattribs={"layer": "holes"})


def test_a_circle_is_two_half_turns_on_its_layer(dxf: Dxf) -> None:
    (hole,) = dxf.elements(disc)
    assert tidy(contour(hole)) == circle((10, 20), 10)
    assert hole.names == ("holes",)
    assert hole.name == "CIRCLE on layer holes"
    assert hole.place.line > 100


@pytest.mark.parametrize(
    ("unit", "mm"),
    [(1, 25.4), (2, 304.8), (4, 1), (5, 10), (6, 1000), (9, 0.0254), (10, 914.4), (13, 0.001)],
)
def test_the_unit_stated_is_honoured(dxf: Dxf, unit: int, mm: float) -> None:
    """DXF reference, header variable $INSUNITS: 1 inch, 2 foot, 4 mm, 5 cm, 6 m, 9 mil, 10 yard,
    13 micron."""
    drawing, findings = dxf.read(lambda m: m.add_circle((0, 0), 20 / mm), unit)
    assert drawing is not None
    assert bounds(contour(drawing.elements[0])).width == pytest.approx(40, rel=1e-12)
    assert findings == ()


def test_the_table_of_units_agrees_with_the_dxf_library() -> None:
    """But for the units the library does not convert; its mile is rounded to 1e-8."""
    compared = 0
    for unit, mm in MM_PER_UNIT.items():
        with suppress(TypeError):
            expected = units.conversion_factor(units.InsertUnits(unit), units.MM)
            assert mm == pytest.approx(expected, rel=1e-8)
            compared += 1
    assert compared >= 12


@pytest.mark.parametrize("version", ["R12", "R2000", "R2010"])
def test_a_drawing_without_unit_is_an_error_that_tells_its_size(dxf: Dxf, version: str) -> None:
    """Also of release 12, which has no variable for it (DXF reference, $INSUNITS)."""
    drawing, findings = dxf.read(disc, 0, version)
    assert drawing is None
    (finding,) = (each for each in findings if each.rule == "missing-unit")
    assert finding.message == "no unit stated: the drawing is 10 x 10 units"
    assert finding.severity is Severity.ERROR
    advice = "Write `unit: mm`, or the unit it was drawn in, in the part's `drawing`."
    assert finding.advice == advice
    assert in_unit([finding], "in")[0].advice.startswith("Write `unit: in`, or the unit")


@pytest.mark.parametrize(("word", "number"), [("in", 1), ("ft", 2), ("mm", 4), ("cm", 5), ("m", 6)])
def test_the_plan_says_the_unit_where_the_drawing_does_not(
    dxf: Dxf, word: str, number: int
) -> None:
    """The DXF library's own factors are the oracle."""
    asked = SaidOfDrawing(unit=Named(word))
    dxf.read(disc, 0, "R12")
    drawing, findings = read_dxf(dxf.path, "drawings/part.dxf", asked=asked)
    assert drawing is not None
    assert [each for each in findings if each.severity is not Severity.NOTE] == []
    mm = units.conversion_factor(units.InsertUnits(number), units.MM)
    assert bounds(contour(drawing.elements[0])).width == pytest.approx(10 * mm)


def test_a_plan_that_says_another_unit_is_followed_and_told(dxf: Dxf) -> None:
    dxf.read(disc, units.MM)
    place = Place("plan.yaml", 7, 9)
    asked = SaidOfDrawing(unit=Named("in", place))
    drawing, (finding,) = read_dxf(dxf.path, "drawings/part.dxf", asked=asked)
    assert drawing is not None
    assert bounds(contour(drawing.elements[0])).width == pytest.approx(254)
    assert finding.message == "the drawing says millimeters, the plan `unit: in`, which is taken"
    assert (finding.rule, finding.place) == ("unit-overruled", place)
    same = SaidOfDrawing(unit=Named("mm"))
    assert read_dxf(dxf.path, "drawings/part.dxf", asked=same)[1] == ()


def test_an_engraving_needs_no_unit(dxf: Dxf) -> None:
    dxf.read(disc, 0)
    drawing, findings = read_dxf(dxf.path, "drawings/part.dxf", art=True)
    assert drawing is not None
    assert findings == ()


def test_guides_are_left_out_by_layer(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        disc(space)
        space.add_line((0, 0), (90, 0), dxfattribs={"layer": "GUIDES"})
        space.add_line((0, 5), (90, 5), dxfattribs={"layer": "GUIDES"})

    _, findings = dxf.read(draw)
    assert [each.rule for each in findings] == ["open-path", "open-path"]
    asked = SaidOfDrawing(guides=(Named("GUIDES"), Named("GUIDE")))
    drawing, (finding,) = read_dxf(dxf.path, "drawings/part.dxf", asked=asked)
    assert drawing is not None
    assert [each.name for each in drawing.elements] == ["CIRCLE on layer holes"]
    assert finding.message == "no guides `GUIDE` in `drawings/part.dxf`"
    assert finding.advice == "Did you mean `GUIDES`?"


def test_inserts_of_a_block_are_numbered_and_never_joined_with_each_other(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        side = space.doc.blocks.new("SIDE")
        side.add_lwpolyline([(0, 0), (50, 0), (50, 30)])
        side.add_line((50, 30), (0, 0))
        for x in (0, 50):
            space.add_blockref("SIDE", (x, 0))

    one, other = dxf.elements(draw)
    assert (one.inserts, other.inserts) == (("SIDE.1",), ("SIDE.2",))
    assert bounds(contour(one)).x1 == bounds(contour(other)).x0 == 50


def test_a_unit_of_the_stars_is_an_error(dxf: Dxf) -> None:
    _, findings = dxf.read(disc, 19)
    assert findings[0].message == "unit number 19 is not read here"
    assert findings[0].severity is Severity.ERROR


def test_bulges_are_arcs(dxf: Dxf) -> None:
    """DXF reference, LWPOLYLINE code 42: a bulge of 1 is a semicircle, ccw from its start."""
    rows = [(0, 0, 0), (40, 0, 1), (40, 10, 0), (0, 10, 1)]
    (slot,) = dxf.elements(lambda m: m.add_lwpolyline(rows, format="xyb", close=True))
    assert tidy(contour(slot)) == rounded_slot((20, 5), 50, 10)
    (old,) = dxf.elements(lambda m: m.add_polyline2d(rows, format="xyb", close=True))
    assert tidy(contour(old)) == rounded_slot((20, 5), 50, 10)


def test_arcs_turn_counter_clockwise_from_start_to_end(dxf: Dxf) -> None:
    (quarter,) = dxf.elements(lambda m: m.add_arc((0, 0), 10, 350, 80))
    (edge,) = edges(contour(quarter))
    assert edge.arc is not None
    assert math.degrees(edge.arc.sweep) == pytest.approx(90)
    assert edge.start == pytest.approx((10 * math.cos(math.radians(350)), -1.7364818))


def test_an_entity_seen_from_below_is_mirrored(dxf: Dxf) -> None:
    """DXF reference, arbitrary axis algorithm: an extrusion of 0, 0, -1 turns the x axis round."""
    below = {"extrusion": (0, 0, -1)}
    (arc,) = dxf.elements(lambda m: m.add_arc((5, 0), 10, 0, 90, dxfattribs=below))
    assert [v[:2] for v in arc.vertices] == [
        pytest.approx((-15, 0)),
        pytest.approx((-5, 10)),
    ]
    assert arc.vertices[0][2] == pytest.approx(-math.tan(math.pi / 8))
    _, findings = dxf.read(lambda m: m.add_circle((0, 0), 9, dxfattribs={"extrusion": (0, 1, 1)}))
    assert "not-flat" in rules(findings)


def loose_slot(space: Modelspace) -> None:
    """Draw a slot of loose lines and arcs, out of order and against each other."""
    layer = {"layer": "outline"}
    space.add_line((40, 10), (0, 10), dxfattribs=layer)
    space.add_arc((40, 5), 5, -90, 90, dxfattribs=layer)
    space.add_line((40.004, 0), (0, 0.003), dxfattribs=layer)
    space.add_arc((0, 5), 5, 90, 270, dxfattribs=layer)


def test_loose_lines_and_arcs_of_a_layer_are_joined(dxf: Dxf) -> None:
    (outline,) = dxf.elements(loose_slot)
    assert outline.closed
    assert outline.names == ("outline",)
    assert area(contour(outline)) == pytest.approx(400 + math.pi * 25, abs=0.1)
    assert sum(1 for edge in edges(contour(outline)) if edge.bulge) == 2


def test_layers_are_not_joined_with_each_other(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        space.add_line((0, 0), (9, 0), dxfattribs={"layer": "a"})
        space.add_line((9, 0), (9, 9), dxfattribs={"layer": "b"})

    _, findings = dxf.read(draw)
    assert rules(findings) == ["open-path", "open-path"]
    assert findings[0].message == "`LINE on layer a` is open: its ends are 9 mm apart"


def test_a_line_drawn_twice_does_not_hinder_joining(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        for start, end in (((0, 0), (9, 0)), ((9, 0), (9, 9)), ((9, 9), (0, 0)), ((9, 0), (0, 0))):
            space.add_line(start, end)

    drawing, findings = dxf.read(draw)
    assert drawing is not None
    assert [each.closed for each in drawing.elements] == [True]
    assert rules(findings) == ["doubled-path"]


def test_ellipses_keep_within_a_hundredth(dxf: Dxf) -> None:
    (oval,) = dxf.elements(lambda m: m.add_ellipse((10, 10), (0, 40), ratio=0.5))
    assert oval.closed
    assert area(contour(oval)) == pytest.approx(math.pi * 40 * 20, rel=1e-3)
    for x, y, _ in oval.vertices:
        assert math.hypot((x - 10) / 20, (y - 10) / 40) == pytest.approx(1, abs=1e-9)
    (arc,) = dxf.elements(lambda m: m.add_ellipse((0, 0), (9, 0), 1, 0, math.pi / 2))
    assert len(arc.vertices) == 2
    assert arc.vertices[0][2] == pytest.approx(math.tan(math.pi / 8))


@pytest.mark.parametrize("unit", [units.MM, units.IN])
def test_splines_keep_within_a_hundredth(dxf: Dxf, unit: int) -> None:
    """Against 2000 points of the curve, evaluated by the DXF library."""
    frame = [(0, 0), (30, 60), (60, -60), (90, 0), (60, 90), (10, 80)]
    (curve,) = dxf.elements(lambda m: m.add_open_spline([(*p, 0) for p in frame]), unit)
    chain = [v[:2] for v in curve.vertices]
    scale = MM_PER_UNIT[unit]
    spline = BSpline([(x * scale, y * scale) for x, y in frame])
    found = 0
    for point in spline.approximate(2000):
        spot = (point.x, point.y)
        while off_line(spot, chain[found], chain[found + 1]) > 0.01:
            found += 1
    assert found == len(chain) - 2


def test_blocks_are_placed_turned_scaled_and_named(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        block = space.doc.blocks.new("KNOB")
        block.add_circle((10, 0), 2)
        block.add_lwpolyline([(0, 0), (5, 0), (5, 5), (0, 5)], close=True)
        outer = space.doc.blocks.new("PAIR")
        outer.add_blockref("KNOB", (0, 0), dxfattribs={"layer": "inner"})
        attributes = {"layer": "top", "rotation": 90, "xscale": 2, "yscale": 2}
        space.add_blockref("PAIR", (100, 50), dxfattribs=attributes)

    hole, plate = dxf.elements(draw)
    assert tidy(contour(hole)) == circle((100, 70), 8)
    assert hole.names == ("inner", "KNOB", "PAIR")
    assert tidy(contour(plate)) == rectangle(90, 50, 100, 60)


def test_a_block_on_layer_0_takes_the_layer_it_is_put_on(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        space.doc.blocks.new("KNOB").add_circle((0, 0), 2)
        rows = {"layer": "top", "column_count": 3, "column_spacing": 10}
        space.add_blockref("KNOB", (0, 0), dxfattribs=rows)

    found = dxf.elements(draw)
    assert [tidy(contour(each)) for each in found] == [circle((x, 0), 4) for x in (0, 10, 20)]
    assert {each.names for each in found} == {("top", "KNOB")}


def test_a_block_scaled_unevenly_turns_circles_into_ellipses(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        space.doc.blocks.new("KNOB").add_circle((0, 0), 10)
        space.add_blockref("KNOB", (0, 0), dxfattribs={"xscale": 2, "yscale": 1})

    (oval,) = dxf.elements(draw)
    assert area(contour(oval)) == pytest.approx(math.pi * 200, rel=1e-3)


def test_text_hatches_and_hidden_layers_are_noted(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        disc(space)
        space.add_text("18 mm")
        space.add_text("20 mm")
        space.doc.layers.add("notes").off()
        space.doc.layers.add("old").freeze()
        space.add_circle((0, 0), 50, dxfattribs={"layer": "notes"})
        space.add_circle((0, 0), 50, dxfattribs={"layer": "old"})

    drawing, findings = dxf.read(draw)
    assert drawing is not None
    assert len(drawing.elements) == 1
    assert [finding.message for finding in findings] == [
        "TEXT is ignored (2 times)",
        "entity on a hidden layer is ignored (2 times)",
    ]


def test_faults_are_told_by_layer_with_their_line(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        bow = [(0, 0), (10, 10), (10, 0), (0, 10)]
        space.add_lwpolyline(bow, close=True, dxfattribs={"layer": "cut"})
        space.add_lwpolyline([(0, 0), (9, 0)], close=True, dxfattribs={"layer": "cut"})
        space.add_line((50, 50), (60, 50), dxfattribs={"layer": "cut"})

    _, findings = dxf.read(draw)
    told = [(finding.rule, finding.message) for finding in findings]
    assert told == [
        ("self-crossing", "`LWPOLYLINE on layer cut` crosses itself at 5, 5 mm"),
        ("zero-area", "`LWPOLYLINE on layer cut.2` encloses no area"),
        ("open-path", "`LINE on layer cut` is open: its ends are 10 mm apart"),
    ]
    lines = [finding.place.line for finding in findings]
    assert lines == sorted(lines)
    rows = dxf.path.read_text("utf-8").splitlines()
    assert [rows[line - 1].strip() for line in lines] == ["LWPOLYLINE", "LWPOLYLINE", "LINE"]


def test_broken_entities_are_told_and_the_rest_is_read(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        disc(space)
        space.add_circle((0, 0), 0, dxfattribs={"layer": "dot"})
        space.add_circle((1e9, 0), 5, dxfattribs={"layer": "far"})
        space.add_circle((0, 0), math.inf, dxfattribs={"layer": "all"})
        space.add_line((0, 0), (math.nan, 9), dxfattribs={"layer": "odd"})
        space.add_lwpolyline([(0, 0, math.nan), (5, 5, 0)], "xyb", dxfattribs={"layer": "bent"})
        space.add_blockref("NONE", (0, 0))

    drawing, findings = dxf.read(draw)
    assert drawing is not None
    assert len(drawing.elements) == 1
    assert all(f.place.line for f in findings if f.rule == "broken-path")
    errors = [f.message for f in findings if f.severity is Severity.ERROR]
    assert errors == [
        "`CIRCLE on layer dot`: its radius is 0",
        "`CIRCLE on layer far`: a coordinate is too large (beyond 100 m)",
        "`CIRCLE on layer all`: a coordinate is too large (beyond 100 m)",
        "`LINE on layer odd`: a coordinate is too large (beyond 100 m)",
        "`LWPOLYLINE on layer bent`: a coordinate is too large (beyond 100 m)",
        "block `NONE` is not in the drawing",
    ]


def test_an_empty_drawing_is_an_error(dxf: Dxf) -> None:
    drawing, (finding,) = dxf.read(lambda _: None)
    assert drawing is None
    assert finding.rule == "empty-drawing"


def test_files_that_are_no_drawing_are_told(tmp_path: Path) -> None:
    for data in (b"", b"garbage", b"\x00" * 99, b"0\nSECTION\n2\nENTITIES\n0\nLINE\n10\nx\n"):
        path = tmp_path / "bad.dxf"
        path.write_bytes(data)
        drawing, findings = read_dxf(path, "drawings/bad.dxf")
        assert drawing is None
        assert {finding.severity for finding in findings} & {Severity.ERROR}
    drawing, (finding,) = read_dxf(tmp_path / "no.dxf", "drawings/no.dxf")
    assert drawing is None
    assert (finding.rule, finding.place) == ("missing-file", Place("drawings/no.dxf"))


DAMAGED = [
    (lambda text: "", "the file is empty", 0),
    (lambda text: "AC1027" + "\0" * 90, "a DWG drawing, no DXF", 0),
    (lambda text: "<svg/>", "an SVG or XML file, no DXF", 0),
    (lambda text: "Hello\nWorld\n", "`Hello` is no group code (before the first section)", 1),
    (
        lambda text: text[: text.index("AcDbCircle") + 15],
        "the file is cut short (in CIRCLE of ENTITIES)",
        -1,
    ),
    (
        lambda text: spoilt(text, "50.0", "50,0"),
        "`50,0` is no number (in CIRCLE of ENTITIES)",
        3,
    ),
    (
        lambda text: spoilt(text, " 40\n", "4x0\n"),
        "`4x0` is no group code (in CIRCLE of ENTITIES)",
        8,
    ),
    (
        lambda text: text[: text.index("AcDbCircle") + 15].replace("CIRCLE\n", "C" * 2000 + "\n"),
        f"the file is cut short (in {'C' * 40} of ENTITIES)",
        -1,
    ),
    (  # more digits than Python makes a number of
        lambda text: spoilt(text, " 40\n", "9" * 5000 + "\n"),
        "`99999999999999999...` is no group code (in CIRCLE of ENTITIES)",
        8,
    ),
    (
        lambda text: spoilt(text, " 40\n", ""),
        "`10.0` is no group code (in CIRCLE of ENTITIES)",
        8,
    ),
]


def spoilt(text: str, old: str, new: str) -> str:
    """Return the text with its circle spoilt."""
    at = text.index("AcDbCircle")
    return text[:at] + text[at:].replace(old, new, 1)


@pytest.mark.parametrize(("spoil", "message", "line"), DAMAGED)
def test_a_broken_file_is_told_with_place_and_cause(
    dxf: Dxf, spoil: Callable[[str], str], message: str, line: int
) -> None:
    """A ``line`` counts from that of the circle's class, as the DXF library wrote it."""
    dxf.read(lambda space: space.add_circle((50, 25), 10))
    text = dxf.path.read_text("utf-8")
    broken = spoil(text)
    dxf.path.write_text(broken, "utf-8")
    drawing, (finding,) = read_dxf(dxf.path, "drawings/part.dxf")
    assert drawing is None
    assert (finding.rule, finding.message) == ("unreadable-drawing", message)
    begin = text[: text.index("AcDbCircle")].count("\n") if line > 1 else 0
    expected = len(broken.splitlines()) if line < 0 else begin + line
    assert finding.place.line == expected


def test_what_does_not_concern_the_cut_is_mended_with_a_warning(dxf: Dxf) -> None:
    dxf.read(lambda space: space.add_circle((50, 25), 10))
    text = dxf.path.read_text("utf-8")
    dxf.path.write_text(text[: text.rindex("  0\nEOF")], "utf-8")
    drawing, (finding,) = read_dxf(dxf.path, "drawings/part.dxf")
    assert drawing is not None
    assert [each.name for each in drawing.elements] == ["CIRCLE on layer 0"]
    assert (finding.rule, finding.severity) == ("mended-drawing", Severity.WARNING)
    assert finding.message == "the file is cut short (in OBJECTS)"


def test_a_binary_file_is_read_and_told_where_it_is_cut_short(dxf: Dxf) -> None:
    document = ezdxf.new("R2010")
    document.units = units.MM
    document.modelspace().add_circle((50, 25), 10)
    document.saveas(dxf.path, fmt="bin")
    drawing, findings = read_dxf(dxf.path, "drawings/part.dxf")
    assert drawing is not None
    assert findings == ()
    dxf.path.write_bytes(dxf.path.read_bytes()[:9000])
    drawing, (finding,) = read_dxf(dxf.path, "drawings/part.dxf")
    assert drawing is None
    assert finding.message == "a binary DXF file that is cut short or damaged"


@pytest.fixture(scope="module")
def sound(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    document = ezdxf.new("R2000")
    document.units = units.MM
    loose_slot(document.modelspace())
    document.modelspace().add_lwpolyline([(0, 0), (9, 0), (9, 9)], close=True)
    document.modelspace().add_open_spline([(0, 0, 0), (3, 6, 0), (6, -6, 0), (9, 0, 0)])
    path = tmp_path_factory.mktemp("dxf") / "sound.dxf"
    document.saveas(path)
    return path.read_bytes()


@settings(
    max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture], deadline=None
)
@given(st.data())
def test_a_damaged_file_gives_findings_and_never_an_exception(
    tmp_path: Path, sound: bytes, data: st.DataObject
) -> None:
    """Cut off, or with a stretch of its entities overwritten."""
    rotten = bytearray(sound)
    begin = sound.index(b"ENTITIES")
    at = data.draw(st.integers(begin, len(rotten) - 1))
    noise = data.draw(st.binary(max_size=30))
    rotten[at : at + len(noise)] = noise
    if data.draw(st.booleans()):
        del rotten[at + len(noise) :]
    path = tmp_path / "rotten.dxf"
    path.write_bytes(bytes(rotten))
    drawing, findings = read_dxf(path, "drawings/rotten.dxf")
    assert drawing is not None or findings
    for element in drawing.elements if drawing else ():
        assert all(math.isfinite(number) for vertex in element.vertices for number in vertex)


def test_what_cannot_be_read_is_named_by_layer_and_block(dxf: Dxf) -> None:
    def draw(space: Modelspace) -> None:
        disc(space)
        assert space.doc is not None
        space.doc.blocks.new("pair").add_circle((0, 0), 1e9, dxfattribs={"layer": "bores"})
        space.add_blockref("pair", (0, 0))

    drawing, (finding,) = dxf.read(draw)
    assert drawing is not None
    assert finding.message.startswith("`CIRCLE on layer bores`: a coordinate is too large")
    assert drawing.unread == {"CIRCLE on layer bores", "bores", "pair", "pair.1"}
