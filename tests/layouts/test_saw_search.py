from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.layouts.guillotine import Box, is_guillotine
from kerfolio.layouts.saw_levels import Levels, Stock, filled
from kerfolio.layouts.saw_search import bound, fewest_sheets
from tests.layouts.instances import known, saw_stock

KNOWN = known("guillotine2d")


def boxes_of(levels: Levels, stock: Stock) -> list[Box]:
    """Lay the levels out and return each piece's box; assert that it has one of its sizes."""
    boxes: list[Box] = []
    v = 0
    for strip in levels.strips:
        u = 0
        for column in strip.columns:
            up = v
            for piece, wide, high in column.pieces:
                box = (u, up, u + wide, up + high)
                size = (high, wide) if levels.turned else (wide, high)
                assert size in stock.sizes[piece]
                boxes.append((box[1], box[0], box[3], box[2]) if levels.turned else box)
                up += high
            assert up <= v + strip.height
            u += column.width
        v += strip.height
    return boxes


def proper(sheets: list[Levels], stock: Stock) -> None:
    """Every piece lies on one sheet, inside it, and every sheet comes apart from edge to edge."""
    pieces = sorted(piece for sheet in sheets for piece in sheet.pieces)
    assert pieces == list(range(len(stock.sizes)))
    for sheet in sheets:
        boxes = boxes_of(sheet, stock)
        assert all(box[2] <= stock.room[0] and box[3] <= stock.room[1] for box in boxes)
        assert is_guillotine(boxes)


# Berkey and Wang 1987, Martello and Vigo 1998; best known three-stage values as in
# tests/data/guillotine2d/best_known.csv. A few tries only: the bench has the full search.
@pytest.mark.parametrize("rotatable", [False, True], ids=["fixed", "rotatable"])
@pytest.mark.parametrize("name", sorted(KNOWN))
def test_published_instances_come_near_the_best_known(name: str, rotatable: bool) -> None:
    stock = saw_stock(name, rotatable=rotatable)
    sheets = fewest_sheets(stock, tries=600, tidying=50)
    proper(sheets, stock)
    row = KNOWN[name]
    any_way = int(row["best_any_rotatable" if rotatable else "best_any_fixed"])
    assert int(row["area_bound"]) <= bound(stock) <= any_way
    best = int(row["best_three_stage_rotatable" if rotatable else "best_three_stage_fixed"])
    assert len(sheets) <= best + 1


def test_tidying_lowers_the_settings_and_keeps_the_sheets() -> None:
    stock = saw_stock("bw_class03_n20_1", rotatable=True)
    rough, tidy = fewest_sheets(stock, 500, 0), fewest_sheets(stock, 500, 800)
    assert len(tidy) == len(rough)
    assert sum(each.settings for each in tidy) < sum(each.settings for each in rough)


def test_settings_are_counted_by_stage() -> None:
    stock = Stock((100, 60), (((60, 30),), ((40, 30),), ((60, 20),), ((30, 10),), ((30, 10),)))
    (levels,) = filled(stock, range(5), (False,))
    assert [strip.height for strip in levels.strips] == [30, 20]
    # strips 30 and 20; columns 60, 40 and 30; pieces 10 high; none narrower than its column
    assert levels.settings == 2 + 3 + 1
    assert filled(stock, range(5), (False,), most=0) == []


def test_a_piece_larger_than_a_sheet_is_refused() -> None:
    with pytest.raises(ValueError, match="larger than a sheet"):
        filled(Stock((10, 10), (((11, 5),),)), [0], (False,))


def test_the_bound_counts_pieces_that_share_no_sheet() -> None:
    assert bound(Stock((10, 10), (((6, 6),),) * 3)) == 3
    assert bound(Stock((10, 10), (((6, 4),),) * 3)) == 1


SIZE = st.tuples(st.integers(1, 40), st.integers(1, 30))


@settings(deadline=None)
@given(st.lists(SIZE, min_size=1, max_size=12), st.booleans())
def test_any_pieces_are_laid_out_properly(sizes: list[tuple[int, int]], rotatable: bool) -> None:
    ways = [((w, h), (h, w)) if rotatable and w <= 30 else ((w, h),) for w, h in sizes]
    stock = Stock((40, 30), tuple(ways))
    sheets = fewest_sheets(stock, tries=30, tidying=30)
    proper(sheets, stock)
    assert len(sheets) >= bound(stock)
    assert sheets == fewest_sheets(stock, tries=30, tidying=30)
