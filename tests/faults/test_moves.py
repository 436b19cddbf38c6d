"""Moves of features: the rows of a plan's text that they change, and how."""

from __future__ import annotations

from tests.faults.moves import moves
from tests.faults.table import HERE


def test_a_move_adds_to_every_place_of_one_feature() -> None:
    text = (HERE / "plans" / "bottle-crate.yaml").read_text("utf-8")
    found = {(each.name, each.axis): each for each in moves(text)}
    slots, feet = found["floor.front-slots", "y"], found["lengthwise.feet", "edge"]
    was, now = text.splitlines(), slots.made(text, "2.3 mm").splitlines()
    changed = [row for row, line in enumerate(was) if line != now[row]]
    assert changed == [slots.row]
    places = "[[reach + pitch/2, reach + 2.3 mm], [long - reach - pitch/2, reach + 2.3 mm]]"
    assert f"at: {places}, length: tab" in now[slots.row]
    moved = feet.made(text, "9 mm").splitlines()[feet.row]
    assert "at: [reach + pitch/2 - tab/2 + 9 mm, long - reach - pitch/2 - tab/2 + 9 mm]" in moved
    assert ("handle.grip", "x") not in found
