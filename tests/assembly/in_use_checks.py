"""Sitting, overhangs, pushes and leaning: hand statics and textbook examples beside what we make.

Each figure by hand is written out where it stands, with the formula it comes from. ``within`` is
2 % of it.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache

from kerfolio.assembly.assembled import Assembled, PosedPiece
from kerfolio.assembly.in_use import InUse, in_use_of
from kerfolio.assembly.stability import stability_of, tippings, weakest
from kerfolio.geometry.packing import Flat
from kerfolio.geometry.panel import Panel
from kerfolio.geometry.rigid import Rigid
from kerfolio.model.person import Person
from kerfolio.settling.settled import FitVariant, SettledPlan
from kerfolio.shop.span import SagResult, span_results
from tests.plans import proved
from tests.sets import changed
from tests.shop.outside_check import MEMORY, PUBLISHED, WORKED, OutsideCheck

BENCH = """\
plan: Hall bench
version: 1.0.0
summary: A bench to sit on.
sheets: {ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.7, fit: 0.1}}
parts:
  side:
    sheet: ply
    pieces: [left, right]
    grain: along y
    outline: {rectangle: [300, 400]}
    features:
      top-tabs: {tabs: {edge: top, at: [60, 180], width: 60, depth: 17.7}}
      SLOTS
  seat:
    sheet: ply
    grain: along x
    outline: {rectangle: [1000, 300]}
    features:
      left-slots:
        slot: {at: [150, 210], length: 60, takes: ply, angle: 90}
        repeat: {count: 2, step: [0, -120]}
      right-slots:
        slot: {at: [850, 90], length: 60, takes: ply, angle: 90}
        repeat: {count: 2, step: [0, 120]}
  RAIL
joints:
  - {tab: side.left.top-tabs, into: seat.left-slots, show: out}
  - {tab: side.right.top-tabs, into: seat.right-slots}
  JOINTS
SPANS
uses: [sit in the middle, stand things on, lean on, plane along]
person: {kg: 100, push-n: 20}
steps: [{title: All, add: [side.left, side.right, seat], text: Push.}]
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
"""Two sides and a seat on four tabs, with nothing that braces them."""
RAIL = """\
rail:
    sheet: ply
    grain: along x
    outline: {rectangle: [682.3, 60]}
    features:
      left-tabs: {tabs: {edge: left, at: [15], width: 30, depth: 17.7}}
      right-tabs: {tabs: {edge: right, at: [15], width: 30, depth: 17.7}}
"""
G = 9.80665
E, G_FLAT, T, RHO = 10_048, 190, 17.7, 685e-9
"""Birch plywood 18 mm: Handbook of Finnish Plywood (2002/2007), from memory; density: datasheet."""


def bench(spans: str = "{}", rail: bool = False) -> str:
    slots = "rail-slots: {slot: {at: [150, 200], length: 30, takes: ply, angle: 90}}"
    joints = (
        "- {tab: rail.left-tabs, into: side.left.rail-slots}\n"
        "  - {tab: rail.right-tabs, into: side.right.rail-slots}"
    )
    text = BENCH.replace("SPANS", f"spans: {spans}")
    text = text.replace("      SLOTS\n", f"      {slots}\n" if rail else "")
    text = text.replace("  RAIL\n", f"  {RAIL}" if rail else "")
    text = text.replace("  JOINTS\n", f"  {joints}\n" if rail else "")
    return text.replace("side.right, seat]", "side.right, seat, rail]") if rail else text


@cache
def used(text: str) -> InUse:
    """Return a plan in use."""
    (made,) = proved(text).made
    build = made.build
    assert build is not None
    found = in_use_of(build.settled, build.drawn.assembled, stability_of(build.drawn.assembled))
    assert found is not None
    return found


def _box(
    label: str, size: tuple[float, float, float], at: tuple[float, float, float], kg: float
) -> PosedPiece:
    """Return a block lying flat: width, depth, height; its lower left front corner; its mass."""
    width, depth, height = size
    shape = Flat(((0, 0), (width, 0), (width, depth), (0, depth)))
    return PosedPiece(
        label=label,
        mark="",
        part=label,
        sheet="ply",
        panel=Panel(shape=shape, thickness=height),
        pose=Rigid(at),
        mass=kg,
    )


