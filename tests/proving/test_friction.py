"""Shelves and rails that only their fit holds; common practice, no single source."""

from __future__ import annotations

import pytest

from tests.proving.case_plan import told

RULE = "held-by-friction"
SLIDES = "only friction holds `shelf`: it slides out once all is in place"
STANDING = "standing: {piece: shelf, looks: up}"
TONGUE = "{tabs: {edge: SIDE, at: 0, width: deep, depth: 5.8}}"
LEFT, RIGHT = (TONGUE.replace("SIDE", each) for each in ("left", "right"))


def within(tongue: str) -> tuple[str, str]:
    """Return a tongue, and the same 20 mm short of both ends of its groove."""
    return tongue, tongue.replace("at: 0, width: deep,", "at: 20, width: deep - 40,")


STOPPED = (
    ("from: [0, 200], to: [deep, 200]", "from: [20, 200], to: [deep - 20, 200]"),
    *(within(LEFT), within(RIGHT)),
)
INTO = "shelf.left-tongue, into: side.left.groove"
SCREW = "fastenings: [{screw: screw-4x50, joins: [side.left.hole, shelf.left]}]"
HOLE = "hole: {hole: {at: [40, 200], for: screw-4x50}}"
ON_ITS_BACK = (
    (STANDING, "standing: {piece: shelf, looks: front}"),
    ("outline: {rectangle: [wide, deep]}", "outline: {rectangle: [wide, deep - 100]}"),
    *((each, each.replace("width: deep,", "width: deep - 100,")) for each in (LEFT, RIGHT)),
)


@pytest.mark.parametrize(
    ("changes", "messages"),
    [
        ((), [SLIDES]),
        # The same case lying on its side: the panel in the grooves stands, and slides out level.
        (((STANDING, "standing: {piece: shelf, looks: right, top: back}"),), [SLIDES]),
        (((INTO, f"{INTO}, fit: knock-down"),), [SLIDES]),
        # Its grooves stand upright, and are open below it.
        (ON_ITS_BACK, [SLIDES.replace("slides", "drops")]),
        (STOPPED, []),
        (((INTO, f"{INTO}, fit: glued"),), []),
        (((INTO, f"{INTO}, fit: press"),), []),
        (((STANDING, f"{SCREW}\n{STANDING}"), ("rail-slots:", f"{HOLE}\n      rail-slots:")), []),
    ],
    ids=["shelf", "partition", "knock-down", "drops", "stopped", "glued", "press", "screwed"],
)
def test_what_slides_out_of_the_finished_whole_is_told(
    changes: tuple[tuple[str, str], ...], messages: list[str]
) -> None:
    assert told(RULE, *changes) == messages
