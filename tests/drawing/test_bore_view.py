"""Steps that bore: the pieces, a bit before each bore, and how deep."""

from __future__ import annotations

import pytest

from kerfolio.assembly.poses import put_together
from kerfolio.drawing.bore_view import bit_solid, bore_view
from kerfolio.drawing.step_view import ROOM
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from kerfolio.settling.bored import Bored, bored_in
from tests.assembly.scenes import settled


def drawn(name: str) -> tuple[Drawing, tuple[Bored, ...]]:
    plan = settled(name)
    together = put_together(plan)
    assert together is not None
    bored = bored_in(plan.plan.steps[0], plan)
    return bore_view(together.assembled, bored), bored


def words(drawing: Drawing) -> list[str]:
    return [each.text for each in drawing.items if isinstance(each, Label)]


@pytest.mark.parametrize(
    ("name", "told"),
    [
        ("harbour-stool", ["4 ×", "ø 7 mm, 35 mm deep", "2 ×", "ø 7 mm, 33 mm deep", "A1, A2"]),
        ("potting-bench", ["8 ×", "ø 7 mm, 35 mm deep", "C1, C2", "D1, D2"]),
    ],
)
def test_every_bore_is_counted_and_every_piece_marked(name: str, told: list[str]) -> None:
    """Counts as in the plans: both ends of each rail, and the top of either side of the stool."""
    drawing, _ = drawn(name)
    assert {*told} <= {*words(drawing)}
    assert drawing.width <= ROOM[0] + 1.3
    assert drawing.height <= ROOM[1] + 1.3


def test_a_broken_outline_stands_in_the_wood_for_each_bore() -> None:
    drawing, bored = drawn("harbour-stool")
    outlines = [
        each
        for each in drawing.items
        if isinstance(each, Stroke) and each.dash and len(each.contour.vertices) == 4
    ]
    assert len(outlines) == sum(len(each.bores) for each in bored) == 5
    assert all(each.ink is Ink.NEW_LINE for each in outlines)


def test_the_stop_leaves_the_depth_of_the_bore_free() -> None:
    bit = bit_solid(7.0, 35.0)
    stop = max(bit.frusta, key=lambda each: each.wide)
    assert bit.high - stop.high == pytest.approx(35.0)
    assert bit.frusta[2].wide == pytest.approx(3.5)


def test_a_part_names_the_bores_of_all_its_pieces_and_a_piece_its_own() -> None:
    plan = settled("potting-bench")
    step = plan.plan.steps[0]
    assert {each.part.name: each.pieces for each in bored_in(step, plan)} == {
        "rail": ("rail.front", "rail.rear"),
        "sling": ("sling.front", "sling.rear"),
    }
    (one,) = bored_in(
        type(step)(title="", bores=(type(step.bores[0])("rail.rear.left-bore"),)), plan
    )
    assert one.pieces == ("rail.rear",)
    assert [each.name for each in one.bores] == ["left-bore"]
