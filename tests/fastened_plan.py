"""A small plan held by every kind of fastening, for tests to spoil in one place each.

A rail is bolted on to a side with a barrel nut; a shelf is screwed on through the side's face into
its edge; a pad is screwed flat on the rail; a dowel goes from the shelf's edge into the side.
"""

from __future__ import annotations

from tests.plans import altered

BOLTED = """\
plan: Bolted bracket
version: 1.0.0
summary: A rail and a shelf on a side, to be spoilt.
sizes: {t: thickness(ply)}
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.4 to 18.4, drawn-for: 17.8, fit: 0.1}
parts:
  side:
    sheet: ply
    grain: along y
    outline: {rectangle: [300, 400]}
    features:
      slots: {slots: {of: rail.tabs, at: [150, 300], angle: 90}}
      bolt: {hole: {at: [150, 300], for: bolt-m6x50}}
      screws: {hole: {at: [[100, 100], [200, 100]], for: screw-4x50}}
      dowels: {hole: {at: [[60, 100], [240, 100]], diameter: 8.1, depth: 12}}
  rail:
    sheet: ply
    grain: along x
    outline: {rectangle: [250, 100]}
    features:
      tabs: {tabs: {edge: left, at: [10, 60], width: 30, depth: t}}
      nut: {hole: {at: [25, 50], for: barrel-nut-m6}}
      bore: {bore: {edge: left, at: 50, diameter: 7, depth: 35, guided: yes}}
      pilots: {hole: {at: [[140, 40], [180, 40]], pilot: screw-4x30, depth: 14}}
  shelf:
    sheet: ply
    grain: along x
    outline: {rectangle: [200, 200]}
    features:
      pilots: {bore: {edge: left, at: [50, 150], diameter: 2.5, depth: 34}}
      dowels: {bore: {edge: left, at: [10, 190], diameter: 8.1, depth: 22, guided: yes}}
  pad:
    sheet: ply
    grain: along x
    outline: {rectangle: [80, 60]}
    features:
      screws: {hole: {at: [[20, 30], [60, 30]], for: screw-4x30}}
joints:
  - {tab: rail.tabs, into: side.slots, show: in, looking: left}
  - {edge: shelf.left, on: side.screws, show: in, looking: up}
  - {face: pad.screws, on: rail.pilots, side: show, looking: away}
standing: {piece: side, looks: right}
fastenings:
  - {bolt: bolt-m6x50, washer: washer-m6, nut: barrel-nut-m6, joins: [side.bolt, rail.bore], for: rail}
  - {screw: screw-4x50, joins: [side.screws, shelf.pilots]}
  - {screw: screw-4x30, joins: [pad.screws, rail.pilots]}
  - {dowel: dowel-8x30, joins: [side.dowels, shelf.dowels]}
steps:
  - {title: Rail and pad, add: [rail, pad], text: Screw the pad on.}
  - {title: Side, add: [side], text: Bolt the rail on.}
  - {title: Shelf, add: [shelf], text: Screw the shelf on.}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""  # noqa: E501 - a fastening stands on one line


def spoilt(*changes: tuple[str, str]) -> str:
    """Return the plan with each text, which must occur once, changed to another."""
    return altered(BOLTED, *changes)
