"""Several copies: how their sheets are counted, and that it is said."""

from __future__ import annotations

from dataclasses import replace

from generator.edition.copies import APART, TOGETHER, copies_remark
from generator.layouts.count import sheets_for
from tests.edition.carrying import carrying
from tests.plans import small_layout


def test_a_table_of_the_layout_tells_the_sheets_of_several_copies() -> None:
    layout = replace(small_layout(), copies=(("ply", (1, 1, 2, 2, 3, 3)),))
    assert [sheets_for(layout, n)["ply"] for n in range(1, 8)] == [1, 1, 2, 2, 3, 3, 7]
    assert [sheets_for(small_layout(), n)["ply"] for n in (1, 6)] == [1, 6]


def test_how_the_sheets_were_counted_is_said() -> None:
    edition = carrying()
    assert copies_remark(edition) == APART
    table = tuple((name, (1, 1, 1, 2, 2, 2)) for name in ("ply", "thin"))
    together = replace(edition, layout=replace(edition.layout, copies=table))
    assert copies_remark(together) == TOGETHER
    half = replace(edition, layout=replace(edition.layout, copies=table[:1]))
    assert copies_remark(half) == APART
