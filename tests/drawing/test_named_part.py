"""A part for its maker: every name on it, nothing over anything, rulers from where `at` is 0."""

from __future__ import annotations

from functools import cache
from math import dist

import pytest

from kerfolio.basis.names import set_name
from kerfolio.drawing.extent import apart, box_of
from kerfolio.drawing.lettering import label_box
from kerfolio.drawing.named_part import named_part
from kerfolio.drawing.named_whole import named_whole
from kerfolio.drawing.vocabulary import Drawing, Ink, Label, Stroke
from kerfolio.geometry.contour import Point
from kerfolio.geometry.measure import bounds
from kerfolio.settling.settle import Settler
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.settling.variant import drawn_variant
from tests.drawing.bench import bench
from tests.drawing.overlap import crossed, labels_of, outside, overlapping
from tests.drawing.test_views import ODD
from tests.plans import RACK, workshop

TRAPS = RACK.replace(
    "      housing:",
    "      upper: {tabs: {edge: top, at: [40, 180], width: 50, depth: t}}\n"
    "      pins: {hole: {at: [[60, 30], [92, 30], [124, 30]], diameter: 5}, mirror: {x: 150}}\n"
    "      vent: {window: {at: [150, 60], rectangle: [80, 20]}}\n"
    "      housing:",
).replace("{rectangle: [w, h]}", "{polygon: [[0, 0], [w, 0], [w, h], [20, h], [0, h - 20]]}")


@cache
def settled(text: str = TRAPS) -> SettledPlan:
    shop = workshop(text)
    plan = shop.plans[0]
    aim = drawn_variant(plan, shop.stock)
    assert aim is not None
    made, faults = Settler.for_a_look(plan, shop.stock).so_far(aim)
    assert made is not None
    assert not faults
    return made


def rail() -> Drawing:
    return named_part(settled(), settled().part("rail"))


def words(drawing: Drawing) -> list[str]:
    return [each.text for each in labels_of(drawing)]


@pytest.mark.parametrize(
    ("plan", "part"),
    [
        *((bench(), each) for each in (*bench().parts, *ODD)),
        *((settled(), each) for each in settled().parts),
    ],
    ids=lambda each: getattr(each, "name", ""),
)
def test_no_word_runs_into_another_nor_a_line_through_it(
    plan: SettledPlan, part: SettledPart
) -> None:
    drawing = named_part(plan, part)
    assert overlapping(drawing) == []
    assert outside(drawing) == []
    blank = [
        bounds(item.contour)
        for item in drawing.items
        if isinstance(item, Stroke) and item.width is None and item.fill in (Ink.PAPER, Ink.WOOD)
    ]
    covered = {
        each.text
        for each in labels_of(drawing)
        for box in blank
        if (box.x0, box.y0) <= label_box(each)[:2] and label_box(each)[2:] <= (box.x1, box.y1)
    }
    assert set(crossed(drawing)) <= covered
    order = [isinstance(item, Label) for item in drawing.items]
    assert order == sorted(order), "what hides a line stands over it, and words over that"


def test_every_feature_is_named_once_and_every_member_of_a_set_numbered() -> None:
    told = words(rail())
    for name in {set_name(each.name) for each in settled().part("rail").features}:
        assert sum(each.split(":")[0].split(" ")[0] == name for each in told) == 1, name
    for number in "123456":
        assert number in told
    assert "pins 1 to 6" in told


def test_a_ruler_begins_where_the_part_s_own_0_is_not_where_its_edge_does() -> None:
    """The upper edge begins at x = 20; a tab stated at 40 begins 40 from the part's left."""
    drawing = rail()
    (ruler,) = (each for each in labels_of(drawing) if each.text.startswith("upper:"))
    level = [each for each in labels_of(drawing) if 0 < ruler.at[1] - each.at[1] < 8]
    at = {each.text: each.at[0] for each in level if each.text in ("0", "40", "180")}
    scale = _scale(drawing)
    assert at["40"] - at["0"] == pytest.approx(40 * scale)
    assert at["180"] - at["0"] == pytest.approx(180 * scale)
    face = _face(drawing)
    assert at["0"] == pytest.approx(box_of(face)[0] + _tab() * scale), "x = 0, past the tabs"


def test_a_mirrored_set_counts_on_as_its_joints_do() -> None:
    pins = {
        each.name.removeprefix("pins."): each.at
        for each in settled().part("rail").features
        if each.name.startswith("pins")
    }
    assert pins["4"] == (240, 30), "60 mirrored at 150: the mirrored side counts inwards, too"
    drawing, scale = rail(), _scale(rail())
    face = _face(drawing)
    left, bottom = box_of(face)[:2]
    for number, (x, y) in pins.items():
        spot = (left + (_tab() + x) * scale, bottom + y * scale)
        assert min(dist(spot, each) for each in _written(drawing, number)) < 6


def test_what_changed_is_tinted() -> None:
    part = settled().part("rail")
    plain, tinted = named_part(settled(), part), named_part(settled(), part, ["housing"])
    assert not [each for each in plain.items if getattr(each, "ink", "") is Ink.NEW_LINE]
    (mark,) = (each for each in tinted.items if getattr(each, "ink", "") is Ink.NEW_LINE)
    assert isinstance(mark, Stroke)
    assert mark.fill is Ink.NEW_LIGHT


def test_parts_that_are_not_joined_stand_below_by_name() -> None:
    drawing = named_whole(settled(), ())
    assert drawing is not None
    assert {"A  side", "B  rail"} <= set(words(drawing))
    assert overlapping(drawing) == []
    boxes = [box_of(each) for each in drawing.items if getattr(each, "fill", "") is Ink.WOOD]
    assert apart(*boxes)


def _tab() -> float:
    return settled().part("rail").size[0] - 300 - 17.6


def _face(drawing: Drawing) -> Stroke:
    strokes = (each for each in drawing.items if isinstance(each, Stroke))
    return next(each for each in strokes if each.fill is Ink.WOOD)


def _scale(drawing: Drawing) -> float:
    face = _face(drawing)
    box = box_of(face)
    return (box[2] - box[0]) / settled().part("rail").size[0]


def _written(drawing: Drawing, text: str) -> list[Point]:
    boxes = [label_box(each) for each in labels_of(drawing) if each.text == text]
    return [((a + c) / 2, (b + d) / 2) for a, b, c, d in boxes]
