from __future__ import annotations

import math
from dataclasses import replace

import pytest

from kerfolio.assembly.assembled import Assembled, PosedJoint
from kerfolio.assembly.go_together import LEAST_CLASH, LEAST_DEPTH, Clash, clashes
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Rigid, Vector
from kerfolio.model.joint_kind import TAB_JOINT
from tests.assembly import scenes

# The stool of the sample: sheet 17.8 mm, fit 0.1 mm; each side's slots are 18 x 30.2 mm and take
# the tabs of rail and stretcher, 17.8 mm thick, 30 mm wide and 17.8 mm long, two at each end.
THICK = 17.8
RAIL_SLOTS = ((171, 314.9), (171, 364.9))


def stool() -> Assembled:
    return scenes.assembled("harbour-stool")


def with_panel(part: str, panel: Panel) -> Assembled:
    plan = stool()
    pieces = tuple(replace(p, panel=panel) if p.part == part else p for p in plan.pieces)
    return replace(plan, pieces=pieces)


def moved(label: str, by: Vector) -> Assembled:
    plan = stool()
    pieces = (replace(p, pose=p.pose.moved(by)) if p.label == label else p for p in plan.pieces)
    return replace(plan, pieces=tuple(pieces))


def corner(ring: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    return round(min(x for x, _ in ring), 6), round(min(y for _, y in ring), 6)


def side_with(change: str) -> Panel:
    """The side with its slots for the rail changed: 0.5 mm ``narrow``, or ``missing``."""
    panel = stool().piece("side.left").panel
    openings = []
    for ring in panel.shape.openings:
        if corner(ring) not in RAIL_SLOTS:
            openings.append(ring)
        elif change == "narrow":
            # From 18 to 17.5 mm about its middle, x = 180.
            openings.append(tuple((180 + (x - 180) * 17.5 / 18, y) for x, y in ring))
    return replace(panel, shape=Flat(panel.shape.outer, tuple(openings)))


def stretched(panel: Panel, by: float) -> Panel:
    """The rail with everything beyond its middle moved out."""

    def ring(given: tuple[tuple[float, float], ...]) -> tuple[tuple[float, float], ...]:
        return tuple((x + by if x > 140 else x, y) for x, y in given)

    shape = Flat(ring(panel.shape.outer), tuple(map(ring, panel.shape.openings)))
    return replace(panel, shape=shape)


def named(found: tuple[Clash, ...]) -> list[tuple[str, str]]:
    return [(each.a, each.b) for each in found]


@pytest.mark.parametrize("name", scenes.NAMES)
def test_the_samples_go_together(name: str) -> None:
    """The poses are the draughtsman's own, worked out on paper."""
    assert clashes(scenes.assembled(name)) == ()


def test_a_slot_too_narrow_names_its_pair() -> None:
    found = clashes(with_panel("side", side_with("narrow")))
    assert named(found) == [("side.left", "rail"), ("side.right", "rail")]
    for each in found:
        # Two tabs of 17.8 mm in 17.5 mm: 2 x 0.3 x 30 x 17.8 mm3.
        assert each.volume == pytest.approx(2 * 0.3 * 30 * THICK, rel=1e-5)
        assert each.depth == pytest.approx(0.3, abs=1e-3)
        assert each.length == pytest.approx(60, abs=1e-2)


def test_a_missing_slot_names_its_pair() -> None:
    found = clashes(with_panel("side", side_with("missing")))
    assert named(found) == [("side.left", "rail"), ("side.right", "rail")]
    for each in found:
        assert each.volume == pytest.approx(2 * THICK * 30 * THICK, rel=1e-5)
        assert each.depth == pytest.approx(THICK, abs=1e-2)
    left, right = found
    low, high = left.box
    assert low == pytest.approx((0, 171.1, 315), abs=1e-3)
    assert high == pytest.approx((THICK, 188.9, 395), abs=1e-3)
    assert 0 < left.at[0] < THICK
    assert 320 - THICK < right.at[0] < 320


def test_a_rail_too_long_names_its_pair() -> None:
    longer = stretched(stool().piece("rail").panel, 2)
    (found,) = clashes(with_panel("rail", longer))
    assert (found.a, found.b) == ("side.right", "rail")
    # Its shoulder goes in by 2 mm: 100 mm of rail less two slots and a bolt hole of 6.6 mm.
    assert found.depth == pytest.approx(2, abs=0.01)
    assert found.volume == pytest.approx(2 * (THICK * 39.6 - math.pi * 3.3**2), rel=2e-3)


def test_a_piece_in_the_wrong_place_names_all_it_meets() -> None:
    found = clashes(moved("seat", (0.0, 0.0, -1.0)))
    assert named(found) == [("side.left", "seat"), ("side.right", "seat")]
    assert all(each.depth == pytest.approx(1, abs=0.01) for each in found)


def joint(ends: tuple[str, str], at: Vector, z: Vector) -> PosedJoint:
    x = (0.0, 1.0, 0.0)
    frame = Rigid(at, x, (z[1] * x[2] - z[2] * x[1], z[2] * x[0] - z[0] * x[2], z[0]), z)
    a, b = ends[0].split(".")[0], ".".join(ends[1].split(".")[:2])
    return PosedJoint(kind=TAB_JOINT, a=a, b=b, ends=ends, frame=frame, size=(30.0, THICK))


JOINTS = (
    joint(("rail.left-tabs.1", "side.left.rail-slots.1"), (THICK, 180, 330), (-1.0, 0.0, 0.0)),
    joint(("rail.left-tabs.2", "side.left.rail-slots.2"), (THICK, 180, 380), (-1.0, 0.0, 0.0)),
    joint(("rail.right-tabs.1", "side.right.rail-slots.1"), (302.2, 180, 330), (1.0, 0.0, 0.0)),
    joint(("rail.right-tabs.2", "side.right.rail-slots.2"), (302.2, 180, 380), (1.0, 0.0, 0.0)),
)


def test_a_clash_is_laid_to_the_nearest_joint_of_its_pieces() -> None:
    panel = stool().piece("side.left").panel
    rings = tuple(ring for ring in panel.shape.openings if corner(ring) != RAIL_SLOTS[1])
    faulty = with_panel("side", replace(panel, shape=Flat(panel.shape.outer, rings)))
    found = clashes(replace(faulty, joints=JOINTS))
    assert [each.ends for each in found] == [JOINTS[1].ends, JOINTS[3].ends]
    assert clashes(moved("seat", (0.0, 0.0, -1.0)))[0].ends == ()


def test_a_touch_is_no_clash() -> None:
    # A micron too deep over a whole shoulder is more than 1 mm3 and no fault of a sheet.
    assert clashes(moved("seat", (0.0, 0.0, -LEAST_DEPTH / 2))) == ()
    # Two boards whose corners share 0.2 x 0.2 x 17.8 mm, less than 1 mm3; then 0.3 x 0.3 mm.
    board = Panel(shape=Flat(((0, 0), (100, 0), (100, 100), (0, 100))), thickness=THICK)
    for by, count in ((99.8, 0), (99.7, 1)):
        one, other = (
            replace(piece, panel=board, pose=Rigid((at, at, 0.0)))
            for piece, at in zip(stool().pieces[:2], (0.0, by), strict=True)
        )
        assert 0.2 * 0.2 * THICK < LEAST_CLASH < 0.3 * 0.3 * THICK
        assert len(clashes(replace(stool(), pieces=(one, other)))) == count
