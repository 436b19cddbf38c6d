"""From where steps are looked at: what the reader must see decides, changes cost."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.assembly.assembled import BuildStep, Move
from kerfolio.assembly.lying import Shown
from kerfolio.drawing.view_choice import candidates, chosen_views, step_worths
from kerfolio.geometry.facing import PosedPanel, solids_of
from kerfolio.geometry.rigid import Rigid
from kerfolio.geometry.shown import crowding, shown_shares
from kerfolio.geometry.view import View
from tests.assembly.hand_made import box, lengthwise, level, plan
from tests.drawing.built import SAMPLE, built, shown, views

PLATE = level("plate", 0.0, box(0, 0, 300, 300))


def wall(y: float) -> PosedPanel:
    piece = lengthwise("wall", y, box(0, 0, 300, 300))
    return PosedPanel(piece.panel, piece.pose)


def test_there_are_sixteen_candidates_half_of_them_from_below() -> None:
    assert len(set(candidates())) == 16
    assert sum(view.from_below for view in candidates()) == 8


def test_a_line_before_a_wall_is_shown_and_one_behind_is_not() -> None:
    solids = solids_of([wall(0.0)])
    before = ((50.0, -50.0, 150.0), (250.0, -50.0, 150.0))
    behind = ((50.0, 80.0, 150.0), (250.0, 80.0, 150.0))
    shares = shown_shares(solids, View(0.0, 0.0), [[before], [behind], []])
    assert shares == pytest.approx([1.0, 0.0, 0.0])


def test_a_line_that_points_at_the_eye_shows_nothing() -> None:
    solids = solids_of([wall(400.0)])
    line = ((150.0, 0.0, 100.0), (150.0, -200.0, 100.0))
    assert shown_shares(solids, View(0.0, 0.0), [[line]]) == pytest.approx([0.0])
    assert shown_shares(solids, View(90.0, 0.0), [[line]]) == pytest.approx([1.0])


def test_edges_that_nearly_coincide_are_counted() -> None:
    """Two walls one behind the other: from the front their edges fall together, a little turn
    parts them by less than a line's width, a larger one wholly."""
    solids = solids_of([wall(0.0), wall(100.0)])
    straight = crowding(solids, View(0.0, 0.0), near=5.0, least=1.0)
    little = crowding(solids, View(1.2, 0.0), near=5.0, least=1.0)
    wide = crowding(solids, View(10.0, 0.0), near=5.0, least=1.0)
    assert straight == pytest.approx(0.0, abs=1.0)
    assert little > 200
    assert wide == pytest.approx(0.0, abs=1.0)


def under(label: str = "foot") -> tuple[BuildStep, object]:
    """A block brought up to the underside of a wide plate: from above it cannot be seen."""
    foot = level(label, -40.0, box(120, 120, 180, 180))
    step = BuildStep(
        number=2,
        standing=("plate",),
        added=(label,),
        moves=(Move(pieces=(label,), direction=(0.0, 0.0, 1.0), travel=5.0),),
    )
    return step, plan([PLATE, foot], [])


def test_what_is_under_a_plate_is_looked_at_from_below() -> None:
    step, whole = under()
    (chosen,) = chosen_views([Shown(assembled=whole, step=step)])  # type: ignore[arg-type]
    assert chosen.from_below


def test_what_is_on_a_plate_is_looked_at_from_above_and_from_the_front() -> None:
    block = level("block", 18.0, box(120, 120, 180, 180))
    step = BuildStep(
        number=1,
        standing=("plate",),
        added=("block",),
        moves=(Move(pieces=("block",), direction=(0.0, 0.0, -1.0), travel=5.0),),
    )
    (chosen,) = chosen_views([Shown(assembled=plan([PLATE, block], []), step=step)])
    assert not chosen.from_below
    assert abs(chosen.azimuth) < 90


def test_a_small_gain_does_not_change_the_view() -> None:
    for name in SAMPLE:
        changes = sum(a != b for a, b in zip(views(name)[:-1], views(name)[1:], strict=True))
        assert changes <= 2


def test_the_views_taken_are_worth_most_when_changes_have_their_price() -> None:
    """Against trying every pair of views for a plan of two steps."""
    steps, looks = shown("stool")[:2], candidates()
    worth = [step_worths(step, looks) for step in steps]
    chosen = chosen_views(steps)
    level = [[each for each in looks if each.elevation == view.elevation] for view in chosen]
    index = [
        looks.index(min(alike, key=lambda each: abs(each.azimuth - view.azimuth)))
        for alike, view in zip(level, chosen, strict=True)
    ]
    got = worth[0][index[0]] + worth[1][index[1]] - 0.15 * (index[0] != index[1])
    best = max(
        a + b - 0.15 * (i != j) for i, a in enumerate(worth[0]) for j, b in enumerate(worth[1])
    )
    assert got == pytest.approx(best)


def test_the_view_is_turned_by_no_more_than_four_degrees() -> None:
    sides = {view.azimuth for view in candidates()}
    for name in SAMPLE:
        for view in views(name):
            assert min(abs(view.azimuth - side) for side in sides) <= 4.0


def test_views_are_the_same_every_time() -> None:
    assert chosen_views(shown("stool")) == chosen_views(shown("stool"))


def test_no_steps_need_no_views() -> None:
    assert chosen_views(()) == ()


def test_a_plan_turned_about_is_looked_at_from_its_other_side() -> None:
    """Turn the plan by half a turn about z: the worths of opposite views change places."""
    whole, order = built("stool")
    turn = Rigid(x=(-1.0, 0.0, 0.0), y=(0.0, -1.0, 0.0))
    turned = replace(
        whole,
        pieces=tuple(replace(each, pose=turn.after(each.pose)) for each in whole.pieces),
        joints=tuple(replace(each, frame=turn.after(each.frame)) for each in whole.joints),
    )
    step = order.steps[0]
    moves = tuple(replace(each, direction=turn.vector(each.direction)) for each in step.moves)
    front, back = View(-32.0, 28.0), View(148.0, 28.0)
    one = step_worths(Shown(assembled=whole, step=step), [front])[0]
    other = step_worths(Shown(assembled=turned, step=replace(step, moves=moves)), [back])[0]
    assert one - other == pytest.approx(0.08)  # what a view from behind loses
