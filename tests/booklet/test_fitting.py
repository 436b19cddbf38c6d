"""Pictures give way or grow so that pages fill."""

from __future__ import annotations

from typing import Any

import pytest

from kerfolio.booklet.fitting import Atom, atoms_of, half_empty, planned
from kerfolio.booklet.measure import Measure
from kerfolio.booklet.rows import PictureRow
from tests.paper.editions import A4

PAGE = 200.0


def row(
    box: int, room: float, drawn: float | None = None, *, least: float = 0.0, most: float = 1000.0
) -> PictureRow:
    high = room if drawn is None else drawn
    return PictureRow(number=box, box=box, room=room, drawn=high, least=least, most=most)


def whole(box: int, height: float, *rows: PictureRow, fresh: bool = False, rank: str = "") -> Atom:
    return Atom(box=box, height=height, rows=rows, fresh=fresh, rank=rank)


def text(box: int, count: int, high: float = 5.0, *, fresh: bool = False) -> list[Atom]:
    """Return lines of a text that pages may part."""
    head = Atom(box=box, height=high, fresh=fresh)
    return [head, *(Atom(height=high) for _ in range(count - 1))]


def test_a_picture_gives_way_where_that_saves_a_half_empty_page() -> None:
    atoms = [*text(0, 24), whole(1, 110.0, row(1, 100.0)), *text(2, 12)]
    found = planned(atoms, PAGE)
    assert 0.6 < found.shares[1] <= 0.7
    assert 120.0 + 10.0 + 100.0 * found.shares[1] <= PAGE
    assert found.breaks == {0, 2}


def test_pictures_grow_where_a_page_has_the_room() -> None:
    rows = [row(0, 65.0), row(1, 65.0), row(2, 40.0)]
    atoms = [whole(0, 75.0, rows[0]), whole(1, 75.0, rows[1]), whole(2, 150.0, rows[2])]
    found = planned(atoms, PAGE).shares
    assert found[0] == found[1] > 1.3
    assert found[2] == 1.0  # nothing has to be filled at the end


def test_a_picture_as_wide_as_the_page_does_not_grow() -> None:
    wide = row(0, 70.0, drawn=60.0, most=60.0)
    rest = [whole(0, 80.0, wide), whole(1, 90.0, row(1, 70.0)), whole(2, 190.0)]
    found = planned(rest, PAGE).shares
    assert wide.at(found[0]) == 60.0
    assert 20.0 + 60.0 + 20.0 + 70.0 * found[1] == pytest.approx(PAGE, abs=0.1)


def test_a_picture_that_cannot_shrink_is_not_counted_on_to_shrink() -> None:
    stiff = row(1, 100.0, least=90.0)
    found = planned([*text(0, 24), whole(1, 110.0, stiff), *text(2, 12)], PAGE)
    assert found.breaks == {0, 1}


def test_pictures_give_way_so_that_no_page_holds_a_few_lines() -> None:
    rows = [row(0, 100.0), row(1, 80.0)]
    atoms = [whole(0, 110.0, rows[0]), whole(1, 90.0, rows[1]), *text(2, 3, 4.0)]
    found = planned(atoms, PAGE).shares
    assert 20.0 + 12.0 + 100.0 * found[0] + 80.0 * found[1] <= PAGE + 0.1


def test_no_picture_gives_way_for_what_begins_a_page_anyway() -> None:
    atoms = [*text(0, 30), whole(1, 60.0, row(1, 60.0), fresh=True)]
    assert planned(atoms, PAGE).shares == {1: 1.0}


def test_a_page_ends_early_where_the_next_would_be_half_empty_else() -> None:
    atoms = [whole(box, high) for box, high in enumerate((80.0, 60.0, 55.0, 85.0, 190.0))]
    assert planned(atoms, PAGE).breaks == {0, 2, 4}


def test_what_belongs_together_stands_together() -> None:
    head = Atom(box=1, height=10.0, sticks=True)
    found = planned([whole(0, 150.0), head, whole(2, 100.0), whole(3, 90.0)], PAGE)
    assert found.breaks == {0, 1}


@pytest.mark.parametrize(("rank", "breaks"), [("chapter", {0, 1, 3}), ("", {0, 2, 3})])
def test_a_page_ends_early_for_a_chapter_rather_than_for_a_text(
    rank: str, breaks: set[int]
) -> None:
    atoms = [whole(0, 150.0), whole(1, 20.0, rank=rank), whole(2, 140.0), whole(3, 190.0)]
    assert planned(atoms, PAGE).breaks == breaks


def test_no_page_ends_within_a_text_that_goes_on() -> None:
    """Two pages would be filled alike if one ended early within the text; but typst goes on."""
    found = planned([whole(0, 100.0), *text(1, 28), whole(2, 180.0), whole(3, 190.0)], PAGE)
    assert found.breaks == {0, 1, 2, 3}


def told_box(box: int, y: float, end: float, *parts: tuple[float, bool], **more: Any) -> list[Any]:
    """Return the places of a box and of its parts, whole or not."""
    start = {"at": "start", "page": 2, "y": y, "box": box, "above": 5.0, "whole": False}
    manners = {"sticks": False, "fresh": False, "rank": "", "again": 0.0}
    within = [{"at": "part", "page": 2, "y": at, "whole": one} for at, one in parts]
    return [start | manners | more, *within, {"at": "end", "page": 2, "y": end}]


def test_lines_of_a_text_are_parted_but_for_two_at_either_end() -> None:
    atoms = atoms_of([*told_box(7, 20.0, 50.0), *told_box(8, 54.0, 60.0, whole=True)], [])
    assert [each.box for each in atoms] == [7, -1, -1, -1, -1, -1, 8]
    assert [each.sticks for each in atoms] == [True, False, False, False, True, False, False]
    assert [each.height for each in atoms] == [5.0] * 6 + [6.0]
    assert [each.after for each in atoms] == [0.0] * 5 + [4.0, 0.0]


def test_rows_are_parted_and_none_at_an_end_should_be_alone() -> None:
    rows = ((26.0, True), (36.0, True), (46.0, True))
    atoms = atoms_of(told_box(7, 20.0, 56.0, *rows, again=6.0), [])
    assert [each.height for each in atoms] == [6.0, 10.0, 10.0, 10.0]
    assert [each.lone for each in atoms] == [True, False, True, False]
    assert [each.again for each in atoms] == [0.0, 6.0, 6.0, 6.0]
    assert not any(each.sticks for each in atoms)


def test_what_is_held_together_is_not_parted() -> None:
    box = told_box(7, 20.0, 60.0, (20.0, True), (30.0, True), (50.0, False))
    held = [{"at": "held", "by": by, "page": 2, "y": 20.0 + by} for by in (1, -1)]
    atoms = atoms_of([*box[:2], held[0], box[2], held[1], *box[3:]], [])
    assert [each.height for each in atoms] == [30.0, 5.0, 5.0]


def test_a_box_with_pictures_is_whole_and_has_them() -> None:
    found = row(7, 30.0)
    (atom,) = atoms_of(told_box(7, 20.0, 60.0), [found])
    assert (atom.rows, atom.rest) == ((found,), 10.0)


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
