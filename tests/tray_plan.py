"""A tray of two pieces, with room for words in its first step and for keys in both steps."""

from __future__ import annotations

TRAY = """\
plan: Tray
version: 1.0.0
summary: A tray of plywood.
sheets: {{ply: {{stock: birch-plywood-18, published-for: 17.8, fit: 0.1}}}}
parts:
  top:
    sheet: ply
    outline: {{rectangle: [400, 300]}}
    features: {{slot: {{slot: {{at: [200, 150], length: 80, angle: 0, takes: ply}}}}}}
  rib:
    sheet: ply
    outline: {{rectangle: [300, 100]}}
    features: {{tab: {{tabs: {{edge: top, at: 110, width: 80, takes: ply}}}}}}
joints: [{{tab: rib.tab, into: top.slot, show: out{fit}}}]
standing: {{piece: rib, looks: front}}
steps:
  - {{title: Lay it, add: [top], text: "{text}"{more}}}
  - {{title: Push, add: [rib], text: Push it in.{later}}}
releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""
