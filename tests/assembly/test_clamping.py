"""Where glue and clamps go: against sizes of the plan, and clear of the work."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache
from itertools import pairwise

import numpy as np
import pytest
import shapely

from kerfolio.assembly.assembled import Assembled, BuildStep
from kerfolio.assembly.building import Build, build_of
from kerfolio.assembly.clamping import Clamp, Taken, clamps_over, holding
from kerfolio.assembly.handworked import closing, coated, glued_in
from kerfolio.assembly.lying import Shown, shown_at
from kerfolio.geometry.facing import PosedPanel
from kerfolio.geometry.rigid import dot
from tests.assembly.scenes import settled

INCH = 25.4
FLOOR, HANDLE, LEFT, RIGHT = 1, 3, 5, 6
"""The steps of the tote that glue, by their numbers."""


@cache
def tote() -> Build:
    found = build_of(settled("tool-tote"), [settled("tool-tote")])
    assert found is not None
    return found


def at(number: int) -> Shown:
    build = tote()
    return shown_at(build.drawn.assembled, build.order, build.settled.plan.steps, number)


def clamps(number: int, count: int | None) -> tuple[Clamp, ...]:
    shown, plan = at(number), tote().settled.plan
    glued = glued_in(shown.assembled, shown.step, plan.steps[number - 1], plan)
    return clamps_over(shown.assembled, there(shown.step), glued, count)


def there(step: BuildStep) -> set[str]:
    return {*step.standing, *step.added}


@pytest.mark.parametrize(
    ("number", "pieces"),
    [
        (FLOOR, {"bottom", "side.front", "side.rear"}),
        (2, set()),  # the divider only slides in
        (HANDLE, {"handle", "pad.front", "pad.rear"}),
        (LEFT, {"bottom", "side.front", "side.rear", "handle", "end.left"}),
        (RIGHT, {"bottom", "side.front", "side.rear", "handle", "end.right"}),
    ],
)
def test_what_the_fit_says_is_glued_where_it_closes(number: int, pieces: set[str]) -> None:
    shown, plan = at(number), tote().settled.plan
    glued = glued_in(shown.assembled, shown.step, plan.steps[number - 1], plan)
    assert {each for joint in glued for each in (joint.a, joint.b)} == pieces
    assert {*glued} <= {*closing(shown.assembled, shown.step)}


def test_glue_covers_just_what_meets() -> None:
    """A pad is a slot 6 × 1-1/4 in less two holes of 1/4 in and two pilots of 3/32 in; of a tab
    3 in wide both cheeks lie in the sheet, as deep as that is thick."""
    shown, plan = at(HANDLE), tote().settled.plan
    glued = glued_in(shown.assembled, shown.step, plan.steps[HANDLE - 1], plan)
    areas = {
        each.piece.label: [p.area for p in each.patches] for each in coated(shown.assembled, glued)
    }
    slot = (6 - 1.25) * 1.25 + math.pi / 4 * (1.25**2 - 2 * 0.25**2 - 2 * (3 / 32) ** 2)
    assert areas["pad.front"] == pytest.approx([slot * INCH**2], rel=0.005)
    assert areas["handle"] == pytest.approx([slot * INCH**2] * 2, rel=0.005)
    shown = at(FLOOR)
    glued = glued_in(shown.assembled, shown.step, plan.steps[0], plan)
    (bottom,) = [each for each in coated(shown.assembled, glued) if each.piece.label == "bottom"]
    thick = tote().settled.part("side").thickness
    cheeks = [p for p in bottom.patches if abs(p.normal[2]) > 0.99]
    assert len(cheeks) == 8  # four tabs
    assert [p.area for p in cheeks] == pytest.approx([3 * INCH * thick] * 8)


def cut(clamp: Clamp, assembled: Assembled, labels: set[str]) -> int:
    """Count the points of a grid in a clamp's flat body that lie in a piece, by its outline."""
    body = clamp.body
    area = shapely.Polygon(body.panel.shape.outer)
    x0, y0, x1, y1 = area.bounds
    xs, ys = np.meshgrid(np.arange(x0 + 0.5, x1, 2.0), np.arange(y0 + 0.5, y1, 2.0))
    flat = np.column_stack([xs.ravel(), ys.ravel()])
    flat = flat[shapely.contains_xy(area, flat)]
    count = 0
    for level in (0.5, body.panel.thickness / 2, body.panel.thickness - 0.5):
        spots = np.column_stack([flat, np.full(len(flat), level)])
        world = spots @ np.array([body.pose.x, body.pose.y, body.pose.z]) + body.pose.origin
        for piece in (each for each in assembled.pieces if each.label in labels):
            axes = np.array([piece.pose.x, piece.pose.y, piece.pose.z])
            own = (world - np.array(piece.pose.origin)) @ axes.T
            shape = shapely.Polygon(piece.panel.shape.outer, piece.panel.shape.openings)
            inside = shapely.contains_xy(shapely.buffer(shape, -0.1), own[:, :2])
            deep = (own[:, 2] > 0.1) & (own[:, 2] < piece.panel.thickness - 0.1)
            count += int((inside & deep).sum())
    return count


