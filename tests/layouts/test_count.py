from __future__ import annotations

from kerfolio.layouts.count import sheets_used
from kerfolio.layouts.layout import Layout
from kerfolio.layouts.plan_layout import lay_out
from tests.layouts.plans import two_boards


def test_sheets_are_counted_by_material() -> None:
    layout, _ = lay_out([two_boards()])
    assert layout is not None
    assert sheets_used(layout) == {"ply": 1}
    assert sheets_used(Layout(sheets=(), engine="", computed_from="")) == {}
