"""How full-size drawings are cut into pages."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.drawing.vocabulary import Drawing, Stroke
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.shapes import rectangle
from kerfolio.model.stock import PaperStock
from kerfolio.paper.seams import tiling_of
from kerfolio.paper.tiling import MARGIN, OVERLAP, Tiling, even_tiling, tile_count, tile_name
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
    st.floats(5, 3000),
    st.sampled_from([A4, LETTER]),
    st.tuples(st.floats(0, 1), st.floats(0, 1)),
)
def test_tiles_cover_the_drawing_and_overlap(
    width: float, height: float, paper: PaperStock, share: tuple[float, float]
) -> None:
    size = (width, height)
    tiles = replace(even_tiling(size, (paper.width, paper.height)), share=share)
    boxes = {spot: tiles.box(tiles.tile(spot, size)) for spot in tiles.spots}
    assert min(box[0] for box in boxes.values()) <= 1e-6
    assert min(box[1] for box in boxes.values()) <= 1e-6
    assert max(box[2] for box in boxes.values()) >= width - 1e-6
    assert max(box[3] for box in boxes.values()) >= height - 1e-6
    for (column, row), box in boxes.items():
        if (column + 1, row) in boxes:
            assert box[2] - boxes[column + 1, row][0] == pytest.approx(OVERLAP)
        if (column, row + 1) in boxes:
            assert boxes[column, row + 1][3] - box[1] == pytest.approx(OVERLAP)
    assert tiles.window == (tiles.page[0] - 2 * MARGIN, tiles.page[1] - 2 * MARGIN)


def test_tiles_are_named_by_row_from_the_top_and_column() -> None:
    tiles = tiling_of([frame(370, 540)], A4)
    placed = [tiles.tile(spot, (370, 540)) for spot in tiles.spots]
    assert [tile.name for tile in placed] == ["1-1", "1-2", "2-1", "2-2"]
    assert placed[0].bottom > placed[2].bottom


@given(st.integers(1, 40), st.integers(1, 40), st.integers(1, 700))
def test_no_tile_is_called_as_a_piece_is_marked(column: int, row: int, index: int) -> None:
    """Marks begin with a letter, or in a set with a number and a stroke (`1/A`)."""
    name = tile_name((column, row))
    assert not re.fullmatch(r"([0-9]+/)?[A-Z]+[0-9]*", name)
    assert re.fullmatch(r"([0-9]+/)?[A-Z]+[0-9]*", f"{index}/A{index}")


def seams(tiling: Tiling, size: tuple[float, float]) -> tuple[list[float], list[float]]:
    """Return where the seams lie, mm from the drawing's corner: across, up."""
    across = {tiling.tile((c, 0), size).left + OVERLAP / 2 for c in range(1, tiling.columns)}
    rows = range(tiling.rows - 1)
    up = {tiling.tile((0, r), size).bottom + OVERLAP / 2 for r in rows}
    return sorted(across), sorted(up)


def test_seams_move_off_what_is_cut() -> None:
    """A4 standing: two tiles cover 370 mm, their seam lies anywhere from 115 to 185 of 300 mm."""
    middle = tiling_of([frame(300, 200)], A4)
    assert seams(middle, (300, 200)) == ([150.0], [])
    slot = Stroke(contour=rectangle(140, 50, 158, 120))
    ((at,), _) = seams(tiling_of([drawn(300, 200, slot)], A4), (300, 200))
    assert at == pytest.approx(160, abs=0.6)
    hole = Stroke(contour=rectangle(158.5, 20, 175, 30))
    ((at,), _) = seams(tiling_of([drawn(300, 200, slot, hole)], A4), (300, 200))
    assert at == pytest.approx(138, abs=0.6)


def test_seams_move_off_tabs_and_notches_of_an_outline() -> None:
    spots = ((0, 0), (300, 0), (300, 200), (158, 200), (158, 150), (140, 150), (140, 200), (0, 200))
    notched = Stroke(contour=Contour(tuple((x, y, 0.0) for x, y in spots)))
    ((at,), _) = seams(tiling_of([drawn(300, 200, notched)], A4), (300, 200))
    assert at < 138.5 or at > 159.5


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
