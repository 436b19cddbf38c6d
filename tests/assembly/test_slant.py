"""Angles between panels that meet, from how they are turned."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from kerfolio.assembly.assembled import Assembled
from kerfolio.assembly.slant import slants
from kerfolio.geometry.rigid import Rigid
from tests.plans import proved


def rack() -> Assembled:
    build = proved().made[0].build
    assert build is not None
    return build.drawn.assembled


def leaning(degrees: float) -> Assembled:
    """Return the probe rack with its left side turned about the upright, by so much."""
    found = rack()
    sin, cos = math.sin(math.radians(degrees)), math.cos(math.radians(degrees))
    turn = Rigid(x=(cos, sin, 0.0), y=(-sin, cos, 0.0))
    pieces = tuple(
        replace(each, pose=turn.after(each.pose)) if each.label == "side.left" else each
        for each in found.pieces
    )
    return replace(found, pieces=pieces)


def test_square_panels_have_none() -> None:
    assert list(slants(rack())) == []
    assert list(slants(leaning(0.5))) == []


def test_a_panel_that_leans_is_told_by_the_sharper_angle() -> None:
    # A rail that looks to the front meets a side turned 15 degrees out of the square at 75.
    assert list(slants(leaning(15.0))) == pytest.approx([75.0])
    assert list(slants(leaning(-15.0))) == pytest.approx([75.0])
