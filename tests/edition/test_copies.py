"""Several copies: how their sheets are counted, and that it is said."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.edition.copies import copies_remark
from kerfolio.layouts.count import sheets_for
from kerfolio.layouts.layout import CopiesCount
from tests.edition.carrying import carrying
from tests.plans import small_layout

TOGETHER = "Sheets are counted for all copies laid out together."
APART = "Every copy is counted with whole sheets of its own; laid out together they may take fewer."


def test_a_table_of_the_layout_tells_the_sheets_of_several_copies() -> None:
    size = (2440.0, 1220.0)
    counted = CopiesCount(sheet="ply", size=size, counts=(1, 1, 2, 2, 3, 3))
    layout = replace(small_layout(), copies=(counted,))
    assert [sheets_for(layout, n) for n in range(1, 8)] == [
        {("ply", size): count} for count in (1, 1, 2, 2, 3, 3, 7)
    ]
    assert [sheets_for(small_layout(), n) for n in (1, 6)] == [
        {("ply", size): 1},
        {("ply", size): 6},
    ]


def test_one_copy_takes_the_sheets_of_the_layout_as_it_lies() -> None:
    counted = CopiesCount(sheet="ply", size=(2440.0, 1220.0), counts=(2, 4))
    layout = replace(small_layout(), copies=(counted,))
    assert sheets_for(layout, 1) == {("ply", counted.size): 1}
    assert sheets_for(layout, 2) == {("ply", counted.size): 4}


def test_sizes_that_only_many_copies_take_are_told_for_them_alone() -> None:
    whole = CopiesCount(sheet="ply", size=(2440.0, 1220.0), counts=(0, 1))
    small = CopiesCount(sheet="ply", size=(1220.0, 1220.0), counts=(1, 0))
    layout = replace(small_layout(), copies=(whole, small))
    assert sheets_for(layout, 2) == {("ply", whole.size): 1}


def test_how_the_sheets_were_counted_is_said() -> None:
    edition = carrying()
    assert copies_remark(edition) == APART
    table = tuple(
        CopiesCount(sheet=name, size=(2440.0, 1220.0), counts=(1, 1, 1, 2, 2, 2))
        for name in ("ply", "thin")
    )
    together = replace(edition, layout=replace(edition.layout, copies=table))
    assert copies_remark(together) == TOGETHER
    half = replace(edition, layout=replace(edition.layout, copies=table[:1]))
    assert copies_remark(half) == APART
