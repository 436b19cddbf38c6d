"""The joint to saw first: what a sheet's tabs and slots, or its halvings, are at any thickness."""

from __future__ import annotations

import pytest

from kerfolio.geometry.measure import area, bounds
from kerfolio.model.feature_kind import SLOT, TAB
from kerfolio.settling.sawn_joint import with_test_joints
from tests.plans import settled_at
from tests.settling.test_point import drawn_plan

HALVED = """\
plan: Probe cross
version: 1.0.0
summary: Two panels to measure with.
sheets:
  ply: {stock: birch-plywood-12, size: 1525 x 1525, published-for: 11.7 to 12.5, drawn-for: 12.1, fit: 0.1}
parts:
  lower:
    sheet: ply
    outline: {rectangle: [200, 80]}
    features: {crossing: {notch: {edge: top, at: 100, depth: 40, takes: ply}}}
  upper:
    sheet: ply
    outline: {rectangle: [200, 80]}
    features: {crossing: {notch: {edge: bottom, at: 100, depth: 40, takes: ply}}}
joints: [{notch: upper.crossing, with: lower.crossing, looking: right}]
steps: [{title: Cross them, add: [lower, upper], text: Push.}]
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""  # noqa: E501 - a sheet stands on one line


@pytest.mark.parametrize("thickness", [17.6, 18.2])
def test_the_tab_goes_into_the_slot_with_the_plans_fit(thickness: float) -> None:
    """The tabs of the rack are 60 mm wide, its fit is 0.1 mm a side."""
    joint, *parts = with_test_joints(settled_at(thickness)).parts
    assert [part.name for part in parts] == ["side", "rail"]
    assert (joint.name, len(joint.pieces), joint.thickness) == ("test-joint", 2, thickness)
    (opening,) = joint.plain.openings
    wide = bounds(opening)
    assert (wide.width, wide.height) == pytest.approx((60.2, thickness + 0.2))
    tab = next(each for each in joint.features if each.kind is TAB)
    assert (tab.width.value, tab.length.value) == (60.0, thickness)
    assert bounds(joint.plain.outer).y1 - tab.at[1] == pytest.approx(thickness)
    assert len(joint.drill_centres) == 6
    assert next(each for each in joint.features if each.kind is SLOT).takes == "ply"


def test_without_tabs_two_notches_cross_as_deep_as_the_plans_deepest() -> None:
    joint, *_ = with_test_joints(settled_at(11.9, HALVED)).parts
    (notch,) = joint.features
    assert (notch.width.value, notch.length.value) == pytest.approx((12.1, 40.1))
    assert joint.size[1] == pytest.approx(2 * 40.1)
    assert area(joint.plain) == pytest.approx(joint.size[0] * joint.size[1] - 12.1 * 40.1)


def test_joints_of_several_sheets_have_marks_of_their_own() -> None:
    """Of a plan with one sheet it is TEST; no tile (`1-1`) and no piece (`A1`) is called so."""
    settled = drawn_plan("potting-bench")
    joints = with_test_joints(settled).parts[: -len(settled.parts)]
    assert [each.mark for each in joints] == ["TEST I", "TEST II"]
    assert with_test_joints(settled_at(17.6)).parts[0].mark == "TEST"
