"""Pictures for readers: right sizes, every mark once, no words that run into anything."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import pytest

from kerfolio.basis.reader import Reader
from kerfolio.drawing.coupon_view import coupon_view
from kerfolio.drawing.face import obstacles
from kerfolio.drawing.layout_view import layout_view
from kerfolio.drawing.lettering import label_box
from kerfolio.drawing.part_view import part_view
from kerfolio.drawing.seat import Seat
from kerfolio.drawing.vocabulary import Anchor, Dimension, Drawing, Ink, Label, Stroke
from kerfolio.geometry.boolean import contains
from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import rectangle
from kerfolio.layouts.layout import Placement, SheetLayout
from kerfolio.settling.settled import SettledClamp, SettledPart
from tests.drawing.bench import bench, bench_layout, part_of
from tests.drawing.overlap import crossed, labels_of, outside, overlapping

PLAN, LAYOUT = bench(), bench_layout()
SIZES = [(30, 30), (60, 1200), (1200, 60), (2400, 25), (25, 2400), (5, 5), (900, 1100), (300, 12)]
ODD = tuple(
    part_of(f"odd-{wide}-{high}", "AB", region(rectangle(0, 0, wide, high)), grain=grain)
    for wide, high in SIZES
    for grain in ("along x", "along y")
)
each_part = pytest.mark.parametrize("part", [*PLAN.parts, *ODD], ids=lambda p: p.name + p.grain)


def faces(drawing: Drawing) -> list[Stroke]:
    return [s for s in drawing.items if isinstance(s, Stroke) and s.fill is Ink.WOOD]


@pytest.mark.parametrize("room", [(120.0, 90.0), (70.0, 60.0), (180.0, 240.0)])
@each_part
def test_a_part_fits_its_room_and_its_words_stand_clear(
    part: SettledPart, room: tuple[float, float]
) -> None:
    drawing = part_view(PLAN, part, room)
    assert drawing.width <= room[0] + 1e-6
    assert drawing.height <= room[1] + 1e-6
    assert overlapping(drawing) == []
    assert crossed(drawing) == []
    assert outside(drawing) == []


@each_part
def test_a_part_is_drawn_to_scale_and_never_enlarged(part: SettledPart) -> None:
    (face,) = faces(part_view(PLAN, part))
    drawn, real = bounds(face.contour), bounds(part.routed)
    assert drawn.width / drawn.height == pytest.approx(real.width / real.height)
    assert drawn.width <= real.width * (1 + 1e-9)


def test_the_room_is_used() -> None:
    drawing = part_view(PLAN, PLAN.parts[0], (120.0, 90.0))
    assert drawing.height > 0.97 * 90


@pytest.mark.parametrize(
    ("first", "texts"),
    [
        ("mm", ["360 mm (14 3/16 in)", "450 mm (17 23/32 in)"]),
        ("in", ["14 3/16 in (360 mm)", "17 23/32 in (450 mm)"]),
    ],
)
def test_overall_sizes_stand_in_both_units(first: str, texts: list[str]) -> None:
    """360 / 25.4 = 14.173 (14 3/16 = 14.1875 to the nearest 1/32), 450 / 25.4 = 17.717."""
    drawing = part_view(PLAN, PLAN.parts[0], reader=Reader(unit=first))
    found = [item for item in drawing.items if isinstance(item, Dimension)]
    assert [each.text for each in found] == texts
    (face,) = faces(drawing)
    box = bounds(face.contour)
    assert found[0].b[0] - found[0].a[0] == pytest.approx(box.width)
    assert found[1].b[1] - found[1].a[1] == pytest.approx(box.height)


@pytest.mark.parametrize("part", PLAN.parts, ids=lambda part: part.name)
def test_the_mark_stands_on_the_face_off_every_feature(part: SettledPart) -> None:
    drawing = part_view(PLAN, part)
    (face,) = faces(drawing)
    (mark,) = [label for label in labels_of(drawing) if label.text == part.mark]
    frame = rectangle(*label_box(mark))
    assert contains(region(face.contour, face.holes), frame)
    assert mark.strong
    scale = bounds(face.contour).width / bounds(part.routed).width
    assert obstacles(part, Seat(scale=scale)) or part.name == "rail"


def test_grain_is_shown_only_where_it_matters() -> None:
    side, _, _, button = PLAN.parts
    (word,) = [label for label in labels_of(part_view(PLAN, side)) if label.text == "grain"]
    assert word.angle == 90, "along y"
    assert "grain" not in [label.text for label in labels_of(part_view(PLAN, button))]


def test_recesses_are_darker_and_openings_free() -> None:
    drawing = part_view(PLAN, PLAN.parts[2])
    strokes = [item for item in drawing.items if isinstance(item, Stroke)]
    assert [s.fill for s in strokes].count(Ink.WOOD_DARK) == 4
    (face,) = faces(drawing)
    assert len(face.holes) == 1


def test_a_layout_shows_every_piece_once_in_its_place() -> None:
    drawing = layout_view(PLAN, LAYOUT)
    scale = bounds(faces(drawing)[2].contour).width / 600
    for face, placed in zip(faces(drawing), LAYOUT.placements, strict=True):
        part = next(each for each in PLAN.parts if each.name == placed.part)
        seat = Seat(x=placed.x, y=placed.y, turn=placed.turn)
        real = bounds(seat.contour(part.routed.outer))
        drawn = bounds(face.contour)
        assert (drawn.x0 / scale, drawn.y1 / scale) == pytest.approx((real.x0, real.y1), abs=0.01)
    texts = [label.text for label in labels_of(drawing)]
    marks = [piece.mark for part in PLAN.parts for piece in part.pieces]
    assert sorted(text for text in texts if text in marks) == sorted(marks)


def test_zones_for_clamps_are_hatched() -> None:
    clamp = SettledClamp(edge="left", at=600.0, width=80.0, depth=40.0)
    sheets = tuple(replace(each, clamps=(clamp,)) for each in PLAN.sheets)
    drawing = layout_view(replace(PLAN, sheets=sheets), LAYOUT)
    strokes = [s for s in drawing.items if isinstance(s, Stroke)]
    (ground,) = [bounds(s.contour) for s in strokes if s.fill is Ink.WASTE]
    (zone,) = [bounds(s.contour) for s in strokes if s.fill is Ink.PAPER]
    scale = ground.width / LAYOUT.size[0]
    assert (zone.x0, zone.y0) == pytest.approx((ground.x0, ground.y0 + 560 * scale))
    assert (zone.width, zone.height) == pytest.approx((40 * scale, 80 * scale))
    assert len(drawing.items) > len(layout_view(PLAN, LAYOUT).items) + 1, "and hatched"


def crowded() -> SheetLayout:
    """Return a sheet packed with small discs, where no mark finds room in or beside its piece."""
    rows = [
        Placement(piece=f"button.{1 + (i + j) % 3}", part="button", x=31.0 * i, y=31.0 * j, turn=0)
        for i in range(12)
        for j in range(6)
    ]
    return SheetLayout(number=2, sheet="ply", size=(2440, 1220), placements=tuple(rows))


@pytest.mark.parametrize("layout", [LAYOUT, crowded()], ids=["plain", "crowded"])
@pytest.mark.parametrize("room", [(170.0, 105.0), (100.0, 70.0), (260.0, 180.0)])
def test_a_layouts_words_stand_clear(layout: SheetLayout, room: tuple[float, float]) -> None:
    drawing = layout_view(PLAN, layout, room)
    assert overlapping(drawing) == []
    assert outside(drawing) == []
    assert drawing.height <= room[1] + 1e-6
    assert drawing.width <= room[0] + 1e-6
    assert crossed(drawing) == []


def test_pieces_too_many_to_mark_are_counted() -> None:
    layout = crowded()
    texts = [label.text for label in labels_of(layout_view(PLAN, layout))]
    marked = sum(text in ("D1", "D2", "D3") for text in texts)
    rest = len(layout.placements) - marked
    assert rest > 30
    assert f"Too small to mark: {rest} × D Button" in texts


def test_marks_of_a_layout_stand_in_their_own_piece_or_off_all() -> None:
    drawing = layout_view(PLAN, LAYOUT)
    marks = {piece.label: piece.mark for part in PLAN.parts for piece in part.pieces}
    labels = {label.text: rectangle(*label_box(label)) for label in labels_of(drawing)}
    shapes = [face.contour for face in faces(drawing)]
    for shape, placed in zip(shapes, LAYOUT.placements, strict=True):
        frame = labels[marks[placed.piece]]
        if placed.part != "button":
            assert contains(shape, frame)
        else:
            assert bounds(frame).x0 - bounds(shape).x1 < 1.0, "right beside it"


def test_fibreboard_shows_no_grain() -> None:
    sheet = PLAN.sheets[0]
    plain = replace(PLAN, sheets=(replace(sheet, stock=replace(sheet.stock, grain=False)),))
    assert "grain" in [label.text for label in labels_of(layout_view(PLAN, LAYOUT))]
    assert "grain" not in [label.text for label in labels_of(layout_view(plain, LAYOUT))]


@pytest.mark.parametrize("first", ["mm", "in"])
@pytest.mark.parametrize("room", [(150.0, 80.0), (90.0, 60.0)])
def test_a_coupon_calls_out_every_slot(room: tuple[float, float], first: str) -> None:
    drawing = coupon_view(PLAN, PLAN.coupons[0], room, Reader(unit=first))
    assert drawing.width <= room[0]
    assert drawing.height <= room[1]
    assert overlapping(drawing) == []
    assert crossed(drawing) == []
    told = [label.text for label in labels_of(drawing)]
    assert told == ["1", "1", "5", "5", "7", "7", "in x", "in y", *"1155", "in x", "in y"]
    # 17.5 mm / 25.4 = 0.689 in
    said = {"mm": "17.7 mm wide, is for 17.5 mm", "in": "0.697 in wide, is for 0.689 in"}
    assert f"step 1, {said[first]} sheets" in drawing.description


def test_a_number_of_a_coupon_stands_beside_its_step() -> None:
    drawing = coupon_view(PLAN, PLAN.coupons[0], (400.0, 400.0))
    left = [each for each in labels_of(drawing) if each.anchor is Anchor.END]
    steps = [PLAN.coupons[0].slots[number - 1] for number in (1, 5, 7)]
    apart = [b.at[1] - a.at[1] for a, b in pairwise(left)]
    meant = [b.spots[0][1] - a.spots[0][1] for a, b in pairwise(steps)]
    assert apart == pytest.approx(meant)


def test_every_picture_speaks_for_itself() -> None:
    side = part_view(PLAN, PLAN.parts[0])
    assert side.title == "Test bench: part A, Side"
    assert side.description == (
        "360 mm (14 3/16 in) wide, 450 mm (17 23/32 in) high, seen from the show face."
        " Grain along y."
    )
    assert "D3" in layout_view(PLAN, LAYOUT).description
    assert "step 1, 17.7 mm wide, is for 17.5 mm sheets" in (
        coupon_view(PLAN, PLAN.coupons[0]).description
    )


def test_a_label_may_not_hide_the_type() -> None:
    """The helper that looks for overlaps does see one."""
    one = Label(text="one", at=(0, 0), height=5)
    two = replace(one, text="two", at=(3, 1))
    line = Stroke(contour=Contour(((0.0, 1.0, 0.0), (9.0, 1.0, 0.0)), closed=False))
    drawing = Drawing(box=(0, 0, 6, 9), items=(one, two, line))
    assert overlapping(drawing) == [("one", "two")]
    assert crossed(drawing) == ["one", "two"]
    assert outside(drawing) == ["one", "two"]
