"""The page of the library: every figure on it leads to its source and its file."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from kerfolio.model.stock import Stock
from kerfolio.pages.all_pages import site_texts
from kerfolio.pages.site import Site
from kerfolio.pages.stock import Table, chapters, stock_page
from kerfolio.reading.workshop import read_workshop
from tests.pages.invented import site
from tests.pages.markup import Tree

OWN = """\
sheets:
  birch-plywood-18: {actual: 17.8 mm, source: Own measurement}
  mdf-18: {density: 730}
cutters:
  tiny: {title: "Tiny <b>", diameter: 1 mm, kind: straight, flutes: 1, cutting-length: 4 mm}
"""


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> Site:
    """A site with the shipped library and a few entries of the maker's over it."""
    folder = tmp_path_factory.mktemp("shop")
    (folder / "workshop.yaml").write_text("workshop: X\nmaker: Y\nlicence: CC-BY-4.0\n", "utf-8")
    (folder / "stock").mkdir()
    (folder / "stock" / "own.yaml").write_text(OWN, "utf-8")
    workshop, findings = read_workshop(Path(folder))
    assert workshop is not None
    assert findings == ()
    return replace(site(), stock=workshop.stock)


def table(found: Site, anchor: str) -> Table:
    tables = {each.anchor: each for chapter in chapters(found) for each in chapter.tables}
    return tables[anchor]


def test_every_item_has_its_place_on_the_page(whole: Site) -> None:
    page = Tree(stock_page(whole))
    assert page.faults == []
    ids = page.values("id")
    assert len(ids) == len(set(ids))
    for kind, items in (
        *(("sheets", whole.stock.sheets), ("boards", whole.stock.boards)),
        *(("cutters", whole.stock.cutters), ("hardware", whole.stock.hardware)),
        *(("papers", whole.stock.papers), ("chip-loads", whole.stock.chip_loads)),
    ):
        assert {f"{kind}-{each.name}" for each in items} <= set(ids)


def test_every_mark_leads_to_a_note_and_every_figure_has_a_mark(whole: Site) -> None:
    for chapter in chapters(whole):
        for each in chapter.tables:
            marks = {note.mark for note in each.notes}
            assert len(marks) == len(each.notes)
            used = {head.mark for head in each.heads if head.mark}
            for row in each.rows:
                assert len(row.cells) == len(each.heads)
                for head, cell in zip(each.heads, row.cells, strict=True):
                    if cell.lines:
                        assert bool(head.mark) != bool(cell.mark)
                used |= {cell.mark for cell in row.cells if cell.mark}
            assert used == marks


def test_an_own_value_is_told_from_the_librarys(whole: Site) -> None:
    found = table(whole, "sheets-group-hardwood-plywood")
    (row,) = (each for each in found.rows if each.name == "birch-plywood-18")
    measures = row.cells[0]
    assert measures.lines == ("17.8 mm", "0.701 in")
    (note,) = (each for each in found.notes if each.mark == measures.mark)
    assert (note.columns, note.source) == (("Measures",), "Own measurement")
    assert note.file == "stock/own.yaml"
    others = {each.file for each in found.notes if each.mark != measures.mark}
    assert others == {"content/sheets.yaml"}


def test_a_value_without_a_source_says_so(whole: Site) -> None:
    notes = table(whole, "sheets-group-mdf").notes
    assert [(each.columns, each.file) for each in notes if each.source == "no source stated"] == [
        (("Density",), "stock/own.yaml")
    ]


def test_kinds_of_value_stand_with_the_source(whole: Site) -> None:
    sources = [each.source for each in table(whole, "sheets-group-mdf").notes]
    assert "least values; from memory: EN 622-5 (2009), general purpose, dry" in sources
    assert "mean values; Wood Handbook FPL-GTR-190 (2010), Table 12-1" in sources


def test_inches_come_first_for_those_who_measure_in_them(whole: Site) -> None:
    inches = replace(whole, identity=replace(whole.identity, units_first="in"))
    row = table(inches, "papers-group").rows[0]
    assert row.cells[0].lines == ("5.827 in", "148 mm")


def test_the_makers_words_stay_words(whole: Site) -> None:
    text = stock_page(whole)
    assert "Tiny &lt;b&gt;" in text
    assert "<b>" not in text


def test_every_page_of_the_site_leads_there() -> None:
    texts = site_texts(site())
    for name, text in texts.items():
        if name.endswith(".html"):
            assert "What the figures rest on</a>" in text, name


def test_without_stock_there_is_no_page_and_no_way_to_it() -> None:
    texts = site_texts(replace(site(), stock=Stock()))
    assert "stock/index.html" not in texts
    assert "What the figures rest on" not in "".join(texts.values())
