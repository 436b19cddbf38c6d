"""Pictures of steps: what is new, where it goes, and that a printer can show every stroke."""

from __future__ import annotations

import re
import subprocess
import sys
from dataclasses import replace
from functools import cache
from itertools import pairwise
from math import dist, hypot

import pytest
import shapely

from kerfolio.assembly.assembled import BuildStep
from kerfolio.assembly.fastening_body import Role
from kerfolio.assembly.lying import Shown
from kerfolio.basis.reader import INCHES
from kerfolio.drawing.assembled_view import assembled_view
from kerfolio.drawing.exploded_view import exploded_view
from kerfolio.drawing.extent import extent, padded
from kerfolio.drawing.face import HIDDEN
from kerfolio.drawing.inset import RADIUS
from kerfolio.drawing.joint_inset import FINGER, is_small
from kerfolio.drawing.page_plan import RIM
from kerfolio.drawing.paper_seat import PaperSeat, fitted
from kerfolio.drawing.scene import step_scene
from kerfolio.drawing.solid_strokes import SMALL_WIDTHS, WIDTHS, tints
from kerfolio.drawing.step_view import ROOM, step_view
from kerfolio.drawing.vocabulary import Dimension, Drawing, Ink, Label, Stroke
from kerfolio.geometry.facing import extent_of
from kerfolio.geometry.view import View
from kerfolio.writing.svg import svg_bytes
from tests.drawing.built import (
    HAND_MADE,
    LINES,
    NEW,
    SAMPLE,
    STANDING,
    areas_of,
    built,
    edges_of,
    path_of,
    shown,
    views,
)

LOOK = View(-32.0, 28.0)
COUNTS = {"desk-rack": 3, "harbour-stool": 3, "potting-bench": 11, "tool-tote": 5}
COUNTS |= {"stool": 3, "crate": 2}
TURNED = {
    ("harbour-stool", 1): "Stand it up",
    ("potting-bench", 1): "Turn it over",
    ("potting-bench", 5): "Lay it on its side",
    ("potting-bench", 7): "Stand it up",
}
"""Steps before which the work is turned, by the words of the plan: the worktop lies face down and
then stands on its rails, the left side is laid on a blanket, the bench is stood on its feet; the
stool's left side is laid on its boat, and stands on its feet before the right one comes."""
FROM_BELOW = [
    *(("harbour-stool", 0), ("potting-bench", 2), ("potting-bench", 6), ("stool", 2)),
]
"""Steps whose inset looks up: something comes down on to what stands, and hides where it goes; the
stool's first bolts come from under the side that lies."""
COUNT = re.compile(r"\d+ ×")
STEPS = [(name, number) for name, count in COUNTS.items() for number in range(count)]


def step_of(name: str, index: int) -> tuple[BuildStep, View]:
    return shown(name)[index].step, views(name)[index]


def drawn(name: str, index: int, **more: object) -> Drawing:
    return step_view(shown(name)[index], look=views(name)[index], **more)  # type: ignore[arg-type]


picture = cache(drawn)


def test_every_step_is_in_the_list() -> None:
    assert {name: len(shown(name)) for name in (*SAMPLE, *HAND_MADE)} == COUNTS


def words(drawing: Drawing) -> list[str]:
    return [each.text for each in drawing.items if isinstance(each, Label)]


def rings(drawing: Drawing) -> list[Stroke]:
    """Circles of insets."""
    round_ones = [
        each
        for each in drawing.items
        if isinstance(each, Stroke) and each.ink is Ink.SOFT and each.contour.closed
    ]
    boxes = [extent([each]) for each in round_ones]
    return [
        each
        for each, (left, _, right, _) in zip(round_ones, boxes, strict=True)
        if right - left == pytest.approx(2 * RADIUS)
    ]


@pytest.mark.parametrize(("name", "index"), STEPS)
def test_it_fits_the_column(name: str, index: int) -> None:
    drawing = picture(name, index, hardware=(("Bolt M6 x 50", 2),))
    assert drawing.width <= ROOM[0] + 1.3
    assert drawing.height <= ROOM[1] + 1.3
    left, bottom, right, top = extent(drawing.items)
    assert drawing.box == pytest.approx(padded((left, bottom, right, top), 0.6))


@pytest.mark.parametrize(("name", "index"), STEPS)
def test_no_stroke_is_a_speck(name: str, index: int) -> None:
    strokes = [path_of(each.contour) for each in edges_of(picture(name, index))]
    sizes = [sum(dist(a, b) for a, b in pairwise(path)) for path in strokes]
    assert min(sizes) >= 0.2


