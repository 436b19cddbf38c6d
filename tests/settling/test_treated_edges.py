"""Which stretches of an outline an edge means; lengths against the written DXF, read by ezdxf."""

from __future__ import annotations

import io
import math
from itertools import pairwise
from math import dist, pi

import ezdxf
import pytest
import shapely
from ezdxf.math import bulge_radius

from kerfolio.drawing.cut_sheet import cut_part
from kerfolio.proving.prove import prove_plan
from kerfolio.settling.settled import SettledEdge, SettledPart
from kerfolio.writing.dxf import dxf_bytes
from tests.edged import BARE, EDGED, edged_panel, settled_panel, with_edges
from tests.plans import RACK, settled_at, workshop
from tests.settling.panels import flat


def panel(edges: str, features: str = BARE, **asked: object) -> SettledPart:
    return settled_panel(edged_panel(edges, features, **asked)).part("panel")


def ends(edge: SettledEdge) -> list[tuple[float, ...]]:
    return [(*run.start, *run.end) for run in edge.runs]


def way(corner: tuple[float, ...], other: tuple[float, ...]) -> float:
    """Return how far it is to the next corner of a polyline, by ezdxf's arc of its bulge."""
    if not corner[2]:
        return dist(corner[:2], other[:2])
    radius = bulge_radius(corner[:2], other[:2], corner[2])
    return radius * abs(4 * math.atan(corner[2]))


def faults(edges: str, features: str = BARE, **asked: object) -> list[tuple[str, str]]:
    found = workshop(edged_panel(edges, features, **asked))
    told = prove_plan(found.plans[0], found.stock).findings
    return [(each.message, each.advice) for each in told if each.rule == "no-such-edge"]


def test_tabs_and_notches_leave_the_stretches_beside_them() -> None:
    features = """
t: {tabs: {edge: top, at: 100, width: 60, depth: 18}}
n: {notch: {edge: bottom, at: 200, depth: 40, width: 20}}
"""
    top, bottom, rest = panel("{top: square, bottom: ease, all: mask}", features).edges
    assert ends(top) == [(400, 300, 160, 300), (100, 300, 0, 300)]
    assert ends(bottom) == [(0, 0, 190, 0), (210, 0, 400, 0)]
    assert ends(rest) == [(400, 0, 400, 300), (0, 300, 0, 0)], "walls of tab and notch are no edges"


def test_fingers_leave_their_ends() -> None:
    (left,) = panel("{left: mask}", "f: {fingers: {edge: left, count: 3, takes: ply}}").edges
    assert left.length == pytest.approx(200 - 0.1), "two of 100 mm, half of the fit off each"


def test_a_stretch_goes_before_its_side_and_the_rest_is_left_over() -> None:
    also = "also: [{from: [50, 300], to: [150, 300], treatment: square}]"
    stretch, top = panel(f"{{top: ease, {also}}}").edges
    assert ends(stretch) == [(150, 300, 50, 300)]
    assert ends(top) == [(400, 300, 150, 300), (50, 300, 0, 300)]


def test_an_arc_is_named_by_its_ends() -> None:
    also = "also: [{from: [400, 260], to: [360, 300], treatment: square}]"
    corner, rest = panel(
        f"{{all: ease, {also}}}", outline="{rectangle: [400, 300], round: 40}"
    ).edges
    assert corner.length == pytest.approx(40 * pi / 2)
    assert rest.length == pytest.approx(2 * (320 + 220) + 3 * 40 * pi / 2)


def test_arcs_of_one_circle_are_taken_once() -> None:
    (edge,) = panel("{all: ease}", outline="{circle: 320}").edges
    assert edge.length == pytest.approx(320 * pi)


def test_rims_of_an_opening_and_of_its_copies() -> None:
    features = (
        "w: {window: {at: [100, 150], rounded-slot: [80, 20]}, repeat: {count: 2, step: [150, 0]}}"
    )
    (rims,) = panel("{also: [{opening: w, treatment: ease}]}", features).edges
    assert rims.openings == ("w.1", "w.2")
    assert rims.length == pytest.approx(2 * (2 * 60 + 20 * pi))


@pytest.mark.parametrize(
    ("edges", "expected"),
    [
        ("{top: ease}", "no straight edge `top`"),
        (
            "{also: [{from: [10, 10], to: [90, 10], treatment: ease}]}",
            "no edge from 10 mm, 10 mm to 90 mm, 10 mm",
        ),
    ],
)
def test_an_edge_that_is_not_there_is_told(edges: str, expected: str) -> None:
    advice = (
        "Name an edge by two points on it, as the outline is without tabs and notches: "
        "`also: [{from: [0, 0], to: [60, 0], treatment: ease}]`; the rest is `all`."
    )
    assert faults(edges, outline="{circle: 400}") == [(expected, advice)]


def test_an_opening_that_is_not_there_is_told() -> None:
    message = "no window or hole `g` that goes through"
    assert faults("{also: [{opening: g, treatment: ease}]}") == [(message, "Known here: `f`.")]


@pytest.mark.parametrize("thickness", [17.6, 18.2])
def test_no_cut_knows_of_it(thickness: float) -> None:
    bare, edged = settled_at(thickness, RACK), settled_at(thickness, EDGED)
    for one, other in zip(bare.parts, edged.parts, strict=True):
        assert other.edges
        assert dxf_bytes(cut_part(bare, one)) == dxf_bytes(cut_part(edged, other))


def test_lengths_are_those_of_the_written_file() -> None:
    """All edges of a part without features are as long together as its outline in the DXF."""
    outline = "{polygon: [[0, 0], [400, 0], [330, 300, {round: 60}], [20, 250, {round: 12}]]}"
    settled = settled_panel(edged_panel("{all: ease, bottom: square}", outline=outline))
    part = settled.part("panel")
    document = ezdxf.read(io.StringIO(dxf_bytes(cut_part(settled, part)).decode()))
    (line,) = document.modelspace().query('LWPOLYLINE[layer=="outline_through"]')
    corners = [*line.get_points("xyb"), *line.get_points("xyb")[:1]]
    drawn = math.fsum(way(a, b) for a, b in pairwise(corners))
    assert math.fsum(each.length for each in part.edges) == pytest.approx(drawn, abs=0.001)


def test_every_stretch_lies_on_the_shape() -> None:
    """Reference: shapely's boundary of the shape."""
    for part in settled_at(17.6, EDGED).parts:
        rim = flat(part.plain).boundary
        for edge in part.edges:
            for run in edge.runs:
                assert rim.distance(shapely.Point(run.start)) < 1e-3
                assert rim.distance(shapely.Point(run.end)) < 1e-3


def test_a_radius_follows_the_sheet() -> None:
    plan = with_edges(RACK, "rail", "{top: {round-over: t/4}}")
    radii = [settled_at(mm, plan).part("rail").edges[0].radius for mm in (17.6, 18.2)]
    assert radii == pytest.approx([4.4, 4.55])
