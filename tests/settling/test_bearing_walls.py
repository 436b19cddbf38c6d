"""Walls that bear keep a third of their length, whatever the relief; slots are as long as stated.

A geometry library measures: along straight lines through what was written, and along walls.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
import shapely
from shapely import affinity

from kerfolio.drawing.cut_sheet import cut_part
from kerfolio.geometry.arc import edges
from kerfolio.geometry.canonical import region
from kerfolio.geometry.contour import Contour
from kerfolio.geometry.measure import contours_of
from kerfolio.geometry.relief import SIDEWAYS, InsideCorner, inside_corners
from kerfolio.model.feature_kind import POCKET, SLOT
from kerfolio.proving.prove import prove_plan
from kerfolio.reading.workshop import read_workshop
from kerfolio.settling.relief import KEPT
from kerfolio.settling.settle import settle
from kerfolio.settling.settled import SettledFeature, SettledPart, SettledPlan
from kerfolio.settling.variant import variants
from kerfolio.writing.dxf import dxf_bytes
from kerfolio.writing.read_dxf import read_dxf
from tests.geometry.shape_cases import relieved
from tests.paper import sample_editions
from tests.plans import RACK, WORKSHOP, lay_down
from tests.settling.panels import flat, panel, stated

LINES = 41
NEAR = 5e-4
"""How closely curves are followed, mm."""


def chords(opening: shapely.Polygon, across: float) -> list[float]:
    """Return the lengths along x of lines laid through an opening, from side to side of it."""
    ends = opening.bounds[0] - 1, opening.bounds[2] + 1
    heights = [across * ((number + 0.5) / LINES - 0.5) for number in range(LINES)]
    lines = shapely.linestrings([[(x, y) for x in ends] for y in heights])
    found = shapely.intersection(opening, lines)
    return [max(part.length for part in shapely.get_parts(each)) for each in found]


def clear(opening: shapely.Polygon, feature: SettledFeature) -> tuple[list[float], list[float]]:
    """Return what fits into an opening along and across, line by line."""
    x, y = feature.at
    here = affinity.translate(opening, -x, -y)
    ux, uy = feature.direction
    lying = affinity.affine_transform(here, (ux, uy, -uy, ux, 0, 0))
    standing = affinity.rotate(lying, 90, origin=(0, 0))
    return (
        chords(lying, feature.width.value),
        chords(standing, feature.length.value),
    )


def judged(opening: shapely.Polygon, feature: SettledFeature) -> list[str]:
    """Return what is wrong with an opening that takes a sheet."""
    faults = []
    for found, wanted in zip(
        clear(opening, feature), (feature.length.value, feature.width.value), strict=True
    ):
        if abs(min(found) - wanted) > 0.002:
            faults.append(f"{min(found):.3f} instead of {wanted:.3f}")
        flat_part = sum(abs(each - wanted) < 0.002 for each in found) / LINES
        if flat_part < KEPT - 1.5 / LINES:
            faults.append(f"only {flat_part:.2f} of a wall bears")
    return faults


def written(plan: SettledPlan, part: SettledPart) -> list[shapely.Polygon]:
    """Return what the DXF of a part opens, read back from its bytes."""
    layers = read_dxf(dxf_bytes(cut_part(plan, part))).layers
    names = [name for name in layers if name.startswith(("opening", "pocket"))]
    return [flat(each, NEAR) for name in names for each in layers[name]]


@cache
def settled_sample(name: str) -> tuple[SettledPlan, ...]:
    """Return a plan of the sample at both ends of its range of thicknesses, and between them.

    A slot's length is linear in the thickness, and what a relief leaves of its walls is monotonic:
    what holds at the ends holds between them.
    """
    found = sample_editions.workshop()
    plan = next(each for each in found.plans if each.name == name)
    choices = variants(plan, found.stock)[0]
    some = (choices[0], choices[len(choices) // 2], choices[-1])
    made = [settle(plan, found.stock, each)[0] for each in some]
    return tuple(each for each in made if each is not None)


@pytest.mark.parametrize("name", sample_editions.NAMES)
def test_every_slot_of_the_sample_is_as_long_in_the_files_as_it_is_stated(name: str) -> None:
    seen: set[object] = set()
    for plan in settled_sample(name):
        for part in plan.parts:
            taking = [f for f in part.features if f.takes and f.kind in (SLOT, POCKET)]
            if part.cuts in seen or not taking:
                continue
            seen.add(part.cuts)
            openings = written(plan, part)
            for feature in taking:
                at = shapely.Point(feature.at)
                (opening,) = (each for each in openings if each.contains(at))
                assert judged(opening, feature) == [], (plan.variant.label, feature.name)
    assert seen


def test_reliefs_that_meet_in_the_end_wall_are_seen() -> None:
    """The sample tote's slot as it would be with sideways reliefs in its end walls."""
    part = panel(
        "s: {slot: {at: [200, 150], length: 76.2, takes: ply}}",
        11.9,
        relief="{style: sideways, cutter: compression-1-4in}",
    )
    (feature,) = part.features
    assert judged(flat(part.routed.openings[0]), feature) == []
    eaten = [InsideCorner(c.at, c.first, c.second, end_wall(c)) for c in inside_corners(part.plain)]
    (opening,) = relieved(part.plain, eaten, 6.35 / 2, SIDEWAYS).openings
    assert judged(flat(opening), feature) == [
        "78.313 instead of 76.400",
        "only 0.00 of a wall bears",
    ]


