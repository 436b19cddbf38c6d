"""How full-size drawings are cut into pages."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.paper.tiling import MARGIN, OVERLAP, letters, tile_count, tiling
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


def test_the_paper_lies_down_where_that_saves_pages() -> None:
    assert tiling(260, 180, A4).page == (297.0, 210.0)
    assert tiling(180, 260, A4).page == (210.0, 297.0)
    assert len(tiling(260, 180, A4).tiles) == 1


@given(st.floats(5, 3000), st.floats(5, 3000), st.sampled_from([A4, LETTER]))
def test_tiles_cover_the_drawing_and_overlap(width: float, height: float, paper: object) -> None:
    tiles = tiling(width, height, paper)  # type: ignore[arg-type]
    boxes = [tiles.box(tile) for tile in tiles.tiles]
    assert min(box[0] for box in boxes) <= 1e-6
    assert min(box[1] for box in boxes) <= 1e-6
    assert max(box[2] for box in boxes) >= width - 1e-6
    assert max(box[3] for box in boxes) >= height - 1e-6
    by_spot = {(tile.column, tile.row): tiles.box(tile) for tile in tiles.tiles}
    for (column, row), box in by_spot.items():
        if (column + 1, row) in by_spot:
            assert box[2] - by_spot[column + 1, row][0] == pytest.approx(OVERLAP)
        if (column, row + 1) in by_spot:
            assert by_spot[column, row + 1][3] - box[1] == pytest.approx(OVERLAP)
    assert tiles.window == (tiles.page[0] - 2 * MARGIN, tiles.page[1] - 2 * MARGIN)


def test_columns_are_letters_and_rows_numbers_from_the_top() -> None:
    tiles = tiling(370, 540, A4)
    assert [tile.name for tile in tiles.tiles] == ["A1", "B1", "A2", "B2"]
    top, below = tiles.tiles[0], tiles.tiles[2]
    assert top.bottom > below.bottom
    assert [letters(index) for index in (0, 25, 26, 701, 702)] == ["A", "Z", "AA", "ZZ", "AAA"]
