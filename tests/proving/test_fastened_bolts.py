"""Bolts and dowels where they stand: each mistake is blamed on what was spoilt, and nothing else.

Lengths are sums that anybody can follow; sizes of heads, washers and nuts are those of the stock,
from memory of ISO 4762, ISO 7089 and ISO 4032; the gap at a dowel's end is of dowel makers' pages.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.finding import Severity
from kerfolio.model.hand_bore import HandBore
from kerfolio.proving import fastened_bolts, fastenings
from kerfolio.proving.prove import prove_plan
from kerfolio.proving.rules import rules_of
from tests.fastened_plan import BOLTED, spoilt
from tests.plans import proved, workshop
from tests.proving.two_panels import plan_text, told

IDS = {
    id for module in (fastenings, fastened_bolts) for rule in rules_of(module) for id in rule.ids
}

BOLT = "{bolt: bolt-m6x50, washer: washer-m6, nut: barrel-nut-m6, joins: [side.bolt, rail.bore]"
FAULTS = {
    # A name that is not there, of the right kind; what is counted twice.
    "no-such-bolt": (
        [("bolt: bolt-m6x50, w", "bolt: bolt-m6x55, w")],
        *("fastening-item", "no bolt `bolt-m6x55`"),
    ),
    "a-washer-for-a-bolt": (
        [("bolt: bolt-m6x50, w", "bolt: washer-m6, w")],
        *("fastening-item", "`washer-m6` is no bolt"),
    ),
    "no-such-bore": (
        [("rail.bore]", "rail.boar]")],
        *("fastening-end", "`rail` has no hole or bore `boar`"),
    ),
    "no-such-piece": (
        [("[side.bolt,", "[sides.bolt,")],
        *("fastening-end", "no piece for `sides.bolt`"),
    ),
    "a-slot-for-a-hole": (
        [("[side.bolt,", "[side.slots,")],
        *("fastening-kind", "`side.slots` is a slot"),
    ),
    "counted-twice": (
        [("{title: Side, add: [side],", "{title: Side, add: [side], hardware: {bolt-m6x50: 1},")],
        *("fastening-twice", "`bolt-m6x50` is counted twice: in `hardware` of step `Side`"),
    ),
    "no-such-step": (
        [("rail.bore], for: rail}", "rail.bore], step: Sied}")],
        *("fastening-step", "no step `Sied`"),
    ),
    "too-early": (
        [("rail.bore], for: rail}", "rail.bore], step: Rail and pad}")],
        *("fastening-step", "`side` joins after step `Rail and pad`"),
    ),
    "sets-do-not-pair": (
        [("at: [50, 150], diameter: 2.5", "at: [50, 100, 150], diameter: 2.5")],
        *("fastening-sets", "`side.screws` are 2, `shelf.pilots` are 3"),
    ),
    # 12 mm further up the rail's end: 0.8 mm of play are left in both holes.
    "bore-beside": (
        [("bore: {edge: left, at: 50,", "bore: {edge: left, at: 62,")],
        *("fastening-off-axis", "`rail.bore` is 12 mm too high for `bolt-m6x50`"),
    ),
    # 5 mm from the face that looks to the front: 4.2 mm nearer to it than half of 18.4 mm.
    "bore-beside-the-middle": (
        [("depth: 35, guided", "depth: 35, from-face: 5, guided")],
        *("fastening-off-axis", "`rail.bore` is 4.2 mm too near the show face for `bolt-m6x50`"),
    ),
    "nut-beside": (
        [("nut: {hole: {at: [25, 50]", "nut: {hole: {at: [25, 46]")],
        *("fastening-off-axis", "nut hole `rail.nut` is 4 mm too low for `bolt-m6x50`"),
    ),
    "bore-into-another-edge": (
        [("bore: {edge: left, at: 50,", "bore: {edge: bottom, at: 50,")],
        *("fastening-off-axis", "`rail.bore` stands at 90.0 degrees to `side.bolt`"),
    ),
    # By hand 0.5 mm and 1 degree: 0.5 + 25 x 0.01746 = 0.94 mm at the nut; play is 0.3 + 0.5 mm.
    "by-hand": (
        [("depth: 35, guided: yes", "depth: 35")],
        *("bore-wants-guide", "by hand `rail.bore` may be 0.94 mm off at its nut"),
    ),
    # 34 mm for 30: 20 mm of the dowel are in the shelf, 0.5 + 20 x tan 1 degree (0.017455, any
    # table of the function) = 0.85 mm; play is half of 0.1 mm in both holes.
    "dowel-by-hand": (
        [("diameter: 8.1, depth: 22, guided: yes", "diameter: 8.1, depth: 22")],
        *("bore-wants-guide", "by hand `shelf.dowels.1` may be 0.85 mm off at its end"),
    ),
    # 40 - 1.6 - 18.4 = 20 mm reach into the rail; one diameter past the nut's 20 mm is 26.
    "short": (
        [(f"{BOLT}", BOLT.replace("bolt-m6x50", "bolt-m6x40"))],
        *("bolt-short-of-nut", "`bolt-m6x40` ends 6 mm short of its nut in `rail.nut`"),
    ),
    # 60 - 1.6 - 17.4 = 41 mm where 35 are bored.
    "bottoms": (
        [(f"{BOLT}", BOLT.replace("bolt-m6x50", "bolt-m6x60"))],
        *("fastening-bottoms", "`bolt-m6x60` meets the bottom 6 mm early in `rail.bore`"),
    ),
    # The side's show face looks to the rail.
    "bored-on-the-wrong-face": (
        [("for: bolt-m6x50}", "for: bolt-m6x50, counterbore: {diameter: 13, depth: 8}}")],
        *("head-unseated", "the wide bore of `side.bolt` is not where the head is"),
    ),
    "falls-through": (
        [("at: [150, 300], for: bolt-m6x50}}", "at: [150, 300], diameter: 12}}")],
        *("head-unseated", "`washer-m6` falls through `side.bolt`"),
    ),
    "nut-too-long": (
        [("published-for: 17.4 to 18.4,", "published-for: 15.8 to 18.4,")],
        *("barrel-nut-long", "`barrel-nut-m6` is 16 mm long, its sheet 15.8 mm thick"),
    ),
    "nut-hole-narrow": (
        [("at: [25, 50], for: barrel-nut-m6}}", "at: [25, 50], diameter: 9}}"),
         ("[side.bolt, rail.bore]", "[side.bolt, rail.bore, rail.nut]")],
        *("barrel-nut-hole", "`rail.nut` is 9 mm wide, its nut `barrel-nut-m6` 10 mm"),
    ),
    "no-nut-hole": (
        [("at: [25, 50], for: barrel-nut-m6}}", "at: [25, 50], diameter: 10}}")],
        *("barrel-nut-hole", "no hole for `barrel-nut-m6` is found"),
    ),
    "another-thread": (
        [("washer: washer-m6, nut", "washer: washer-m8, nut")],
        *("thread-mismatch", "`bolt-m6x50` is 6 mm, its `washer-m8` 8 mm"),
    ),
    "narrow-bore": (
        [("at: 50, diameter: 7,", "at: 50, diameter: 5.5,")],
        *("thread-mismatch", "`rail.bore` is 5.5 mm wide, too narrow for `bolt-m6x50`"),
    ),
    "no-nut": (
        [("washer: washer-m6, nut: barrel-nut-m6, j", "washer: washer-m6, j")],
        *("nut-missing", "nothing holds `bolt-m6x50` in `rail.bore`"),
    ),
    # 8 + 22 mm are bored for a dowel of 30 mm and the 1.6 mm at its ends.
    "dowel-bottoms": (
        [("diameter: 8.1, depth: 12", "diameter: 8.1, depth: 8")],
        *("fastening-bottoms", "`dowel-8x30` is 1.6 mm too long for its two bores"),
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", FAULTS)
def test_each_fault_is_blamed_on_what_was_spoilt(name: str) -> None:
    changes, rule, begins = FAULTS[name]
    found = [each for each in proved(spoilt(*changes)).findings if each.rule in IDS]
    assert {each.rule for each in found} == {rule}, [*map(str, found)]
    assert found[0].message.startswith(begins)


def test_the_plan_itself_is_not_remarked_on() -> None:
    assert [each for each in proved(BOLTED).findings if each.rule in IDS] == []
    assert {each.severity for each in proved(BOLTED).findings} <= {Severity.NOTE}


HEADS = {
    # Washer 12 mm; washer and head are 1.6 + 6 mm high. The head is on the show face.
    (13, 8): [],
    (11, 8): ["the bore of `side.bolt` is 11 mm wide, `washer-m6` 12 mm"],
    (13, 4): ["the head of `bolt-m6x40` stands 3.6 mm out of `side.bolt`"],
}


def sunk_plan(bore: tuple[int, int]) -> str:
    """Return a plan whose bolt has its head in a counterbore so wide and so deep, mm."""
    sunk = f"counterbore: {{diameter: {bore[0]}, depth: {bore[1]}}}"
    return plan_text(
        "slots: {slots: {of: rail.tabs, at: [150, 150], angle: 90}}\n"
        f"bolt: {{hole: {{at: [150, 150], for: bolt-m6x40, {sunk}}}}}",
        "tabs: {tabs: {edge: left, at: [10, 80], width: 30, takes: ply}}\n"
        "bore: {bore: {edge: left, at: 60, diameter: 7, depth: 38, guided: yes}}\n"
        "nut: {hole: {at: [20, 60], for: barrel-nut-m6}}",
        "tab: rail.tabs, into: side.slots, show: out, looking: right",
        "fastenings:\n  - {bolt: bolt-m6x40, washer: washer-m6, nut: barrel-nut-m6, "
        "joins: [side.bolt, rail.bore]}",
    )


@pytest.mark.parametrize("bore", HEADS)
def test_a_head_lies_in_its_wide_bore(bore: tuple[int, int]) -> None:
    assert told(sunk_plan(bore), *IDS) == HEADS[bore]


@pytest.mark.parametrize(
    ("off", "tilt", "advised"), [(0.5, 1, True), (0.3, 1, False), (0.5, 0.6, False)]
)
def test_what_a_hand_is_off_is_a_setting(off: float, tilt: float, advised: bool) -> None:
    """0.3 + 0.44 mm and 0.5 + 0.26 mm are less than the 0.8 mm of play, 0.5 + 0.44 mm are more."""
    found = workshop(spoilt(("depth: 35, guided: yes", "depth: 35")))
    plan = replace(found.plans[0], hand=HandBore(off=off, tilt=tilt))
    rules = {each.rule for each in prove_plan(plan, found.stock).findings}
    assert ("bore-wants-guide" in rules) == advised


@pytest.mark.parametrize(("tilt", "told"), [(1, "0.35 mm"), (0.5, "0.17 mm"), (0.25, "")])
def test_a_bore_that_leans_is_off_at_its_end(tilt: float, told: str) -> None:
    """20 mm x tan 1, 0.5 and 0.25 degrees: 0.349, 0.175, 0.087 mm; the dowel has 0.1 mm of play."""
    found = workshop(spoilt(("diameter: 8.1, depth: 22, guided: yes", "diameter: 8.1, depth: 22")))
    plan = replace(found.plans[0], hand=HandBore(off=0, tilt=tilt))
    findings = prove_plan(plan, found.stock).findings
    off = [each.message for each in findings if each.rule == "bore-wants-guide"]
    assert [told in each for each in off] == [True] * bool(told)
