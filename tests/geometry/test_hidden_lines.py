"""Hidden lines: cases worked out by hand, and random scenes against an eye that tries spots."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import cos, dist, radians, sin

import numpy as np
import pytest
import shapely

from kerfolio.geometry.cropped import cropped
from kerfolio.geometry.facing import PosedPanel, extent_of, facing, solids_of
from kerfolio.geometry.hidden_lines import Seen, SeenLine, seen
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Recess
from kerfolio.geometry.rigid import Rigid
from kerfolio.geometry.sight import Sight
from kerfolio.geometry.view import View
from tests.geometry.panel_cases import board, random_frame, random_panel, rectangle
from tests.geometry.sight_oracle import NOTHING, Oracle

FRONT = View(0.0, 0.0)
UPRIGHT = Rigid((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, -1.0, 0.0))


def upright(x: float, y: float, wide: float, high: float, z: float = 0.0) -> PosedPanel:
    """A board that stands across the view from the front, its show face at y."""
    return PosedPanel(board(rectangle(0, 0, wide, high)), UPRIGHT.moved((x, y + 18.0, z)))


def drawn(*solids: PosedPanel, view: View = FRONT, apart: float = 0.5, least: float = 1.0) -> Seen:
    return seen(solids_of(solids), view, apart=apart, least=least)


def length(line: SeenLine) -> float:
    return sum(dist(a, b) for a, b in pairwise(line.points))


def total(found: Seen, *, contour: bool) -> float:
    return sum(length(each) for each in found.lines if each.contour == contour)


def area(found: Seen, solid: int) -> float:
    return sum(each.shape.area for each in found.areas if each.solid == solid)


def segments(found: Seen) -> list[tuple[tuple[float, float], tuple[float, float]]]:
    return [pair for line in found.lines for pair in pairwise(line.points)]


# -------------------------------------------------------------------------- by hand


def test_one_board_from_the_front_is_its_outline() -> None:
    found = drawn(upright(10, 0, 100, 60))
    assert len(found.lines) == 1
    assert found.lines[0].points[0] == found.lines[0].points[-1]
    assert len(found.lines[0].points) == 5
    assert total(found, contour=True) == pytest.approx(320)
    (face,) = found.areas
    assert (face.solid, face.axis) == (0, 1)
    assert face.shape.box == pytest.approx((10, 0, 110, 60))


def test_a_box_hides_the_middle_of_a_box_behind_it() -> None:
    """Behind: 200 x 200 at x 0..200. In front: 100 x 100 at x 50..150, both on the ground."""
    found = drawn(upright(0, 100, 200, 200), upright(50, 0, 100, 100))
    assert area(found, 1) == pytest.approx(100 * 100)
    assert area(found, 0) == pytest.approx(200 * 200 - 100 * 100)
    behind = sum(length(line) for line in found.lines if line.solid == 0)
    front = sum(length(line) for line in found.lines if line.solid == 1)
    assert behind == pytest.approx(200 + 200 + 200 + 50 + 50)
    assert front == pytest.approx(400)
    (left, bottom, right, top) = next(each.shape.box for each in found.areas if each.solid == 0)
    assert (left, bottom, right, top) == pytest.approx((0, 0, 200, 200))


def test_from_above_more_of_the_box_behind_is_seen() -> None:
    """At 30 degrees up, z shows as cos 30 and a way back as sin 30: the front board's rear top
    edge stands 100 cos 30 + 18 sin 30 above its foot; the other's front foot 100 sin 30."""
    view = View(0.0, 30.0)
    c, s = cos(radians(30)), sin(radians(30))
    found = drawn(upright(0, 100, 100, 200), upright(0, 0, 100, 100), view=view)
    top_of_front = 100 * c + 18 * s
    seen_of_face = 100 * s + 200 * c - top_of_front
    faces = {(each.solid, each.axis): each.shape.area for each in found.areas}
    assert faces[0, 1] == pytest.approx(100 * seen_of_face, rel=1e-4)  # on a grid of 0.001 mm
    assert faces[0, 2] == pytest.approx(100 * 18 * s, rel=1e-4)
    assert faces[1, 1] == pytest.approx(100 * 100 * c, rel=1e-4)
    assert faces[1, 2] == pytest.approx(100 * 18 * s, rel=1e-4)
    assert total(found, contour=False) == pytest.approx(200)  # the two edges between faces


