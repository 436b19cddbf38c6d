"""Cut files, measured in what was written: sizes, layers, nothing that is not to be cut.

The accepted difference, 0.02 mm times the perimeter, is the tolerance the design states.
"""

from __future__ import annotations

import io
import re
from collections import Counter
from collections.abc import Callable
from dataclasses import replace

import ezdxf
import pytest
import shapely

from kerfolio.drawing.cut_sheet import cut_coupon, cut_part, cut_sheet
from kerfolio.drawing.layer import layer_for
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Drawing, Label, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area, bounds, length
from kerfolio.model.feature_kind import HOLE
from kerfolio.settling.settled import Operation
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.read_back import Layers
from kerfolio.writing.read_dxf import read_dxf
from kerfolio.writing.read_svg import read_svg
from kerfolio.writing.svg import svg_bytes
from tests.drawing.bench import bench, bench_layout
from tests.geometry.shape_cases import difference_area, solid
from tests.lettering import dxf_notes, svg_notes
from tests.pages.test_contrast import MARK, contrast
from tests.plans import RACK, settled_at

PLAN, LAYOUT = bench(), bench_layout()
SHEET = PLAN.sheets[0].stock.title
PRESSED = settled_at(17.8, RACK + "joint-fit: press\n")
FILES = {
    "sheet": cut_sheet(PLAN, LAYOUT),
    "coupon": cut_coupon(PLAN, PLAN.coupons[0]),
    **{part.name: cut_part(PLAN, part) for part in PLAN.parts},
}
FORMATS: dict[str, Callable[[Drawing], Layers]] = {
    "svg": lambda drawing: read_svg(svg_bytes(drawing)).layers,
    "dxf": lambda drawing: read_dxf(dxf_bytes(drawing)).layers,
}
each_file = pytest.mark.parametrize("drawing", FILES.values(), ids=FILES.keys())
each_format = pytest.mark.parametrize("read", FORMATS.values(), ids=FORMATS.keys())


GROUNDS = ("#ffffff", "#212830", "#000000")
"""White, and the dark grounds of drawing programs (common practice, no single source)."""


@pytest.mark.parametrize("ground", GROUNDS)
@each_file
def test_every_layer_shows_on_light_and_dark_grounds(drawing: Drawing, ground: str) -> None:
    """WCAG 2.2, 1.4.11: marks need 3:1."""
    entries = ezdxf.read(io.StringIO(dxf_bytes(drawing).decode())).layers
    colours = {
        layer.name: "#{:02x}{:02x}{:02x}".format(*entries.get(layer.name).rgb)
        for layer in drawing.layers
    }
    drawn = set(re.findall(r"#[0-9a-f]{6}", svg_bytes(drawing).decode()))
    assert drawn == set(colours.values())
    operations = {each.split("_")[0]: colours[each] for each in cut_layers(drawing)}
    assert len(set(operations.values())) == len(operations)
    assert min(contrast(each, ground) for each in drawn) >= MARK


def cut_layers(drawing: Drawing) -> set[str]:
    return {layer.name for layer in drawing.layers if layer.cuts}


@each_format
@each_file
def test_both_check_squares_measure_what_they_say(
    drawing: Drawing, read: Callable[[Drawing], Layers]
) -> None:
    """100 mm, and 4 in at 25.4 mm to the inch (the international inch of 1959)."""
    squares = [bounds(each) for each in read(drawing)["check-square"]]
    sides = [side for box in squares for side in (box.width, box.height)]
    assert sides == pytest.approx([100, 100, 101.6, 101.6], abs=0.0005)


@each_file
def test_check_squares_and_notes_lie_off_everything_that_is_cut(drawing: Drawing) -> None:
    apart = ("check-square", "note")
    others = [item for item in drawing.items if item.layer not in apart]
    top = max(bounds(item.contour).y1 for item in others if isinstance(item, Stroke))
    for item in drawing.items:
        if item.layer in apart:
            low = item.at[1] if isinstance(item, Label) else bounds(item.contour).y0  # type: ignore[union-attr]
            assert low > top + 5


