"""Layer names by operation and depth, told apart where the machine must."""

from __future__ import annotations

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.drawing.layer import (
    CHECK_SQUARE,
    NOTE,
    SHEET_EDGE,
    in_cutting_order,
    layer_for,
    uncut_layer,
)
from kerfolio.settling.settled import Cut, Operation


def cut(operation: Operation, depth: float | None) -> Cut:
    return Cut(operation=operation, depth=depth, contours=())


@pytest.mark.parametrize(
    ("operation", "depth", "name"),
    [
        (Operation.ENGRAVE, 0.5, "engrave_0.5mm"),
        (Operation.POCKET, 6.0, "pocket_6.0mm"),
        (Operation.POCKET, 6.35, "pocket_6.35mm"),
        (Operation.POCKET, 12, "pocket_12.0mm"),
        (Operation.HOLE, None, "hole_through"),
        (Operation.OPENING, None, "opening_through"),
        (Operation.OUTLINE, None, "outline_through"),
    ],
)
def test_the_name_says_operation_and_depth(
    operation: Operation, depth: float | None, name: str
) -> None:
    layer = layer_for(cut(operation, depth))
    assert layer.name == name
    assert layer.cuts
    assert layer.depth == depth


def test_names_hold_nothing_that_dxf_forbids() -> None:
    """DXF reference: names of symbols may not hold any of < > / \\ " : ; ? * | = `."""
    names = [layer_for(cut(each, 6.25)).name for each in Operation]
    names += [layer.name for layer in (SHEET_EDGE, CHECK_SQUARE, NOTE)]
    assert not set("".join(names)) & set('<>/\\":;?*|=`')


def test_the_purpose_is_a_sentence_with_the_depth() -> None:
    assert layer_for(cut(Operation.POCKET, 6.0)).purpose == (
        "Clear the whole area inside the line, 6 mm deep from the face that lies up."
    )
    assert layer_for(cut(Operation.OPENING, None)).purpose == (
        "Openings and slots, through the sheet: cut inside the line."
    )


def test_what_is_not_cut_says_so() -> None:
    for layer in (SHEET_EDGE, CHECK_SQUARE, NOTE):
        assert not layer.cuts
        assert uncut_layer(layer, METRIC).purpose.endswith("Not cut.")


def test_inside_before_outside_and_shallow_before_deep() -> None:
    stated = [
        cut(Operation.OUTLINE, None),
        cut(Operation.HOLE, None),
        cut(Operation.POCKET, 10.0),
        cut(Operation.POCKET, 9.5),
        cut(Operation.HOLE, 5.0),
        cut(Operation.ENGRAVE, 0.5),
        cut(Operation.POCKET, 9.5),
    ]
    assert [layer.name for layer in in_cutting_order(map(layer_for, stated))] == [
        "engrave_0.5mm",
        "pocket_9.5mm",
        "pocket_10.0mm",
        "hole_5.0mm",
        "hole_through",
        "outline_through",
    ]