def test_an_opening_shows_what_is_behind_it() -> None:
    frame = PosedPanel(
        board(rectangle(0, 0, 100, 100), rectangle(30, 30, 70, 70)), UPRIGHT.moved((0, 18, 0))
    )
    found = drawn(upright(0, 60, 100, 100), frame)
    assert area(found, 1) == pytest.approx(100 * 100 - 40 * 40)
    assert area(found, 0) == pytest.approx(40 * 40)
    assert total(found, contour=True) == pytest.approx(400 + 160)


def test_the_floor_of_a_pocket_is_seen_within_it() -> None:
    pocket = Recess(Flat(rectangle(20, 20, 60, 60)), 5.0)
    found = drawn(
        PosedPanel(board(rectangle(0, 0, 100, 100), recesses=(pocket,)), UPRIGHT.moved((0, 18, 0)))
    )
    assert area(found, 0) == pytest.approx(100 * 100)
    assert total(found, contour=True) == pytest.approx(400 + 160)


def test_boards_that_touch_draw_their_seam_once() -> None:
    found = drawn(upright(0, 0, 100, 60), upright(100, 0, 100, 60))
    assert total(found, contour=True) == pytest.approx(300 + 60 + 200 - 60 + 60 - 0.0, abs=60.1)
    inner = [(a, b) for a, b in segments(found) if abs(a[0] - 100) < 1e-6 > abs(b[0] - 100)]
    assert sum(dist(a, b) for a, b in inner) == pytest.approx(60)


def test_a_gap_too_narrow_for_paper_is_one_line() -> None:
    near = drawn(upright(0, 0, 100, 60), upright(100.3, 0, 100, 60))
    wide = drawn(upright(0, 0, 100, 60), upright(103.0, 0, 100, 60))
    assert total(wide, contour=True) - total(near, contour=True) == pytest.approx(60, abs=1.0)


def test_a_board_through_another_shows_where_they_cross() -> None:
    """A level board 100 deep pierces an upright one at half height: the line of the crossing."""
    level = PosedPanel(board(rectangle(0, -50, 60, 50)), Rigid((20.0, 9.0, 41.0)))
    view = View(0.0, 45.0)
    found = drawn(upright(0, 0, 100, 100), level, view=view)
    c = cos(radians(45))
    crossing = [line for line in found.lines if not line.contour and line.solid == 0]
    flat = [line for line in crossing if abs(line.points[0][1] - line.points[-1][1]) < 1e-6]
    assert any(length(line) == pytest.approx(60) for line in flat)
    # it stands 41 out at z = 41: its front, 18 c high, and its top, 41 s deep, begin at the foot
    shown = 40 * 100 + 60 * (100 - 59) + 100 * 18  # beside it, above it, and its own top
    assert area(found, 0) == pytest.approx(shown * c, abs=1)


def test_a_curve_shows_no_seams_between_its_facets() -> None:
    turns = np.linspace(0, 2 * np.pi, 120, endpoint=False)
    disc = board(tuple((50 * float(np.cos(t)), 50 * float(np.sin(t))) for t in turns))
    found = drawn(PosedPanel(disc, Rigid()), view=View(0.0, 40.0))
    assert len(found.lines) == 2  # the outline, and the near half of the upper rim
    assert total(found, contour=False) == pytest.approx(np.pi * 50 * 0.83, rel=0.1)


def test_asked_lines_are_cut_where_they_are_hidden() -> None:
    wall = solids_of([upright(0, 0, 100, 100)])
    line = ((-50.0, 50.0, 50.0), (150.0, 50.0, 50.0))
    found = seen(wall, FRONT, extra=[line])
    assert [(n, a, b) for n, a, b in found.extra] == [
        (0, pytest.approx((-50, 50)), pytest.approx((0, 50))),
        (0, pytest.approx((100, 50)), pytest.approx((150, 50))),
    ]


def test_a_window_gives_the_same_picture_within_it() -> None:
    solids = solids_of([upright(0, 100, 200, 200), upright(50, 0, 100, 100)])
    view = View(-32.0, 28.0)
    whole = seen(solids, view)
    centre, reach = (100.0, 90.0), 40.0
    window = (centre[0] - 42, centre[1] - 42, centre[0] + 42, centre[1] + 42)
    part = seen(solids, view, window=window)
    for solid in (0, 1):
        one = area(cropped(whole, centre, reach), solid)
        assert area(cropped(part, centre, reach), solid) == pytest.approx(one, abs=1.0)
    assert total(cropped(part, centre, reach), contour=True) == pytest.approx(
        total(cropped(whole, centre, reach), contour=True), abs=1.0
    )


