"""Things that hang on a wall: do their holes meet studs?"""

from __future__ import annotations

import pytest

from kerfolio.assembly.wall_holes import STUDS, fixing_holes, studs_met
from tests.plans import proved

RACK = """\
plan: Wall rack
version: 1.0.0
summary: A back with a ledge.
sheets: {ply: {stock: birch-plywood-18, published-for: 18}}
placed: wall
uses: [stand things on]
parts:
  back:
    sheet: ply
    outline: {rectangle: [700, 300]}
    features:
      slots: {slot: {at: [350, 60], length: 80, takes: ply}}
      fixing: {hole: {at: [HOLES], diameter: 5}}
  ledge:
    sheet: ply
    outline: {rectangle: [600, 100]}
    features:
      tab: {tabs: {edge: top, at: 260, width: 80, depth: 18}}
standing: {piece: back, looks: front}
joints: [{tab: ledge.tab, into: back.slots, looking: up}]
steps: [{title: All, add: [back, ledge], text: Push.}]
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def rack(*across: int) -> str:
    return RACK.replace("HOLES", ", ".join(f"[{x}, 250]" for x in across))


def told(plan: str) -> list[tuple[str, str | None]]:
    found = proved(plan).findings
    return [(each.message, each.advice) for each in found if each.rule == "holes-miss-studs"]


def test_holes_that_meet_no_studs_are_told_with_their_distances() -> None:
    assert told(rack(100, 400, 600)) == [
        (
            "holes for the wall are 300 mm and 200 mm apart, and no two meet studs",
            "Studs stand 400 mm, 600 mm and 625 mm apart by common practice, and 406.4 mm and "
            "609.6 mm by a building code: bore two that far apart, or fix a batten across the "
            "studs.",
        )
    ]


@pytest.mark.parametrize("across", [(100, 500), (150, 545), (50, 650), (25, 650), (300,), ()])
def test_holes_that_do_are_not(across: tuple[int, ...]) -> None:
    plan = (
        rack(*across)
        if across
        else rack(1).replace("      fixing: {hole: {at: [[1, 250]], diameter: 5}}\n", "")
    )
    assert told(plan) == []
    assert told(rack(100, 400).replace("placed: wall", "placed: on a table")) == []


def test_what_another_piece_covers_is_no_hole_for_the_wall() -> None:
    made = proved(rack(100, 350)).made[0]
    assert made.build is not None
    holes = fixing_holes(made.settled, made.build.drawn.assembled)
    assert [(each.piece, round(each.across), round(each.up)) for each in holes] == [
        ("back", 100, 250),
        ("back", 350, 250),
    ]
    low = proved(rack(100, 350).replace("[350, 250]", "[180, 60]")).made[0]
    assert low.build is not None
    covered = fixing_holes(low.settled, low.build.drawn.assembled)
    assert [round(each.across) for each in covered] == [100]


def test_stud_spacings() -> None:
    assert pytest.approx((400, 600, 625, 406.4, 609.6)) == STUDS
    assert studs_met(()) == ()
