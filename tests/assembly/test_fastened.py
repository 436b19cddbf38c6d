"""Fastenings in their place. What they must measure is added up by hand in the remarks here."""

from __future__ import annotations

import pytest

from kerfolio.assembly.fastened import PosedFastening, posed_fastenings
from kerfolio.assembly.fastening_body import Role
from kerfolio.geometry.rigid import Vector
from kerfolio.shop.lists import hardware_counts, hardware_list
from tests.fastened_plan import BOLTED, spoilt
from tests.plans import proved


def posed(text: str = BOLTED) -> list[PosedFastening]:
    (made,) = proved(text).made
    assert made.build is not None
    return [*posed_fastenings(made.settled, made.build.drawn.assembled)]


def near(vector: Vector, *wanted: float) -> bool:
    return vector == pytest.approx(wanted, abs=1e-6)


def test_a_bolt_stands_where_its_hole_is_and_looks_to_its_nut() -> None:
    """The side stands at x 0 to 17.8, its hole 150 from the front, 300 up."""
    bolt = posed()[0]
    assert near(bolt.frame.origin, 0, 150, 300)
    assert near(bolt.direction, 1, 0, 0)
    (entry,) = bolt.entries
    assert entry.along == pytest.approx(17.8)
    assert entry.off == pytest.approx(0, abs=1e-9)
    assert bolt.nut_at == pytest.approx(17.8 + 25)
    assert bolt.tip == pytest.approx(50 - 1.6)  # less the washer, which the stock has from memory
    washer, shank, nut = bolt.bodies
    assert (washer.role, shank.role, nut.role) == (Role.WASHER, Role.SHANK, Role.NUT)
    assert near(shank.frame.origin, -1.6, 150, 300)
    assert near(nut.frame.origin, 42.8, 150, 300)
    assert near(nut.frame.x, 1, 0, 0)
    assert abs(nut.frame.z[1]) == pytest.approx(1)  # it lies across, through the rail


def test_the_right_one_of_two_nuts_in_a_line_is_taken() -> None:
    two = ("{at: [25, 50], for: barrel-nut-m6}", "{at: [[225, 50], [25, 50]], for: barrel-nut-m6}")
    assert posed(spoilt(two))[0].nut_at == pytest.approx(42.8)


def test_screws_pair_by_their_order_and_go_into_the_edge() -> None:
    _, one, two, *_ = posed()
    assert [each.settled.first.name for each in (one, two)] == ["side.screws.1", "side.screws.2"]
    assert near(one.frame.origin, 0, 100, 100)
    assert near(two.frame.origin, 0, 200, 100)
    assert one.entries[0].seat.into_edge


def test_a_screw_through_a_pad_goes_towards_what_it_lies_on() -> None:
    """The rail's show face looks to the front: the pad lies before it, and is screwed backwards."""
    flat = posed()[3]
    assert near(flat.direction, 0, 1, 0)
    assert flat.tip == pytest.approx(30)


def test_a_dowel_lies_between_the_bottoms_of_its_bores() -> None:
    """12 mm into the side's show face and 22 mm into the edge leave 4 mm for a dowel of 30."""
    dowel = posed()[5]
    assert near(dowel.frame.origin, 17.8 - 12 + 2, 60, 100)
    assert dowel.tip == pytest.approx(30)


def test_what_is_bought_is_counted_from_the_fastenings() -> None:
    """One bolt with nut and washer, two screws of each kind, two dowels."""
    proof = proved(BOLTED)
    assert dict(hardware_counts(proof.plan)) == {
        **{"bolt-m6x50": 1, "barrel-nut-m6": 1, "washer-m6": 1},
        **{"screw-4x50": 2, "screw-4x30": 2, "dowel-8x30": 2},
    }
    assert proof.drawn is not None
    bolt = next(each for each in hardware_list(proof.drawn) if each.item == "bolt-m6x50")
    assert bolt.purpose == "rail"


def test_a_step_takes_what_is_fastened_once_its_pieces_are_there() -> None:
    steps = proved(BOLTED).plan.steps
    assert [[use.item.name for use in step.uses] for step in steps] == [
        ["screw-4x30"],
        ["bolt-m6x50", "barrel-nut-m6", "washer-m6"],
        ["screw-4x50", "dowel-8x30"],
    ]
    later = spoilt(
        ("joins: [pad.screws, rail.pilots]", "step: Shelf, joins: [pad.screws, rail.pilots]")
    )
    assert proved(later).plan.steps[0].uses == ()
    assert [each.step for each in posed(later)] == [2, 3, 3, 3, 3, 3, 3]


def test_without_steps_the_plan_itself_tells_what_is_bought() -> None:
    text = BOLTED[: BOLTED.index("steps:")] + BOLTED[BOLTED.index("releases:") :]
    assert dict(hardware_counts(proved(text).plan)) == dict(hardware_counts(proved(BOLTED).plan))


def test_the_same_plan_listed_by_hand_counts_the_same() -> None:
    """Old ways to list hardware go on working: beside fastenings, what these do not name."""
    start, end = BOLTED.index("fastenings:"), BOLTED.index("steps:")
    listed = "hardware:\n  - {item: bolt-m6x50, count: 1}\n  - {item: screw-4x50, count: 2}\n"
    by_hand = BOLTED[:start] + listed + BOLTED[end:]
    assert proved(by_hand).plan.steps[1].uses == ()
    assert {each.rule for each in proved(by_hand).findings} >= {"hardware-sum"}
