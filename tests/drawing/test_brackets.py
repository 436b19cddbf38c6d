"""Brackets and clamps as they are drawn: in steps, in the model, at full size."""

from __future__ import annotations

import json

import pytest

from kerfolio.drawing.extent import box_of_contours
from kerfolio.drawing.hardware_view import hardware_views
from kerfolio.drawing.model_view import model_of, viewer_data
from kerfolio.drawing.mounted import AT_HOME, mounted
from kerfolio.drawing.scene import home_scene, step_scene
from kerfolio.drawing.view_choice import chosen_views
from kerfolio.drawing.vocabulary import Stroke
from kerfolio.geometry.facing import PosedPlated
from kerfolio.geometry.panel_mesh import volume_and_centre
from kerfolio.geometry.view import View
from tests.brackets_plan import LEDGE
from tests.drawing.made import shown_of
from tests.plans import proved

FRONT = View(-32.0, 28.0)


def test_a_bracket_is_true_to_size_in_the_list_of_what_is_needed() -> None:
    """40 by 40 mm as it is bent, 40 by 20 mm on a leg with two holes of 4.5 mm."""
    (made,) = proved(LEDGE).made
    bracket, clamp = (made.settled.stock.item(each) for each in ("bracket-40", "clamp-160"))
    assert bracket is not None
    assert clamp is not None
    assert hardware_views([(clamp, 1)]) == ()
    (drawing,) = hardware_views([(bracket, 2)])
    faces = [
        each
        for each in drawing.items
        if isinstance(each, Stroke) and each.width is None and each.fill is not None
    ]
    sizes = []
    for each in faces:
        x0, y0, x1, y1 = box_of_contours([each.contour])
        sizes.append((round(x1 - x0, 2), round(y1 - y0, 2)))
    assert sizes == [(40.0, 40.0), (40.0, 20.0)]
    holes = [box_of_contours([each]) for each in faces[1].holes]
    assert [round(x1 - x0, 2) for x0, _, x1, _ in holes] == [4.5, 4.5]


def test_brackets_are_tinted_in_their_step_and_at_home_after_it() -> None:
    shown = shown_of(LEDGE)
    step = mounted(step_scene(shown[1].assembled, shown[1].step), shown[1].fittings, 2, FRONT, 0.2)
    plates = [each for each in step.fittings if isinstance(each.posed, PosedPlated)]
    assert [each.new for each in plates] == [True, True]
    assert len(step.coloured) == 10
    later = mounted(step_scene(shown[2].assembled, shown[2].step), shown[2].fittings, 3, FRONT, 0.2)
    plates = [each for each in later.fittings if isinstance(each.posed, PosedPlated)]
    assert sorted(each.new for each in plates) == [False, False, True]
    home = mounted(home_scene(shown[2].assembled), shown[2].fittings, AT_HOME, FRONT, 0.2)
    assert not any(each.new for each in home.fittings)


def test_small_holes_are_left_out_where_paper_would_not_show_them() -> None:
    """2.25 mm of radius are 0.45 mm at 1 to 5 and 0.11 mm at 1 to 20."""
    shown = shown_of(LEDGE)[1]
    for scale, holes in ((0.2, 4), (0.05, 0)):
        scene = mounted(step_scene(shown.assembled, shown.step), shown.fittings, 2, FRONT, scale)
        plates = [each.posed for each in scene.fittings if isinstance(each.posed, PosedPlated)]
        assert [len(each.plated.holes) for each in plates] == [holes] * 2


def test_what_is_screwed_from_below_is_seen_from_below() -> None:
    views = chosen_views(shown_of(LEDGE))
    assert [view.from_below for view in views] == [False, True, False]


def test_the_model_has_brackets_and_clamps() -> None:
    """Steel of a bracket: 2 mm by 20 mm by 78 mm without four holes."""
    (made,) = proved(LEDGE).made
    assert made.build is not None
    shown = shown_of(LEDGE)[-1]
    model = model_of(shown.assembled, made.build.order, "Ledge", (), fittings=shown.fittings)
    names = [each.name for each in model.shapes]
    assert names.count("bracket-40") == 1
    assert names.count("clamp-160") == 2  # with its screw
    (shape,) = (each for each in model.shapes if each.name == "bracket-40")
    volume, _ = volume_and_centre(shape.mesh)
    assert volume == pytest.approx(2 * 20 * 78 - 4 * 2 * 3.1416 * 2.25**2, rel=0.01)
    pieces = json.loads(viewer_data(model))["pieces"]
    assert sum(each["title"].startswith("Bracket") for each in pieces) == 2