@pytest.mark.parametrize(("name", "index"), STEPS)
def test_no_stroke_runs_along_another(name: str, index: int) -> None:
    segments = [
        pair
        for each in edges_of(picture(name, index))
        if each.width in (0.35, 0.18, 0.13)  # 0.25 is also the width of leaders
        for pair in pairwise(path_of(each.contour))
        if dist(*pair) > 0.4
    ]
    lines = [shapely.LineString(pair) for pair in segments]
    tree = shapely.STRtree(lines)
    one, other = tree.query(lines, predicate="dwithin", distance=0.05)
    doubled = 0.0
    for a, b in zip(one.tolist(), other.tolist(), strict=True):
        (p, q), (r, s) = segments[a], segments[b]
        cross = (q[0] - p[0]) * (s[1] - r[1]) - (q[1] - p[1]) * (s[0] - r[0])
        if a < b and abs(cross) < 0.04 * dist(p, q) * dist(r, s):
            doubled += lines[a].intersection(lines[b].buffer(0.05, cap_style="flat")).length
    assert doubled < 0.5


@pytest.mark.parametrize(("name", "index"), STEPS)
def test_new_pieces_are_coloured_and_marked_and_others_are_not(name: str, index: int) -> None:
    step, _ = step_of(name, index)
    drawing = picture(name, index)
    marks = {each.label: each.mark for each in built(name)[0].pieces}
    told = [each for each in words(drawing) if not COUNT.fullmatch(each) and not each.isdecimal()]
    turned = [TURNED[name, index]] if (name, index) in TURNED else []
    assert shown(name)[index].turned == bool(turned)
    assert sorted(each for each in told if not each.startswith("Seen from")) == sorted(
        [*turned, *(marks[label] for label in step.added)]
    )
    assert areas_of(drawing, NEW)
    assert bool(areas_of(drawing, STANDING)) == bool(step.standing)


def test_three_directions_have_three_tints() -> None:
    for azimuth in (-148.0, -32.0, 58.0, 122.0):
        for elevation in (28.0, -25.0):
            tones = tints(View(azimuth, elevation))
            assert sorted(tones) == [0, 1, 2]
            assert tones[2] == (0 if elevation > 0 else 2)


def test_the_light_comes_from_the_left() -> None:
    """From the right of the front the walls across x look right, those across y look left."""
    x, y, _ = tints(View(32.0, 28.0))
    assert y < x
    x, y, _ = tints(View(-32.0, 28.0))
    assert x < y


@pytest.mark.parametrize("name", list(HAND_MADE))
def test_the_arrow_points_the_way_the_piece_moves(name: str) -> None:
    whole, order = built(name)
    for step in order.steps:
        drawing = step_view(Shown(assembled=whole, step=step), look=LOOK)
        arrows = areas_of(drawing, {Ink.ACCENT})
        assert len(arrows) == len({move.direction for move in step.moves})
        for arrow in arrows:
            corners = [vertex[:2] for vertex in arrow.contour.vertices]
            tail = ((corners[0][0] + corners[6][0]) / 2, (corners[0][1] + corners[6][1]) / 2)
            along = (corners[3][0] - tail[0], corners[3][1] - tail[1])
            ways = [LOOK.spot(move.direction) for move in step.moves]
            assert max(
                (along[0] * x + along[1] * y) / hypot(*along) / hypot(x, y) for x, y in ways
            ) == pytest.approx(1.0)


def test_pieces_are_drawn_out_against_their_moves() -> None:
    whole, order = built("stool")
    scene = step_scene(whole, order.steps[-1])
    (move,) = order.steps[-1].moves
    away = scene.away["seat"]
    assert away[2] > move.travel
    assert away[:2] == pytest.approx((0.0, 0.0))
    assert scene.away["rail"] == (0.0, 0.0, 0.0)
    half = step_scene(whole, order.steps[-1], 0.5)
    assert half.away["seat"][2] == pytest.approx(away[2] / 2)


def test_guide_lines_are_broken_and_run_along_the_move_or_the_hardware() -> None:
    step, look = step_of("harbour-stool", 2)
    drawing = picture("harbour-stool", 2)
    dashed = [each for each in drawing.items if isinstance(each, Stroke) and each.dash]
    guides = [each for each in dashed if len(each.contour.vertices) == 2]
    assert guides
    outs = {each.out for each in shown("harbour-stool")[2].fittings if each.step == step.number}
    ways = [look.spot(way) for way in (step.moves[0].direction, *outs)]
    for each in guides:
        (ax, ay, _), (bx, by, _) = each.contour.vertices
        off = min(abs((bx - ax) * y - (by - ay) * x) / hypot(x, y) for x, y in ways)
        assert off < 1e-3