def matched(meant: list[Contour], found: tuple[Contour, ...]) -> None:
    """Pair every meant contour with the nearest found one and compare their areas."""
    left = list(found)
    for contour in meant:
        middle = bounds(contour).centre
        nearest = min(left, key=lambda other: distance(bounds(other).centre, middle))
        left.remove(nearest)
        tolerance = 0.02 * length(contour)
        assert difference_area(solid(contour), solid(nearest)) < tolerance
        assert abs(area(contour) - area(nearest)) < tolerance
    assert left == [], "nothing else lies on the layer"


def distance(one: tuple[float, float], other: tuple[float, float]) -> float:
    return abs(one[0] - other[0]) + abs(one[1] - other[1])


@each_format
@pytest.mark.parametrize("part", PLAN.parts, ids=lambda part: part.name)
def test_a_part_is_cut_as_settled(part, read: Callable[[Drawing], Layers]) -> None:
    found = read(FILES[part.name])
    for cut in part.cuts:
        if cut.operation is not Operation.ENGRAVE:
            same = [c for c in part.cuts if layer_for(c) == layer_for(cut)]
            matched([each for c in same for each in c.contours], found[layer_for(cut).name])


@each_format
def test_every_piece_is_cut_where_the_layout_puts_it(read: Callable[[Drawing], Layers]) -> None:
    meant: dict[str, list[Contour]] = {}
    parts = {part.name: part for part in PLAN.parts}
    for each in LAYOUT.placements:
        seat = Seat(x=each.x, y=each.y, turn=each.turn)
        for cut in parts[each.part].cuts:
            if cut.operation is not Operation.ENGRAVE:
                placed = [seat.contour(contour) for contour in cut.contours]
                meant.setdefault(layer_for(cut).name, []).extend(placed)
    found = read(FILES["sheet"])
    for name, contours in meant.items():
        matched(contours, found[name])


def test_a_quarter_turn_moves_a_corner_where_geometry_says() -> None:
    """Turned by 90 degrees counter-clockwise (x, y) goes to (-y, x); then moved by 470, 10."""
    side = next(part for part in PLAN.parts if part.name == "side")
    bolts = [each.at for each in side.features if each.kind is HOLE]
    found = read_dxf(dxf_bytes(FILES["sheet"])).layers["hole_through"]
    holes = [bounds(each).centre for each in found]
    for x, y in bolts:
        assert any(distance(hole, (470 - y, 10 + x)) < 1e-9 for hole in holes)


@each_file
def test_cut_layers_hold_closed_lines_and_nothing_else(drawing: Drawing) -> None:
    cut = cut_layers(drawing)
    for item in drawing.items:
        if item.layer in cut:
            assert isinstance(item, Stroke)
            assert item.contour.closed or item.layer.startswith("engrave_")
            assert not item.holes
            assert item.fill is None
    used = {item.layer for item in drawing.items}
    assert used == {layer.name for layer in drawing.layers}, "no empty and no unnamed layer"


@each_file
def test_no_line_is_drawn_twice(drawing: Drawing) -> None:
    strokes = [item for item in drawing.items if isinstance(item, Stroke)]
    by_layer = Counter((s.layer, tuple(sorted(s.contour.vertices))) for s in strokes)
    assert set(by_layer.values()) == {1}


def test_a_cut_stated_twice_is_cut_once_wherever_it_starts() -> None:
    part = next(part for part in PLAN.parts if part.name == "shelf")
    pocket = part.cuts[0]
    again = [Contour(each.vertices[2:] + each.vertices[:2]) for each in pocket.contours]
    doubled = replace(part, cuts=(pocket, replace(pocket, contours=tuple(again)), *part.cuts))
    layers = [item.layer for item in cut_part(PLAN, doubled).items]
    assert layers.count("pocket_6.0mm") == 2


def test_two_holes_of_one_centre_and_different_size_are_both_cut() -> None:
    part = PLAN.parts[3]
    hole = part.cuts[0]
    small = [replace(hole, contours=(Contour(((13.0, 15.0, 1.0), (17.0, 15.0, 1.0))),))]
    wide = replace(hole, contours=(Contour(((12.0, 15.0, 1.0), (18.0, 15.0, 1.0))),))
    drawing = cut_part(PLAN, replace(part, cuts=(*small, wide, part.cuts[-1])))
    assert [item.layer for item in drawing.items].count("hole_through") == 2


