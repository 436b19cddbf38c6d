"""Slots measured from wall to wall, however they lie; what has no walls is left alone."""

from __future__ import annotations

from dataclasses import replace

import pytest

from kerfolio.agreement.slot_widths import across, walled_slots
from kerfolio.geometry.contour import Contour
from kerfolio.settling.settled import SettledPart, SettledPlan
from tests.plans import proved

PLATE = """\
plan: Slots
version: 1.0.0
summary: Slots of all kinds.
sheets: {ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.8 mm, fit: 0.1}}
parts:
  plate:
    sheet: ply
    outline: {rectangle: [400, 300]}
    features:
      level: {slot: {at: [60, 30], length: 80, takes: ply}}
      oblique: {slot: {at: [120, 150], length: 90, angle: 33, takes: ply}}
      other: {slot: {at: [300, 150], length: 90, takes: ply}}
      crossing: {slot: {at: [300, 150], length: 90, angle: 90, takes: ply}}
      foot: {notch: {edge: bottom, at: 200, depth: 20, takes: ply}}
      housing: {pocket: {at: [60, 260], length: 60, takes: ply, depth: 6}}
      hall: {window: {at: [330, 250], rectangle: [100, 60]}}
      swallowed: {slot: {at: [330, 250], length: 40, takes: ply}}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""


def settled() -> tuple[SettledPlan, SettledPart]:
    drawn = proved(PLATE).drawn
    assert drawn is not None
    return drawn, drawn.parts[0]


def test_each_slot_with_walls_is_eighteen_millimetres_wide() -> None:
    """17.8 mm and the fit of 0.1 mm on either side."""
    plan, part = settled()
    own = [contour for cut in part.cuts for contour in cut.contours]
    found = {slot.name.split(".")[1]: across(slot, own) for slot in walled_slots(plan, part)}
    names = ("level", "oblique", "other", "crossing", "foot", "housing")
    assert found == {name: pytest.approx(18.0, abs=1e-6) for name in names}


def test_a_moved_wall_is_measured() -> None:
    plan, part = settled()
    oblique = next(each for each in walled_slots(plan, part) if "oblique" in each.name)
    nx, ny = -oblique.feature.direction[1], oblique.feature.direction[0]
    (x, y) = oblique.feature.at
    own = [contour for cut in part.cuts for contour in cut.contours]

    def shifted(u: float, v: float, b: float) -> tuple[float, float, float]:
        away = (u - x) * nx + (v - y) * ny
        return (u + 0.3 * nx, v + 0.3 * ny, b) if 0 < away < 12 else (u, v, b)

    wider = [replace(each, vertices=tuple(shifted(*v) for v in each.vertices)) for each in own]
    assert across(oblique, wider) == pytest.approx(18.3, abs=1e-6)
    assert across(oblique, [Contour(())]) == 0.0
