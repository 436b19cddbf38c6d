from __future__ import annotations

import pytest

from generator.layouts.count import area_share, sheets_used
from generator.layouts.layout import Layout
from generator.layouts.plan_layout import lay_out
from tests.layouts.plans import part_of, plan_of, two_boards, window_frame


def test_sheets_are_counted_by_material() -> None:
    layout, _ = lay_out([two_boards()])
    assert layout is not None
    assert sheets_used(layout) == {"ply": 1}
    assert sheets_used(Layout(sheets=(), engine="", computed_from="")) == {}


def test_the_share_of_a_sheet_leaves_windows_out() -> None:
    settled = plan_of((part_of("frame", window_frame(), ("a", "b")),))
    layout, _ = lay_out([settled])
    assert layout is not None
    share = area_share(layout.sheets[0], settled)
    assert share == pytest.approx(2 * (500 * 500 - 400 * 400) / (2440 * 1220))
