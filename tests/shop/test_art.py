"""Where the middle of an engraving lies on a piece, checked with shapely and by hand."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon

from kerfolio.geometry.contour import Contour
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle, polygon, rectangle, rounded_slot
from kerfolio.shop.art import Reach, arts_of, reaches
from tests.paper.sample_editions import NAMES, sample
from tests.plans import small_settled


def distances(outline: Contour, at: tuple[float, float]) -> list[float]:
    return sorted(each.distance(at) for each in reaches(outline, at))


def test_a_plate_is_measured_from_its_two_nearest_edges() -> None:
    assert distances(rectangle(0, 0, 300, 200), (250, 40)) == pytest.approx([40, 50])


def test_a_slanted_edge_is_measured_square_to_it() -> None:
    # A side of the stool: |105 x 450 - 350 x 40| / sqrt(40^2 + 450^2), the distance of a point
    # from a line (analytic geometry).
    side = polygon([(0, 0, 0), (360, 0, 0), (320, 450, 0), (40, 450, 0)])
    slant = abs(105 * 450 - 350 * 40) / math.hypot(40, 450)
    assert distances(side, (105, 350)) == pytest.approx([slant, 100])


def test_a_round_piece_is_measured_from_rules_laid_against_it() -> None:
    for outline in (circle((100, 100), 200), rounded_slot((100, 100), 120, 100)):
        box = bounds(outline)
        one, other = reaches(outline, (90, 120))
        assert not one.straight
        assert not other.straight
        found = (one.distance((90, 120)), other.distance((90, 120)))
        assert found == pytest.approx((90 - box.x0, box.y1 - 120))


def test_a_notch_is_bridged_only_where_it_must_be() -> None:
    upper = [(260, 50, 0), (110, 50, 0), (110, 20, 0), (90, 20, 0), (90, 50, 0), (0, 50, 0)]
    notched = polygon([(0, 0, 0), (260, 0, 0), *upper])
    # The wall of the notch is nearer, but the left end lies at the outside.
    assert distances(notched, (70, 32)) == pytest.approx([18, 70])
    assert distances(notched, (130, 15)) == pytest.approx([15, 130])


@given(
    corners=st.lists(st.tuples(st.floats(0.35, 1.0), st.floats(0, 0.8)), min_size=3, max_size=9),
    at=st.tuples(st.floats(-60, 60), st.floats(-60, 60)),
)
@settings(max_examples=150, deadline=None)
def test_every_reach_is_a_true_distance(
    corners: list[tuple[float, float]], at: tuple[float, float]
) -> None:
    count = len(corners)
    spots = [
        (
            400 * far * math.cos(math.tau * (k + off) / count),
            400 * far * math.sin(math.tau * (k + off) / count),
            0.0,
        )
        for k, (far, off) in enumerate(corners)
    ]
    outline = polygon(spots)
    if not Polygon([spot[:2] for spot in spots]).buffer(-1).contains(Point(at)):
        return
    for reach in reaches(outline, at):
        check_reach(outline, reach, at)


def check_reach(outline: Contour, reach: Reach, at: tuple[float, float]) -> None:
    edge = LineString([reach.start, reach.end])
    assert reach.distance(at) == pytest.approx(Point(at).distance(edge), abs=1e-6)
    if reach.straight:
        rim = Polygon(points(outline, 0.001)).exterior
        assert rim.buffer(0.002).covers(edge)
        along = (reach.end[0] - reach.start[0], reach.end[1] - reach.start[1])
        across = (at[0] - reach.foot[0], at[1] - reach.foot[1])
        assert along[0] * across[0] + along[1] * across[1] == pytest.approx(0, abs=1e-3)


@pytest.mark.parametrize("name", NAMES)
def test_the_sample_s_arts_lie_where_their_lines_lie(name: str) -> None:
    for art in arts_of(sample(name).settled):
        chains = [points(each, 0.001) for each in art.lines]
        x0, y0, x1, y1 = LineString([spot for chain in chains for spot in chain]).bounds
        assert art.centre == pytest.approx(((x0 + x1) / 2, (y0 + y1) / 2), abs=0.01)
        assert art.size == pytest.approx((x1 - x0, y1 - y0), abs=0.02)
        for reach in art.reaches:
            assert reach.straight
            check_reach(art.part.plain.outer, reach, art.centre)


def test_each_engraving_of_each_part_is_one_art() -> None:
    found = {name: [(a.part.name, a.name) for a in arts_of(sample(name).settled)] for name in NAMES}
    assert found == {
        "desk-rack": [("front", f"word-{word}") for word in ("in", "out", "keep")],
        "harbour-stool": [("side", "boat")],
        "potting-bench": [],
        "tool-tote": [("end", "art")],
    }
    assert [each.name for each in arts_of(small_settled())] == ["mark"]


def files_of(names: dict[str, tuple[str, ...]]) -> list[str]:
    """Return what the files of engravings are called, by the names of parts and of theirs."""
    settled = small_settled()
    side = settled.parts[0]
    mark = next(each for each in side.features if each.name == "mark")
    parts = tuple(
        replace(side, name=part, features=tuple(replace(mark, name=each) for each in own))
        for part, own in names.items()
    )
    return [each.file for each in arts_of(replace(settled, parts=parts))]


def test_no_two_engravings_share_a_file() -> None:
    """No part's name holds a point, so the first one parts it from the engraving's."""
    assert files_of({"side": ("b-c", "c.2"), "side-b": ("c",)}) == [
        *("side.b-c", "side.c.2"),
        "side-b.c",
    ]


def test_a_layer_s_name_becomes_one_that_a_file_can_have() -> None:
    layers = ("waves", "ART 1", "art-1", "Art.1", "art 1", "../Über/x", "木", "水")
    assert files_of({"end": layers}) == [
        *("end.waves", "end.art-1-2", "end.art-1", "end.art.1", "end.art-1-3"),
        *("end.ueber-x", "end.engrave", "end.engrave-2"),
    ]