@pytest.mark.parametrize(("name", "index"), STEPS)
def test_what_is_smaller_than_a_finger_gets_an_inset_and_nothing_else_does(
    name: str, index: int
) -> None:
    """Or what the picture does not show at all: the tote's last end hides where it goes."""
    step, look = step_of(name, index)
    whole, _ = built(name)
    scene = step_scene(whole, step)
    seat: PaperSeat = fitted(look, extent_of(scene.solids(), look), padded((0.0, 0.0, *ROOM), -RIM))
    joints = [each for each in scene.open_joints() if not each.joint.kind.flat]
    bolts = (
        each.length * seat.scale
        for each in shown(name)[index].fittings
        if each.step == step.number and each.role is Role.SHANK
    )
    small = any(is_small(each, seat) for each in joints) or any(size < FINGER for size in bolts)
    insets = rings(picture(name, index))
    assert len(insets) <= 2
    assert small or not insets


def test_the_bench_needs_insets() -> None:
    assert all(rings(picture("potting-bench", index)) for index in (0, 1, 4, 5, 6, 7))


def test_a_housing_that_looks_down_is_shown_from_below() -> None:
    said = [
        (name, index) for name, index in STEPS if "Seen from below" in words(picture(name, index))
    ]
    assert said == FROM_BELOW
    (ring,) = rings(picture("potting-bench", 2))
    left, bottom, right, top = extent([ring])
    middle = shapely.Point((left + right) / 2, (bottom + top) / 2)
    faces = (extent([each]) for each in areas_of(picture("potting-bench", 2), NEW))
    whole = [box for box in faces if shapely.box(*box).within(middle.buffer(0.9 * RADIUS))]
    assert len(whole) >= 2, "floor and walls of the housing are seen within the inset"


def test_hardware_is_called_out_with_its_count() -> None:
    drawing = picture("harbour-stool", 0, hardware=(("Bolt M6 x 50", 4), ("Barrel nut M6", 4)))
    found = words(drawing)
    assert found.count("4 ×") == 2
    assert {"Bolt M6 x 50", "Barrel nut M6"} <= set(found)


def test_a_view_from_below_says_so() -> None:
    whole, order = built("stool")
    last = Shown(assembled=whole, step=order.steps[-1])
    below, above = (step_view(last, look=look) for look in (View(-32.0, -25.0), LOOK))
    assert "Seen from below" in words(below)
    assert ", seen from below. Drawn larger" not in above.description
    assert "moving down to the 3 that stand, seen from below." in below.description


def test_the_sentence_says_what_is_new_and_how_it_moves() -> None:
    found = picture("harbour-stool", 2).description
    assert found == (
        "New: piece D moving down to the 4 that stand."
        " Drawn larger: Barrel nut M6 before its hole, its slot along the way of the bolt."
        " Drawn larger: Bolt M6 × 40 mm before its place."
    )
    assert picture("desk-rack", 1).description == (
        "New: pieces C1, C2, C3, C4 moving down to the 2 that stand. 4 alike, the same for each."
        " Drawn larger: how C4 and A meet, as at 4 places in all."
    )
    assert picture("desk-rack", 0).description == (
        "New: pieces A, B set down. A and B stand 140 mm apart, middle to middle."
    )


@pytest.mark.parametrize("name", SAMPLE)
def test_the_whole_plan_is_drawn_apart_with_every_mark(name: str) -> None:
    whole, order = built(name)
    drawing = exploded_view(whole, order)
    assert sorted(words(drawing)) == sorted(each.mark for each in whole.pieces)


def test_the_finished_piece_has_its_three_sizes_in_both_units() -> None:
    """The stool's seat is 360 wide and deep by the plan; 18 mm sheet on 450 mm sides is 468."""
    drawing = assembled_view(built("stool")[0])
    assert drawing.description == (
        "Put together it is 340 mm (13 3/8 in) wide, 300 mm (11 13/16 in) deep"
        " and 418 mm (16 15/32 in) high."
    )
    inches = assembled_view(built("stool")[0], reader=INCHES)
    assert "13 3/8 in (340 mm) wide" in inches.description


def test_the_same_plan_gives_the_same_bytes() -> None:
    one = svg_bytes(drawn("stool", 2))
    assert one == svg_bytes(drawn("stool", 2))


