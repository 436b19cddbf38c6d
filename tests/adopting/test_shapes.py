"""Shapes taken apart: reliefs made square, curves made arcs, like shapes, what lies in what."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
import shapely

from kerfolio.adopting.aside import why_aside
from kerfolio.adopting.depths import depth_of, is_to_a_depth
from kerfolio.adopting.linear import Linear, number_text
from kerfolio.adopting.prongs import prongs
from kerfolio.adopting.shape import Shape
from kerfolio.adopting.turnings import turnings_of
from kerfolio.adopting.units import Sold, units_by_likelihood
from kerfolio.adopting.wedge_shape import wedge_shape
from kerfolio.geometry.arc_runs import with_arcs
from kerfolio.geometry.canonical import tidy
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import area
from kerfolio.geometry.nesting import parents
from kerfolio.geometry.same_shape import placing_of, symmetries
from kerfolio.geometry.shapes import circle, rectangle
from kerfolio.geometry.squared import squared
from kerfolio.geometry.straightened import straightened
from kerfolio.geometry.transform import mirrored_x, moved, scaled, turned
from tests.adopting.spoiled import drawn_plan

_L = Contour(((0, 0, 0), (90, 0, 0), (90, 30, 0), (40, 30, 0), (40, 70, 0), (0, 70, 0)))


def _differs_by(one: Contour, other: Contour) -> float:
    a, b = (shapely.Polygon(points(each, 0.002)) for each in (one, other))
    return float(a.symmetric_difference(b).area)


@pytest.mark.parametrize("plan", ["desk-rack", "harbour-stool", "potting-bench", "tool-tote"])
def test_reliefs_are_taken_back(plan: str) -> None:
    """The oracle is the program that makes them: each part as a hand cuts it has none."""
    for part in drawn_plan(plan).parts:
        found = 0
        pairs = [
            (part.routed.outer, part.plain.outer),
            *zip(part.routed.openings, part.plain.openings, strict=True),
        ]
        for routed, plain in pairs:
            made = squared(routed)
            found += len(made.radii)
            assert _differs_by(made.contour, plain) < 0.05
        assert found == len(part.reliefs)


def test_a_fillet_is_no_relief() -> None:
    rounded = Contour(
        (*_L.vertices[:3], (50, 30, -math.tan(math.pi / 8)), (40, 40, 0), *_L.vertices[4:])
    )
    assert squared(rounded).radii == ()


def test_chords_of_bezier_curves_become_arcs_again() -> None:
    """A circle of four Bezier curves: handles of 0.5523 of the radius (common practice)."""
    k, r = 0.5522847498, 30.0
    corners = [(r, 0), (0, r), (-r, 0), (0, -r)]
    chain = []
    for index, (x0, y0) in enumerate(corners):
        x3, y3 = corners[(index + 1) % 4]
        x1, y1, x2, y2 = x0 - k * y0, y0 + k * x0, x3 + k * y3, y3 - k * x3
        for step in range(16):
            t = step / 16
            a, b, c, d = (1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t * t * (1 - t), t**3
            chain.append(
                (a * x0 + b * x1 + c * x2 + d * x3, a * y0 + b * y1 + c * y2 + d * y3, 0.0)
            )
    made = with_arcs(Contour(tuple(chain)))
    assert len(made.vertices) <= 4
    assert math.isclose(area(made), math.pi * r * r, rel_tol=1e-3)


def test_an_octagon_stays_one() -> None:
    eight = [
        (math.cos(a * math.pi / 4) * 20, math.sin(a * math.pi / 4) * 20, 0.0) for a in range(8)
    ]
    assert with_arcs(Contour(tuple(eight))).vertices == tuple(eight)


def test_nodes_on_a_line_go_and_corners_stay() -> None:
    halves = []
    for index, (x, y, _) in enumerate(_L.vertices):
        bx, by, _ = _L.vertices[(index + 1) % 6]
        halves += [(x, y, 0.0), ((x + bx) / 2, (y + by) / 2, 0.0)]
    assert len(straightened(Contour(tuple(halves))).vertices) == 6


@pytest.mark.parametrize("degrees", [0, 90, 37, 180])
@pytest.mark.parametrize("over", [False, True])
def test_like_shapes_are_found_turned_and_turned_over(degrees: float, over: bool) -> None:
    shape = Region(_L, (circle((20, 15), 8),))
    flat = Region(mirrored_x(_L), (mirrored_x(circle((20, 15), 8)),)) if over else shape
    there = moved(turned(flat, degrees), 400, -30)
    placing = placing_of(shape, there)
    assert placing is not None
    assert placing.over == over
    assert _differs_by(placing.of(shape.outer), there.outer) < 0.01
    elsewhere = Region(there.outer, (moved(there.openings[0], 1, 0),))
    assert placing_of(shape, elsewhere) is None


def test_symmetries_of_a_rectangle_and_of_one_with_a_hole() -> None:
    plain = rectangle(0, 0, 80, 30)
    assert len(symmetries(Region(plain))) == 4
    assert len(symmetries(Region(plain, (circle((20, 15), 8),)))) == 2
    assert len(symmetries(Region(plain, (circle((20, 10), 8),)))) == 1


def test_what_lies_in_what() -> None:
    sheet, part = rectangle(0, 0, 500, 300), rectangle(10, 10, 200, 200)
    hole, inner = rectangle(30, 30, 150, 150), rectangle(50, 50, 60, 60)
    beside = rectangle(210, 10, 300, 100)
    assert parents([inner, sheet, hole, beside, part]) == (2, None, 4, 1, 1)


def test_lengths_are_written_as_round_as_they_are_drawn() -> None:
    sizes = {"ply": ("t", 18.26), "thin": ("t_thin", 6.0)}
    half = Fraction(1, 2)
    assert number_text(120.0004, "mm") == "120"
    assert number_text(120.127, "mm") == "120.13"
    assert number_text(2.5 * 25.4, "in") == "2-1/2"
    assert number_text(0.3 * 25.4, "in") == "0.3"
    long = Linear(drawn=302.8 - 18.26, per={"ply": Fraction(-1)})
    assert long.text("mm", sizes) == "302.8 - t"
    assert Linear(drawn=9.13, per={"ply": half}).text("mm", sizes) == "t/2"
    inch = Linear(drawn=32.25 * 25.4 - 18.26, per={"ply": Fraction(-1)})
    assert inch.text("in", sizes) == "32-1/4 in - t"
    both = Linear(drawn=100 - 36.52 + 3, per={"ply": Fraction(-2), "thin": half})
    assert both.text("mm", sizes) == "100 - 2*t + t_thin/2"


@pytest.mark.parametrize(
    ("names", "depth"),
    [
        (("POCKET 6 mm",), 6.0),
        (("groove_d1/4in",), 6.35),
        (("Tasche 4,5",), 4.5),
        (("housing 1-1/8 in",), 28.575),
        (("SLOTS 18",), None),
        (("engrave",), None),
    ],
)
def test_depths_stand_in_the_names_of_layers(names: tuple[str, ...], depth: float | None) -> None:
    assert depth_of(names) == (None if depth is None else pytest.approx(depth))
    assert is_to_a_depth(names) == (names != ("SLOTS 18",))


@pytest.mark.parametrize(
    ("names", "contour", "aside"),
    [
        (("SIDE", "OUT"), _L, False),
        (("TEXT",), _L, True),
        (("Dimensions",), _L, True),
        (("Maße",), _L, True),
        (("Masseplatte",), _L, False),
        (("engraving",), _L, True),
        (("label holder",), _L, False),
        (("OUT",), Contour(((0, 0, 0), (2, 1, 0), (0, 2, 0))), True),
        (("OUT",), circle((0, 0), 2.4), False),
    ],
)
def test_what_is_beside_the_cutting(names: tuple[str, ...], contour: Contour, aside: bool) -> None:
    assert bool(why_aside(names, contour)) == aside


@pytest.mark.parametrize("degrees", [0, 90, 180, 37])
@pytest.mark.parametrize("left", [True, False])
def test_a_wedge_is_stood_up_with_its_thin_end_down(degrees: float, left: bool) -> None:
    """The shape of the contributor's pages: straight side at the left, 16 mm to 33 mm wide."""
    wedge = Contour(((0, 0, 0), (16, 0, 0), (33, 120, 0), (0, 120, 0)))
    shape = wedge_shape(tidy(turned(wedge if left else mirrored_x(wedge), degrees)))
    assert shape is not None
    assert shape.left == left
    assert (shape.thin, shape.thick, shape.length) == pytest.approx((16, 33, 120))
    assert (shape.turn + degrees) % 360 == pytest.approx(0, abs=1e-6)
    assert shape.across(24.5) == pytest.approx(60)


