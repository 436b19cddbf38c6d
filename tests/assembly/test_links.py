"""Joints that cannot be made, whatever the pieces: counts that differ, ways that are shut."""

from __future__ import annotations

import pytest

from kerfolio.assembly.links import links_of
from kerfolio.assembly.poses import put_together
from kerfolio.basis.finding import Finding
from kerfolio.model.joint_kind import TAB_JOINT
from tests.assembly.written import changed, joints_told, settled, text
from tests.plans import RACK


def faults(plan: str) -> list[Finding]:
    return list(links_of(settled(plan))[1])


@pytest.mark.parametrize(
    ("plan", "change", "rule", "message"),
    [
        (
            "cupboard",
            (
                "{tab: divider.foot, into: deck.low.divider-slot}",
                "{tab: divider.foot, into: side-left.low-slots}",
            ),
            "joint-count",
            "`divider.foot` are 1, `side-left.low-slots` are 2",
        ),
        (
            "stool",
            ("side: back, at: [over + t, wide - 60]}", "side: back}"),
            "joint-count",
            "nobody knows where `cleat.left` lies on `seat`",
        ),
        (
            "stool",
            (
                "{face: cleat.left, on: seat, side: back, at: [over + t, wide - 60]}",
                "{face: cleat.left, on: seat.bores, side: back}",
            ),
            "joint-count",
            "a face joint is between two sets of holes, or two pieces with `at`",
        ),
        (
            "workshop-table",
            (
                "{edge: tool-shelf.top, on: backboard.shelf-holes, show: in, looking: up}",
                "{edge: tool-shelf.top, on: backboard.shelf-holes, show: in, looking: right}",
            ),
            "joint-way",
            "`tool-shelf.top` cannot meet `backboard.shelf-holes` that way round",
        ),
        (
            "cupboard",
            (
                "{tab: shelf.left-tabs, into: side-left.shelf-housings}",
                "{tab: shelf.left-tabs, into: side-left.shelf-housings, show: out}",
            ),
            "joint-way",
            "`shelf.left-tabs` cannot meet `side-left.shelf-housings` that way round",
        ),
        (
            "cupboard",
            (
                "{notch: divider.crossing, with: shelf.crossing, looking: right}",
                "{notch: divider.crossing, with: shelf.crossing, looking: up}",
            ),
            "joint-way",
            "`divider.crossing` cannot meet `shelf.crossing` that way round",
        ),
    ],
)
def test_a_joint_that_cannot_be_made(
    plan: str, change: tuple[str, str], rule: str, message: str
) -> None:
    made = changed(plan, change)
    (found,) = faults(made)
    assert (found.rule, found.message) == (rule, message)
    assert found.advice
    # It is told of, and the rest goes together without it.
    assert found in joints_told(made)


def test_sound_plans_have_a_link_for_each_joint() -> None:
    for name in ("stool", "cupboard", "egg-crate", "workshop-table"):
        plan = settled(text(name))
        links, findings = links_of(plan)
        assert len(links) == len(plan.plan.joints)
        assert findings == ()


def test_two_tabs_tell_which_way_round_from_either_face() -> None:
    """Counted from the front, both of them: from the back the deck would lie upside down."""
    links, _ = links_of(settled(text("cupboard")))
    link = next(each for each in links if each.joint.stated.a.name == "deck.low.left-tabs")
    assert [way.words(TAB_JOINT) for way in link.ways] == [("back", "down"), ("show", "up")]


def test_a_plan_without_joints_is_not_put_together() -> None:
    start = RACK.index("joints:")
    without = RACK[:start] + RACK[RACK.index("hardware: [{item") :]
    assert put_together(settled(without)) is None
