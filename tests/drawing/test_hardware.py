"""Hardware as it is drawn: its weight, its sizes, and that it is true to size in the booklet."""

from __future__ import annotations

import json
from dataclasses import replace

import pytest

from kerfolio.assembly.lying import turned_down
from kerfolio.basis.reader import INCHES
from kerfolio.drawing.exploded_view import exploded_view
from kerfolio.drawing.extent import extent
from kerfolio.drawing.hardware_solid import hardware_solid
from kerfolio.drawing.hardware_view import CHECK, ROOM, hardware_views
from kerfolio.drawing.model_view import model_of, viewer_data
from kerfolio.drawing.mounted import mounted, plain_solid
from kerfolio.drawing.scene import HOME, step_scene
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from kerfolio.geometry.panel_mesh import volume_and_centre
from kerfolio.geometry.rigid import scaled
from kerfolio.geometry.turned import turned_mesh
from kerfolio.geometry.view import View
from kerfolio.model.stock import HardwareStock, Stock
from tests.assembly.scenes import settled
from tests.drawing.built import NEW, built, fittings, shown, views

FRONT = View(-32.0, 28.0)

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


def test_pieces_of_a_row_lie_on_one_axis_and_their_words_on_one_line(stock: Stock) -> None:
    pieces = [(item(stock, each), 2) for each in ("washer-m6", "screw-5x30")]
    (drawing,) = hardware_views(pieces)
    washer, screw, _ = (each for each in drawing.items if isinstance(each, Label))
    assert washer.at[1] == screw.at[1]
    strokes = [extent([each]) for each in drawing.items if isinstance(each, Stroke)]
    above = [each for each in strokes if each[1] > washer.at[1]]
    middles = []
    for left, right in ((0.0, screw.at[0] - 1.0), (screw.at[0] - 0.5, ROOM[0])):
        heights = [each[1::2] for each in above if left - 0.1 <= each[0] < right]
        middles.append((min(heights)[0] + max(high for _, high in heights)) / 2)
    assert middles[0] == pytest.approx(middles[1], abs=0.1)


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


STOOL = "harbour-stool"


def test_each_step_draws_out_its_own_hardware_and_leaves_the_rest_at_home() -> None:
    """The stool: two bolts with washer and barrel nut in each of three steps."""
    for number, each in enumerate(shown(STOOL)):
        scene = mounted(
            step_scene(each.assembled, each.step), each.fittings, each.step.number, FRONT, 0.2
        )
        new = [one for one in scene.fittings if one.new]
        assert len(new) == 6
        assert len(scene.fittings) == 6 + 4 * number  # of what was there before no washers
        assert all((one.guide is not None) == one.new for one in scene.fittings)
        assert {*scene.coloured} >= {
            len(scene.pieces) + place for place, one in enumerate(scene.fittings) if one.new
        }


def test_a_bolt_is_drawn_out_along_its_axis_with_its_washer_before_it() -> None:
    each = shown(STOOL)[-1]
    bolt, washer, nut = (
        next(one for one in each.fittings if one.step == each.step.number and one.item.kind == kind)
        for kind in ("bolt", "washer", "barrel-nut")
    )
    assert bolt.out == washer.out == pytest.approx((0.0, 0.0, 1.0), abs=1e-9)
    assert bolt.far > washer.far + bolt.item.length  # its tip stays clear of the washer
    assert nut.either
    assert abs(nut.out[2]) < 1e-9
    assert nut.follows.startswith("side.")
    front, back = (nut.drawn_out(HOME, look) for look in (nut.out, scaled(nut.out, -1.0)))
    assert front == pytest.approx(scaled(back, -1.0))


def test_a_turned_whole_turns_its_hardware() -> None:
    """Where its head bears stays where it was on its piece."""
    turn = turned_down((1.0, 0.0, 0.0))
    for each in fittings(STOOL):
        turned = each.turned(turn)
        assert turn.inverse.point(turned.frame.origin) == pytest.approx(each.frame.origin)
        assert turn.inverse.vector(turned.out) == pytest.approx(each.out)


def test_specks_of_what_was_there_before_are_left_out() -> None:
    last = shown(STOOL)[-1]
    scene = mounted(
        step_scene(last.assembled, last.step), last.fittings, last.step.number, FRONT, 0.05
    )
    assert len(scene.fittings) == 6
    assert all(each.new for each in scene.fittings)


def test_small_hardware_is_drawn_plainly() -> None:
    bolt = next(each for each in fittings(STOOL) if each.item.kind == "bolt")
    tiny, large = plain_solid(bolt, 0.05), plain_solid(bolt, 1.0)
    assert tiny is not None
    assert large is not None
    assert tiny.facets < large.facets
    assert (tiny.thread, tiny.well) == (None, None)
    assert large.thread is not None
    assert large.well is not None


def test_hardware_that_is_new_is_tinted_and_guided_to_its_hole() -> None:
    each, look = shown(STOOL)[1], views(STOOL)[1]
    with_it = step_view(each, look=look)
    without = step_view(replace(each, fittings=()), look=look)
    tinted = [
        sum(isinstance(item, Stroke) and item.fill in NEW for item in drawing.items)
        for drawing in (with_it, without)
    ]
    assert tinted[0] > tinted[1]


def test_hardware_that_cannot_be_drawn_changes_nothing() -> None:
    """Not even which of the fastenings is drawn larger: that with the guides seen farthest."""
    each, look = shown("potting-bench")[7], views("potting-bench")[7]
    first = next(one for one in each.fittings if one.step == each.step.number)
    unknown = replace(first, item=replace(first.item, thread=None), number=99)
    assert hardware_solid(unknown.item) is None
    with_it = replace(each, fittings=(unknown, *each.fittings))
    assert step_view(with_it, look=look) == step_view(each, look=look)


def test_hardware_is_in_the_model_and_drawn_apart() -> None:
    whole, order = built(STOOL)
    model = model_of(whole, order, "Stool", fittings=fittings(STOOL))
    hardware = [each for each in model.pieces if each.is_hardware]
    assert len(hardware) == 18
    assert len({each.shape for each in hardware}) == 4
    assert len({each.label for each in hardware}) == 18
    assert all(each.apart != HOME for each in hardware)
    data = json.loads(viewer_data(model))
    assert sum(each.get("hardware", False) for each in data["pieces"]) == 18
    plain, fitted = (exploded_view(whole, order, fittings=each) for each in ((), fittings(STOOL)))
    assert len(fitted.items) > len(plain.items)
