"""A rack on a wall: a back with a ledge, a batten behind it, an upright board on its front."""

from __future__ import annotations

RACK = """\
plan: Batten rack
version: 1.0.0
summary: A back with a ledge on a batten.
sheets: {ply: {stock: birch-plywood-18, published-for: 17.8}}
boards:
  batten: {stock: pine-21x45, length: 600, count: 1}
  post: {stock: pine-18x45, length: 200, count: 1, lies: {on: back.show, at: [60, 150], along: y}}
placed: wall
uses: [stand things on]
parts:
  back:
    sheet: ply
    outline: {rectangle: [700, 300]}
    features:
      slots: {slot: {at: [350, 60], length: 80, takes: ply}}
      screws: {hole: {at: [[150, 250], [350, 250], [550, 250]], diameter: 5.5}}
  ledge:
    sheet: ply
    outline: {rectangle: [500, 100]}
    features:
      tab: {tabs: {edge: top, at: 210, width: 80, depth: t}}
sizes: {t: thickness(ply)}
standing: {piece: back, looks: front}
joints: [{tab: ledge.tab, into: back.slots, show: in, looking: up}]
fastenings:
  - {screw: screw-5x30, joins: [back.screws, batten], step: Hang it}
steps:
  - {title: All, add: [back, ledge], text: Push.}
  - {title: Hang it, text: Screw it to the batten on the wall.}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""

STRAIGHT = RACK.replace("joins: [back.screws, batten]", "joins: [back.screws, wall]").replace(
    "  batten: {stock: pine-21x45, length: 600, count: 1}\n", ""
)
"""The same screwed to the wall without a batten."""