def _used(person: Person, friction: float, *pieces: PosedPiece) -> InUse:
    settled = proved(bench()).drawn
    assert settled is not None
    plan = replace(settled.plan, person=person, friction=friction, uses=("sit in the middle",))
    whole = Assembled(variant=FitVariant(label="", thickness=()), pieces=pieces, joints=())
    found = in_use_of(replace(settled, plan=plan), whole, stability_of(whole))
    assert found is not None
    return found


@cache
def pedestal() -> InUse:
    """A foot of 100 x 100 x 700 under a top of 500 x 500 x 20, 5 kg each; 110 kg, friction 0.3."""
    leg = _box("leg", (100, 100, 700), (200, 200, 0), 5.0)
    top = _box("top", (500, 500, 20), (0, 0, 700), 5.0)
    return _used(Person(), 0.3, leg, top)


def _trestle() -> tuple[PosedPiece, ...]:
    """Wide at the floor, narrow at the top: 600 and 240 mm wide, the top at 450 mm, 10 kg."""
    return (
        _box("foot", (600, 300, 10), (0, 0, 0), 4.0),
        _box("post", (100, 100, 420), (250, 100, 10), 2.0),
        _box("top", (240, 301, 20), (180, 0, 430), 4.0),
    )


@cache
def cabinet(height: float) -> InUse:
    """A cabinet of 120 lb, 24 in wide, pushed at a height; friction 0.30."""
    inch, pound = 25.4, 0.45359237
    block = _box("body", (24 * inch, 24 * inch, height * inch), (0, 0, 0), 120 * pound)
    return _used(Person(), 0.3, block)


@cache
def _span(spans: str) -> SagResult:
    settled: SettledPlan | None = proved(bench(f"{{s: {{{spans}}}}}")).drawn
    assert settled is not None
    (found,) = span_results(settled)
    assert isinstance(found, SagResult)
    return found


def _row(
    what: str, source: str, unit: str, value: float, ours: Callable[[], float]
) -> OutsideCheck:
    standing = MEMORY if "Beer" in source else PUBLISHED if "Giancoli" in source else WORKED
    return OutsideCheck(
        what=what,
        source=source,
        standing=standing,
        unit=unit,
        value=value,
        ours=ours,
        within=0.02 * abs(value),
    )


def in_use_checks() -> Iterator[OutsideCheck]:
    """Yield every check, grouped by subject."""
    yield from _sitting()
    yield from _pushing()
    yield from _overhanging()
    yield from _lying()


def _sitting() -> Iterator[OutsideCheck]:
    statics = "Statics of a rigid body by hand: "
    yield _row(
        "Pedestal table: load on the top's edge that tips it",
        f"{statics}m b / o = 10 x 50 / 200",
        "kg",
        2.5,
        lambda: pedestal().edge.load or 0.0,
    )
    yield _row(
        "Pedestal table: how far beyond the foot 110 kg may be",
        f"{statics}m b / M = 10 x 50 / 110",
        "mm",
        4.5455,
        lambda: pedestal().edge.beyond,
    )
    # Centre (4 x 5 + 2 x 220 + 4 x 440) / 10 = 222 up; with 110 kg at 450: (2220 + 49500) / 120
    # = 431; reach (10 x 300 + 110 x 180) / 120 = 190: the top's edge stays 180 mm inside.
    person = _used(Person(), 0.3, *_trestle())
    side = "wide below, narrow above: atan(190 / 431)"
    yield _row(
        "A-shaped trestle with 110 kg on the top's edge: tilt to the side",
        f"{statics}{side}",
        "deg",
        math.degrees(math.atan(190 / 431)),
        lambda: _tilt_to_the_side(),
    )
    yield _row(
        "A-shaped trestle: front to back, where the top reaches 1 mm beyond",
        f"{statics}atan((10 x 150 - 110 x 1) / 120 / 431)",
        "deg",
        math.degrees(math.atan((10 * 150 - 110) / 120 / 431)),
        lambda: person.edge.angle,
    )
    own = 0.6646 * 0.3 * T * 1e-3 * 685
    force = 100 * G
    rigid = E * 300 * T**3 / 12
    sag = (force / 48 + 5 / 384 * own * G) * 664.6**3 / rigid
    sag += (force / 4 + own * G / 8) * 664.6 / (G_FLAT * 5 / 6 * 300 * T)
    spans = "part: seat, supports: [167.7, 832.3], load: {kg: 100, at: middle}, lasting: no"
    yield _row(
        "Seat of 17.7 x 300 mm, 100 kg in the middle of 664.6 mm: sag on the first day",
        "Wood Handbook FPL-GTR-190, equation 9-2, by hand; slots lie beyond the supports",
        "mm",
        sag,
        lambda: _span(spans).sags[0].first_day,
    )
    moment = (force / 4 + own * G / 8) * 664.6
    yield _row(
        "The same seat: bending stress in the middle",
        "Statics: (F L / 4 + w L2 / 8) / (b t2 / 6)",
        "N/mm2",
        moment / (300 * T**2 / 6),
        lambda: _span(spans).sags[0].stress,
    )


