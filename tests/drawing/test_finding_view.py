"""A finding on its part: the face, rings in the loud colour, a lens where it is small."""

from __future__ import annotations

from math import dist

from kerfolio.basis.finding import Mark, Ring
from kerfolio.drawing.finding_view import ROOM, finding_view
from kerfolio.drawing.vocabulary import Drawing, Ink, Stroke
from kerfolio.geometry.measure import bounds
from kerfolio.settling.settled import SettledPart, SettledPlan
from kerfolio.writing.svg import svg_bytes
from tests.settling.panels import settled_plan

HOLES = "h: {hole: {at: [[8, 150], [200, 150]], diameter: 8}}"
SETTLED = settled_plan(HOLES)
PART = SETTLED.parts[0]


def view(*rings: Ring, settled: SettledPlan = SETTLED, part: SettledPart = PART) -> Drawing:
    return finding_view(settled, part, Mark(part="panel", rings=rings, variant="any", at="any"))


def rings_of(drawing: Drawing) -> list[Stroke]:
    strokes = [each for each in drawing.items if isinstance(each, Stroke)]
    return [each for each in strokes if each.ink is Ink.ACCENT]


def test_each_place_has_a_ring_where_it_lies_on_the_part() -> None:
    drawing = view(Ring(8, 150, 7), Ring(200, 150, 7))
    scale = ROOM[0] / 400  # the panel is 400 x 300 mm
    spots = [bounds(each.contour).centre for each in rings_of(drawing)]
    for wanted in ((8 * scale, 150 * scale), (200 * scale, 150 * scale)):
        assert min(dist(wanted, spot) for spot in spots) < 1e-6


def test_a_ring_is_never_too_small_to_see() -> None:
    drawing = view(Ring(8, 150, 1))
    assert all(bounds(each.contour).width >= 4 for each in rings_of(drawing))


def test_a_small_place_is_shown_again_under_a_lens() -> None:
    drawing = view(Ring(8, 150, 7))
    assert len(rings_of(drawing)) == 2
    lens = max(rings_of(drawing), key=lambda each: bounds(each.contour).width)
    assert bounds(lens.contour).x0 > ROOM[0]  # beside the part
    assert bounds(lens.contour).width > 10 * 7 * ROOM[0] / 400


def test_a_small_part_needs_no_lens() -> None:
    settled = settled_plan("h: {hole: {at: [8, 40], diameter: 8}}", outline="{rectangle: [90, 80]}")
    drawing = view(Ring(8, 40, 7), settled=settled, part=settled.parts[0])
    assert len(rings_of(drawing)) == 1


def test_a_large_place_needs_no_lens() -> None:
    assert len(rings_of(view(Ring(200, 150, 60)))) == 1


def test_it_keeps_to_its_room_and_says_where() -> None:
    drawing = view(Ring(8, 150, 7), *(Ring(x, 150, 7) for x in (100, 200, 300)))
    assert drawing.width <= 115
    assert drawing.height <= 72
    assert drawing.title == "Panel: part A, Panel"
    assert drawing.description == (
        "Marked at (8, 150), (100, 150), (200, 150) and 1 more, "
        "in mm from the part's lower left corner."
    )


def test_the_same_mark_gives_the_same_bytes() -> None:
    assert svg_bytes(view(Ring(8, 150, 7))) == svg_bytes(view(Ring(8, 150, 7)))


def test_a_mark_without_a_ring_is_about_the_whole_part() -> None:
    assert view().description == "The whole part."
