"""Pictures give way or grow so that pages fill."""

from __future__ import annotations

from kerfolio.booklet.fitting import Box, fitted
from kerfolio.booklet.rows import PictureRow

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
