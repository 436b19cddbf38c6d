"""Sets that follow their mates settle to what the long form says, at every thickness."""

from __future__ import annotations

from typing import NamedTuple

import pytest

from kerfolio.model.joint import Joint
from kerfolio.model.plan import Plan
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, SettledPart
from tests.plans import workshop

PLAN = """\
plan: Followed
version: 1.0.0
summary: A set and its mate.
sizes: {{t: thickness(ply), w: 300, n: 4}}
sheets:
  ply: {{stock: birch-plywood-18, published-for: 17.2 to 18.6, fit: 0.12}}
  thin: {{stock: birch-plywood-6-5, published-for: 6.4, fit: 0.1}}
parts:
  host:
    sheet: ply
    outline: {{rectangle: [400, 400]}}
    features:
      own: {own}
  rail:
    sheet: {sheet}
    outline: {{rectangle: [w, 160]}}
    features:
      it: {mate}
{joints}releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""


class Case(NamedTuple):
    """A mate, what follows it, the same in the long form, and their joint as it is listed."""

    mate: str
    follows: str
    long: str
    joint: str
    sheet: str = "ply"


INTO = "{tab: rail.it, into: host.own}"
TABS = "{tabs: {edge: left, at: [10, 60], width: 30, depth: t}}"
THREE = "{tabs: {edge: top, at: [10 + t, w/4, w - 50], width: t + 2, depth: t}}"
CASES = {
    "slots": Case(
        TABS,
        "{slots: {of: rail.it, at: [w/2, 60], angle: 90}}",
        "{slot: {at: [w/2, 35], length: 30, angle: 90, takes: ply}, "
        "repeat: {count: 2, step: [0, 50]}}",
        INTO,
    ),
    "slots one way at every angle": Case(
        THREE,
        "{slots: {of: rail.it, at: [200, 200], angle: 270}}",
        "{slot: {at: [[200, 200 + (w - 60 - t)/2], [200, 200 - (w/4 - (w - 40 + t)/2)], "
        "[200, 200 - (w - 60 - t)/2]], length: t + 2, angle: 90, takes: ply}}",
        INTO,
    ),
    "slots from the mate's 0, slanted, of another sheet": Case(
        THREE,
        "{slots: {of: rail.it, zero: [40, 50], angle: 30}}",
        "{slot: {at: [[40 + cos(30)*(11 + 1.5*t), 50 + sin(30)*(11 + 1.5*t)], "
        "[40 + cos(30)*(w/4 + t/2 + 1), 50 + sin(30)*(w/4 + t/2 + 1)], "
        "[40 + cos(30)*(w - 49 + t/2), 50 + sin(30)*(w - 49 + t/2)]], "
        "length: t + 2, angle: 30, takes: thin}}",
        INTO,
        "thin",
    ),
    "slots of tabs that are mirrored": Case(
        "{tabs: {edge: top, at: [20, 60], width: 24, depth: t}, mirror: {x: w/2}}",
        "{slots: {of: rail.it, at: [200, 90]}}",
        "{slot: {at: [[82, 90], [122, 90], [318, 90], [278, 90]], length: 24, takes: ply}}",
        INTO,
    ),
    "slots of tabs that a size counts": Case(
        "{tabs: {edge: top, at: 20, width: 24, depth: t}, repeat: {count: n, step: [60, 0]}}",
        "{slots: {of: rail.it, at: [200, 90], angle: 90}}",
        "{slot: {at: [200, 0], length: 24, angle: 90, takes: ply}, "
        "repeat: {count: n, step: [0, 60]}}",
        INTO,
    ),
    "a slot of one of several tabs": Case(
        TABS,
        "{slots: {of: rail.it.2, zero: [200, 100]}}",
        "{slot: {at: [275, 100], length: 30, takes: ply}}",
        "{tab: rail.it.2, into: host.own}",
    ),
    "housings": Case(
        TABS,
        "{housings: {of: rail.it, at: [200, 60], depth: 6}}",
        "{pocket: {at: [[175, 60], [225, 60]], length: 30, takes: ply, depth: 6}}",
        INTO,
    ),
    "a groove": Case(
        "{tabs: {edge: bottom, at: t, width: w - 2*t, depth: 5}}",
        "{grooves: {of: rail.it, zero: [200, 10], angle: 90, depth: 6}}",
        "{groove: {from: [200, 10 + t], to: [200, 10 + w - t], takes: ply, depth: 6}}",
        INTO,
    ),
    "notches, counted back": Case(
        "{notch: {edge: top, at: [50, 90, 200], depth: 80, takes: ply}}",
        "{notches: {of: rail.it, edge: bottom, at: 150, backward: yes}}",
        "{notch: {edge: bottom, at: [225, 185, 75], depth: 80, takes: ply}}",
        "{notch: host.own, with: rail.it}",
    ),
    "a notch of another depth, from its mate's 0": Case(
        "{notch: {edge: left, at: [20, 60], depth: 80, takes: ply}, mirror: {y: 80}}",
        "{notches: {of: rail.it.3, edge: left, zero: 20, depth: 70 + t}}",
        "{notch: {edge: left, at: 160, depth: 70 + t, takes: ply}}",
        "{notch: host.own, with: rail.it.3}",
    ),
    "fingers": Case(
        "{fingers: {edge: left, count: 5, takes: ply}}",
        "{fingers: {of: rail.it, edge: left}}",
        "{fingers: {edge: left, count: 5, takes: ply, first: gap}}",
        "{fingers: host.own, with: rail.it}",
    ),
    "fingers of an even row, counted back": Case(
        "{fingers: {edge: left, count: 6, takes: ply}}",
        "{fingers: {of: rail.it, edge: right, backward: yes}}",
        "{fingers: {edge: right, count: 6, takes: ply, first: finger}}",
        "{fingers: host.own, with: rail.it}",
    ),
    "a pattern of holes, seen from the other side": Case(
        "{hole: {at: [[20, 30], [w/2, 40], [120, 90]], diameter: 8}}",
        "{holes: {of: rail.it, at: [200, 150], angle: 90, mirrored: yes, pilot: screw-5x30}}",
        "{hole: {at: [[230, 200], [220, 220 - w/2], [170, 100]], pilot: screw-5x30}}",
        "{face: rail.it, on: host.own}",
    ),
    "holes as large as their mates": Case(
        "{hole: {at: [20, 30], for: bolt-m6x40}, repeat: {count: 3, step: [30, 10]}}",
        "{holes: {of: rail.it, zero: [100, 50]}}",
        "{hole: {at: [[120, 80], [150, 90], [180, 100]], for: bolt-m6x40}}",
        "{face: rail.it, on: host.own}",
    ),
}


def plan_of(case: Case, own: str, joints: str = "") -> Plan:
    text = PLAN.format(own=own, mate=case.mate, sheet=case.sheet, joints=joints)
    return workshop(text).plans[0]


def host_of(case: Case, own: str, thickness: float) -> SettledPart:
    text = PLAN.format(own=own, mate=case.mate, sheet=case.sheet, joints="")
    found = workshop(text)
    at = FitVariant(label="any", thickness=(("ply", thickness), ("thin", 6.4)))
    made, findings = settle(found.plans[0], found.stock, at)
    assert made is not None, "\n".join(map(str, findings))
    return made.parts[0]


def told(part: SettledPart) -> list[tuple[object, ...]]:
    """Return all that a part's features are, but for how their sizes came about."""
    return [
        (
            *(each.name, each.kind, each.takes),
            *(round(v, 9) for v in (*each.at, *each.direction)),
            *((each.room.width, each.room.ends, each.room.together) if each.room else ()),
            *(each.width.value, each.length.value, each.depth and each.depth.value),
            *(round(v, 9) for shape in each.shape for spot in shape.vertices for v in spot),
        )
        for each in part.features
    ]


