"""A ledge on a back, held by two brackets under it and by a clamp on its front."""

from __future__ import annotations

LEDGE = """\
plan: Ledge
version: 1.0.0
summary: A back with a ledge on two brackets.
sheets: {ply: {stock: birch-plywood-18, published-for: 17.8}}
sizes: {t: thickness(ply), under: 100 - t/2}
placed: wall
uses: [stand things on]
parts:
  back:
    sheet: ply
    outline: {rectangle: [700, 300]}
    features:
      slots: {slot: {at: [350, 100], length: 80, takes: ply}}
      left: {hole: {at: [[150, under - 12], [150, under - 30]], pilot: screw-3-5x16}}
      right: {hole: {at: [[550, under - 12], [550, under - 30]], pilot: screw-3-5x16}}
  ledge:
    sheet: ply
    outline: {rectangle: [500, 160]}
    features:
      tab: {tabs: {edge: top, at: 210, width: 80, depth: t}}
      left: {hole: {at: [[50, 148], [50, 130]], pilot: screw-3-5x16}}
      right: {hole: {at: [[450, 148], [450, 130]], pilot: screw-3-5x16}}
  lip:
    sheet: ply
    outline: {rectangle: [300, 60]}
    features:
      pins: {hole: {at: [[60, 30], [240, 30]], diameter: 5}}
standing: {piece: back, looks: front}
joints:
  - {tab: ledge.tab, into: back.slots, show: in, looking: up}
  - {face: lip.pins, on: ledge.pads, side: show}
fastenings:
  - {bracket: bracket-40, by: screw-3-5x16, joins: [back.left, ledge.left], step: Brackets}
  - {bracket: bracket-40, by: screw-3-5x16, joins: [back.right, ledge.right], step: Brackets}
  - {clamp: clamp-160, joins: [lip.show, ledge.back], at: [150, 30], step: Clamp}
steps:
  - {title: All, add: [back, ledge, lip], text: Push.}
  - {title: Brackets, text: Screw them on.}
  - {title: Clamp, text: Clamp the lip on.}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
""".replace(
    "      right: {hole: {at: [[450, 148]",
    "      pads: {hole: {at: [[160, 30], [340, 30]], diameter: 5, depth: 8}}\n"
    "      right: {hole: {at: [[450, 148]",
)
