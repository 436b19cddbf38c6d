"""Hardware as it is drawn: its weight, its sizes, and that it is true to size in the booklet."""

from __future__ import annotations

import pytest

from kerfolio.basis.reader import INCHES
from kerfolio.drawing.extent import extent
from kerfolio.drawing.hardware_solid import hardware_solid
from kerfolio.drawing.hardware_view import CHECK, ROOM, hardware_views
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from kerfolio.geometry.panel_mesh import volume_and_centre
from kerfolio.geometry.turned import turned_mesh
from kerfolio.model.stock import HardwareStock, Stock
from tests.assembly.scenes import settled

STEEL, BEECH = 7.85e-6, 7.0e-7
"""kg/mm3 (handbook figures, memory)."""


@pytest.fixture(scope="module")
def stock() -> Stock:
    return settled("harbour-stool").stock


def item(stock: Stock, name: str) -> HardwareStock:
    found = stock.item(name)
    assert found is not None
    return found


def test_metric_hardware_weighs_what_dealers_say(stock: Stock) -> None:
    """DIN 912's table of weights, which the stock has; what is drawn has no grooves of a thread, so
    that it weighs up to a quarter more, and a wood screw, whose core is thin, up to 1.75 times."""
    most = {"bolt": 1.25, "washer": 1.05, "nut": 1.05, "dowel": 1.05, "screw": 1.75}
    weighed = 0
    for each in stock.hardware:
        solid = hardware_solid(each)
        if solid is None or each.mass is None or each.kind not in most:
            continue
        volume, _ = volume_and_centre(turned_mesh(solid))
        share = volume * (BEECH if each.kind == "dowel" else STEEL) / each.mass
        assert 0.85 < share < most[each.kind] or "in" in each.name, each.name
        weighed += 1
    assert weighed > 100


def test_a_head_goes_into_its_counterbore_and_a_shank_through_its_hole(stock: Stock) -> None:
    """Bores of DIN 974-1 and clearance holes of ISO 273, as the stock has them."""
    for each in stock.hardware:
        solid = hardware_solid(each)
        if solid is None or each.kind != "bolt" or not each.counterbore_diameter:
            continue
        assert each.clearance is not None
        assert each.counterbore_depth is not None
        head, shank = solid.frusta[:2]
        assert 0.7 * each.counterbore_diameter < 2 * head.wide < each.counterbore_diameter
        assert head.high - head.low <= each.counterbore_depth
        assert 0.8 * each.clearance < 2 * shank.wide < each.clearance
        assert solid.high == pytest.approx(each.length)


def lines(drawing: Drawing) -> list[Stroke]:
    return [
        each
        for each in drawing.items
        if isinstance(each, Stroke) and each.width is not None and each.ink is Ink.INK
    ]


def test_a_bolt_is_as_long_and_as_thick_on_paper_as_it_is(stock: Stock) -> None:
    """M6 by 50: head 10 across and 6 high (ISO 4762, memory), shank 50 long."""
    (drawing,) = hardware_views([(item(stock, "bolt-m6x50"), 4)])
    *pictured, check, _, _ = lines(drawing)
    left, bottom, right, top = extent(pictured)
    assert top - bottom == pytest.approx(10.0, abs=0.01)
    assert right - left == pytest.approx(56.0 + 4.0 + 10.0, abs=0.01)
    low, _, high, _ = extent([check])
    assert high - low == CHECK["mm"][0]
    assert [each.text for each in drawing.items if isinstance(each, Label)] == [
        "4 × Bolt M6 × 50 mm",
        "50 mm, if this is printed at full size",
    ]


def test_rows_hold_what_fits_and_nothing_lies_over_anything(stock: Stock) -> None:
    names = ("bolt-m6x50", "barrel-nut-m6", "washer-m6", "screw-5x30", "dowel-8x40", "bolt-m8x100")
    (drawing,) = hardware_views([(item(stock, each), 2) for each in names], INCHES)
    assert drawing.width <= ROOM[0] + 1.3
    labels = [each for each in drawing.items if isinstance(each, Label)]
    assert len(labels) == len(names) + 1
    assert labels[-1].text.startswith("2 in")
    boxes = [extent([each]) for each in labels]
    for number, one in enumerate(boxes):
        for other in boxes[number + 1 :]:
            assert (
                one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]
            )


def test_what_the_stock_does_not_know_is_not_drawn() -> None:
    bare = HardwareStock(name="thing", title="A thing")
    assert hardware_solid(bare) is None
    assert hardware_views([(bare, 2)]) == ()


def test_more_than_a_page_holds_goes_on_to_another(stock: Stock) -> None:
    bolts = [(each, 2) for each in stock.hardware if each.kind == "bolt"][:14]
    drawings = hardware_views(bolts)
    assert len(drawings) > 1
    assert all(each.height <= ROOM[1] + 6.0 for each in drawings)
    told = [label.text for each in drawings for label in each.items if isinstance(label, Label)]
    assert len(told) == len(bolts) + len(drawings)