def test_the_bytes_do_not_hang_on_the_order_of_sets() -> None:
    code = (
        "from tests.drawing.test_step_view import picture; import hashlib;"
        "from kerfolio.writing.svg import svg_bytes;"
        "print(hashlib.sha256(svg_bytes(picture('crate', 1))).hexdigest())"
    )
    found = {
        subprocess.run(
            [sys.executable, "-c", code],
            env={"PYTHONHASHSEED": seed, "PATH": ""},
            capture_output=True,
            check=True,
            text=True,
        ).stdout
        for seed in ("1", "2", "3")
    }
    assert len(found) == 1


def test_contours_are_twice_as_thick_as_creases() -> None:
    widths = {each.width for each in edges_of(picture("stool", 2)) if each.ink in LINES}
    assert {0.35, 0.18} <= widths


def test_what_lies_rests_on_a_mat_that_is_drawn_before_all_else() -> None:
    """The mat reaches past the worktop on all sides, and no other step of the bench has one."""
    for each, look in zip(shown("potting-bench"), views("potting-bench"), strict=True):
        drawing = step_view(each, look=look)
        mats = [
            item for item in drawing.items if isinstance(item, Stroke) and item.fill is Ink.WASTE
        ]
        assert len(mats) == bool(each.lying)
        if not mats:
            continue
        assert drawing.items[0] is mats[0]
        assert not look.from_below
        assert "lies on a mat" in drawing.description


def test_people_are_counted_beside_the_picture() -> None:
    step, look = shown("potting-bench")[5], views("potting-bench")[5]
    heads = []
    for people in (1, 2, 3):
        drawing = step_view(replace(step, people=people), look=look)
        round_ones = [
            item
            for item in drawing.items
            if isinstance(item, Stroke) and item.fill is Ink.SOFT and item.contour.closed
        ]
        heads.append(len(round_ones))
    assert heads == [0, 4, 6]


WIDTHS_OF_CREASES = (WIDTHS[1], SMALL_WIDTHS[1])
DOTS = (Ink.INK, Ink.PAPER)
"""What the foot of a mark is filled with, and its circle."""


def engraved_in(name: str, index: int) -> list[Stroke]:
    """Return the lines that a picture has because of what is engraved."""
    stated = shown(name)[index]
    pieces = tuple(
        replace(each, panel=replace(each.panel, engraved=())) for each in stated.assembled.pieces
    )
    plain = replace(stated, assembled=replace(stated.assembled, pieces=pieces))
    without = {*step_view(plain, look=views(name)[index]).items}
    return [
        each
        for each in picture(name, index).items
        if isinstance(each, Stroke) and each.width in WIDTHS_OF_CREASES and each not in without
    ]


def test_what_is_engraved_is_drawn() -> None:
    """The three words of the front runner; the waves of an end seen from within, in dashes."""
    letters = engraved_in("desk-rack", 0)
    assert len(letters) >= len("INOUTKEEP")
    assert not any(each.dash for each in letters)
    assert any(each.dash == HIDDEN for each in engraved_in("tool-tote", 3))


@pytest.mark.parametrize(("name", "index"), [("desk-rack", 0), ("desk-rack", 2), ("tool-tote", 4)])
def test_no_mark_stands_on_an_engraving(name: str, index: int) -> None:
    drawing = picture(name, index)
    marks = [
        shapely.LineString(path_of(each.contour)).convex_hull
        for each in drawing.items
        if isinstance(each, Stroke) and each.fill in DOTS and each.width != 0.25
    ]
    lines = [shapely.LineString(path_of(each.contour)) for each in engraved_in(name, index)]
    assert marks
    assert lines
    assert not shapely.intersects(shapely.MultiLineString(lines), shapely.MultiPolygon(marks))


def sizes_in(name: str, index: int) -> list[Dimension]:
    return [each for each in picture(name, index).items if isinstance(each, Dimension)]


def test_how_far_apart_loose_things_stand_is_drawn_and_nothing_else() -> None:
    """The rack's runners stand 140 mm apart, middle to middle, as its plan says; all else is held
    by joints."""
    (size,) = sizes_in("desk-rack", 0)
    assert size.text == "140 mm"
    (crate,) = sizes_in("crate", 0)
    assert crate.text == "100 mm"
    others = {*STEPS} - {("desk-rack", 0), ("crate", 0)}
    assert not any(sizes_in(*each) for each in others)
    whole, step = shown("desk-rack")[0].assembled, shown("desk-rack")[0].step
    moved = tuple(
        replace(each, pose=each.pose.moved((0.0, 20.0, 0.0))) if each.label == "rear" else each
        for each in whole.pieces
    )
    other = step_view(Shown(assembled=replace(whole, pieces=moved), step=step), look=LOOK)
    assert [each.text for each in other.items if isinstance(each, Dimension)] == ["160 mm"]
