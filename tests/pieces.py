"""Three pieces of a small plan that are cut twice, and one that lies by no edge."""

from __future__ import annotations

from functools import cache

from kerfolio.settling.point import point
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledPlan
from kerfolio.settling.variant import drawn_variant
from tests.plans import workshop

PIECES = """\
plan: Three pieces
version: 1.0.0
summary: Slots, notches and fingers to cut twice.
sizes: {t: thickness(ply)}
relief: {style: dog-bone, cutter: compression-6}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.4 to 18.4, drawn-for: 17.8, fit: 0.1}
parts:
  back:
    sheet: ply
    grain: along x
    outline: {rectangle: [300, 200], round: 20}
    features:
      slots: {slot: {at: [60, 60], length: 60, angle: 90, takes: ply}, repeat: {count: 2, step: [0, 80]}}
      slope: {slot: {at: [190, 100], length: 80, angle: 33, takes: ply}}
      bolt: {hole: {at: [150, 30], diameter: 8}}
  runner:
    sheet: ply
    grain: along y
    outline: {rectangle: [300, 80]}
    features:
      crossings: {notch: {edge: bottom, at: [80, 200], depth: 40, takes: ply}}
      feet: {tabs: {edge: left, at: 20, width: 40, takes: ply}}
  corner:
    sheet: ply
    outline: {rectangle: [150, 90]}
    features:
      row: {fingers: {edge: left, count: 3, takes: ply, first: gap}}
      bed: {pocket: {at: [100, 45], length: 50, angle: 90, takes: ply, depth: 6}}
  disc:
    sheet: ply
    outline: {circle: 200}
    features:
      cross: {slot: {at: [0, 0], length: 60, takes: ply}}
joints:
  - {tab: runner.feet, into: back.slots.1, fit: glued}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""  # noqa: E501 - a part's feature stands on one line


@cache
def settled(fit: float = 0.1, cut: float = 0.0, cutter: float | None = 6.0) -> SettledPlan:
    found = workshop(PIECES)
    plan = found.plans[0]
    variant = drawn_variant(plan, found.stock)
    assert variant is not None
    drawn, findings = settle(plan, found.stock, variant)
    assert drawn is not None, findings
    there = point(drawn, {}, {"ply": fit}, {"ply": cutter}, {"ply": cut})
    made, _ = settle(plan, found.stock, there)
    assert made is not None
    return made