@pytest.mark.parametrize(("number", "count"), [(FLOOR, 2), (HANDLE, 2), (LEFT, 2), (RIGHT, 4)])
def test_clamps_are_as_many_as_stated_and_cut_nothing(number: int, count: int) -> None:
    shown, found = at(number), clamps(number, count)
    assert len(found) == count
    for clamp in found:
        assert cut(clamp, shown.assembled, there(shown.step)) == 0
    for one, other in pairwise(found):
        assert not one.cuts([Taken.of(each) for each in other.solids])


def test_a_clamp_with_too_little_throat_would_cut() -> None:
    shown, (clamp, *_) = at(FLOOR), clamps(FLOOR, 2)
    shallow = replace(clamp, throat=clamp.throat / 2)
    assert cut(shallow, shown.assembled, there(shown.step)) > 100
    pieces = (PosedPanel(each.panel, each.pose) for each in shown.assembled.pieces)
    assert shallow.cuts([Taken.of(each) for each in pieces])


def test_clamps_press_the_outer_faces_over_the_middle_of_what_is_glued() -> None:
    """The tote is 18 in long and its sides stand at its front and rear, 8-1/2 in over all."""
    front, rear = sorted(clamps(RIGHT, 2), key=lambda each: each.frame.origin[1])
    thick = tote().settled.part("side").thickness
    for each, y in ((front, thick / 2), (rear, 8.5 * INCH - thick / 2)):
        assert each.opening == pytest.approx(18 * INCH, abs=0.01)
        assert abs(each.frame.x[0]) == pytest.approx(1.0)
        assert each.frame.origin[1] == pytest.approx(y, abs=1.0)
    handle = clamps(HANDLE, 2)
    for each in handle:  # two pads and the handle
        assert each.opening == pytest.approx(3 * thick, abs=0.01)
        assert abs(each.frame.x[1]) == pytest.approx(1.0)
    apart = abs(handle[0].frame.origin[0] - handle[1].frame.origin[0])
    assert apart == pytest.approx(6 * INCH / 2, abs=0.5)  # at a quarter and three quarters


def test_a_seam_gets_clamps_by_its_length_where_nobody_says_how_many() -> None:
    """The pads' seam is 6 in long, over 100 mm: two."""
    assert len(clamps(HANDLE, None)) == 2


def test_what_is_bored_is_held_clear_of_its_bores_with_the_bench_behind_it() -> None:
    plan = settled("harbour-stool")
    build = build_of(plan, [plan])
    assert build is not None
    piece = build.drawn.assembled.piece("rail")
    clamp, rest = holding(piece, [((0.0, 50.0), (-1.0, 0.0)), ((284.4, 50.0), (1.0, 0.0))])
    assert cut(clamp, build.drawn.assembled, {"rail"}) == 0
    assert clamp.opening == pytest.approx(piece.panel.thickness + rest.panel.thickness)
    assert abs(dot(clamp.frame.y, piece.pose.y)) == pytest.approx(1.0)
    behind = dot(rest.pose.origin, piece.pose.z) + rest.panel.thickness
    assert behind == pytest.approx(dot(piece.pose.origin, piece.pose.z))
