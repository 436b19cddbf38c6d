"""Full-size templates: the plain shape at 1:1, drill centres, sizes with their reasons."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.basis.reader import METRIC
from kerfolio.drawing.lettering import label_box
from kerfolio.drawing.template_choice import template_choices
from kerfolio.drawing.template_view import templates
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.canonical import region
from kerfolio.geometry.measure import bounds
from kerfolio.geometry.shapes import circle, rectangle, slot
from kerfolio.model.feature_kind import HOLE
from kerfolio.settling.settled import SettledFeature, SettledPart, Sized
from tests.drawing.bench import bench, part_of, slot_feature
from tests.drawing.overlap import crossed, labels_of, outside, overlapping
from tests.drawing.templates import template_of
from tests.geometry.shape_cases import difference_area, solid

PLAN = bench()


def hole(name: str, at: tuple[float, float], diameter: float) -> SettledFeature:
    return SettledFeature(
        name=name,
        kind=HOLE,
        at=at,
        direction=(1, 0),
        width=Sized(diameter),
        length=Sized(diameter),
    )


def crowded() -> SettledPart:
    """Return a narrow strip with so many holes and slots that no note finds room beside them."""
    holes = [hole(f"peg.{i}", (8.0 + 7 * i, 6.0), 5.0) for i in range(12)]
    shape = region(rectangle(0, 0, 92, 12), [circle(each.at, 5.0) for each in holes])
    return part_of("strip", "E", shape, features=tuple(holes))


def short_slots() -> SettledPart:
    """Return a plate whose slots are too short for words inside them."""
    spots = [(40.0 + 60 * i, 50.0) for i in range(3)]
    features = tuple(slot_feature(f"s.{i}", at, (0, 1), 24) for i, at in enumerate(spots, 1))
    openings = [slot(each.at, each.direction, 24.2, 18.0) for each in features]
    return part_of("short", "F", region(rectangle(0, 0, 200, 100), openings), features=features)


PARTS = (*PLAN.parts, crowded(), short_slots())
each_part = pytest.mark.parametrize("part", PARTS, ids=lambda part: part.name)


def strokes(drawing: Drawing, layer: str) -> list[Stroke]:
    return [s for s in drawing.items if isinstance(s, Stroke) and s.layer == layer]


def texts(drawing: Drawing) -> list[str]:
    return [label.text for label in labels_of(drawing)]


@each_part
def test_the_plain_shape_is_drawn_full_size(part: SettledPart) -> None:
    drawn = [s.contour for s in strokes(template_of(PLAN, part), "shape") if s.width == 0.35]
    assert len(drawn) == 1 + len(part.plain.openings)
    for contour, meant in zip(drawn, (part.plain.outer, *part.plain.openings), strict=True):
        assert difference_area(solid(contour), solid(meant)) == 0


@each_part
def test_words_cover_no_line_and_no_other_words(part: SettledPart) -> None:
    drawing = template_of(PLAN, part)
    assert overlapping(drawing) == []
    assert outside(drawing) == []
    assert crossed(drawing) == []


@each_part
def test_every_inside_corner_has_its_drill_circle(part: SettledPart) -> None:
    """The diameter is the cutter's, 6 mm, so that hand and machine leave the same corner."""
    drawn = strokes(template_of(PLAN, part), "drill")
    rings = [bounds(stroke.contour) for stroke in drawn if stroke.contour.closed]
    for found, meant in zip(
        sorted(ring.centre for ring in rings), sorted(part.drill_centres), strict=True
    ):
        assert found == pytest.approx(meant)
    assert [ring.width for ring in rings] == pytest.approx([6.0] * len(rings))


def test_a_slot_carries_its_width_and_the_reason() -> None:
    """18 mm = 0.7087 in; decimals are fixed, so that the words are alike at every thickness."""
    words = texts(template_of(PLAN, PLAN.parts[0]))
    assert words.count("18.00 mm (0.709 in) wide") == 2
    assert words.count("17.8 mm sheet + 2 x 0.1 mm fit") == 2
    assert words.count("ø 6.6 mm (17/64 in) through") == 2


