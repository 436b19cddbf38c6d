"""Bands on pages: what stays together, what is repeated, what stands beside what."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.reader import METRIC
from kerfolio.paper.band import Band, beside, blank, fresh, kept, paragraph, spaced, total
from kerfolio.paper.flow import flowed, leaves
from kerfolio.paper.grid import Grid
from kerfolio.paper.ledger import Column, table
from kerfolio.paper.picture import giving_way
from kerfolio.paper.section import foot
from kerfolio.writing.page import Passage, Role, Run, Text
from kerfolio.writing.typeface import Style
from tests.paper.editions import A4, LETTER

GRID = Grid(paper=A4)
HALF = GRID.height / 2
STYLE = Style(points=10)


def named(name: str, height: float = 10.0) -> Band:
    mark = Text(x=0, y=-5, runs=(Run(name, STYLE),))
    return Band(height=height, passages=(Passage(marks=(mark,)),))


def names(page: list[tuple[float, Band]]) -> list[str]:
    return [
        run.text
        for _, band in page
        for passage in band.passages
        for mark in passage.marks
        if isinstance(mark, Text)
        for run in mark.runs
    ]


def pages(*bands: Band) -> list[list[str]]:
    return [names(page) for page in leaves(bands, GRID)]


def test_bands_fill_a_page_and_go_on_to_the_next() -> None:
    assert pages(named("a", HALF), named("b", HALF), named("c", HALF)) == [["a", "b"], ["c"]]


def test_what_sticks_together_moves_together() -> None:
    group = kept((named("b", 0.4 * HALF), named("c", 0.4 * HALF)))
    assert pages(named("a", 1.5 * HALF), *group) == [["a"], ["b", "c"]]


def test_a_group_higher_than_a_page_is_broken_where_it_must_be() -> None:
    group = kept([named(str(number), 0.9 * HALF) for number in range(4)])
    assert pages(*group) == [["0", "1"], ["2", "3"]]


def test_a_fresh_band_begins_a_page_but_leaves_no_blank_one() -> None:
    assert pages(*fresh((named("a"),)), *fresh((named("b"),))) == [["a"], ["b"]]


def test_space_above_is_dropped_at_the_top_of_a_page() -> None:
    spread = leaves((named("a", 1.9 * HALF), *spaced((named("b"),), 30)), GRID)
    assert [[down for down, _ in page] for page in spread] == [[0.0], [0.0]]


def test_a_table_repeats_its_head_on_every_page() -> None:
    rows = [(f"row {number}", "x") for number in range(120)]
    spread = pages(*table((Column(head="Mark", grows=True), Column(head="Size")), rows, 150))
    assert len(spread) >= 3
    assert all(page[:2] == ["MARK", "SIZE"] for page in spread)
    assert [name for page in spread for name in page if name.startswith("row")] == [
        first for first, _ in rows
    ]


def test_a_table_never_leaves_its_head_or_a_single_row_behind() -> None:
    rows = [(f"row {number}",) for number in range(3)]
    body = table((Column(head="Mark"),), rows, 150)
    for left in range(0, 60, 2):
        spread = pages(named("before", GRID.height - left), *body)
        counted = [sum(name.startswith("row") for name in page) for page in spread]
        heads = [page.count("MARK") for page in spread]
        assert [
            head for head, count in zip(heads, counted, strict=True) if head and not count
        ] == []
        assert counted[-1] != 1


def test_a_paragraph_keeps_two_lines_at_either_end_of_a_page() -> None:
    words = "The side stands on its back edge and the rail slides into the slot. " * 4
    body = paragraph((Run(words, STYLE),), 80, 5.0)
    assert len(body) > 4
    for left in range(0, 60):
        spread = leaves((named("before", GRID.height - left), *body), GRID)
        lines = [sum(band in body for _, band in page) for page in spread]
        assert all(count != 1 for count in lines), (left, lines)


def test_a_short_column_stays_whole_beside_a_long_one() -> None:
    left = [named("label", 12.0), named("more", 20.0)]
    right = [named(f"line {number}", 5.0) for number in range(30)]
    both = beside(left, right)
    assert total(both) == pytest.approx(150)
    for room in range(5, 80, 5):
        spread = leaves((named("before", GRID.height - room), *both), GRID)
        (page,) = [page for page in spread if "label" in names(page)]
        assert sum(name.startswith("line") for name in names(page)) * 5 >= 32


def test_a_long_label_takes_its_room_beside_a_short_text() -> None:
    both = beside([named("label", 50.0)], [named("text", 10.0)])
    assert total(both) == pytest.approx(50)
    assert beside((), (named("text"),)) == (named("text"),)


@given(st.lists(st.tuples(st.floats(1, 120), st.booleans(), st.floats(0, 20)), max_size=60))
def test_nothing_is_lost_and_nothing_stands_below_the_margin(
    shapes: list[tuple[float, bool, float]],
) -> None:
    bands = [
        replace(named(str(number), height), stick=stick, space=space)
        for number, (height, stick, space) in enumerate(shapes)
    ]
    spread = leaves(bands, GRID)
    assert [name for page in spread for name in names(page)] == [str(n) for n in range(len(bands))]
    for page in spread:
        below = 0.0
        for down, band in page:
            assert down >= below - 1e-9
            below = down + band.height
        assert below <= GRID.height + 1e-6


def test_every_page_has_its_foot_with_the_right_number() -> None:
    grid = Grid(paper=LETTER)
    made = flowed([blank(150.0)] * 3, grid, foot("Harbour stool", "", grid, METRIC), before=1)
    last = [page.passages[-1] for page in made]
    assert all(passage.role is Role.DECORATION for passage in last)
    words = [[mark.runs[0].text for mark in p.marks if isinstance(mark, Text)] for p in last]
    assert words == [["Harbour stool", f"Page {number} of 4"] for number in (2, 3, 4)]


@pytest.mark.parametrize(
    ("words", "least", "high"),
    [
        (HALF, 40.0, 80.0),  # there is room
        (GRID.height - 61.0, 40.0, 60.0),
        (GRID.height - 41.0, 40.0, 40.0),
        (GRID.height - 39.0, 40.0, 80.0),  # not even the lowest would do
    ],
)
def test_a_picture_gives_way_where_that_saves_a_page(
    words: float, least: float, high: float
) -> None:
    def made(height: float) -> tuple[Band, ...]:
        return named("picture", height), named("words", words)

    picture, _ = giving_way(made, 80.0, least, GRID)
    assert picture.height == high
