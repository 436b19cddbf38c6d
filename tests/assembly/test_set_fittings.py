"""The hardware of a set: with every twin, in its place, in the steps of the whole plan."""

from __future__ import annotations

from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.set_fittings import set_fittings
from kerfolio.basis.reader import METRIC
from kerfolio.drawing.build_views import SET, set_drawings
from tests.plans import altered, proved
from tests.sets import SET as PLAN

FASTENED = "    fastenings: [{bolt: bolt-m6x30, nut: nut-m6, joins: [lower.hole]}]\n"
BOLTED = altered(
    PLAN,
    (
        "      crossing: {notch: {edge: top, at: 130, depth: 110, takes: ply}}\n",
        "      crossing: {notch: {edge: top, at: 130, depth: 110, takes: ply}}\n"
        "      hole: {hole: {at: [60, 50], for: bolt-m6x30}}\n",
    ),
    (
        "    steps:\n      - title: Cross",
        f"{FASTENED}    steps:\n      - title: Cross",
    ),
)


def test_each_twin_has_its_own_hardware_in_its_place() -> None:
    """Two feet of 260 mm under a board of 900 mm, 110 mm in: 420 mm from one to the other."""
    proof = proved(BOLTED)
    assert proof.together is not None
    found = set_fittings(proof.made, proof.together)
    bolts = [each for each in found if each.role is Role.SHANK]
    assert [each.follows for each in bolts] == ["1/lower", "2/lower"]
    (ax, ay, az), (bx, by, bz) = (each.frame.origin for each in bolts)
    assert (round(bx - ax, 6), round(by - ay, 6), round(bz - az, 6)) == (420.0, 0.0, 0.0)
    lower = proof.together.assembled.piece("1/lower").pose
    x, y, _ = lower.inverse.point((ax, ay, az))
    assert (round(x, 6), round(y, 6)) == (60.0, 50.0)
    assert len({each.number for each in found}) == 2
    assert {each.step for each in found} == {1}


def test_the_set_is_drawn_with_it() -> None:
    """A head stands before its hole: its rim is 10 mm wide (ISO 4762), the hole's 6.6 mm."""
    drawn = []
    for plan in (BOLTED, altered(BOLTED, (FASTENED, ""))):
        proof = proved(plan)
        assert proof.together is not None
        drawn.append(set_drawings(proof.together, proof.made, proof.plan, METRIC)[SET])
    with_it, without = drawn
    assert with_it.box == without.box
    assert len(with_it.items) > len(without.items)
