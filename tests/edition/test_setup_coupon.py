"""A fit coupon on the machine: its scrap holds it, and its 0,0 is that of its cut file."""

from __future__ import annotations

import pytest

from kerfolio.drawing.cut_sheet import cut_coupon
from kerfolio.drawing.vocabulary import Stroke
from kerfolio.edition.setup_coupon import SetupCoupon, setup_coupons
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.transform import moved
from kerfolio.paper.coupon_sheet import coupon_pdf
from tests.paper.reading import texts
from tests.paper.sample_editions import sample, workshop

PLANS = ("tool-tote", "potting-bench")


def on_scrap(setup: SetupCoupon) -> list[tuple[float, ...]]:
    """Return the corners of every cut as it lies on the scrap, mm."""
    found = []
    for each in setup.layout.placements:
        for cut in setup.settled.part(each.part).cuts:
            found += [bounds(moved(line, each.x, each.y)) for line in cut.contours]
    return sorted((box.x0, box.y0, box.x1, box.y1) for box in found)


@pytest.mark.parametrize("name", PLANS)
def test_the_scrap_holds_the_coupon_with_room_for_the_cutter(name: str) -> None:
    for setup in setup_coupons(sample(name)):
        room = setup.sheet.cutter.diameter
        wide, high = setup.layout.size
        for x0, y0, x1, y1 in on_scrap(setup):
            assert min(x0, y0, wide - x1, high - y1) >= room


@pytest.mark.parametrize("name", PLANS)
def test_zero_is_that_of_the_cut_file(name: str) -> None:
    edition = sample(name)
    for setup in setup_coupons(edition):
        drawing = cut_coupon(edition.settled, setup.coupon, edition.reader)
        cuts = {layer.name for layer in drawing.layers if layer.cuts}
        drawn = [
            bounds(moved(each.contour, *setup.zero))
            for each in drawing.items
            if isinstance(each, Stroke) and each.layer in cuts
        ]
        boxes = sorted((box.x0, box.y0, box.x1, box.y1) for box in drawn)
        assert [pytest.approx(each, abs=1e-6) for each in boxes] == on_scrap(setup)


def test_every_coupon_has_a_page_with_its_scrap_and_its_cutter() -> None:
    edition = sample("potting-bench")
    paper = workshop().stock.paper("a4")
    assert paper is not None
    pages = texts(coupon_pdf(edition, paper))
    setups = setup_coupons(edition)
    assert len(pages) == len(setups) == 2
    for page, setup in zip(pages, setups, strict=True):
        assert f"A scrap of {setup.size}" in page
        assert setup.runs[0].cutter in page
        assert f"cut/fit-coupon/fit-coupon-{setup.coupon.sheet}" in page
