"""Boards and the wall behind a thing, as they are drawn."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from math import cos, radians, sin

from kerfolio.assembly.lying import Shown
from kerfolio.basis.reader import METRIC
from kerfolio.drawing.build_views import build_drawings
from kerfolio.drawing.extent import box_of_contours
from kerfolio.drawing.mounted import AT_HOME, mounted
from kerfolio.drawing.paper_seat import PaperSeat
from kerfolio.drawing.scene import home_scene, step_scene
from kerfolio.drawing.step_view import step_view
from kerfolio.drawing.view_choice import chosen_views
from kerfolio.drawing.vocabulary import Dimension, Drawing, Ink, Label, Stroke
from kerfolio.drawing.wall import is_shown, shown_wall, wall_strokes
from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.view import View
from tests.boards_plan import RACK, STRAIGHT
from tests.drawing.made import shown_of
from tests.plans import proved

FRONT = View(-32.0, 28.0)


@cache
def drawings(plan: str) -> dict[str, Drawing]:
    (made,) = proved(plan).made
    return {**build_drawings(made, METRIC)}


def step_two(plan: str = RACK) -> Shown:
    return shown_of(plan)[1]


def test_a_board_new_in_a_step_is_tinted_and_drawn_out_to_where_it_comes_from() -> None:
    """2.5 widths of 45 mm and some air behind the back; at home once it is there."""
    shown = step_two()
    scene = mounted(step_scene(shown.assembled, shown.step), shown.fittings, 2, FRONT, 0.2)
    (batten,) = [each for each in scene.fittings if isinstance(each.posed, PosedPanel) and each.new]
    assert batten.guide is not None
    gone = [round(b - a, 6) for a, b in zip(*batten.guide, strict=True)]
    assert gone == [0.0, -(2.5 * 45 + 12), 0.0]
    assert len(scene.coloured) == 4  # with three screws
    home = mounted(home_scene(shown.assembled), shown.fittings, AT_HOME, FRONT, 0.2)
    assert [each.new for each in home.fittings].count(True) == 0
    assert sum(isinstance(each.posed, PosedPanel) for each in home.fittings) == 2


def test_the_wall_is_as_far_off_as_the_board_on_it_and_stays_at_what_is_screwed_to_it() -> None:
    shown = step_two()
    wall = shown_wall(shown, step_scene(shown.assembled, shown.step))
    assert shown.wall is not None
    assert wall is not None
    assert round(wall.at - shown.wall.at, 6) == 2.5 * 45 + 12
    straight = step_two(STRAIGHT)
    wall = shown_wall(straight, step_scene(straight.assembled, straight.step))
    assert wall == straight.wall
    assert shown_of(RACK)[0].wall is None


def test_the_wall_is_where_the_view_puts_it() -> None:
    """Its lower left corner by the formula for a turn and a tilt; the cut edges are hatched."""
    wall = shown_wall(step_two(), step_scene(step_two().assembled, step_two().step))
    assert wall is not None
    front, *rest = wall_strokes(wall, PaperSeat(FRONT, 0.1))
    assert front.fill is Ink.WASTE
    rim = 0.05 * (700**2 + (wall.high[1] - wall.low[1]) ** 2) ** 0.5
    x, y, z = wall.low[0] - rim, wall.at, wall.low[1] - rim
    turn, tilt = radians(-32.0), radians(28.0)
    across = x * cos(turn) + y * sin(turn)
    into = -x * sin(turn) + y * cos(turn)
    u, v = across, z * cos(tilt) + into * sin(tilt)
    assert [round(0.1 * u, 6), round(0.1 * v, 6)] == [
        round(each, 6) for each in front.contour.vertices[0][:2]
    ]
    cuts = [each for each in rest if each.fill is Ink.PAPER]
    assert len(cuts) == 2
    for cut in cuts:
        x0, y0, x1, y1 = box_of_contours([cut.contour])
        lines = [
            each
            for each in rest
            if each.fill is None
            and all(
                x0 - 1e-6 <= a <= x1 + 1e-6 and y0 - 1e-6 <= b <= y1 + 1e-6
                for a, b, _ in each.contour.vertices
            )
        ]
        assert len(lines) > 10


def heights(plan: str) -> list[str]:
    items = drawings(plan)["step-2"].items
    return [each.text for each in items if isinstance(each, Dimension)]


def test_how_high_a_board_is_fixed_to_the_wall_is_drawn_where_the_floor_is() -> None:
    """A back that stands on the floor with its holes at 850 mm: half of a batten of 45 mm higher
    it ends. One hung on the wall, and one without a batten, has no height to tell."""
    tall = RACK.replace("[700, 300]", "[700, 900]").replace(
        "[[150, 250], [350, 250], [550, 250]]", "[[150, 850], [350, 850], [550, 850]]"
    )
    assert heights(tall) == ["873 mm"]
    told = drawings(tall)["step-2"].description
    assert "The upper edge of Batten is 873 mm above the floor." in told
    assert heights(RACK) == []
    assert heights(tall.replace("joins: [back.screws, batten]", "joins: [back.screws, wall]")) == []


def test_what_stands_before_a_wall_is_seen_from_the_front() -> None:
    assert is_shown(FRONT)
    assert not is_shown(View(122.0, 28.0))
    assert not is_shown(View(-32.0, -25.0))
    shown = shown_of(RACK)
    assert is_shown(chosen_views(shown)[1])
    behind = step_view(shown[1], look=View(148.0, 28.0))
    assert not any(each.fill is Ink.WASTE for each in behind.items if isinstance(each, Stroke))


def test_nothing_beside_the_picture_stands_on_the_wall() -> None:
    drawing = drawings(RACK)["step-2"]
    walls = [
        each.contour
        for each in drawing.items
        if isinstance(each, Stroke) and each.fill is Ink.WASTE
    ]
    x0, _, x1, _ = box_of_contours(walls)
    texts = {each.text: each for each in drawing.items if isinstance(each, Label)}
    assert {"3 ×", "1 ×", "Wood screw 5 × 30 mm", "Batten, 600 mm"} == {*texts}
    assert all(each.at[0] > x1 or each.at[0] + 25 < x0 for each in texts.values())
    assert "New from boards: Batten. The wall is behind it." in drawing.description
    assert "The wall is behind it." in drawings(RACK)["assembled"].description
    free = drawings(RACK.replace("placed: wall", "placed: free-standing"))
    assert "wall" not in free["assembled"].description


def test_the_whole_has_its_hardware_in_its_place() -> None:
    """Three heads more are three solids more: their edges are drawn, and no wall moves a size."""
    shown = step_two()
    bare = replace(shown, fittings=())
    with_it, without = (
        mounted(home_scene(each.assembled), each.fittings, AT_HOME, FRONT, 0.2)
        for each in (shown, bare)
    )
    assert len(with_it.fittings) - len(without.fittings) == 5