def end_wall(corner: InsideCorner) -> str:
    return "first" if abs(corner.first[1]) > abs(corner.first[0]) else "second"


def share_left(part: SettledPart) -> float:
    """Return the least share that is left of a wall which ends at a corner that is relieved."""
    shares = [1.0]
    cuts = [(part.plain, contours_of(part.routed))]
    pocketed = [f.shape[0] for f in part.features if f.kind is POCKET]
    cuts += [(region(each), part.cuts[0].contours) for each in pocketed]
    for plain, made in cuts:
        rings = shapely.union_all([flat(Contour(c.vertices), NEAR).exterior for c in made])
        around = rings.buffer(2 * NEAR, quad_segs=1)
        for contour in contours_of(plain):
            for edge in edges(contour):
                wall = shapely.LineString([edge.start, edge.end])
                if not edge.bulge:
                    shares.append(wall.intersection(around).length / wall.length)
    return min(shares)


FEATURES = {
    "slot": "s: {slot: {at: [200, 150], length: 60, angle: 30, takes: ply}}",
    "short slot": "s: {slot: {at: [200, 150], length: 14, takes: ply}}",
    "notch": "n: {notch: {edge: top, at: 100, depth: 60, takes: ply}}",
    "pocket": "p: {pocket: {at: [200, 150], length: 60, takes: ply, depth: 6}}",
    "fingers": "f: {fingers: {edge: left, count: 7, takes: ply}}",
    "narrow fingers": "f: {fingers: {edge: left, count: 21, takes: ply}}",
    "tabs": "t: {tabs: {edge: top, at: [20, 120, 152], width: 24, depth: 8}}",
    "tab by an end": "t: {tabs: {edge: top, at: 9, width: 60, depth: 20}}",
}


@pytest.mark.parametrize("cutter", ["compression-3", "compression-6", "compression-1-4in"])
@pytest.mark.parametrize("style", ["dog-bone", "sideways"])
@pytest.mark.parametrize("feature", FEATURES.values(), ids=FEATURES.keys())
def test_every_wall_keeps_a_third_or_an_error_says_so(
    feature: str, style: str, cutter: str
) -> None:
    for thickness in (9.0, 12.1, 17.8):
        relief = f"{{style: {style}, cutter: {cutter}}}"
        part = panel(feature, thickness, relief=relief)
        enough = all(each.widest >= width_of(cutter) + 0.1 for each in part.moved)
        assert (share_left(part) >= KEPT - 1e-3) == enough


def width_of(cutter: str) -> float:
    return {"compression-3": 3.0, "compression-6": 6.0, "compression-1-4in": 6.35}[cutter]


