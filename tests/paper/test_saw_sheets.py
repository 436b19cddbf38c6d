from __future__ import annotations

from functools import cache

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.edition.saw_words import saw_caution
from kerfolio.layouts.boards import BoardPiece, cut_boards
from kerfolio.layouts.saw import saw_plan
from kerfolio.layouts.saw_sheet import SawSheet
from kerfolio.model.stock import PaperStock
from kerfolio.paper.saw_sheets import saw_pdf
from tests.paper.editions import A4, LETTER, stool
from tests.paper.reading import sizes, texts

BOARDS = cut_boards(
    [BoardPiece(label=f"foot.{n}", length=300.0) for n in range(1, 8)],
    [2400.0],
    trim=10.0,
    title="Pine 45 × 45",
    section=(45.0, 45.0),
)


@cache
def sheets() -> tuple[SawSheet, ...]:
    return saw_plan(stool().settled)


@cache
def pdf(first: str = "mm", paper: PaperStock = A4) -> bytes:
    return saw_pdf(stool(first), sheets(), [BOARDS], paper)


@pytest.mark.parametrize("paper", [A4, LETTER], ids=lambda each: each.name)
def test_a_page_a_sheet_and_one_for_the_boards(paper: PaperStock) -> None:
    content = pdf("mm", paper)
    assert sizes(content) == [(paper.width, paper.height)] * (len(sheets()) + 1)
    assert content == saw_pdf(stool(), sheets(), [BOARDS], paper)


def test_every_setting_stands_in_its_row_in_both_units() -> None:
    (page, _) = texts(pdf())
    (sheet,) = sheets()
    assert "Saw sheet 1 of 1 Birch plywood 18 mm, measured 17.8 mm. 2440 × 1220 mm" in page
    assert "Kerf 3.2 mm (1/8 in)." in page
    assert f"{len(sheet.cuts)} cuts, {sheet.settings} settings of the fence." in page
    assert "1–2 sheet Trim lower and left edge 5 3/16" in page
    for cut in sheet.cuts:
        assert cut.gives.told(METRIC) in page
    assert "Rip" in page
    assert "Cross-cut" in page


def test_what_is_left_for_trimming_is_told() -> None:
    page = texts(pdf())[0]
    grown = [each for each in sheets()[0].blanks if any(each.blank.grown)]
    assert ("Left on blanks of shaped parts" in page) == bool(grown)


def test_the_reader_s_unit_comes_first() -> None:
    metric, inch = texts(pdf())[0], texts(pdf("in"))[0]
    assert "SIZE, MM SIZE, IN" in metric
    assert "SIZE, IN SIZE, MM" in inch


def test_boards_say_what_to_buy_and_that_it_is_the_least() -> None:
    page = texts(pdf())[1]
    assert "Boards: Pine 45 × 45 45 × 45 mm (1 25/32 × 1 25/32 in)." in page
    assert "Buy 1 of 2400 mm (94 1/2 in). No choice of the lengths sold is shorter in all." in page
    assert "Foot 1 300 mm (11 13/16 in), Foot 2 300 mm (11 13/16 in)" in page
    assert "10 mm (13/32 in) trimmed off one end, kerf 3.2 mm (1/8 in)." in page


def test_the_thickness_that_the_sizes_are_for_is_told() -> None:
    assert (
        "These sizes are for Birch plywood 18 mm measuring 17.8 mm only. If your sheet measures "
        "otherwise, compare every "
        "piece with its template for that thickness."
    ) in texts(pdf())[0]


def test_cautions_stand_on_every_page() -> None:
    for page in texts(pdf()):
        assert saw_caution(METRIC)[:40] in page
        assert "local rules and licensed practice come first" in page
