"""How few decimals stand in the files, and that arcs stay where they were all the same.

The files are read by ezdxf and svgelements, which stand for any other program that opens them.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator
from math import ceil, cos, dist, pi, radians, sin, tan

import ezdxf
import pytest
from ezdxf.math import bulge_to_arc
from svgelements import SVG, Arc, Path

from kerfolio.drawing.vocabulary import Anchor, Drawing, Label, Layer, Stroke
from kerfolio.geometry.arc import edges
from kerfolio.geometry.contour import Contour, Point
from kerfolio.geometry.shapes import circle
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.pdf_path import number, points
from kerfolio.writing.svg import svg_bytes

LENGTH, BULGE = r"-?\d+(\.\d{1,4})?", r"-?\d+(\.\d{1,8})?"
SHEET = (3660.0, 1830.0)
"""mm: the largest sheets of plywood that are sold as common ones, 12 x 6 ft (from memory)."""
CLOSE = 0.00015
"""mm: a corner of the grid of 4 decimals is 0.00007 off, and an arc's top about as much more."""

ARCS = [
    (radius, sweep, turn)
    for radius in (0.4, 3.175, 21.7, 333.3, 1830.0 / 3, 9000.0)
    for sweep in (0.7, 7.0, 30.0, 89.9, 90.0, 90.1, 179.99999, 180.0, 270.0)
    for turn in (-1, 1)
    if 2 * radius * (1 if sweep > 180 else sin(radians(sweep / 2))) < dist((0, 0), SHEET)
]


def arc_contour(radius: float, sweep: float, turn: int) -> Contour:
    """Return one arc whose ends and centre lie on no grid."""
    centre, start = (1234.56789012 + radius / 7, 987.654321098 - radius / 3), 0.7 + radius
    end = start + turn * radians(sweep)
    (x0, y0), (x1, y1) = (
        (centre[0] + radius * cos(angle), centre[1] + radius * sin(angle)) for angle in (start, end)
    )
    return Contour(((x0, y0, turn * tan(radians(sweep) / 4)), (x1, y1, 0.0)), closed=False)


def off(contour: Contour, spot: Point) -> float:
    """Return how far a spot lies from the circle of a contour of one arc."""
    (edge,) = edges(contour)
    assert edge.arc is not None
    return abs(dist(spot, edge.arc.centre) - edge.arc.radius)


def written(contour: Contour) -> Drawing:
    return Drawing(box=(0.0, 0.0, *SHEET), items=(Stroke(contour=contour, layer="a"),))


Along = Callable[[float], Point]
"""Returns the spot at a share of the way along the one arc of a file."""


def from_dxf(content: bytes) -> Along:
    (line,) = ezdxf.read(io.StringIO(content.decode())).modelspace().query("LWPOLYLINE")
    (x0, y0, bulge), (x1, y1, _) = line.get_points("xyb")
    centre, start, end, radius = bulge_to_arc((x0, y0), (x1, y1), bulge)
    sweep = (end - start) % (2 * pi)

    def along(share: float) -> Point:
        angle = start + sweep * (share if bulge > 0 else 1 - share)
        return centre[0] + radius * cos(angle), centre[1] + radius * sin(angle)

    return along


def from_svg(content: bytes) -> Along:
    svg = SVG.parse(io.BytesIO(content))
    (path,) = (Path(each) for each in svg.elements() if isinstance(each, Path))
    arcs = [each for each in path if isinstance(each, Arc)]

    def along(share: float) -> Point:
        place = share * len(arcs)
        which = max(0, ceil(place) - 1)
        spot = arcs[which].point(place - which)
        return spot.x, SHEET[1] - spot.y

    return along


@pytest.mark.parametrize(("radius", "sweep", "turn"), ARCS)
def test_arcs_keep_their_place(radius: float, sweep: float, turn: int) -> None:
    contour = arc_contour(radius, sweep, turn)
    dxf = dxf_bytes(written(contour))
    svg = svg_bytes(written(contour), decimals=4, real_size=False)
    for along in (from_dxf(dxf), from_svg(svg)):
        for share, (x, y, _) in zip((0.0, 1.0), contour.vertices, strict=True):
            assert dist(along(share), (x, y)) < CLOSE
        assert max(off(contour, along(share / 16)) for share in range(17)) < CLOSE


def test_a_bulge_of_four_decimals_would_not_keep_them() -> None:
    """Why ratios have more decimals than lengths: the top moves by half the chord times this."""
    (x0, y0, bulge), end = arc_contour(9000.0, 7.0, 1).vertices
    rough = Contour(((x0, y0, round(bulge, 4)), end), closed=False)
    (edge,) = edges(rough)
    assert edge.arc is not None
    top = edge.arc.point(edge.arc.start + edge.arc.sweep / 2)
    assert off(arc_contour(9000.0, 7.0, 1), top) > 0.002


def numbers_of(content: str) -> Iterator[tuple[str, str]]:
    """Yield group codes and values of the entities of a DXF file."""
    entities = content.split("ENTITIES\n", 1)[1].split("ENDSEC", 1)[0].splitlines()
    yield from (
        (code.strip(), value) for code, value in zip(entities[::2], entities[1::2], strict=False)
    )


def test_no_number_of_a_dxf_file_has_more_than_its_decimals() -> None:
    items = (
        Stroke(contour=arc_contour(21.7, 30, 1), layer="a"),
        Stroke(contour=circle((1 / 3, 2 / 3), 10 / 3), layer="a"),
        Label(text="x", at=(1 / 3, 259.40000000000003), height=10 / 3, angle=20 / 3, layer="b"),
        Label(text="y", at=(1 / 3, -0.00001), height=4, anchor=Anchor.END, layer="b"),
    )
    layers = (Layer(name="a", purpose="", cuts=True), Layer(name="b", purpose=""))
    box = (-1 / 3, -2 / 3, 1000 / 3, 2000 / 3)
    text = dxf_bytes(Drawing(box=box, items=items, layers=layers)).decode()
    found = dict.fromkeys(("10", "20", "40", "42", "50"), 0)
    for code, value in numbers_of(text):
        if code in found:
            found[code] += 1
            assert re.fullmatch(BULGE if code == "42" else LENGTH, value)
            assert value != "-0"
    assert found == {"10": 5, "20": 5, "40": 3, "42": 1, "50": 1}
    assert "\n 20\n259.4\n" in text
    assert "$EXTMAX\n 10\n333.3333\n 20\n666.6667\n" in text


def test_numbers_of_a_page() -> None:
    assert points(25.4) == "72"
    assert points(1 / 3) == "0.9449"
    assert number(-0.0000001) == "0"
    assert number(sin(radians(30))) == "0.5"