def test_the_lower_left_corner_of_the_file_is_that_of_the_sheet() -> None:
    drawing = FILES["sheet"]
    assert drawing.box[:2] == (0, 0)
    edge = next(item for item in drawing.items if item.layer == "sheet-edge")
    assert isinstance(edge, Stroke)
    box = bounds(edge.contour)
    assert (box.x0, box.y0, box.x1, box.y1) == (0, 0, 2440, 1220)


def test_layers_come_in_cutting_order() -> None:
    names = [layer.name for layer in FILES["sheet"].layers]
    assert names == [
        "engrave_0.5mm",
        "pocket_3.25mm",
        "pocket_6.0mm",
        "hole_12.0mm",
        "hole_through",
        "opening_through",
        "outline_through",
        "sheet-edge",
        "note",
        "check-square",
    ]


@pytest.mark.parametrize("name", ["sheet", *(part.name for part in PLAN.parts)])
def test_the_note_names_plan_release_thickness_and_units(name: str) -> None:
    drawing = FILES[name]
    for notes in (svg_notes(svg_bytes(drawing)), dxf_notes(dxf_bytes(drawing))):
        words = " ".join(notes)
        assert "Test bench 1.2.0" in words
        assert f"Cut for {SHEET} at 17.80 mm (0.701 in)" in words
        assert "Fit 0.1 mm, cutter 6 mm" in words
        assert "Files for sheets 17.80 mm thick" in words
        assert "Units: mm" in words
        assert "100 mm" in notes
        assert "4 in" in notes
    assert drawing.thickness == 17.8


def test_a_note_says_where_some_joint_has_room_of_its_own() -> None:
    side, rail = (cut_part(PRESSED, each) for each in PRESSED.parts)
    said = "Fit 0.1 mm, some joints their own, cutter 6 mm"
    assert said in svg_notes(svg_bytes(side))
    assert said not in svg_notes(svg_bytes(rail))
    assert "Fit 0.1 mm, cutter 6 mm" in svg_notes(svg_bytes(rail))


def test_a_coupon_is_for_every_thickness_and_names_none_as_its_own() -> None:
    notes = svg_notes(svg_bytes(FILES["coupon"]))
    assert f"Steps for {SHEET}, 17.5 to 18.1 mm thick" in notes
    assert FILES["coupon"].thickness is None


def test_the_sheets_note_has_its_number() -> None:
    labels = [item.text for item in FILES["sheet"].items if isinstance(item, Label)]
    assert "Test bench 1.2.0, sheet 1: 8 pieces" in labels
    assert "Files for sheets 17.80 mm thick" in labels


def test_a_part_below_its_own_origin_keeps_its_coordinates() -> None:
    drawing = FILES["rail"]
    assert drawing.box[1] == -20
    outline = read_svg(svg_bytes(drawing)).layers["outline_through"][0]
    assert bounds(outline).y0 == pytest.approx(-20)


def test_coupon_plate_and_tab_lie_apart() -> None:
    outlines = read_dxf(dxf_bytes(FILES["coupon"])).layers["outline_through"]
    assert len(outlines) == 2
    plate, tab = (shapely.Polygon(points(each, 0.01)) for each in outlines)
    assert plate.distance(tab) == pytest.approx(PLAN.sheet("ply").gap)


def test_slots_of_the_coupon_grow_by_the_ladder() -> None:
    slots = read_dxf(dxf_bytes(FILES["coupon"])).layers["opening_through"]
    stepped = [each for each in slots if not any(bulge for *_, bulge in each.vertices)]
    rising = max(stepped, key=lambda each: bounds(each).height)
    walls = sorted({x for x, _, _ in rising.vertices})
    widths = [x - walls[0] for x in walls[1:]]
    assert widths == pytest.approx([each.width for each in PLAN.coupons[0].slots], abs=1e-4)
