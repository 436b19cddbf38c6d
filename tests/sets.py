"""A set as a maker would write it: two crossed feet and a board that lies loose on them."""

from __future__ import annotations

from tests.plans import altered

_FOOT = """\
relief: {style: dog-bone, cutter: compression-6}
parts:
  lower:
    sheet: ply
    outline: {rectangle: [260, 220]}
    features:
      crossing: {notch: {edge: top, at: 130, depth: 110, takes: ply}}
  upper:
    sheet: ply
    outline: {rectangle: [260, 220]}
    features:
      crossing: {notch: {edge: bottom, at: 130, depth: 110, takes: ply}}
"""

SET = (
    """\
plan: Shelf on feet
version: 1.0.0
summary: Two crossed feet and a loose board.
sheets:
  ply:
    {stock: birch-plywood-12, size: 1525 x 1525, published-for: 11.8 to 12.2 by 0.2, drawn-for: 12}
"""
    + _FOOT
    + """\
  board:
    sheet: ply
    outline: {rectangle: [900, 300]}
makes: {foot: 2, board: 1}
assemblies:
  foot:
    pieces: [lower, upper]
    standing: {piece: lower, looks: front}
    joints:
      - {notch: upper.crossing, with: lower.crossing, looking: right}
    steps:
      - title: Cross the panels
        add: [lower, upper]
        minutes: 2
        hardware: {washer-m6: 3}
        text: Push.
  board:
    pieces: [board]
    lies-on: {supports: [foot], overhang: 110}
    steps:
      - {title: Lay the board on, add: [board], minutes: 1, text: Lay it on.}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
)
PAIR = (
    """\
plan: A pair of feet
version: 1.0.0
summary: Two crossed feet.
sheets:
  ply: {stock: birch-plywood-12, size: 1525 x 1525, published-for: "12", fit: 0.1}
"""
    + _FOOT
    + """\
makes: 2
joints:
  - {notch: upper.crossing, with: lower.crossing, looking: right}
steps:
  - {title: Cross the panels, add: [lower, upper], minutes: 2, text: Push.}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
)


def changed(*changes: tuple[str, str], text: str = SET) -> str:
    """Return the text of a set with each old text, which must occur once, made a new one."""
    return altered(text, *changes)