@pytest.mark.parametrize("name", CASES)
def test_what_follows_settles_to_the_long_form(name: str) -> None:
    case = CASES[name]
    for thickness in (17.2, 17.8, 18.6):
        followed, long = (host_of(case, own, thickness) for own in (case.follows, case.long))
        assert told(followed) == told(long)


def ends(joints: tuple[Joint, ...]) -> list[tuple[str, str, str]]:
    return [(each.kind.name, each.a.name, each.b.name) for each in joints]


@pytest.mark.parametrize("name", CASES)
def test_what_follows_meets_its_mate(name: str) -> None:
    case = CASES[name]
    listed = plan_of(case, case.long, f"joints: [{case.joint}]\n")
    assert ends(plan_of(case, case.follows).joints) == ends(listed.joints)
    # Listing it besides is allowed, and makes no second one.
    both = plan_of(case, case.follows, f"joints: [{case.joint}]\n")
    assert ends(both.joints) == ends(listed.joints)


def test_a_set_follows_a_change_of_its_mate() -> None:
    """The comparison itself: what no longer agrees is seen."""
    case = CASES["slots"]
    wider = case._replace(mate=case.mate.replace("[10, 60]", "[10, 62]"))
    assert told(host_of(wider, case.follows, 17.8)) != told(host_of(case, case.long, 17.8))
