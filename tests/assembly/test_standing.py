"""How the whole stands: as its maker says, or as its parts are drawn."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import pytest

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.poses import put_together
from kerfolio.geometry.rigid import WAYS, cross, dot
from kerfolio.model.joint import Standing
from kerfolio.model.statement import Named
from tests.assembly.written import settled, text, together
from tests.plans import RACK


def stood(piece: str, looks: str, top: str = "") -> Assembled:
    plan = settled(text("cupboard"))
    standing = Standing(piece=Named(name=piece), looks=looks, top=top)
    made = put_together(replace(plan, plan=replace(plan.plan, standing=standing)))
    assert made is not None
    return made.assembled


@pytest.mark.parametrize(
    ("looks", "top"),
    [(a, b) for a, b in product(WAYS, WAYS) if abs(dot(WAYS[a], WAYS[b])) < 0.5],
)
def test_a_piece_looks_and_stands_as_stated(looks: str, top: str) -> None:
    pose = stood("divider", looks, top).piece("divider").pose
    assert pose.z == pytest.approx(WAYS[looks], abs=1e-9)
    assert pose.y == pytest.approx(WAYS[top], abs=1e-9)
    assert pose.x == pytest.approx(cross(WAYS[top], WAYS[looks]), abs=1e-9)


@pytest.mark.parametrize(
    ("looks", "top"),
    [("front", "up"), ("left", "up"), ("back", "up"), ("up", "back"), ("down", "back")],
)
def test_without_a_top_what_stands_stands_upright_and_what_lies_points_back(
    looks: str, top: str
) -> None:
    assert stood("shelf", looks).piece("shelf").pose.y == pytest.approx(WAYS[top], abs=1e-9)


def test_the_whole_lies_in_the_corner_of_the_world() -> None:
    for name in ("stool", "cupboard", "workshop-table"):
        corners = [
            each.pose.point((x, y, z))
            for each in together(text(name)).assembled.pieces
            for x, y in each.panel.shape.outer
            for z in (0.0, each.panel.thickness)
        ]
        assert [min(axis) for axis in zip(*corners, strict=True)] == pytest.approx([0.0] * 3)


def test_left_alone_upright_parts_stand_upright_and_shelves_look_up() -> None:
    plan = settled(text("cupboard"))
    made = put_together(replace(plan, plan=replace(plan.plan, standing=None)))
    assert made is not None
    pieces = made.assembled
    for label in ("side-left", "side-right", "divider", "back"):
        assert pieces.piece(label).pose.y == pytest.approx(WAYS["up"], abs=1e-9)
    assert pieces.piece("shelf").pose.z == pytest.approx(WAYS["up"], abs=1e-9)


def test_left_alone_the_rack_stands_on_its_feet() -> None:
    pieces = together(RACK).assembled
    assert pieces.piece("side.left").pose.y == pytest.approx(WAYS["up"], abs=1e-9)
    assert pieces.piece("rail").pose.y == pytest.approx(WAYS["up"], abs=1e-9)
