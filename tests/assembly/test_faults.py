"""Mistakes made on purpose in sound plans: each is found, and blamed on what was changed.

How far and which way a thing is off is known from the change itself.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from kerfolio.basis.finding import Finding
from tests.assembly.written import changed, joints_told, told

STOOL, CUPBOARD, TABLE = "stool", "cupboard", "workshop-table"


@dataclass(frozen=True)
class Fault:
    """A mistake: the texts changed, and what must be said of it.

    ``finds`` are (rule, message, a text of the line it points at); ``advises`` must stand in the
    advice of the first; ``beside`` are rules that may remark on what follows from it. ``whole``
    goes through all of proving; without it only the joints are looked at, which is quicker.
    """

    wrong: str
    plan: str
    changes: tuple[tuple[str, str], ...]
    finds: tuple[tuple[str, str, str], ...]
    advises: str = ""
    beside: tuple[str, ...] = ("step-blocked",)
    whole: bool = True


FAULTS = (
    Fault(
        "a pair of slots 2 mm too low",
        CUPBOARD,
        (("low-slots: {slot: {at: [80, low_z]", "low-slots: {slot: {at: [80, low_z - 2]"),),
        (
            (
                "joint-off",
                "`side-left.low-slots` is 2 mm too low for `deck.low.left-tabs`",
                "at: [80, low_z - 2]",
            ),
        ),
    ),
    Fault(
        "housings 1.5 mm too far from the front",
        CUPBOARD,
        (("at: [d - 60, shelf_z]", "at: [d - 61.5, shelf_z]"),),
        (
            (
                "joint-off",
                "`side-right.shelf-housings` is 1.5 mm too far left for `shelf.right-tabs`",
                "into: side-right.shelf-housings",
            ),
        ),
        advises="Or else `shelf.right-tabs` is 1.5 mm too low.",
    ),
    Fault(
        "one of two housings 3 mm off",
        CUPBOARD,
        (
            (
                "left-tabs: {tabs: {edge: left, at: [30, 170], width: 60, depth: 5.7}}",
                "left-tabs: {tabs: {edge: left, at: [30, 173], width: 60, depth: 5.7}}",
            ),
        ),
        (
            (
                "joint-off",
                "`shelf.left-tabs.2` is 3 mm too high for `side-left.shelf-housings.2`",
                "left-tabs: {tabs: {edge: left, at: [30, 173]",
            ),
        ),
    ),
    Fault(
        "a shelf 3 mm too long",
        CUPBOARD,
        (
            (
                "outline: {rectangle: [body, d - 40 - t/2]}",
                "outline: {rectangle: [body + 3, d - 40 - t/2]}",
            ),
        ),
        (
            (
                "joint-off",
                "`shelf` is 3 mm too long from left to right",
                "shelf:",
            ),
        ),
    ),
    Fault(
        "a stretcher 4 mm too short",
        STOOL,
        (("outline: {rectangle: [between, 70]}", "outline: {rectangle: [between - 4, 70]}"),),
        (
            (
                "joint-off",
                "`stretcher` is 4 mm too short from left to right",
                "stretcher:",
            ),
        ),
        whole=False,
    ),
    Fault(
        "both pieces of a part 3 mm too long",
        CUPBOARD,
        (("outline: {rectangle: [body, d]}", "outline: {rectangle: [body + 3, d]}"),),
        (("joint-off", "`deck` is 3 mm too long from left to right", "deck:"),),
    ),
    Fault(
        "a divider 3 mm too high",
        CUPBOARD,
        (("outline: {rectangle: [240, tall]}", "outline: {rectangle: [240, tall + 3]}"),),
        (("joint-off", "`divider` is 3 mm too long from bottom to top", "divider:"),),
    ),
    Fault(
        "a slot turned by 3 degrees, in both sides",
        STOOL,
        (("length: 50, angle: 105", "length: 50, angle: 102"),),
        (
            (
                "joint-off",
                "`side.slot-b` is turned 3.0 degrees too far clockwise for "
                "`apron.front.left-tab` and `apron.rear.right-tab`",
                "into: side.left.slot-b",
            ),
        ),
        advises="Or else `side.slot-a` is turned 3.0 degrees too far clockwise.",
        whole=False,
    ),
    Fault(
        "one slot of the two sides 2 mm too low, in both",
        STOOL,
        (("slot-b: {slot: {at: [wide - 90, 330]", "slot-b: {slot: {at: [wide - 90, 328]"),),
        (
            (
                "joint-off",
                "`side.slot-b` is 2 mm too low for `apron.front.left-tab` and "
                "`apron.rear.right-tab`",
                "into: side.left.slot-b",
            ),
        ),
        advises="Or else `side.slot-a` is 2 mm too high.",
        whole=False,
    ),
    Fault(
        "feet of a tray 2 mm aside",
        TABLE,
        (("tray-2-front: {pocket: {at: [520,", "tray-2-front: {pocket: {at: [522,"),),
        (
            (
                "joint-off",
                "`shelf.tray-2-front` is 2 mm too far right for `wall.3.feet`",
                "wall.3.feet",
            ),
        ),
        advises="Or else `shelf.tray-2-rear` is 2 mm too far left.",
        whole=False,
    ),
    Fault(
        "holes of an edge that is butted 2 mm aside",
        TABLE,
        (("[[250, 100 - t/2], [250, 180 - t/2]]", "[[252, 100 - t/2], [252, 180 - t/2]]"),),
        (
            (
                "joint-off",
                "`backboard.left-bracket-holes` is 2 mm too far right for `bracket.left.right`",
                "[[252, 100 - t/2]",
            ),
        ),
        whole=False,
    ),
    Fault(
        "a notch 3 mm too shallow",
        CUPBOARD,
        (("edge: bottom, at: body/2, depth: 120", "edge: bottom, at: body/2, depth: 117"),),
        (
            (
                "joint-off",
                "`shelf.crossing` is 3 mm too shallow for `divider.crossing`",
                "notch: divider.crossing",
            ),
        ),
        advises="Or else `divider.crossing` is 3 mm too shallow",
    ),
    Fault(
        "two mistakes at once",
        CUPBOARD,
        (
            ("at: [60, shelf_z]", "at: [60, shelf_z - 2]"),
            ("top-slots: {slot: {at: [80, top_z]", "top-slots: {slot: {at: [83, top_z]"),
        ),
        (
            (
                "joint-off",
                "`side-left.shelf-housings` is 2 mm too low for `shelf.left-tabs`",
                "at: [60, shelf_z - 2]",
            ),
            (
                "joint-off",
                "`side-left.top-slots` is 3 mm too far right for `deck.high.left-tabs`",
                "at: [83, top_z]",
            ),
        ),
        advises="Every joint agrees once these 2 are put right.",
    ),
    Fault(
        "two slots exchanged in the joints",
        STOOL,
        (
            (
                "into: side.left.slot-b, show: out, looking: right",
                "into: side.left.slot-a, show: out",
            ),
            ("into: side.left.slot-a, looking: left", "into: side.left.slot-b"),
        ),
        (
            (
                "joint-off",
                "`side.left.slot-a` and `side.left.slot-b` are exchanged",
                "tab: apron.front.left-tab",
            ),
        ),
        advises="once `apron.front.left-tab` meets `side.left.slot-b`",
        whole=False,
    ),
    Fault(
        "two copies of a slot exchanged in the joints",
        TABLE,
        (
            ("into: apron.front.cross-slots.2,", "into: apron.front.cross-slots.9,"),
            ("into: apron.front.cross-slots.3,", "into: apron.front.cross-slots.2,"),
            ("into: apron.front.cross-slots.9,", "into: apron.front.cross-slots.3,"),
        ),
        (
            (
                "joint-off",
                "`apron.front.cross-slots.3` and `apron.front.cross-slots.2` are exchanged",
                "tab: cross.2.left-tab",
            ),
        ),
        whole=False,
    ),
    Fault(
        "housings that are counted from the other end",
        TABLE,
        (
            (
                "apron-pockets-rear: {pocket: {at: [long - 220, 20 + 1.5*t], length: 80, "
                "takes: ply, depth: 8}, repeat: {count: 2, step: [480 - long, 0]}}",
                "apron-pockets-rear: {pocket: {at: [260, 20 + 1.5*t], length: 80, "
                "takes: ply, depth: 8}, repeat: {count: 2, step: [long - 480, 0]}}",
            ),
        ),
        (
            (
                "joint-off",
                "`top.apron-pockets-rear` count from the other end than `apron.rear.top-tabs`",
                "tab: apron.rear.top-tabs",
            ),
        ),
        whole=False,
    ),
    Fault(
        "a side that is the other one's copy and not its mirror image",
        CUPBOARD,
        (
            (
                "at: [d - 60, shelf_z], length: 60, takes: ply, depth: 6}, repeat: {count: 2, "
                "step: [-140, 0]}",
                "at: [60, shelf_z], length: 60, takes: ply, depth: 6}, repeat: {count: 2, "
                "step: [140, 0]}",
            ),
        ),
        (
            (
                "joint-off",
                "`side-right.shelf-housings` are measured from the other end of `side-right`",
                "shelf-housings: {pocket: {at: [60, shelf_z], length: 60, takes: ply, depth: 6}",
            ),
        ),
    ),
    Fault(
        "a joint with the wrong one of two sides",
        CUPBOARD,
        (("into: side-right.shelf-housings", "into: side-left.shelf-housings"),),
        (
            (
                "joint-off",
                "`side-left.shelf-housings` stands where `side-right.shelf-housings` is meant, "
                "which no joint names",
                "tab: shelf.right-tabs",
            ),
        ),
        advises="Write `into: side-right.shelf-housings`.",
    ),
    Fault(
        "a slot 0.5 mm narrower than its sheet",
        STOOL,
        (
            (
                "low-slot: {slot: {at: [wide/2, 110], length: 40, angle: 90, takes: ply}}",
                "low-slot: {slot: {at: [wide/2, 110], length: 40.3, angle: 90, width: 17.4}}",
            ),
        ),
        (
            (
                "sheet-thicker-than-slot",
                "slot `side.low-slot` is 0.5 mm too narrow for its sheet",
                "width: 17.4",
            ),
        ),
        beside=("corner-needs-relief",),
    ),
    Fault(
        "a slot 3 mm wider than its sheet",
        STOOL,
        (
            (
                "low-slot: {slot: {at: [wide/2, 110], length: 40, angle: 90, takes: ply}}",
                "low-slot: {slot: {at: [wide/2, 110], length: 40.3, angle: 90, width: t + 3}}",
            ),
        ),
        (("joint-too-loose", "`side.low-slot` has 1.5 mm a side: rattling", "width: t + 3"),),
        beside=("corner-needs-relief",),
    ),
    Fault(
        "housings shallower than the tabs are long",
        CUPBOARD,
        (
            (
                "shelf-housings: {pocket: {at: [60, shelf_z], length: 60, takes: ply, depth: 6}",
                "shelf-housings: {pocket: {at: [60, shelf_z], length: 60, takes: ply, depth: 5}",
            ),
        ),
        (
            (
                "tab-deeper-than-recess",
                "`shelf.left-tabs.1` stands 0.7 mm above its recess",
                "tab: shelf.left-tabs",
            ),
        ),
        beside=("step-blocked", "recess-in-tip"),
    ),
    Fault(
        "the point where a piece lies 5 mm too far right of its holes",
        STOOL,
        (
            (
                "outline: {rectangle: [40, wide - 120], round: 6}",
                "outline: {rectangle: [40, wide - 120]}\n    features:\n"
                "      pegs: {hole: {at: [[20, 30], [20, wide - 150]], diameter: 6.5}}",
            ),
            (
                "bores: {hole: {at: [[over + t + 20, 60],",
                "pegs: {hole: {at: [[over + t + 20, wide - 90], [over + t + 20, 90]], "
                "diameter: 6.5}}\n      bores: {hole: {at: [[over + t + 20, 60],",
            ),
            (
                "  - {face: cleat.left, on: seat, side: back, at: [over + t, wide - 60]}\n",
                "  - {face: cleat.left, on: seat, side: back, at: [over + t + 5, wide - 60]}\n"
                "  - {face: cleat.left.pegs, on: seat.pegs, side: back}\n",
            ),
        ),
        (
            (
                "joint-off",
                "`at` is 5 mm too far right for `cleat.left`",
                "at: [over + t + 5, wide - 60]",
            ),
        ),
        whole=False,
    ),
    Fault(
        "a notch forgotten, and its joint",
        CUPBOARD,
        (
            ("      crossing: {notch: {edge: bottom, at: body/2, depth: 120, takes: ply}}\n", ""),
            ("  - {notch: divider.crossing, with: shelf.crossing, looking: right}\n", ""),
            (
                "      crossing: {notch: {edge: right, at: shelf_z - low_z - t/2, depth: 120, "
                "takes: ply}}\n",
                "",
            ),
        ),
        (
            (
                "pieces-clash",
                "`shelf` and `divider` need the same space, 17.8 mm deep over 240 mm",
                "shelf:",
            ),
        ),
        advises="They share no joint there",
        beside=("step-blocked", "which-way-round"),
    ),
    Fault(
        "a cleat that reaches 3 mm into the side beside it",
        STOOL,
        (
            ("at: [over + t, wide - 60]", "at: [over + t - 3, wide - 60]"),
            (
                "outline: {rectangle: [40, wide - 120], round: 6}",
                "outline: {rectangle: [40, wide - 120]}",
            ),
        ),
        (
            (
                "pieces-clash",
                "`side.left` and `cleat.left` need the same space, 3 mm deep over 200 mm",
                "side:",
            ),
        ),
        advises="They share no joint there",
    ),
    Fault(
        "a piece that no joint names",
        CUPBOARD,
        (
            ("  - {tab: back.left-tongue, into: side-left.back-groove}\n", ""),
            ("  - {tab: back.right-tongue, into: side-right.back-groove}\n", ""),
        ),
        (("piece-unjoined", "no joint says where `back` goes", "back:"),),
    ),
    Fault(
        "a step that comes too late",
        CUPBOARD,
        (
            ("add: [deck.low, deck.high]", "add: [side-left, side-right, deck.low]"),
            ("add: [side-left, side-right], text", "add: [deck.high], text"),
        ),
        (
            (
                "step-blocked",
                "step 4: `deck.high` cannot slide in along a straight line: `side-right` and "
                "`divider` stand in the way",
                "add: [deck.high]",
            ),
        ),
    ),
    Fault(
        "a piece whose way round is open",
        STOOL,
        (("into: side.left.slot-a, looking: left", "into: side.left.slot-a"),),
        (
            (
                "which-way-round",
                "which way round do `apron.rear.left-tab` and `side.left.slot-a` meet?",
                "tab: apron.rear.left-tab",
            ),
        ),
        advises="`looking:` with `left` or `right`, for the show face of `apron.rear`",
    ),
    Fault(
        "three plates that hold each other",
        "knot",
        (),
        (
            (
                "pieces-locked",
                "`plate.level`, `plate.across` and `long-plate` hold each other: no straight "
                "moves put them together",
                "plan: Knot",
            ),
        ),
    ),
)


def _fits(finding: Finding, expected: tuple[str, str, str], lines: list[str]) -> bool:
    rule, message, at = expected
    line = lines[finding.place.line - 1] if finding.place.line else ""
    return finding.rule == rule and finding.message == message and at in line


def test_there_are_enough_faults() -> None:
    assert len(FAULTS) >= 20


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.wrong.replace(" ", "-"))
def test_fault_is_found_and_blamed(fault: Fault) -> None:
    plan = changed(fault.plan, *fault.changes)
    lines = plan.splitlines()
    found = told(plan) if fault.whole else joints_told(plan)
    shown = "\n".join(map(str, found))
    meant = [[f for f in found if _fits(f, expected, lines)] for expected in fault.finds]
    assert all(meant), shown
    assert fault.advises in meant[0][0].advice, shown
    others = {each.rule for each in found if not any(each in some for some in meant)}
    assert others <= set(fault.beside), shown
