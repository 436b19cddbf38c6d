"""Metres of edges; that 20 mm at each end are trimmed is common practice, no single source."""

from __future__ import annotations

from math import hypot, pi

import pytest

from kerfolio.model.edge_treatment import BAND, EASE, ROUND_OVER
from kerfolio.settling.bridges import butted_sides
from kerfolio.shop.edging import edge_list, stretches
from kerfolio.shop.rounding import largest
from tests.edged import EDGED, edged_panel, settled_panel
from tests.plans import RACK, settled_at


def test_every_piece_counts_and_what_is_left_alone_does_not() -> None:
    """By hand: two sides of 200 x 120 mm with corners of 30 mm, a rail of 300 x 120 mm."""
    eased, *rounded, banded = edge_list(settled_at(17.6, EDGED))
    assert (eased.edge.kind, eased.count) == (EASE, 3)
    assert eased.length == pytest.approx(300 + 2 * 6.6 * pi), (
        "the rail's lower edge, two bolt holes"
    )
    assert [(each.edge.kind, each.edge.radius) for each in rounded] == [
        (ROUND_OVER, 2),
        (ROUND_OVER, 3),
    ]
    assert rounded[0].length == pytest.approx(2 * 90)
    assert rounded[1].length == pytest.approx(2 * (140 + 90 + 30 * pi))
    assert (banded.edge.kind, banded.edge.of, banded.count) == (BAND, "Beech veneer", 1)
    assert (banded.length, banded.to_buy) == pytest.approx((300, 340))


def test_a_strip_goes_round_a_smooth_corner_and_not_round_a_sharp_one() -> None:
    outlines = {
        "{rectangle: [400, 300]}": 4,
        "{rectangle: [400, 300], round: 40}": 1,
        "{polygon: [[0, 0], [400, 0], [400, 300, {round: 50}], [0, 300]]}": 3,
        "{circle: 300}": 1,
    }
    for outline, count in outlines.items():
        (edge,) = settled_panel(edged_panel("{all: ease}", outline=outline)).part("panel").edges
        assert stretches(edge.runs) == count, outline


def test_a_list_without_an_edge_is_empty() -> None:
    assert edge_list(settled_at(17.6, RACK)) == ()


def test_the_largest_radius_by_hand() -> None:
    """A hole of 6.6 mm stands 30 mm in: its wall is 26.7 mm away, and the sheet is thicker."""
    features = "h: {hole: {at: [200, 270], diameter: 6.6}}"
    plan = settled_panel(edged_panel("{top: {round-over: 3, faces: show}}", features), 60)
    part = plan.part("panel")
    sides = butted_sides(plan.plan.joints, plan.plan.parts)["panel"]
    found = largest(part.edges[0], part, sides)
    assert found.radius == pytest.approx(26.7, abs=0.01)
    assert found.at == pytest.approx((200, 300), abs=0.5)
    assert hypot(found.at[0] - 200, found.at[1] - 270) == pytest.approx(30, abs=0.1)
