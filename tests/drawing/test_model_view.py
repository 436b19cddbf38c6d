"""The 3-D model of a plan and its data for the page."""

from __future__ import annotations

import json
from dataclasses import replace
from typing import Any

import pytest

from kerfolio.assembly.assembled import BuildOrder
from kerfolio.drawing.model_3d import Model3d
from kerfolio.drawing.model_view import model_of, viewer_data
from kerfolio.drawing.vocabulary import Ink
from tests.assembly.scenes import NAMES, assembled, order, settled, titles


def model(name: str) -> Model3d:
    return model_of(assembled(name), order(name), settled(name).plan.title, titles(name))


def rows(gains: list[int], size: int) -> list[tuple[int, ...]]:
    """Undo the packing: each row is given as what it adds to the row before."""
    found: list[tuple[int, ...]] = []
    for at in range(0, len(gains), size):
        before = found[-1] if found else (0,) * size
        found.append(tuple(a + b for a, b in zip(before, gains[at : at + size], strict=True)))
    return found


@pytest.mark.parametrize("name", NAMES)
def test_every_piece_stands_where_it_is_put(name: str) -> None:
    made = model(name)
    assert [each.label for each in made.pieces] == [each.label for each in assembled(name).pieces]
    for one, posed in zip(made.pieces, assembled(name).pieces, strict=True):
        assert (one.pose, one.mark) == (posed.pose, posed.mark)
        x0, y0, x1, y1 = posed.panel.shape.box
        points = made.shapes[one.shape].mesh.points
        low = tuple(min(axis) for axis in zip(*points, strict=True))
        high = tuple(max(axis) for axis in zip(*points, strict=True))
        assert low == pytest.approx((x0, y0, 0), abs=0.06)
        assert high == pytest.approx((x1, y1, posed.panel.thickness), abs=0.06)


def test_steps_that_add_pieces_are_listed_with_their_titles() -> None:
    made = model("harbour-stool")
    plan = settled("harbour-stool").plan
    adding = [(n, step.title) for n, step in enumerate(plan.steps, start=1) if step.add]
    assert [(each.number, each.title) for each in made.steps] == adding
    (seat,) = [each for each in made.pieces if each.label == "seat"]
    assert [made.steps[-1].number, made.steps[0].number] >= [seat.step, 1]
    assert seat.step in [each.number for each in made.steps]


def test_without_an_order_there_are_no_steps() -> None:
    made = model_of(assembled("desk-rack"), BuildOrder(steps=()), "Rack")
    assert made.steps == ()
    assert {piece.step for piece in made.pieces} == {0}


def test_each_sheet_has_its_tint_even_where_two_panels_are_alike() -> None:
    found = assembled("desk-rack")
    first, second, *rest = found.pieces
    other = replace(second, panel=first.panel, sheet="thin")
    made = model_of(replace(found, pieces=(first, other, *rest)), order("desk-rack"), "Rack")
    tints = [made.shapes[piece.shape].tint for piece in made.pieces]
    assert tints == [Ink.WOOD, Ink.WOOD_DARK, *[Ink.WOOD] * len(rest)]


@pytest.mark.parametrize("name", NAMES)
def test_the_data_hold_the_model(name: str) -> None:
    made = model(name)
    data: dict[str, Any] = json.loads(viewer_data(made))
    assert data["title"] == made.title
    assert data["steps"] == [[each.number, each.title] for each in made.steps]
    for given, shape in zip(data["shapes"], made.shapes, strict=True):
        points = [[each / data["scale"] for each in row] for row in rows(given["points"], 3)]
        for found, true in zip(points, shape.mesh.points, strict=True):
            assert found == pytest.approx(true, abs=0.5 / data["scale"] + 1e-9)
        assert tuple(rows(given["triangles"], 3)) == shape.mesh.triangles
        assert tuple(rows(given["edges"], 2)) == shape.mesh.edges
        assert given["tint"] == shape.tint
    for row, piece in zip(data["pieces"], made.pieces, strict=True):
        assert row["at"][9:] == pytest.approx(piece.pose.origin, abs=1e-3)
        assert row["at"][3:6] == pytest.approx(piece.pose.y, abs=1e-6)
        assert row["apart"] == pytest.approx(piece.apart, abs=0.06)
        assert (row["title"], row["mark"], row["step"]) == (piece.title, piece.mark, piece.step)


@pytest.mark.parametrize("name", NAMES)
def test_the_data_are_the_same_every_time_and_small(name: str) -> None:
    text = viewer_data(model(name))
    assert text == viewer_data(model(name))
    assert len(text.encode()) < 150_000