def test_words_of_a_slot_lie_inside_it_and_along_it() -> None:
    drawing = template_of(PLAN, PLAN.parts[0])
    notes = [label for label in labels_of(drawing) if label.text.endswith("wide")]
    assert sorted(label.angle for label in notes) == [0, 90]
    left, _, right, _ = next(label_box(label) for label in notes if label.angle == 0)
    assert (left + right) / 2 == pytest.approx(180)


def test_short_slots_have_their_words_beside_them() -> None:
    drawing = template_of(PLAN, short_slots())
    assert texts(drawing).count("17.8 mm sheet + 2 x 0.1 mm fit") == 3


def test_what_finds_no_room_is_listed_under_one_letter() -> None:
    drawing = template_of(PLAN, crowded())
    assert texts(drawing).count("a") == 2, "only the outer pegs have a free spot beside them"
    assert "a: peg, ø 5 mm (13/64 in) through" in texts(drawing)


def test_recesses_are_tinted_and_say_their_depth() -> None:
    drawing = template_of(PLAN, PLAN.parts[2])
    tinted = [s for s in strokes(drawing, "shape") if s.fill is Ink.WOOD]
    assert len(tinted) == 4
    assert texts(drawing).count("6.00 mm deep") == 2


@each_part
def test_mark_show_face_up_and_grain_are_there(part: SettledPart) -> None:
    words = texts(template_of(PLAN, part))
    assert part.mark in words
    assert "SHOW FACE" in words
    assert f"{part.name.capitalize()}, cut {len(part.pieces)}" in words
    assert "up" in words
    assert ("grain" in words) == (part.grain != "any")


def test_a_wider_bore_is_told_before_the_hole_in_it() -> None:
    """A head of 13 mm sunk 8 mm deep over a hole of 6.6 mm: bored in that order."""
    wider = (Sized(13.0), Sized(8.0))
    stepped = replace(hole("bolt", (100, 50), 6.6), counterbore=wider)
    blind = replace(hole("peg", (100, 120), 5.0), depth=Sized(9.0))
    shape = region(rectangle(0, 0, 200, 200), [circle(stepped.at, 6.6)])
    words = texts(template_of(PLAN, part_of("top", "T", shape, features=(stepped, blind))))
    at = words.index("first ø 13 mm (33/64 in)")
    assert words[at + 1 : at + 3] == ["8.00 mm deep", "then ø 6.6 mm (17/64 in) through"]
    at = words.index("ø 5 mm (13/64 in)")
    assert words[at + 1] == "9.00 mm deep"


def test_words_keep_clear_of_seams() -> None:
    """A strip over the middle of a plate sends its words, mark and arrows to the sides."""
    part = part_of("plate", "P", region(rectangle(0, 0, 300, 200), []))
    seam = (145.0, 0.0, 155.0, 200.0)
    settled = replace(PLAN, parts=(part,))
    for seams, crossing in (({}, True), ({"plate": [seam]}, False)):
        drawing = templates(settled, template_choices((settled,), METRIC, seams))["plate"]
        boxes = map(label_box, labels_of(drawing))
        assert any(box[0] < seam[2] and box[2] > seam[0] for box in boxes) is crossing


def test_how_to_use_the_drill_centres_is_said_where_there_are_any() -> None:
    """Every template says on which side of its lines to saw."""
    line = "Drill ø 6 mm at the small circles, then saw in the shade, to the line."
    assert line in texts(template_of(PLAN, PLAN.parts[1]))
    plain = texts(template_of(PLAN, PLAN.parts[3]))
    assert line not in plain
    assert "Saw in the shade, to the line." in plain


def test_the_drill_follows_the_sheets_cutter() -> None:
    sheet = PLAN.sheets[0]
    thin = replace(PLAN, sheets=(replace(sheet, cutter=replace(sheet.cutter, diameter=3.175)),))
    assert "Drill ø 3.2 mm at the small circles, then saw in the shade, to the line." in texts(
        template_of(thin, PLAN.parts[1])
    )
