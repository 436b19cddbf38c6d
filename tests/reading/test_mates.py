"""Sets that follow their mates: what is wrong is told where it stands, with what to write."""

from __future__ import annotations

import pytest

from kerfolio.model.feature import Slot
from tests.reading.desks import plan_of, said

HEAD = """\
plan: Try
version: 1.0.0
summary: A plan for tests.
sizes: {t: thickness(ply), w: 300}
sheets: {ply: {stock: birch-plywood-18}}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    outline: {rectangle: [400, 400]}
    features:
      SIDE
  rail:
    sheet: ply
    outline: {rectangle: [w, 100]}
    features:
      left-tabs: {tabs: {edge: left, at: [10, 60], width: 30, depth: t}}
      right-tabs: {tabs: {edge: right, at: [10, 60], width: 30, depth: t}}
      nuts: {hole: {at: [[25, 50], [w - 25, 50]], diameter: 10}}
      many: {tabs: {edge: top, at: [20, 60], width: 20, depth: t}, repeat: {count: w/100, step: [100, 0]}}
      round-about: {tabs: {edge: left, at: 10, width: 20, depth: t}, mirror: {x: w/2}}
      crossing: {notches: {of: beam.crossing, edge: top, at: 20}}
  beam:
    sheet: ply
    outline: {rectangle: [w, 100]}
    features:
      crossing: {notches: {of: rail.crossing, edge: top, at: 20}}
  back:
    sheet: ply
    drawing: {file: drawings/back.svg, outline: outline, drawn-for: 18, features: {slot-lower: {slot: takes ply}, slot-upper: {slot: takes ply}, finger-hole: hole}}
JOINTSreleases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""  # noqa: E501 - a part stands on one line
BOTH = (
    "slots: {slots: {of: {left: rail.left-tabs, right: rail.right-tabs}, at: [200, 60], angle: 90}}"
)
CROSSED = (
    "`beam.crossing` and `rail.crossing` follow each other / "
    "A set follows one that says its sizes: state one of the two in full."
)
"""What is always wrong with the plan above: said of the first of two."""


def remarks(side: str = BOTH, joints: str = "") -> list[str]:
    """Return what is remarked on besides the two notches that follow each other."""
    _, findings = plan_of(HEAD.replace("SIDE", side).replace("JOINTS", joints))
    told = said(findings)
    assert told.count(CROSSED) == 1
    return [each for each in told if each != CROSSED]


def test_a_set_that_can_follow_is_not_remarked_on() -> None:
    assert remarks() == []


WRONG = {
    "of: rail.left-tab, at: [200, 60]": (
        "`rail` has no feature `left-tab` / Did you mean `left-tabs`?"
    ),
    "of: rial.left-tabs, at: [200, 60]": (
        "no piece for `rial.left-tabs` / Did you mean `rail.left-tabs`?"
    ),
    "of: rail.nuts, at: [200, 60]": (
        "`rail.nuts` is a hole, and `slots` follow a tab / "
        "Known here: `rail.left-tabs`, `rail.many`, `rail.right-tabs`, `rail.round-about`."
    ),
    "of: back.slot-lower, at: [200, 60]": (
        "`back` states no feature `slot-lower` / "
        "What is drawn cannot be followed: write `slot: {at: [180, 370], length: 120, takes: ply}` "
        "in full, and the joint `{tab: back.slot-lower, into: ...}`."
    ),
    "of: [rail.left-tabs, rail.right-tabs], at: [200, 60]": (
        "`of` names several features: `rail.left-tabs`, `rail.right-tabs` / A set follows one "
        "feature: write a set of its own, with a name of its own, for each. One for each piece of "
        "this part is `of: {left: rail.left-tabs, right: rail.right-tabs}`."
    ),
    "of: rail.left-tabs.3, at: [200, 60]": (
        "`left-tabs` are 2, so there is no `.3` / Name one from `.1` to `.2`."
    ),
    "of: rail.many, at: [200, 60]": (
        "how many `many` are is known only once sizes have their values / "
        "Write the `count` of its `repeat` as a number."
    ),
    "of: rail.round-about, at: [200, 60]": (
        "`round-about` is mirrored on to another edge / "
        "State those of each edge under a name of their own."
    ),
    "of: {middle: rail.left-tabs}, at: [200, 60]": (
        "`side` has no piece `middle` / Known here: `left`, `right`."
    ),
    "of: rail.left-tabs, at: [200, 60]": (
        "nothing says which piece of `side` meets `rail.left-tabs` / Write "
        "`of: {left: rail.left-tabs, right: ...}`, a mate for each piece that has one."
    ),
    "of: {left: rail.left-tabs, right: rail.left-tabs}, at: [200, 60]": (
        "`rail.left-tabs` is met by `side.left.it` and by `side.right.it` / "
        "It meets one of them: see which one this follows."
    ),
    "of: {left: rail.left-tabs}, at: [200, 60], length: 30": (
        "unknown key `length` / A set that follows its mate has that from it: "
        "write `slot` to state it alone."
    ),
    "of: {left: rail.left-tabs}": (
        "a set that follows its mate needs `at` or `zero` / "
        "Write `slots: {of: rail.left-tabs, at: [180, 370], angle: 90}`."
    ),
    "at: [200, 60], angle: 90": (
        "`of` is missing / "
        "Write `of: rail.left-tabs`, or of several pieces `of: {left: rail.left-tabs, ...}`."
    ),
}


@pytest.mark.parametrize("wrong", WRONG)
def test_what_cannot_follow_is_told(wrong: str) -> None:
    assert remarks(f"it: {{slots: {{{wrong}}}}}") == [WRONG[wrong]]


def test_a_mate_of_a_part_of_several_pieces_names_one() -> None:
    held = "pins: {tabs: {edge: top, at: 20, width: 30, depth: t}}"
    text = HEAD.replace("SIDE", f"{BOTH}\n      {held}").replace("JOINTS", "")
    own = "      nuts: {hole"
    slots = "      pin-slots: {slots: {of: side.pins, at: [60, 50]}}\n"
    _, findings = plan_of(text.replace(own, slots + own))
    assert said(findings)[0] == (
        "`side` is several pieces, and `side.pins` names none of them / "
        "Known here: `side.left.pins`, `side.right.pins`."
    )


def test_a_mate_that_follows_another_set_is_told() -> None:
    third = "it: {notches: {of: rail.crossing, edge: top, at: 20}}"
    wrong = HEAD.replace("SIDE", third).replace("JOINTS", "")
    _, findings = plan_of(wrong.replace("{of: beam.crossing, edge", "{of: beam.cut, edge"))
    assert said(findings)[0] == (
        "`rail.crossing` follows `beam.cut` itself / "
        "A set follows one that says its sizes: state one of the two in full."
    )


def test_a_copy_of_what_follows_is_refused() -> None:
    repeated = BOTH[:-1] + ", repeat: {count: 2, step: [50, 0]}}"
    assert remarks(repeated) == [
        "`repeat` beside a set that follows its mate / "
        "Leave it out: there are as many as its mate has."
    ]


def test_what_is_too_long_to_be_an_expression_is_told() -> None:
    long = " + ".join(["w/100"] * 30)
    wrong = f"it: {{slots: {{of: {{left: rail.left-tabs}}, at: [{long}, 60], angle: 45}}}}"
    assert remarks(wrong) == []
    longer = wrong.replace("angle: 45", f"angle: {' + '.join(['45'] * 12)}")
    assert remarks(longer) == [
        "the places of `rail.left-tabs` make too long an expression / "
        "Give parts of them names under `sizes`."
    ]


def test_a_joint_that_is_listed_otherwise_is_told() -> None:
    wrong = "joints:\n  - {tab: rail.right-tabs, into: side.left.slots}\n"
    meets = "`rail.right-tabs` meets `side.left.slots` here, and"
    end = "or nothing, or let it follow what it meets."
    assert remarks(joints=wrong) == [
        f"{meets} `side.left.slots` follows `rail.left-tabs` / "
        f"List `{{tab: rail.left-tabs, into: side.left.slots}}` {end}",
    ]


def test_a_joint_that_is_listed_says_which_piece() -> None:
    listed = "joints:\n  - {tab: rail.left-tabs, into: side.left.slots}\n"
    alone = "slots: {slots: {of: rail.left-tabs, at: [200, 60]}}"
    assert remarks(alone, listed) == []


def test_what_follows_an_unread_part_is_not_blamed() -> None:
    text = HEAD.replace("SIDE", BOTH).replace("JOINTS", "").replace("[w, 100]", "[w, hundred]", 1)
    plan, findings = plan_of(text)
    assert [each.rule for each in findings] == ["unknown-name"]
    assert plan is not None
    assert plan.part("side").features == ()
    assert "side.left.slots" in plan.unread


def test_a_slot_may_list_its_places() -> None:
    text = HEAD.replace("JOINTS", "").replace(
        "SIDE", "it: {slot: {at: [[50, 60], [90, 60]], length: 30, takes: ply}}"
    )
    plan, _ = plan_of(text)
    assert plan is not None
    (it,) = plan.part("side").features
    assert isinstance(it.cutting, Slot)
    assert [each.x.text for each in it.cutting.at] == ["50", "90"]
