"""Other sizes, offcuts and clamps: read from a plan, used where they help, kept where they bind."""

from __future__ import annotations

from dataclasses import replace

import pytest
import shapely

from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.check import layout_faults
from kerfolio.layouts.effort import Effort
from kerfolio.layouts.layout import Layout, Placement, SheetLayout
from kerfolio.layouts.plan_layout import lay_out
from kerfolio.layouts.stacks import stacks_of, zones
from kerfolio.settling.settled import SettledClamp, SettledOffcut, SettledPlan
from tests.layouts.plans import part_of, plan_of, sheet_of
from tests.layouts.test_plan_layout import solids
from tests.plans import RACK, proved

BRIEF = Effort(moves=600_000, seconds=1.0)

WITH_SIZES = RACK.replace(
    "fit: 0.1}",
    """fit: 0.1,
    also: [1220 x 1220], offcuts: [{size: 600 x 400, count: 2}],
    clamps: [{edge: left, at: [200, 1000], width: 80, depth: 40}]}""",
)


def laid_out(settled: SettledPlan) -> Layout:
    layout, findings = lay_out([settled], BRIEF)
    assert findings == ()
    assert layout is not None
    assert layout_faults(layout, settled) == ()
    return layout


def boards(count: int, width: float = 700.0, height: float = 500.0) -> tuple[object, ...]:
    return (part_of("board", rectangle(0, 0, width, height), [str(n) for n in range(count)]),)


def test_a_plan_states_sizes_offcuts_and_clamps() -> None:
    drawn = proved(WITH_SIZES).drawn
    assert drawn is not None
    sheet = drawn.sheets[0]
    assert sheet.also == ((1220.0, 1220.0),)
    assert sheet.offcuts == (SettledOffcut(size=(600.0, 400.0), count=2),)
    assert [(each.edge, each.at) for each in sheet.clamps] == [("left", 200.0), ("left", 1000.0)]
    assert [(stack.size, stack.count, stack.worth > 0) for stack in stacks_of(sheet)] == [
        ((2440.0, 1220.0), None, True),
        ((1220.0, 1220.0), None, True),
        ((600.0, 400.0), 2, False),
    ]


@pytest.mark.parametrize(
    ("clamp", "zone"),
    [
        (("left", 300, 100, 40), (0, 250, 40, 350)),
        (("right", 300, 100, 40), (960, 250, 1000, 350)),
        (("bottom", 300, 100, 40), (250, 0, 350, 40)),
        (("top", 300, 100, 40), (250, 760, 350, 800)),
        (("left", 20, 100, 40), (0, 0, 40, 70)),
    ],
)
def test_zones_lie_at_their_edges(
    clamp: tuple[str, float, float, float], zone: tuple[float, ...]
) -> None:
    edge, at, width, depth = clamp
    sheet = replace(
        sheet_of(size=(1000.0, 800.0)),
        clamps=(SettledClamp(edge=edge, at=at, width=width, depth=depth),),
    )
    assert zones(sheet, (1000.0, 800.0)) == (zone,)


def test_a_clamp_beyond_a_small_sheet_does_not_touch_it() -> None:
    sheet = replace(sheet_of(), clamps=(SettledClamp(edge="left", at=900, width=80, depth=40),))
    assert zones(sheet, (500.0, 400.0)) == ()


def test_half_a_sheet_is_bought_where_it_is_enough() -> None:
    sheet = replace(sheet_of(), also=((1220.0, 1220.0),))
    assert [each.size for each in laid_out(plan_of(boards(2), (sheet,))).sheets] == [
        (1220.0, 1220.0)
    ]
    # Nine boards of 700 x 500 fill a sheet of 2440 x 1220 with six and leave three for a half.
    sizes = [each.size for each in laid_out(plan_of(boards(8), (sheet,))).sheets]
    assert sorted(sizes) == [(1220.0, 1220.0), (2440.0, 1220.0)]


def test_offcuts_at_hand_save_a_sheet_and_no_more_are_used_than_there_are() -> None:
    offcut = SettledOffcut(size=(740.0, 540.0), count=2)
    sheet = replace(sheet_of(), offcuts=(offcut,))
    layout = laid_out(plan_of(boards(8), (sheet,)))
    sizes = [each.size for each in layout.sheets]
    assert sizes.count((2440.0, 1220.0)) == 1
    assert sizes.count((740.0, 540.0)) <= 2


def test_an_offcut_that_saves_nothing_is_left_alone() -> None:
    sheet = replace(sheet_of(), offcuts=(SettledOffcut(size=(740.0, 540.0), count=1),))
    assert [each.size for each in laid_out(plan_of(boards(6), (sheet,))).sheets] == [
        (2440.0, 1220.0)
    ]


def test_too_many_offcuts_are_a_fault() -> None:
    sheet = replace(sheet_of(), offcuts=(SettledOffcut(size=(740.0, 540.0), count=1),))
    settled = plan_of(boards(2), (sheet,))
    lying = [
        SheetLayout(
            number=number,
            sheet="ply",
            size=(740.0, 540.0),
            placements=(Placement(piece=f"board.{number - 1}", part="board", x=20, y=20, turn=0),),
        )
        for number in (1, 2)
    ]
    layout = Layout(sheets=tuple(lying), engine="by hand", computed_from="")
    assert [each.message for each in layout_faults(layout, settled)] == [
        "2 offcuts of 740 x 540 mm are used, there are 1"
    ]


def test_pieces_keep_clear_of_clamps() -> None:
    clamps = tuple(
        SettledClamp(edge=edge, at=at, width=120, depth=60)
        for edge, at in (("left", 610.0), ("right", 610.0), ("top", 1220.0), ("bottom", 400.0))
    )
    sheet = replace(sheet_of(), clamps=clamps)
    settled = plan_of(boards(12, 420.0, 300.0), (sheet,))
    layout = laid_out(settled)
    for lying, each in zip(solids(layout, settled), layout.sheets, strict=True):
        for zone in zones(sheet, each.size):
            assert all(solid.distance(shapely.box(*zone)) >= 8 - 0.01 for solid in lying.values())


def test_a_piece_in_the_way_of_a_clamp_is_a_fault() -> None:
    clamp = SettledClamp(edge="left", at=100, width=100, depth=50)
    settled = plan_of(boards(1), (replace(sheet_of(), clamps=(clamp,)),))
    lying = Placement(piece="board.0", part="board", x=55, y=60, turn=0)
    sheet = SheetLayout(number=1, sheet="ply", size=(2440.0, 1220.0), placements=(lying,))
    layout = Layout(sheets=(sheet,), engine="by hand", computed_from="")
    (found,) = layout_faults(layout, settled)
    assert found.message == "`board.0` is in the way of a clamp"
    assert found.advice.startswith("Keep 8 mm between pieces and clamps.")
