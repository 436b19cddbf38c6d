"""The prices of the yard card, typed into a browser."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.model.carrying import Carries
from kerfolio.pages.theme import render
from kerfolio.pages.yard import yard_of
from tests.layouts.yard_edition import edition_in
from tests.plans import small_layout, small_settled


@pytest.mark.browser
def test_a_price_is_multiplied_and_added_up(browser: Any) -> None:
    edition = edition_in(Carries(), small_settled(), small_layout())
    (row,) = edition.sheets
    rows = (replace(row, count=3), replace(row, width=1220.0))
    yard = yard_of(replace(edition, sheets=rows))
    frame = {"style": "in the page", "root": ""}
    page = browser.new_page()
    page.set_content(render("yard-card.html", METRIC, yard=yard, frame=frame, pictures={}))
    prices, told = page.locator("input"), page.locator("output")
    prices.nth(0).fill("46,50")
    assert told.all_inner_texts() == ["139.50", "________", "139.50"]
    prices.nth(1).fill("0.15")
    assert told.all_inner_texts() == ["139.50", "0.15", "139.65"]
    prices.nth(0).fill("dear")
    assert told.all_inner_texts() == ["________", "0.15", "0.15"]
    page.close()
