"""How high a body stands on another like it: by hand, and against manifold3d moved up and down."""

from __future__ import annotations

import math
import random

import pytest

from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel, Recess
from kerfolio.geometry.panel_solid import moved, solid_of
from kerfolio.geometry.rigid import Rigid, Vector, cross
from kerfolio.geometry.stacking import stacked

Body = list[tuple[Panel, Rigid]]


def shared(body: Body, lift: float) -> float:
    """Return the volume, mm3, that a body shares with itself moved up (manifold3d)."""
    parts = [moved(solid_of(panel).solid, pose) for panel, pose in body]
    whole = parts[0]
    for part in parts[1:]:
        whole += part
    return float((whole ^ whole.translate((0.0, 0.0, lift))).volume())


def rectangle(width: float, height: float, thickness: float = 12.0) -> Panel:
    shape = Flat(((0, 0), (width, 0), (width, height), (0, height)))
    return Panel(shape=shape, thickness=thickness)


def leaning(lean: float, at: float, turned: bool) -> Rigid:
    """A panel on its lower edge that leans to the back, or turned about the upright, to the front.

    ``lean`` is from the upright, degrees.
    """
    s, c = math.sin(math.radians(lean)), math.cos(math.radians(lean))
    x: Vector = (-1.0, 0.0, 0.0) if turned else (1.0, 0.0, 0.0)
    y: Vector = (0.0, -s if turned else s, c)
    return Rigid((300.0 if turned else 0.0, at, 0.0), x, y, cross(x, y))


@pytest.mark.parametrize("lean", [10.0, 20.0])
def test_two_panels_that_lean_towards_each_other_nest(lean: float) -> None:
    """Upright through a panel that leans: t / sin(lean)."""
    panel = rectangle(300, 400)
    body = [(panel, leaning(lean, -160.0, False)), (panel, leaning(lean, 160.0, True))]
    found = stacked(body)
    assert found.lift == pytest.approx(12 / math.sin(math.radians(lean)))
    assert shared(body, found.lift + 0.01) == pytest.approx(0, abs=1e-3)
    assert shared(body, found.lift - 0.1) > 1


def test_a_box_stands_on_its_full_height_and_bears_at_its_feet() -> None:
    upright = Rigid((0.0, 0.0, 0.0), (1.0, 0.0, 0.0), (0.0, 0.0, 1.0), (0.0, -1.0, 0.0))
    body = [(rectangle(200, 350), upright), (rectangle(200, 350), upright.moved((0, 188, 0)))]
    found = stacked(body)
    assert found.lift == pytest.approx(350)
    assert {round(y) for _, y in found.bearing} == {-12, 188}


def anyhow(rng: random.Random) -> Rigid:
    """A pose turned any way."""
    z = tuple(rng.gauss(0, 1) for _ in range(3))
    size = math.hypot(*z)
    up: Vector = (z[0] / size, z[1] / size, z[2] / size)
    raw = cross(up, (0.3, 0.5, 0.8))
    size = math.hypot(*raw)
    x: Vector = (raw[0] / size, raw[1] / size, raw[2] / size)
    at = (rng.uniform(0, 150), rng.uniform(0, 150), rng.uniform(0, 150))
    return Rigid(at, x, cross(up, x), up)


@pytest.mark.parametrize("seed", range(8))
def test_any_body_just_clears_itself(seed: int) -> None:
    rng = random.Random(seed)
    hole = ((60, 40), (60, 90), (120, 90), (120, 40))
    shape = Flat(((0, 0), (200, 0), (200, 80), (90, 130), (0, 130)), (hole,))
    cut = Recess(Flat(((130, 10), (190, 10), (190, 60), (130, 60))), 6.0)
    panel = Panel(shape=shape, thickness=18.0, recesses=(cut,))
    body = [(panel, anyhow(rng)), (rectangle(150, 90, 18.0), anyhow(rng))]
    found = stacked(body)
    assert shared(body, found.lift + 0.01) == pytest.approx(0, abs=1e-3)
    assert shared(body, found.lift - 1.0) > 1e-3