@pytest.mark.parametrize("shape", [rectangle(0, 0, 20, 120), _L, rectangle(0, 0, 400, 600)])
def test_what_does_not_taper_is_no_wedge(shape: Contour) -> None:
    assert wedge_shape(shape) is None


def test_what_stands_between_the_tabs_of_both_ends_is_no_tab() -> None:
    """A tread of 400 x 180 with a tab of 100 x 15 at each end: its shoulders are 40 high."""
    corners = [(0, 0), (400, 0), (400, 40), (415, 40), (415, 140), (400, 140), (400, 180), (0, 180)]
    corners += [(0, 140), (-15, 140), (-15, 40), (0, 40)]
    found = prongs(Contour(tuple((x, y, 0) for x, y in corners)))
    assert [(each.width, each.depth) for each in found] == [(100, 15), (100, 15)]


def test_an_arch_lies_between_two_straight_edges() -> None:
    """A door of 60 mm under a half circle: one turning of two curves, its walls beside it."""
    half = -0.41421356
    corners = (
        (0, 0),
        (70, 0),
        (70, 30),
        (100, 60),
        (130, 30),
        (130, 0),
        (200, 0),
        (200, 90),
        (0, 90),
    )
    bulges = (0, 0, half, half, 0, 0, 0, 0, 0)
    door = Contour(tuple((x, y, b) for (x, y), b in zip(corners, bulges, strict=True)))
    found = turnings_of(door)
    assert found is not None
    assert len(found) == 7
    (arch,) = [each for each in found if each.curves]
    assert (arch.start, arch.end, arch.corner) == ((70, 30), (130, 30), None)


def test_round_lengths_tell_the_unit_where_widths_do_not() -> None:
    """A frame of 6 mm drawn in px: 22.68 px is as wide as no sheet, and may be any as mm."""
    sold = Sold(thick=((5.5, 6.9), (21.0, 23.0)), sizes=((2440.0, 1220.0),))
    px = 96 / 25.4
    slots = [rectangle(0, 60 * k, 30, 60 * k + 6) for k in range(3)]
    drawn = [Shape(contour=scaled(each, px)) for each in (rectangle(0, 0, 360, 200), *slots)]
    assert units_by_likelihood(drawn, sold)[0].startswith("px (96")
    plain = [Shape(contour=each) for each in (rectangle(0, 0, 360, 200), *slots)]
    assert units_by_likelihood(plain, sold)[0] == "mm"
