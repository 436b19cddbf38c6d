"""Pictures give way or grow so that pages fill."""

from __future__ import annotations

from typing import Any

import pytest

from kerfolio.booklet.fitting import Box, fitted, half_empty
from kerfolio.booklet.measure import Measure
from kerfolio.booklet.rows import PictureRow
from tests.paper.editions import A4

PAGE = 200.0


def text(number: int, height: float, *, fresh: bool = False) -> Box:
    return Box(number=number, height=height, whole=False, fresh=fresh)


def row(box: int, room: float, drawn: float | None = None) -> PictureRow:
    return PictureRow(box=box, room=room, share=1.0, drawn=room if drawn is None else drawn)


def test_a_picture_gives_way_where_that_saves_a_half_empty_page() -> None:
    boxes = [text(0, 120.0), Box(number=1, height=110.0), text(2, 60.0)]
    found = fitted(boxes, [row(1, 100.0)], PAGE)
    assert 0.6 < found[0] < 0.7
    assert 120.0 + 10.0 + 100.0 * found[0] <= PAGE


def test_pictures_grow_where_a_page_has_the_room() -> None:
    boxes = [Box(number=0, height=75.0), Box(number=1, height=75.0), Box(number=2, height=150.0)]
    rows = [row(0, 65.0), row(1, 65.0), row(2, 40.0)]
    found = fitted(boxes, rows, PAGE)
    assert found[0] == found[1] > 1.3
    assert found[2] == 1.0  # nothing has to be filled at the end


def test_a_picture_as_wide_as_the_page_does_not_grow() -> None:
    boxes = [Box(number=0, height=80.0), Box(number=1, height=180.0)]
    assert fitted(boxes, [row(0, 70.0, drawn=60.0)], PAGE)[0] == 1.0


def test_pictures_give_way_so_that_no_page_holds_a_few_lines() -> None:
    boxes = [Box(number=0, height=110.0), Box(number=1, height=90.0), text(2, 12.0)]
    found = fitted(boxes, [row(0, 100.0), row(1, 80.0)], PAGE)
    assert 22.0 + 100.0 * found[0] + 80.0 * found[1] <= PAGE


def test_no_picture_gives_way_for_what_begins_a_page_anyway() -> None:
    boxes = [text(0, 150.0), Box(number=1, height=60.0, fresh=True)]
    assert fitted(boxes, [row(1, 60.0)], PAGE) == {0: 1.0}


def edges(*boxes: tuple[int, float, int, float, bool]) -> list[dict[str, Any]]:
    """Return the places of boxes: page and y where each begins, and where it ends; ``fresh``."""
    return [
        edge
        for page, y, last, end, fresh in boxes
        for edge in (
            {"at": "start", "page": page, "y": y, "fresh": fresh},
            {"at": "end", "page": last, "y": end},
        )
    ]


@pytest.mark.parametrize(
    ("boxes", "empty"),
    [
        (((1, 17.0, 1, 120.0, False), (2, 17.0, 2, 270.0, False)), 1),
        (((1, 17.0, 1, 200.0, False), (2, 17.0, 2, 270.0, False)), 0),
        (((1, 17.0, 1, 120.0, False), (2, 17.0, 2, 270.0, True)), 0),  # it begins a page
        (((1, 17.0, 2, 120.0, False), (2, 125.0, 2, 150.0, False)), 0),  # the last page
        (((1, 17.0, 2, 90.0, False), (3, 17.0, 3, 60.0, False), (4, 17.0, 4, 30.0, False)), 2),
    ],
)
def test_pages_that_stand_half_empty_are_counted(
    boxes: tuple[tuple[int, float, int, float, bool], ...], empty: int
) -> None:
    """A4 has 253 mm between the margins; a third of it is blank above y = 185.7 mm."""
    assert half_empty(edges(*boxes), Measure(paper=A4)) == empty
