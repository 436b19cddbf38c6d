from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from kerfolio.geometry import crossed_slabs
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.geometry.panel_overlap import overlap_volumes
from kerfolio.geometry.panel_shared import shared
from kerfolio.geometry.panel_solid import Posed, solid_of
from kerfolio.geometry.rigid import Rigid, dot
from tests.geometry.panel_cases import (
    board,
    posed,
    put,
    random_frame,
    random_pair,
    random_panel,
    rectangle,
    reference,
)

# A side stands across x, its slot 18.2 x 60.2 mm; a rail of 18 mm comes from the left, its tab
# 18 mm long and 60 mm wide, with shoulders of 30 mm. All in their places the fit is 0.1 mm.
SIDE = board(rectangle(0, 0, 200, 300), rectangle(90.9, 99.9, 109.1, 160.1))
RAIL = board(((0, 0), (300, 0), (300, 30), (318, 30), (318, 90), (300, 90), (300, 120), (0, 120)))
SIDE_POSE = Rigid((300.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0), (1.0, 0.0, 0.0))
RAIL_POSE = Rigid((0.0, 109.0, 70.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, -1.0, 0.0))


def near(expected: Any) -> Any:
    """Compare within the skin that is taken off before an overlap is described."""
    return pytest.approx(expected, abs=5e-4, rel=1e-5)


def volume(one: Posed, other: Posed) -> float:
    return float(overlap_volumes([(one, other)])[0])


def side(*slot: float) -> Posed:
    outer = rectangle(0, 0, 200, 300)
    return Posed(solid_of(board(outer, rectangle(*slot)) if slot else board(outer)), SIDE_POSE)


def rail(dx: float = 0, dy: float = 0, dz: float = 0) -> Posed:
    return Posed(solid_of(RAIL), RAIL_POSE.moved((dx, dy, dz)))


@pytest.mark.parametrize("kind", ["crossed", "parallel", "oblique"])
def test_random_pairs_share_what_solid_booleans_say(kind: str) -> None:
    """Reference library: manifold3d, intersections of solids made without the product."""
    rng = np.random.default_rng({"crossed": 1, "parallel": 2, "oblique": 3}[kind])
    panels = [random_panel(rng) for _ in range(60)]
    solids, references = [solid_of(each) for each in panels], [reference(each) for each in panels]
    pairs, expected = [], []
    for _ in range({"crossed": 600, "parallel": 300, "oblique": 200}[kind]):
        a, b = rng.integers(0, 60, 2)
        first, second = random_pair(rng, kind, 90)
        pairs.append((Posed(solids[a], first), Posed(solids[b], second)))
        expected.append((put(references[a], first) ^ put(references[b], second)).volume())
    found = overlap_volumes(pairs)
    assert sum(each > 1 for each in expected) > len(pairs) * 0.6
    assert found == pytest.approx(expected, rel=1e-7, abs=1e-3)


def test_a_tab_in_its_slot_shares_nothing() -> None:
    assert volume(rail(), side(90.9, 99.9, 109.1, 160.1)) == pytest.approx(0, abs=1e-9)


def test_contact_without_clearance_shares_nothing_in_any_orientation() -> None:
    rng = np.random.default_rng(4)
    slot = side(91, 100, 109, 160)
    for _ in range(30):
        world = random_frame(rng, (100.0, -70.0, 30.0))
        one = Posed(rail().solid, world.after(RAIL_POSE))
        other = Posed(slot.solid, world.after(SIDE_POSE))
        assert volume(one, other) == pytest.approx(0, abs=1e-6)


def test_a_slot_half_a_millimetre_narrow() -> None:
    # Worked by hand: the tab is 18 thick, the slot 17.7 wide; 0.15 mm on both faces of the tab,
    # 60 mm wide and 18 mm deep: 2 x 0.15 x 60 x 18 = 324 mm3.
    narrow = side(91.15, 99.9, 108.85, 160.1)
    assert volume(rail(), narrow) == pytest.approx(324)
    found = shared(rail(), narrow)
    assert found is not None
    assert found.volume == pytest.approx(324)
    assert found.depth == near(0.3)
    assert found.length == near(60)
    assert found.box[0] == near((300, 91, 100))
    assert found.box[1] == near((318, 109, 160))
    assert found.at[0] == near(309)
    assert found.at[2] == near(130)


def test_a_missing_slot() -> None:
    # 18 x 18 x 60 = 19 440 mm3, 18 mm deep, the whole tab.
    found = shared(rail(), side())
    assert volume(rail(), side()) == pytest.approx(19_440)
    assert found is not None
    assert (found.volume, found.depth, found.length) == near((19_440, 18, 60))
    assert found.at == near((309, 100, 130))


def test_a_rail_two_millimetres_long() -> None:
    # Both shoulders, 30 x 18 mm each less 0.1 mm of slot, are 2 mm in: 2 x 29.9 x 18 x 2 mm3.
    slot = side(90.9, 99.9, 109.1, 160.1)
    found = shared(rail(dx=2), slot)
    assert found is not None
    assert (found.volume, found.depth, found.length) == near((2152.8, 2, 59.8))
    assert volume(slot, rail(dx=2)) == pytest.approx(2152.8)


