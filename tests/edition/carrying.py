"""A plan with cut settings and spans, worked out whole."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from functools import cache

from kerfolio.edition.edition import Edition
from kerfolio.layouts.layout import Layout, Placement, SheetLayout
from kerfolio.publishing.edition import edition_of
from kerfolio.publishing.laid_out import LaidOut
from tests.plans import proved, workshop

PLAN = """\
plan: Loaded
version: 1.0.0
summary: A shelf to load and to cut.
sheets:
  ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.7}
  thin: {stock: mdf-3, size: 2440 x 1220, published-for: 3}
parts:
  shelf:
    sheet: ply
    grain: along x
    outline: {rectangle: [800, 300]}
    features: {pilots: {hole: {at: [400, 150], diameter: 2}}}
  rail: {sheet: ply, grain: along x, outline: {rectangle: [800, 100]}}
  leg: {sheet: ply, grain: along y, outline: {rectangle: [60, 700]}}
  back: {sheet: thin, outline: {rectangle: [800, 700]}}
cuts:
  profile: {sheet: ply, cutter: compression-6, feed: 3000 mm/min, passes: [9, rest], skim: 0.3}
spans:
  top-shelf:
    {part: shelf, load: {kg: 40}, limit: span/300, with: {part: rail, count: 2, joined: loose}}
  bare: {part: shelf, load: {kg-per-m: 400}, lasting: no}
  pressed: {part: shelf, load: {kg: 5, at: middle}}
  out: {part: shelf, as: overhang, supports: [500, right], load: {kg: 3, at: end}}
  foot: {part: leg, as: leg, load: {kg: 30}}
  back: {part: back, load: {kg: 1}}
consumables: [{what: Oil, price: 3.50}]
steps:
  - {title: All at once, add: [shelf, rail, leg, back], text: Put it together.}
releases: {1.0.0: {date: 2026-10-02, changed: First release.}}
"""


@cache
def carrying(units_first: str = "mm") -> Edition:
    """Return it: one sheet with cut settings, one without, a machine at 12 an hour."""
    found = workshop(PLAN)
    identity = replace(found.identity, units_first=units_first, machine_hour=Decimal(12))
    laid = LaidOut(proof=proved(PLAN), layout=_layout(), fresh="")
    return edition_of(replace(found, identity=identity), laid)


def _layout() -> Layout:
    ply = (
        Placement(piece="shelf", part="shelf", x=20.0, y=20.0, turn=0.0),
        Placement(piece="rail", part="rail", x=20.0, y=340.0, turn=0.0),
        Placement(piece="leg", part="leg", x=900.0, y=20.0, turn=0.0),
    )
    thin = (Placement(piece="back", part="back", x=20.0, y=20.0, turn=0.0),)
    size = (2440.0, 1220.0)
    return Layout(
        sheets=(
            SheetLayout(number=1, sheet="ply", size=size, placements=ply),
            SheetLayout(number=2, sheet="thin", size=size, placements=thin),
        ),
        engine="by hand",
        computed_from="",
    )