# -------------------------------------------------------------------------- random scenes


def scene(seed: int, *, oblique: bool) -> list[PosedPanel]:
    rng = np.random.default_rng(seed)
    found = []
    for _ in range(5):
        x, y, z = (float(each) for each in rng.uniform(-150, 150, 3))
        frame = random_frame(rng, (x, y, z))
        if not oblique:
            turn = int(rng.integers(3))
            axes = np.roll(np.eye(3), turn, axis=1)
            rows = [(float(a), float(b), float(c)) for a, b, c in axes]
            frame = Rigid((x, y, z), rows[0], rows[1], rows[2])
        found.append(PosedPanel(random_panel(rng), frame))
    return found


CASES = [(seed, oblique) for seed in range(8) for oblique in (False, True)]


def view_for(seed: int) -> View:
    rng = np.random.default_rng(1000 + seed)
    return View(float(rng.uniform(-180, 180)), float(rng.uniform(-60, 60)))


@pytest.mark.parametrize(("seed", "oblique"), CASES)
def test_every_area_is_filled_by_what_the_eye_sees_there(seed: int, oblique: bool) -> None:
    solids, view = scene(seed, oblique=oblique), view_for(seed)
    made = solids_of(solids)
    found = seen(made, view, apart=0.3, least=0.6)
    left, bottom, right, top = extent_of(made, view)
    spots = np.random.default_rng(seed).uniform((left, bottom), (right, top), (1500, 2))
    solid, _, _ = Oracle(solids, view).nearest(spots)
    filled = np.full(len(spots), NOTHING)
    for each in found.areas:
        polygon = shapely.Polygon(each.shape.outer, each.shape.openings)
        filled[shapely.contains_xy(polygon, spots)] = each.solid
    border = shapely.union_all(
        [shapely.Polygon(each.shape.outer, each.shape.openings).boundary for each in found.areas]
    )
    clear = shapely.distance(border, shapely.points(spots)) > 0.8
    assert (filled[clear] == solid[clear]).all()
    assert clear.mean() > 0.9


@pytest.mark.parametrize(("seed", "oblique"), CASES)
def test_every_stroke_parts_what_the_eye_sees_on_its_two_sides(seed: int, oblique: bool) -> None:
    """Beside a stroke the solid, the way its surface looks or its depth is another; so no hidden
    edge is drawn."""
    solids, view = scene(seed, oblique=oblique), view_for(seed)
    found = seen(solids_of(solids), view, apart=0.1, least=4.0)
    oracle = Oracle(solids, view)
    middles, sides = [], []
    for a, b in segments(found):
        size = dist(a, b)
        if size > 3:
            middles.append(((a[0] + b[0]) / 2, (a[1] + b[1]) / 2))
            sides.append((-(b[1] - a[1]) / size, (b[0] - a[0]) / size))
    middle, side = np.array(middles), np.array(sides)
    off = 0.15  # facets of curves may stray by 0.1
    one = oracle.nearest(middle + off * side)
    other = oracle.nearest(middle - off * side)
    both = (one[0] != NOTHING) & (other[0] != NOTHING)
    differs = (
        (one[0] != other[0])
        | (np.abs(np.subtract(one[1], other[1], where=both, out=np.zeros(len(both)))) > 0.5)
        | (np.einsum("ij,ij->i", one[2], other[2]) < 0.9999)
    )
    assert differs.mean() > 0.99


@pytest.mark.parametrize(("seed", "oblique"), CASES)
def test_every_sharp_change_that_the_eye_sees_is_drawn(seed: int, oblique: bool) -> None:
    """Between two near spots of which the eye sees different solids, or surfaces that look
    another way, some stroke passes."""
    solids, view = scene(seed, oblique=oblique), view_for(seed)
    made = solids_of(solids)
    found = seen(made, view, apart=0.3, least=0.6)
    left, bottom, right, top = extent_of(made, view)
    spots = np.random.default_rng(seed).uniform((left, bottom), (right, top), (2500, 2))
    step = np.array([1.7, 1.1])
    oracle = Oracle(solids, view)
    one, other = oracle.nearest(spots), oracle.nearest(spots + step)
    turned = np.einsum("ij,ij->i", one[2], other[2]) < 0.8
    shown = (one[0] != NOTHING) & (other[0] != NOTHING)
    changed = (one[0] != other[0]) | (turned & shown)
    strokes = shapely.union_all([shapely.LineString(line.points) for line in found.lines])
    ways = shapely.linestrings(np.stack([spots, spots + step], axis=1))
    near = shapely.distance(strokes, ways) < 0.5
    assert changed.sum() > 20
    assert near[changed].mean() > 0.99


