"""One panel of one sheet with the features under test, and how its shapes are measured."""

from __future__ import annotations

from textwrap import indent

import shapely

from kerfolio.basis.finding import Finding, Severity
from kerfolio.geometry.contour import Contour, Region
from kerfolio.geometry.flatten import points
from kerfolio.geometry.measure import contours_of
from kerfolio.model.plan import Plan
from kerfolio.model.stock import Stock
from kerfolio.proving.prove import prove_plan
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, SettledPart, SettledPlan
from tests.plans import workshop

PANEL = """\
plan: Panel
version: 1.0.0
summary: One panel.
sheets:
  ply: {{stock: birch-plywood-18, published-for: {ladder}, fit: {fit}}}
  thin: {{stock: birch-plywood-6-5, published-for: 6.4, fit: 0.1}}
relief: {relief}
parts:
  panel:
    sheet: ply
    outline: {outline}
    features:
{features}
  strip:
    sheet: thin
    outline: {{rectangle: [100, 50]}}
releases: {{1.0.0: {{date: 2026-10-02, changed: First.}}}}
"""


def panel_text(
    features: str,
    *,
    outline: str = "{rectangle: [400, 300]}",
    relief: str = "dog-bone",
    fit: float = 0.1,
    ladder: str = "17.8",
) -> str:
    """Return a plan of one panel, 400 x 300 mm unless another outline is asked for."""
    body = indent(features.strip("\n"), " " * 6)
    return PANEL.format(ladder=ladder, fit=fit, relief=relief, outline=outline, features=body)


def stated(features: str, **asked: object) -> tuple[Plan, Stock]:
    """Return the plan as read, and the stock."""
    found = workshop(panel_text(features, **asked))  # type: ignore[arg-type]
    return found.plans[0], found.stock


def settled_plan(features: str, thickness: float = 17.8, **asked: object) -> SettledPlan:
    """Settle at any thickness; AssertionError with the findings where it cannot be."""
    plan, stock = stated(features, **asked)
    made, findings = settle(plan, stock, variant(thickness))
    assert made is not None, "\n".join(map(str, findings))
    return made


def panel(features: str, thickness: float = 17.8, **asked: object) -> SettledPart:
    """Return the settled panel."""
    return settled_plan(features, thickness, **asked).parts[0]


def findings_of(features: str, **asked: object) -> tuple[Finding, ...]:
    """Return what proving the panel finds, notes apart."""
    found = prove_plan(*stated(features, **asked)).findings
    return tuple(each for each in found if each.severity is not Severity.NOTE)


def variant(thickness: float) -> FitVariant:
    """Return a variant of the panel's two sheets."""
    return FitVariant(label="any", thickness=(("ply", thickness), ("thin", 6.4)))


def flat(shape: Region | Contour, tolerance: float = 1e-5) -> shapely.Polygon:
    """Return a shape as a polygon of the library that judges it."""
    outer, *openings = [points(each, tolerance) for each in contours_of(shape)]
    return shapely.Polygon(outer, openings)
