"""A tool comes along a straight line; how long it is, is common practice, no single source."""

from __future__ import annotations

import pytest

from tests.fastened_plan import spoilt
from tests.plans import proved

COVER = """\
  cover:
    sheet: ply
    grain: along y
    outline: {rectangle: [300, 400]}
joints:
  - {face: cover, on: side, at: [0, 400], side: back, looking: away}
"""
SIDE, SHELF = "{title: Side, add: [side],", "{title: Shelf, add: [shelf],"
LAST = "  - {title: Cover, add: [cover], text: Glue it on.}\nreleases:"


def told(*changes: tuple[str, str]) -> list[str]:
    text = spoilt(("joints:\n", COVER), *changes)
    return [each.message for each in proved(text).findings if each.rule == "tool-blocked"]


@pytest.mark.parametrize(
    ("step", "blocked"),
    [
        ((SIDE, SIDE.replace("[side]", "[side, cover]")), ["side.bolt", "side.screws.1"]),
        ((SHELF, SHELF.replace("[shelf]", "[shelf, cover]")), ["side.screws.1"]),
        (("releases:", LAST), []),
    ],
    ids=["before all", "with the shelf", "at last"],
)
def test_what_stands_before_a_head_when_it_is_turned_is_told(
    step: tuple[str, str], blocked: list[str]
) -> None:
    """Bolts are turned in step 2, the shelf's screws in step 3; the cover lies on their heads."""
    found = told(step)
    assert [each.partition(" in `")[2].partition("`")[0] for each in found] == blocked
    assert all(each.startswith("`cover` stands 2 mm before the head of `") for each in found)


def test_a_hole_for_the_tool_lets_it_through() -> None:
    """16 mm where a washer of 12 mm and a head of 10 mm lie; the screws stay covered.

    Turned over, the cover counts its y from the top.
    """
    panel = "outline: {rectangle: [300, 400]}\n"
    holed = f"{panel}    features: {{key: {{hole: {{at: [150, 100], diameter: 16}}}}}}\n"
    text = spoilt(
        ("joints:\n", COVER.replace(panel, holed)),
        (SIDE, SIDE.replace("[side]", "[side, cover]")),
    )
    found = [each.message for each in proved(text).findings if each.rule == "tool-blocked"]
    assert len(found) == 1
    assert "screw-4x50" in found[0]
