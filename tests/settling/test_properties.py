"""What holds at every thickness, fit, angle and cutter, looked at with a geometry library."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.model.plan import Ladder, SheetUse
from kerfolio.model.statement import Amount, Named
from kerfolio.settling.coupon import tried
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledPart
from kerfolio.settling.variant import ready_made
from tests.settling.panels import flat, stated, variant

SLOT = "s: {{slot: {{at: [200, 150], length: {length}, angle: {angle}, takes: ply}}}}"
thicknesses = st.floats(min_value=8, max_value=25)
fits = st.sampled_from([0.0, 0.05, 0.1, 0.15, 0.3])
styles = st.sampled_from(["dog-bone", "sideways"])
quick = settings(max_examples=25, deadline=None, derandomize=True)


def slotted(angle: int, thickness: float, fit: float, style: str, diameter: float) -> SettledPart:
    """Return a panel with one slot, for a cutter of any diameter."""
    text = SLOT.format(length=60, angle=angle)
    plan, stock = stated(text, fit=fit, relief=style)
    cutters = tuple(
        replace(each, diameter=diameter) if each.name == "compression-6" else each
        for each in stock.cutters
    )
    made, findings = settle(plan, replace(stock, cutters=cutters), variant(thickness))
    assert made is not None, findings
    return made.parts[0]


@quick
@given(st.integers(0, 179), thicknesses, fits, styles, st.sampled_from([3.0, 3.175, 6.0, 6.35]))
def test_a_slot_lets_its_sheet_in_and_no_more(
    angle: int, thickness: float, fit: float, style: str, diameter: float
) -> None:
    """A tab of the sheet goes in with the fit on each side; the cutter can cut it all."""
    part = slotted(angle, thickness, fit, style, diameter)
    (opening,) = part.routed.openings
    void = flat(opening)
    tab = shapely.affinity.translate(
        shapely.affinity.rotate(shapely.box(-30, -thickness / 2, 30, thickness / 2), angle),
        200,
        150,
    )
    assert void.buffer(1e-4).covers(tab)
    if fit:
        # Everywhere along its faces the tab keeps the fit: grown by it, it still goes in ...
        grown = tab.buffer(fit, join_style="mitre")
        assert void.buffer(1e-4).covers(grown)
        assert void.exterior.distance(tab) == pytest.approx(fit, abs=1e-3)
    # ... and what a disc of the cutter's size sweeps inside the opening covers the tab.
    radius = diameter / 2
    swept = void.buffer(-radius + 0.002, quad_segs=64).buffer(radius, quad_segs=64)
    assert tab.difference(swept).area < 0.02


@quick
@given(st.integers(0, 179), thicknesses, styles)
def test_relief_only_takes_away_and_only_at_the_corners(
    angle: int, thickness: float, style: str
) -> None:
    part = slotted(angle, thickness, 0.1, style, 6.0)
    plain, routed = flat(part.plain), flat(part.routed)
    assert routed.difference(plain).area < 1e-3
    gone = plain.difference(routed)
    near = shapely.union_all([shapely.Point(centre).buffer(6.01) for centre in part.drill_centres])
    assert len(part.drill_centres) == 4
    assert gone.difference(near).area < 1e-3


@quick
@given(thicknesses, fits)
def test_a_drill_at_every_centre_just_clears_the_corner(thickness: float, fit: float) -> None:
    part = slotted(0, thickness, fit, "dog-bone", 6.0)
    x, y = 30 + fit, thickness / 2 + fit
    corners = [(200 + a * x, 150 + b * y) for a in (-1, 1) for b in (-1, 1)]
    for corner in corners:
        nearest = min(math.dist(corner, centre) for centre in part.drill_centres)
        # A drill of the cutter's diameter passes through the very corner.
        assert nearest == pytest.approx(3.0, abs=1e-6)


@quick
@given(st.integers(50, 300), st.integers(0, 200), st.lists(st.floats(0, 1), min_size=1, max_size=5))
def test_files_are_made_ready_for_what_is_drawn_and_listed_alone(
    first: int, wide: int, shares: list[float]
) -> None:
    listed = [(first + round(share * wide)) / 10 for share in shares]
    use = SheetUse(
        name="ply",
        stock=Named("birch-plywood-18"),
        published_for=Ladder(first=Amount(f"{first}/10"), last=Amount(f"{first + wide}/10")),
        ready_made=tuple(Amount(f"{each}") for each in listed),
    )
    _, stock = stated("h: {hole: {at: [9, 9], diameter: 8}}")
    material = stock.sheet("birch-plywood-18")
    assert material is not None
    drawn = min(max(material.actual, first / 10), (first + wide) / 10)
    assert ready_made(use, material, "mm") == tuple(sorted({*listed, drawn}))


@quick
@given(st.lists(st.integers(30, 300), min_size=1, max_size=8), st.integers(30, 300))
def test_a_coupon_tries_the_drawn_thickness_and_never_too_many(
    ladder: list[int], drawn: int
) -> None:
    steps = tried([each / 10 for each in ladder], drawn / 10, 0.1)
    assert drawn / 10 in steps
    assert 7 <= len(steps) <= 16
    assert steps == tuple(sorted(set(steps)))
