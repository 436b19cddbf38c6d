"""Any point: thickness, fit and cutter of a plan settled where nobody published it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from itertools import pairwise
from math import dist
from pathlib import Path
from random import Random

import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from kerfolio.basis.cutting_lengths import chosen_in
from kerfolio.basis.digits import steps
from kerfolio.basis.reader import INCHES, METRIC, Reader
from kerfolio.basis.said import told
from kerfolio.geometry.contour import Contour
from kerfolio.model.feature_kind import SLOT
from kerfolio.model.workshop import Workshop
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.point import point
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import FitVariant, Operation, SettledPart, SettledPlan
from kerfolio.settling.sheet import DEFAULT_EXTRA
from kerfolio.settling.variant import drawn_variant
from kerfolio.settling.variant_name import words_of
from tests.plans import small_settled
from tests.settling.panels import flat, settled_plan

SAMPLE = Path(__file__).parents[2] / "sample-site"
PLANS = ("desk-rack", "harbour-stool", "potting-bench", "tool-tote", "window-shelf")


@cache
def sample() -> Workshop:
    found, _ = read_workshop(SAMPLE, pictures=False)
    assert found is not None
    return found


def settled_there(drawn: SettledPlan, there: FitVariant) -> SettledPlan:
    made, findings = settle(drawn.plan, drawn.stock, there)
    assert made is not None, "\n".join(map(str, findings))
    return made


@cache
def drawn_plan(name: str) -> SettledPlan:
    plan = next(each for each in sample().plans if each.name == name)
    variant = drawn_variant(plan, sample().stock)
    assert variant is not None
    made, _ = settle(plan, sample().stock, variant)
    assert made is not None
    return made


def random_points(drawn: SettledPlan, count: int) -> Iterator[FitVariant]:
    """Yield points within what the sheets are sold at, the last one with no cutter."""
    luck = Random(drawn.plan.name)
    for number in range(count):
        sheets = drawn.sheets
        thickness = {s.name: luck.uniform(s.stock.least, s.stock.most) for s in sheets}
        fit = {s.name: luck.uniform(0, 0.25) for s in sheets}
        last = number == count - 1
        cutter = {s.name: None if last else luck.uniform(2, 4) for s in sheets}
        yield point(drawn, thickness, fit, cutter)


def slots_of(part: SettledPart) -> Iterator[tuple[str, shapely.Polygon, Contour]]:
    """Yield what each slot takes, its opening in the plain shape and the one that is routed."""
    for feature in part.features:
        if feature.kind is not SLOT or not feature.takes:
            continue
        at = shapely.Point(feature.at)
        plain = next((flat(each) for each in part.plain.openings if flat(each).covers(at)), None)
        if plain is not None and plain.minimum_rotated_rectangle.area < plain.area * 1.000001:
            routed = next(each for each in part.routed.openings if flat(each).covers(at))
            yield feature.takes, plain, routed


def sides_of(box: shapely.Polygon) -> tuple[float, ...]:
    around = list(box.minimum_rotated_rectangle.exterior.coords)
    return tuple(dist(a, b) for a, b in pairwise(around))[:2]


def arcs_across(contour: Contour) -> Iterator[float]:
    """Yield the diameter of each arc, from its chord c and bulge b: c (1 + b2) / (2 b)."""
    ends = contour.vertices
    for (x0, y0, bulge), (x1, y1, _) in zip(ends, (*ends[1:], ends[0]), strict=True):
        if bulge:
            yield dist((x0, y0), (x1, y1)) * (1 + bulge * bulge) / (2 * abs(bulge))


MORE = {
    ("tool-tote", "ply"): 0.05,
    ("potting-bench", "ply"): 0.02 + 0.25,
    ("potting-bench", "thin"): 0.02 + 0.17,
}
"""What slots for a sheet of a plan have beside its fit on each side, mm: for glue; for two films of
oil, and for a shed, where plywood of 17.8 and of 12 mm grows by 2.8 %."""


@pytest.mark.parametrize("name", PLANS)
def test_slots_and_reliefs_follow_every_point(name: str) -> None:
    """A slot is as wide as its sheet and two fits; its reliefs as the cutter and the extra."""
    drawn = drawn_plan(name)
    for there in random_points(drawn, 3):
        settled = settled_there(drawn, there)
        slots = 0
        for part in settled.parts:
            diameter = settled.sheet(part.sheet).diameter
            for takes, plain, routed in slots_of(part):
                slots += 1
                fit = dict(there.fit)[takes] + MORE.get((name, takes), 0.0)
                wanted = dict(there.thickness)[takes] + 2 * fit
                assert min(abs(each - wanted) for each in sides_of(plain)) < 1e-6
                arcs = list(arcs_across(routed))
                if diameter is None:
                    assert not arcs, "square corners"
                else:
                    assert arcs
                    assert arcs == pytest.approx([diameter + DEFAULT_EXTRA] * len(arcs), abs=1e-6)
            if diameter is None:
                assert part.routed == part.plain
        assert slots or name == "window-shelf", "a plan of notches alone"


def test_what_is_not_the_points_stays_the_plans_own() -> None:
    """Layouts, drills of templates and the coupon do not change with a fit or a cutter."""
    drawn = small_settled()
    other = settled_there(drawn, point(drawn, {}, {"ply": 0.2}, {"ply": 3.175}))
    (own,), (sheet,) = drawn.sheets, other.sheets
    assert (sheet.fit, sheet.diameter, sheet.relief.diameter) == (0.2, 3.175, 3.275)
    assert (sheet.cutter, sheet.gap) == (own.cutter, own.gap)
    assert other.coupons == drawn.coupons
    for a, b in zip(drawn.parts, other.parts, strict=True):
        assert len(a.drill_centres) == len(b.drill_centres)


def test_an_open_groove_is_carried_no_further_where_no_cutter_cuts() -> None:
    groove = "g: {groove: {from: [0, 100], to: [400, 100], takes: thin, depth: 5}}"
    drawn = settled_plan(groove)
    bare = settled_there(drawn, point(drawn, {}, cutter={"ply": None}))
    for settled, wanted in ((drawn, -3.0), (bare, -0.1)):  # the fit at its end
        cuts = settled.parts[0].cuts
        cut = next(each for each in cuts if each.operation is Operation.POCKET)
        assert min(x for x, _, _ in cut.contours[0].vertices) == pytest.approx(wanted)


@pytest.mark.parametrize(
    ("thickness", "fit", "cutter", "label", "words"),
    [
        (17.634, None, 6.0, "17.63mm", "17.63mm"),
        (17.6, 0.1, 6.0004, "17.6mm", "17.6mm"),
        (17.63, 0.08, 3.175, "17.63mm-fit-0.08mm-cutter-3.175mm", None),
        (18.0, None, None, "18.0mm-no-cutter", "18.0mm with no cutter"),
    ],
)
def test_a_points_label(
    thickness: float, fit: float | None, cutter: float | None, label: str, words: str | None
) -> None:
    drawn = small_settled()
    there = point(drawn, {"ply": thickness}, {} if fit is None else {"ply": fit}, {"ply": cutter})
    assert there.label == label
    said = words or "17.63mm with a fit of 0.08 mm and a cutter of 3.175 mm"
    assert told(words_of(there), METRIC) == said


def test_labels_of_several_sheets_and_of_inches() -> None:
    two = settled_plan("h: {hole: {at: [30, 30], diameter: 8}}")
    there = point(two, {"ply": 17.9}, {"ply": 0.05}, {"thin": None})
    assert there.label == "ply-17.9mm-fit-0.05mm_thin-6.4mm-no-cutter"
    assert (
        told(words_of(there), METRIC)
        == "ply-17.9mm with a fit of 0.05 mm_thin-6.4mm with no cutter"
    )
    tote = drawn_plan("tool-tote")
    (sheet,) = tote.sheets
    there = point(tote, {sheet.name: 18.26}, {sheet.name: 0.0762}, {sheet.name: 3.175})
    assert there.label == "23-32in-fit-0.003in-cutter-1-8in"
    assert told(words_of(there), INCHES) == "23/32 in with a fit of 0.003 in and a cutter of 1/8 in"


def test_a_sheet_that_a_plan_has_not_is_refused() -> None:
    with pytest.raises(KeyError, match="mdf"):
        point(small_settled(), {}, {"mdf": 0.1})


@settings(max_examples=200, deadline=None, derandomize=True)
@given(st.integers(1, 13000), st.sampled_from(["mm", "in"]))
def test_what_is_chosen_is_told_to_a_thousandth(thousandths: int, unit: str) -> None:
    """Two cutters that differ by 0.001 mm have two names; the name gives the cutter back."""
    *whole, last = (
        chosen_in(thousandths / 1000, Reader(unit=unit)).removesuffix(f" {unit}").split(" ")
    )
    over, _, under = last.partition("/")
    value = sum(map(float, whole)) + float(over) / float(under or 1)
    assert steps(value * (25.4 if unit == "in" else 1.0), 3) == thousandths
