"""Remarks that rest on the stock say which file the figure came from."""

from __future__ import annotations

from pathlib import Path

from kerfolio.proving.prove import prove_plan
from kerfolio.reading.workshop import read_workshop
from tests.plans import RACK, lay_down

WIDE = RACK.replace("published-for: 17.6 to 18.2 by 0.2", "published-for: 17.0 to 17.4 by 0.2")


def advice(folder: Path) -> str:
    workshop, _ = read_workshop(folder)
    assert workshop is not None
    found = prove_plan(workshop.plans[0], workshop.stock).findings
    return next(each.advice for each in found if each.rule == "thick-sheet-uncovered")


def test_the_library_is_named_where_its_figure_counts(tmp_path: Path) -> None:
    assert "`birch-plywood-18` (content/sheets.yaml)" in advice(lay_down(tmp_path / "w", WIDE))


def test_a_maker_s_own_figure_is_named_by_its_file(tmp_path: Path) -> None:
    shop = lay_down(tmp_path / "w", WIDE)
    (shop / "stock").mkdir()
    (shop / "stock" / "mine.yaml").write_text(
        "sheets:\n  birch-plywood-18: {most: 18.4}\n", "utf-8"
    )
    assert "`birch-plywood-18` (stock/mine.yaml) is sold up to 18.4 mm" in advice(shop)
