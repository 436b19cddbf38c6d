"""A case of two sides, two rails and a shelf in grooves, to build, to carry and to pull at."""

from __future__ import annotations

from kerfolio.basis.finding import Finding
from tests.plans import altered, proved

LIES = "    lies: {side.left: on its outer face}\n"

CASE = """\
plan: Case
version: 1.0.0
summary: Two sides, two rails and a shelf in grooves.
sizes: {t: thickness(ply), wide: 500, deep: 300, high: 400}
sheets: {ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.8, fit: 0.1}}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    grain: along y
    outline: {rectangle: [deep, high]}
    features:
      rail-slots: {slot: {at: [[deep/2, 60], [deep/2, 340]], length: 60, angle: 90, takes: ply}}
      groove: {groove: {from: [0, 200], to: [deep, 200], takes: ply, depth: 6}}
  rail:
    sheet: ply
    pieces: [low, high]
    grain: along x
    outline: {rectangle: [wide, 80]}
    features:
      left-tab: {tabs: {edge: left, at: 10, width: 60, depth: t}}
      right-tab: {tabs: {edge: right, at: 10, width: 60, depth: t}}
  shelf:
    sheet: ply
    grain: along x
    outline: {rectangle: [wide, deep]}
    features:
      left-tongue: {tabs: {edge: left, at: 0, width: deep, depth: 5.8}}
      right-tongue: {tabs: {edge: right, at: 0, width: deep, depth: 5.8}}
joints:
  - {tab: rail.low.left-tab, into: side.left.rail-slots.1, show: in, looking: right}
  - {tab: rail.high.left-tab, into: side.left.rail-slots.2}
  - {tab: shelf.left-tongue, into: side.left.groove}
  - {tab: rail.low.right-tab, into: side.right.rail-slots.1}
  - {tab: rail.high.right-tab, into: side.right.rail-slots.2}
  - {tab: shelf.right-tongue, into: side.right.groove}
standing: {piece: shelf, looks: up}
steps:
  - title: Rails and shelf into one side
    add: [side.left, rail.low, rail.high, shelf]
    lies: {side.left: on its outer face}
    text: Push the tabs home.
  - title: Close with the other
    add: [side.right]
    text: Push the other side on.
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def found(rule: str, *changes: tuple[str, str]) -> list[Finding]:
    """Return what a rule says of the case with some of its texts changed."""
    return [each for each in proved(altered(CASE, *changes)).findings if each.rule == rule]


def told(rule: str, *changes: tuple[str, str]) -> list[str]:
    """Return the messages of a rule on the case with some of its texts changed."""
    return [each.message for each in found(rule, *changes)]