def told(features: str, **asked: object) -> list[tuple[str, str, str]]:
    found = prove_plan(*stated(features, **asked)).findings
    return [
        (each.rule, each.message, each.advice)
        for each in found
        if each.rule in ("relief-moved", "relief-eats-wall")
    ]


def test_another_style_is_told() -> None:
    slot = "s: {slot: {at: [200, 150], length: 60, width: 12, takes: thin}}"
    text = slot.replace("width: 12, ", "")
    # 6.4 mm and twice the fit, less twice sqrt 1/2 of 6.1 mm: nothing is left of it.
    assert told(text, relief="dog-bone") == [
        (
            "relief-moved",
            "`dog-bone` would leave 0 mm of a wall of 6.6 mm at `panel.s`",
            "A wall that bears keeps a third: the reliefs lie sideways there.",
        )
    ]
    assert told(text, relief="sideways") == []
    # The shoulders of 14 mm between tabs have no room for two sideways reliefs.
    tabs = "t: {tabs: {edge: top, at: [20, 58], width: 24, depth: 20}}"
    assert told(tabs, relief="sideways") == [
        (
            "relief-moved",
            "`sideways` would leave 1.8 mm of a wall of 14 mm at `panel.t`",
            "A wall that bears keeps a third: the reliefs are dog-bones there.",
        )
    ]


def test_where_no_style_does_the_cutter_that_would_is_named() -> None:
    assert told("n: {notch: {edge: top, at: 100, depth: 5, takes: ply}}") == [
        (
            "relief-eats-wall",
            "relief leaves 0.79 mm of a wall of 5.1 mm at `panel.n`",
            "A wall that bears keeps a third: take `compression-1-8in`, 3.18 mm wide, square the "
            "corners by hand (`relief: none`), or make the wall longer.",
        )
    ]


def test_no_relief_eats_nothing() -> None:
    assert told("n: {notch: {edge: top, at: 100, depth: 5, takes: ply}}", relief="none") == []


RACK_IN = """\
plan: Probe box
version: 1.0.0
summary: Two tabs in inches.
units: in
sheets: {ply: {stock: birch-plywood-18, size: 96 x 48}}
parts:
  rail:
    sheet: ply
    outline: {rectangle: [12, 5]}
    features: {tab: {tabs: {edge: left, at: 1, width: 2, takes: ply}}}
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


@pytest.mark.parametrize(
    ("plan", "workshop", "diameter"),
    [
        (RACK, WORKSHOP, 6.1),
        (RACK, WORKSHOP + "relief-extra: 0.2\n", 6.2),
        (RACK, WORKSHOP + "relief-extra: 0.004 in\n", 6.1016),
        (RACK + "relief: {extra: 0}\n", WORKSHOP + "relief-extra: 0.2\n", 6.0),
        (RACK_IN + "relief: {extra: 0.01}\n", WORKSHOP, 6.254),
        (RACK_IN, WORKSHOP + "relief-extra: 0.2\n", 6.2),
    ],
)
def test_the_arcs_are_wider_by_the_extra_of_plan_or_workshop(
    plan: str, workshop: str, diameter: float
) -> None:
    with TemporaryDirectory() as folder:
        found, _ = read_workshop(lay_down(Path(folder) / "shop", plan, workshop=workshop))
    assert found is not None
    made = next(iter(variants(found.plans[0], found.stock)[0]))
    settled, _ = settle(found.plans[0], found.stock, made)
    assert settled is not None
    (sheet,) = settled.sheets
    assert sheet.relief.diameter == pytest.approx(diameter)
    rail = next(part for part in settled.parts if part.name == "rail")
    arcs = [e.arc for c in contours_of(rail.routed) for e in edges(c) if e.arc]
    assert {round(2 * arc.radius, 4) for arc in arcs} == {round(diameter, 4)}


def test_an_extra_beyond_all_bounds_is_a_slip() -> None:
    with TemporaryDirectory() as folder:
        shop = lay_down(Path(folder) / "shop", workshop=WORKSHOP + "relief-extra: 6\n")
        _, found = read_workshop(shop)
    assert [(each.message, each.advice) for each in found] == [
        ("`6` comes to 6 mm", "0 mm to 2 mm is usual: is the unit the one you mean?")
    ]
