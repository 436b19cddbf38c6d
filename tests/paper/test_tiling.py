"""How full-size drawings are cut into pages."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.drawing.vocabulary import Drawing, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.shapes import rectangle
from kerfolio.paper.seam_run import Along, seam_run
from kerfolio.paper.seams import tiling_of
from kerfolio.paper.tiling import OVERLAP, tile_count, tile_name, window_of
from tests.paper.editions import A4, LETTER

# Sheet sizes of trade, papers of ISO 216 and ANSI Y14.1; the counts worked out apart from the
# program, with 10 mm margins and 10 mm overlap.
VECTORS = [
    ((1220, 2440), (190, 277), (7, 10)),  # A4 standing
    ((1220, 2440), (277, 190), (5, 14)),  # A4 lying
    ((1220, 2440), (277, 400), (5, 7)),  # A3 standing
    ((1525, 1525), (190, 277), (9, 6)),
    ((1525, 1525), (277, 400), (6, 4)),
    ((1525, 1525), (195.9, 259.4), (9, 7)),  # Letter standing
]


@pytest.mark.parametrize(("sheet", "printable", "tiles"), VECTORS)
def test_known_sheets_take_the_known_number_of_tiles(
    sheet: tuple[float, float], printable: tuple[float, float], tiles: tuple[int, int]
) -> None:
    counted = tuple(tile_count(side, room) for side, room in zip(sheet, printable, strict=True))
    assert counted == tiles


@pytest.mark.parametrize(("length", "count"), [(10, 1), (190, 1), (190.1, 2), (370, 2), (370.1, 3)])
def test_a_length_at_the_border_takes_no_tile_too_many(length: float, count: int) -> None:
    assert tile_count(length, 190) == count


def drawn(wide: float, high: float, *items: Stroke) -> Drawing:
    return Drawing(box=(0.0, 0.0, wide, high), items=items)


def line(*spots: tuple[float, float]) -> Stroke:
    return Stroke(contour=Contour(tuple((x, y, 0.0) for x, y in spots), closed=False))


def frame(wide: float, high: float) -> Drawing:
    return drawn(wide, high, Stroke(contour=rectangle(0, 0, wide, high)))


def test_the_paper_lies_down_where_that_saves_pages() -> None:
    assert tiling_of([frame(260, 180)], A4).page == (297.0, 210.0)
    assert tiling_of([frame(180, 260)], A4).page == (210.0, 297.0)
    assert len(tiling_of([frame(260, 180)], A4).printed) == 1


@given(
    st.floats(5, 3000),
    st.sampled_from([*window_of((A4.width, A4.height)), *window_of((LETTER.width, LETTER.height))]),
    st.integers(0, 1),
    st.lists(st.tuples(st.floats(0, 3000), st.floats(0, 120)), max_size=12),
)
def test_tiles_cover_the_drawing_and_overlap(
    length: float, window: float, more: int, spans: list[tuple[float, float]]
) -> None:
    count = tile_count(length, window)
    count += more if count > 1 else 0
    along = Along.of(length, [(a, a + wide) for a, wide in spans], window - OVERLAP)
    starts = seam_run([along], count, window).starts
    assert len(starts) == count
    assert starts[0] <= 1e-6
    assert starts[-1] + window >= length - 1e-6
    for one, other in pairwise(starts):
        assert 0 < other - one <= window - OVERLAP + 1e-6


def test_every_seam_is_moved_by_itself() -> None:
    """Tiles of 190 mm, three of them over 500 mm: seams end at 184 and 364, 42 mm before at most.

    Moved together they would cross one of the two spans wherever they lay.
    """
    spans = [(145.0, 170.0), (340.0, 362.0)]
    run = seam_run([Along.of(500.0, spans, 180.0)], 3, 190.0)
    first, second = (start + OVERLAP / 2 for start in run.starts[1:])
    assert run.crossed == 0
    assert first >= 172.5
    assert second <= 337.5
    assert second - first <= 180.0


def test_a_seam_crosses_where_nothing_else_is_left() -> None:
    run = seam_run([Along.of(500.0, [(130.0, 190.0)], 180.0)], 3, 190.0)
    assert run.crossed == 1


def test_tiles_are_named_by_row_from_the_top_and_column() -> None:
    tiles = tiling_of([frame(370, 540)], A4)
    placed = [tiles.tile(spot) for spot in tiles.spots]
    assert [tile.name for tile in placed] == ["1-1", "1-2", "2-1", "2-2"]
    assert placed[0].bottom > placed[2].bottom


@given(st.integers(1, 40), st.integers(1, 40), st.integers(1, 700))
def test_no_tile_is_called_as_a_piece_is_marked(column: int, row: int, index: int) -> None:
    """Marks begin with a letter, or in a set with a number and a stroke (`1/A`)."""
    name = tile_name((column, row))
    assert not re.fullmatch(r"([0-9]+/)?[A-Z]+[0-9]*", name)
    assert re.fullmatch(r"([0-9]+/)?[A-Z]+[0-9]*", f"{index}/A{index}")


def test_seams_move_off_what_is_cut() -> None:
    """A4 standing: two tiles cover 370 mm, their seam lies anywhere from 116 to 184 of 300 mm.

    A seam keeps 2.5 mm off, since its crosses reach 2 mm.
    """
    middle = tiling_of([frame(300, 200)], A4)
    assert middle.seams == ((150.0,), ())
    edge, slot = (
        Stroke(contour=each) for each in (rectangle(0, 0, 300, 200), rectangle(140, 50, 158, 120))
    )
    ((at,), _) = tiling_of([drawn(300, 200, edge, slot)], A4).seams
    assert at in (137.0, 161.0)
    hole = Stroke(contour=rectangle(158.5, 20, 175, 30))
    ((at,), _) = tiling_of([drawn(300, 200, edge, slot, hole)], A4).seams
    assert at == 137.0


def test_seams_move_off_tabs_and_notches_of_an_outline() -> None:
    spots = ((0, 0), (300, 0), (300, 200), (158, 200), (158, 150), (140, 150), (140, 200), (0, 200))
    notched = Stroke(contour=Contour(tuple((x, y, 0.0) for x, y in spots)))
    ((at,), _) = tiling_of([drawn(300, 200, notched)], A4).seams
    assert at < 137.5 or at > 160.5


def test_a_page_more_is_taken_where_it_leaves_slots_whole() -> None:
    """Over 368 mm, a seam of two tiles lies at 183 to 185 mm; slots of ten lines stand there."""
    slots = [Stroke(contour=rectangle(160 + n, 10 * n, 210, 10 * n + 8)) for n in range(10)]
    outline = Stroke(contour=rectangle(0, 0, 368, 200))
    whole = tiling_of([drawn(368, 200, outline, *slots)], A4)
    assert len(tiling_of([drawn(368, 200, outline)], A4).printed) == 2
    boxes = [(s.contour.vertices[0][0], s.contour.vertices[1][0]) for s in slots]
    across, up = whole.seams
    assert not any(low < at < high for at in across for low, high in boxes)
    assert len(whole.printed) <= 4
    assert up == () or len(across) < 2


def test_one_tiling_serves_all_drawings_of_a_part() -> None:
    """What is a little too large at one end of a range takes its pages at the other end, too."""
    small, large = frame(369, 200), frame(371, 200)
    assert len(tiling_of([small], A4).printed) == 2
    both = tiling_of([small, large], A4)
    assert both.columns == tiling_of([large], A4).columns
    lines = [drawn(369, 200, line((10, 10), (20, 10))), drawn(371, 200, line((360, 10), (370, 10)))]
    only = tiling_of(lines, A4)
    assert {0, only.columns - 1} <= {column for column, _ in only.printed}


def test_a_tile_that_no_drawing_reaches_is_left_out() -> None:
    corner = line((0, 1), (0, 520), (360, 520))
    assert tiling_of([drawn(360, 520, corner)], A4).left_out == {(1, 1)}