def _tilt_to_the_side() -> float:
    whole = Assembled(variant=FitVariant(label="", thickness=()), pieces=_trestle(), joints=())
    found = tippings(stability_of(whole), 110.0)
    return next(each.angle for each in weakest(found, within=90.0) if abs(each.way[0]) > 0.9)


def _pushing() -> Iterator[OutsideCheck]:
    book = "Beer & Johnston, Vector Mechanics: cabinet of 120 lb on locked casters, 24 in, mu 0.30"
    newton = 0.45359237 * G
    yield _row(
        "Cabinet: level push that slides it",
        book,
        "lb",
        36.0,
        lambda: cabinet(32.0).pushes[0].slides_empty / newton,
    )
    yield _row(
        "Cabinet: at 40 in that push just tips it",
        book,
        "lb",
        36.0,
        lambda: cabinet(40.0).pushes[0].tips_empty / newton,
    )
    book = "Giancoli, Physics, 7th edition, chapter 9, problem 74: box of 250 N, 1 m wide, mu 0.60"
    yield _row(
        "Box: level push that slides it",
        book,
        "N",
        150.0,
        lambda: box().pushes[0].slides_empty,
    )
    yield _row(
        "Box: at 0.83 m that push just tips it",
        book,
        "N",
        150.0,
        lambda: box().pushes[0].tips_empty,
    )
    yield _row(
        "Pedestal table with 110 kg in the middle: push that slides it",
        "Statics: mu (m + M) g = 0.3 x 120 x 9.80665",
        "N",
        353.04,
        lambda: pedestal().pushes[0].slides_loaded,
    )
    yield _row(
        "Pedestal table with 110 kg in the middle: push at 720 mm that tips it",
        "Statics: (m + M) g b / H = 120 x 9.80665 x 50 / 720",
        "N",
        81.722,
        lambda: pedestal().pushes[0].tips_loaded,
    )
    mass = (2 * (300 * 400 + 120 * T) + 1000 * 300 - 4 * 60.2 * 17.9) * T * RHO
    yield _row(
        "Bench of two sides and a seat: push to the side that tips it empty",
        "Statics: m g b / H; b = 350 + 8.85 mm to the outer face of a side, H = 417.7 mm",
        "N",
        mass * G * (350 + T / 2) / 417.7,
        lambda: used(bench()).pushes[0].tips_empty,
    )
    yield _row(
        "Bench with a rail: lean to the side by the play of its tabs",
        "Geometry: H x 2 f / e = 417.7 x 2 x 0.1 / 17.7",
        "mm",
        4.7198,
        lambda: used(bench(rail=True)).pushes[0].lean or 0.0,
    )


@cache
def box() -> InUse:
    """A box of 250 N on a base of 1 m, pushed 0.83 m up; friction 0.6."""
    block = _box("body", (1000, 1000, 830), (0, 0, 0), 250 / G)
    return _used(Person(), 0.6, block)