def test_recesses_are_cut_from_the_show_face() -> None:
    # A pocket of 6 mm takes a block of 6 mm on the show face and none on the rear.
    pocket = Recess(Flat(rectangle(40, 40, 60, 60)), 6)
    base = posed(board(rectangle(0, 0, 100, 100), recesses=(pocket,)))
    block = board(rectangle(0, 0, 20, 20), thickness=20)
    assert volume(base, posed(block, (40.0, 40.0, 12.0))) == pytest.approx(0)
    assert volume(base, posed(block, (40.0, 40.0, 11.0))) == pytest.approx(400)
    assert volume(base, posed(block, (40.0, 40.0, -14.0))) == pytest.approx(20 * 20 * 6)
    standing = posed(block, (40.0, 60.0, 12.0), y=(0.0, 0.0, 1.0))
    assert volume(base, standing) == pytest.approx(0)
    deeper = posed(block, (40.0, 60.0, 10.5), y=(0.0, 0.0, 1.0))
    assert volume(base, deeper) == pytest.approx(20 * 20 * 1.5)
    found = shared(base, deeper)
    assert found is not None
    assert (found.depth, found.length) == near((1.5, 20))


def test_recesses_may_overlap_and_run_out() -> None:
    recesses = (
        Recess(Flat(rectangle(-10, 40, 60, 60)), 6),
        Recess(Flat(rectangle(50, 0, 70, 110)), 9),
    )
    panel = board(rectangle(0, 0, 100, 100), recesses=recesses)
    tall = posed(board(rectangle(-50, -50, 150, 150), thickness=60), (0.0, 0.0, -20.0))
    # The shallow one takes 50 x 20 x 6 beside the deep one's 20 x 100 x 9.
    expected = 100 * 100 * 18 - 50 * 20 * 6 - 20 * 100 * 9
    assert volume(posed(panel), tall) == pytest.approx(expected)
    assert solid_of(panel).solid.volume() == pytest.approx(expected)


def test_a_disc_through_a_board_shares_a_strip_of_a_circle() -> None:
    # The strip |b| <= h of a circle: 2 h sqrt(r2 - h2) + 2 r2 asin(h / r) (two circular segments
    # taken from the circle; any table of areas).
    r, h = 80.0, 9.0
    angles = np.linspace(0, 2 * np.pi, 3600, endpoint=False)
    disc = board(tuple((float(r * np.cos(a)), float(r * np.sin(a))) for a in angles), thickness=12)
    through = posed(board(rectangle(-200, -200, 200, 200)), (0.0, 9.0, 0.0), y=(0.0, 0.0, 1.0))
    strip = 2 * h * math.sqrt(r * r - h * h) + 2 * r * r * math.asin(h / r)
    assert volume(posed(disc), through) == pytest.approx(12 * strip, rel=1e-5)


def test_stacked_panels_share_height_times_area() -> None:
    plate = board(rectangle(0, 0, 100, 50))
    assert volume(posed(plate), posed(plate, (90.0, 30.0, 17.8))) == pytest.approx(10 * 20 * 0.2)
    assert volume(posed(plate), posed(plate, (90.0, 30.0, 18.0))) == pytest.approx(0)
    over = posed(plate, (190.0, 30.0, 30.0), x=(-1.0, 0.0, 0.0))
    assert volume(posed(plate), over) == pytest.approx(10 * 20 * 6)
    found = shared(posed(plate), posed(plate, (90.0, 30.0, 17.8)))
    assert found is not None
    assert (found.depth, found.length) == near((0.2, 20))


def test_apart_panels_share_nothing() -> None:
    assert shared(rail(dx=-1), side()) is not None
    assert shared(rail(dx=-400), side()) is None
    assert volume(rail(dx=-400), side()) == 0
    assert list(overlap_volumes([])) == []


def test_many_pairs_at_once_and_in_small_portions_give_the_same(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    rng = np.random.default_rng(6)
    pairs = []
    for _ in range(40):
        first, second = random_pair(rng, "crossed", 60)
        panels = (solid_of(random_panel(rng)), solid_of(random_panel(rng)))
        pairs.append((Posed(panels[0], first), Posed(panels[1], second)))
    together = overlap_volumes(pairs)
    assert [volume(*each) for each in pairs] == pytest.approx(together.tolist())
    assert [volume(b, a) for a, b in pairs] == pytest.approx(together.tolist())
    monkeypatch.setattr(crossed_slabs, "_MOST", 50)
    assert overlap_volumes(pairs).tolist() == pytest.approx(together.tolist())


def test_like_pairs_in_like_places_share_alike() -> None:
    shifted = [
        (
            Posed(rail(dx=1).solid, rail(dx=1 + k).pose),
            Posed(side().solid, SIDE_POSE.moved((k, 0.0, 0.0))),
        )
        for k in (0.0, 250.0, 500.0)
    ]
    one, two = solid_of(RAIL), solid_of(SIDE)
    same = [(Posed(one, a.pose), Posed(two, b.pose)) for a, b in shifted]
    assert overlap_volumes(same).tolist() == pytest.approx([1076.4] * 3)


def test_the_point_of_an_overlap_lies_in_both_panels() -> None:
    found = shared(rail(dy=0.4), side(90.9, 99.9, 109.1, 160.1))
    assert found is not None
    # 0.3 mm past the far side of the slot.
    assert found.depth == near(0.3)
    for panel, pose in ((RAIL, RAIL_POSE.moved((0.0, 0.4, 0.0))), (SIDE, SIDE_POSE)):
        assert _inside(panel, pose, found.at)


def _inside(panel: Panel, pose: Rigid, at: tuple[float, float, float]) -> bool:
    x, y, z = pose.inverse.point(at)
    assert dot(pose.x, pose.y) == 0
    small = posed(board(rectangle(-0.01, -0.01, 0.01, 0.01), thickness=0.02), (x, y, z - 0.01))
    return volume(posed(panel), small) == pytest.approx(0.02**3, rel=1e-6)