@pytest.mark.parametrize(("seed", "oblique"), CASES)
def test_no_stroke_is_a_speck_and_none_is_doubled(seed: int, oblique: bool) -> None:
    solids, view = scene(seed, oblique=oblique), view_for(seed)
    found = seen(solids_of(solids), view, apart=0.5, least=2.0)
    assert min(length(line) for line in found.lines) >= 1.9
    strokes = [shapely.LineString(pair) for pair in segments(found) if dist(*pair) > 0.5]
    ways = [(b[0] - a[0], b[1] - a[1]) for a, b in (each.coords for each in strokes)]
    tree = shapely.STRtree(strokes)
    one, other = tree.query(strokes, predicate="dwithin", distance=0.3)
    for a, b in zip(one.tolist(), other.tolist(), strict=True):
        cross = ways[a][0] * ways[b][1] - ways[a][1] * ways[b][0]
        turn = cross / np.hypot(*ways[a]) / np.hypot(*ways[b])
        if a < b and abs(turn) < 0.045:
            beside = strokes[a].intersection(strokes[b].buffer(0.2, cap_style="flat"))
            assert beside.length < 1.5, (strokes[a], strokes[b])


def test_the_same_scene_gives_the_same_picture() -> None:
    solids, view = scene(3, oblique=True), view_for(3)
    assert seen(solids_of(solids), view) == seen(solids_of(solids), view)


def test_sight_of_nothing_hides_nothing() -> None:
    faces, edges = facing(solids_of([upright(0, 0, 100, 100)]), FRONT)
    number, spans = Sight(faces).seen(edges.ends)
    assert number.tolist() == list(range(len(edges.ends)))
    assert spans.tolist() == [[0.0, 1.0]] * len(edges.ends)


# -------------------------------------------------------------------------- what is engraved


def engraved(posed: PosedPanel, *runs: tuple[tuple[float, float], ...]) -> PosedPanel:
    return PosedPanel(replace(posed.panel, engraved=runs), posed.pose)


def test_an_engraved_line_is_seen_where_nothing_stands_before_it() -> None:
    """100 mm of it; a board 30 mm wide in front hides the middle. Behind its board it is hidden."""
    line = ((10.0, 30.0), (110.0, 30.0))
    back, front = engraved(upright(0, 200, 120, 60), line), upright(40, 0, 30, 60)
    (whole,) = drawn(back).engraved
    assert (whole.solid, whole.away) == (0, False)
    assert [x for x, _ in sorted(whole.points)] == pytest.approx([10, 110], abs=0.05)
    left, right = sorted(sorted(each.points) for each in drawn(back, front).engraved)
    assert [x for x, _ in (*left, *right)] == pytest.approx([10, 40, 70, 110], abs=0.05)
    assert drawn(back, view=View(180.0, 0.0)).engraved == ()
    assert drawn(back, upright(0, 0, 120, 60)).engraved == ()


def test_of_what_is_asked_for_the_far_face_is_looked_through_to() -> None:
    """Seen from behind, 10 to 30 mm from its left is 90 to 110 mm from the left of the picture."""
    board_ = engraved(upright(0, 0, 120, 60), ((10.0, 30.0), (30.0, 30.0)))
    (run,) = seen(solids_of([board_]), View(180.0, 0.0), apart=0.5, first=(0,)).engraved
    assert run.away
    assert sorted(x for x, _ in run.points) == pytest.approx([-30, -10], abs=0.05)


def test_an_engraving_too_small_to_see_is_left_out_and_a_circle_crops_it() -> None:
    board_ = engraved(upright(0, 0, 120, 60), ((10.0, 30.0), (14.0, 30.0)))
    assert drawn(board_, apart=0.1).engraved
    assert drawn(board_, apart=1.0).engraved == ()
    found = drawn(engraved(upright(0, 0, 120, 60), ((0.0, 30.0), (120.0, 30.0))))
    (run,) = cropped(found, (60.0, 30.0), 20.0).engraved
    assert sorted(x for x, _ in run.points) == pytest.approx([40, 80], abs=0.1)