def _overhanging() -> Iterator[OutsideCheck]:
    # 300 of 1000 mm hang out; the slots lie alike about the middle, 200 mm inside the support.
    mass = (1000 * 300 - 4 * 60.2 * 17.9) * T * RHO
    spans = "part: seat, as: overhang, supports: [700, right], load: {kg: 1, at: end}"
    yield _row(
        "Lying slab, 300 of 1000 mm out: load at its end that lifts the far end",
        "Statics: m a / c = m x 200 / 300",
        "kg",
        mass * 200 / 300,
        lambda: _lifting(spans)[0],
    )
    yield _row(
        "The same slab: load spread over the overhang",
        "Statics: m a / (c / 2)",
        "kg",
        mass * 200 / 150,
        lambda: _lifting(spans)[1],
    )
    narrow = (
        "part: seat, as: overhang, supports: [870, right], load: {kg: 40, at: end}, held: fixed"
    )
    own = 130 * 300 * T * RHO
    rigid = E * 300 * T**3 / 12
    sag = (40 * G / 3 + own * G / 8) * 130**3 / rigid
    sag += (40 * G + own * G / 2) * 130 / (G_FLAT * 5 / 6 * 300 * T)
    yield _row(
        "Held slab, 130 mm out, 40 kg at its end: sag",
        "Wood Handbook FPL-GTR-190, equation 9-2 (1/3, 1), by hand",
        "mm",
        sag,
        lambda: _span(narrow).sags[0].first_day,
    )
    yield _row(
        "The same: bending stress at the support",
        "Statics: (P + w / 2) c / (b t2 / 6)",
        "N/mm2",
        (40 + own / 2) * G * 130 / (300 * T**2 / 6),
        lambda: _span(narrow).sags[0].stress,
    )


HELD = "overhang: 110, held: clamped}"


@cache
def laid(held: str = "overhang: 110}") -> InUse:
    """A loose board of 900 x 300 on two crossed feet, 260 each way and 220 high; 12 mm thick."""
    stated = "uses: [stand things on, lean on]\nperson: {kg: 100, push-n: 20}\nsheets:"
    together = proved(changed(("sheets:", stated), ("overhang: 110}", held))).together
    assert together is not None
    return together.in_use[1].found


def _lying() -> Iterator[OutsideCheck]:
    """Yield checks of what lies on others: its feet begin 110 mm inside its ends."""
    rho = 695e-9  # kg/mm3, datasheet of birch plywood 12 mm
    board = 900 * 300 * 12 * rho
    # Corners of a foot's crossed panels, from the middle: (340, 6) and (216, 130). The board's is
    # (450, 150): across the line between them 346 and 600, each over the root of 2.
    edge = "346 / (600 - 346)"
    foot = 2 * (260 * 220 - 110 * 12.2) * 12 * rho  # two panels, their notches with the fit
    yield _row(
        "Board lying on two feet, 110 of 900 mm out: load at its corner that tips it off",
        f"Statics: m b / o = m x {edge}, by its own weight alone",
        "kg",
        board * 346 / 254,
        lambda: laid().edge.load or 0.0,
    )
    yield _row(
        "The same board: push that slides it on its feet",
        "Statics: mu m g = 0.3 x m x 9.80665",
        "N",
        0.3 * board * G,
        lambda: laid().pushes[0].slides_empty,
    )
    yield _row(
        "The same with 100 kg in its middle: push at which both feet tip about their own ends",
        "Statics: (2 m + M) g b / h; b = 130 mm, h = 220 mm to the feet's tops",
        "N",
        (2 * foot + board + 100) * G * 130 / 220,
        lambda: laid().pushes[0].tips_loaded,
    )
    yield _row(
        "The same board clamped to its feet: load at its corner that tips all of it",
        f"Statics: m b / o = m x {edge}, with the feet's weight",
        "kg",
        (2 * foot + board) * 346 / 254,
        lambda: laid(HELD).edge.load or 0.0,
    )
    yield _row(
        "The same clamped: push to the side at its top that tips it",
        "Statics: m g b / H = m g x 340 / 232",
        "N",
        (2 * foot + board) * G * 340 / 232,
        lambda: laid(HELD).pushes[0].tips_empty,
    )


def _lifting(spans: str) -> tuple[float, float]:
    found = _span(spans).lifting
    assert found is not None
    return found.load_end, found.load_even
