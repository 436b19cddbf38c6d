"""Worked examples of textbooks, codes and handbooks beside what the shop makes of their input.

All values were read where the source says; those of ``_buckled`` were worked out by a library.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cache, partial

import numpy as np
from scipy.linalg import eigh

from kerfolio.settling.moisture import board_moisture, equilibrium_moisture, grown
from kerfolio.shop.beam import (
    G,
    Layer,
    buckling_load,
    loading,
    rectangle_inertia,
    sag,
    together,
)
from kerfolio.shop.leg import LegResult
from kerfolio.shop.machine import SMALL_ROUTER, path_seconds, travel_seconds
from kerfolio.shop.noise import NoiseRule, bearable_minutes
from kerfolio.shop.screw import allowable_hold
from tests.plans import settled_at, workshop
from tests.settling.damp_checks import movement
from tests.shop.outside_check import AT_LEAST, AT_MOST, PUBLISHED, WORKED, OutsideCheck
from tests.shop.spanned import Spanned

_Row = tuple[str, str, str, float, float, Callable[[], float]]

_E, _T = 10_048, 17.7  # birch plywood of 18 mm, N/mm2 and mm
_OSHA = NoiseRule(body="OSHA", level=90, exchange=5)
_CANADA = NoiseRule(body="Canada", level=87, exchange=3)

TAPERED = """\
plan: Tapered
version: 1.0.0
summary: A slab and a leg that become narrower.
sheets: {ply: {stock: birch-plywood-18, size: 2440 x 1220, published-for: 17.7, fit: 0.1}}
parts:
  slab:
    sheet: ply
    grain: along x
    outline: {polygon: [[0, 0], [600, 0], [1500, 50], [1500, 150], [600, 200], [0, 200]]}
  leg:
    sheet: ply
    grain: along y
    outline: {polygon: [[0, 0], [120, 0], [90, 700], [30, 700]]}
steps: [{title: All, add: [slab, leg], text: Done.}]
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""
"""A slab 200 mm wide that is 100 at its end, 900 mm out, and a leg of 120 mm that is 60 above."""

SHEET = """\
plan: Sheet
version: 1.0.0
summary: A whole sheet.
sheets: {ply: {stock: birch-plywood-12, size: LONG x WIDE, published-for: 12, fit: 0.1}}
parts: {sheet: {sheet: ply, grain: along x, outline: {rectangle: [LONG, WIDE]}}}
steps: [{title: All, add: [sheet], text: Done.}]
releases: {1.0.0: {date: 2026-10-02, changed: First.}}
"""


def worked_checks() -> Iterator[OutsideCheck]:
    """Yield every check, grouped by subject."""
    rows = (*_webs(), *_shears(), *_spans(), *_tapers(), *_columns(), *_runs(), *_damp())
    for what, source, unit, value, near, ours in (*rows, *_noise(), *_sheets()):
        yield OutsideCheck(
            what=what,
            source=source,
            standing=PUBLISHED,
            unit=unit,
            value=value,
            within=near,
            ours=ours,
        )
    yield from _bounds()


def _webs() -> Iterator[_Row]:
    wood = (
        "Singer and Pytel, Strength of Materials, problem 572: 200 x 40 mm on 20 x 100 mm of wood "
        "(sizes from memory; they give the axis it states, 34 mm from the top)"
    )
    panel_on_web = (
        Layer(stiffness=1, area=8000, inertia=rectangle_inertia(200, 40), middle=120, half=20),
        Layer(stiffness=1, area=2000, inertia=rectangle_inertia(20, 100), middle=50, half=50),
    )
    what = "Panel on a web, joined: second moment of area"
    yield what, wood, "mm4", 10.57e6, 5e3, lambda: together(panel_on_web).bending
    clad = (
        "Solved exercise: pine 140 x 400 mm, E 12.5 GPa, with 200 x 8 mm of 200 GPa on top, 30 kN m"
    )
    layers = (
        Layer(stiffness=200e3, area=1600, inertia=200 * 8**3 / 12, middle=404, half=4),
        Layer(stiffness=12.5e3, area=56e3, inertia=140 * 400**3 / 12, middle=200, half=200),
    )
    for index, (where, value, near) in enumerate((("plate", 46.8, 0.05), ("pine", 5.36, 0.005))):
        what = f"Stiff plate on pine, joined: stress in the {where}"
        ours = partial(_stress_in, layers, index, 30e6)
        yield what, clad, "N/mm2", value, near, ours


def _stress_in(layers: tuple[Layer, ...], index: int, moment: float) -> float:
    return together(layers).stresses[index] * moment


def _shears() -> Iterator[_Row]:
    flat = "Abstract on three-point tests of shear stiffness: sag over span against span squared"
    what = "Plywood flat on two supports, load in the middle: {} of that line, times {}"
    yield what.format("slope", "E I"), flat, "", 1 / 48, 1e-9, lambda: _line()[0]
    yield what.format("start", "G A"), flat, "", 1 / 4, 1e-9, lambda: _line()[1]
    source = "Exercise on the shear part of a cantilever's sag: W L / (A G)"
    what = "Plywood flat, held at one end, load at the other: its shear part, times G A / (W L)"
    yield what, source, "", 1.0, 1e-9, lambda: _of_shear(120.0) / (70 * 120 / (190 * 300 * _T))


def _sagged(load: str, ends: str, force: float, span: float, *, shear: float) -> float:
    rigid = _E * rectangle_inertia(300, _T)
    return sag(loading(load, ends), force, span, rigid, shear)


def _line() -> tuple[float, float]:
    """Return slope and start of sag over span against span squared, in E I and in G A."""
    sheared = 190 * 300 * _T
    low, high = (_sagged("middle", "free", 1.0, span, shear=sheared) / span for span in (100, 500))
    slope = (high - low) / (500**2 - 100**2)
    return slope * _E * rectangle_inertia(300, _T), (low - slope * 100**2) * sheared


def _of_shear(span: float) -> float:
    soft, stiff = 190 * 300 * _T, 1e30
    one, other = (_sagged("end", "one", 70, span, shear=each) for each in (soft, stiff))
    return one - other


def _spans() -> Iterator[_Row]:
    book = (
        "Peurifoy and Oberlender, Formwork for Concrete Structures, chapter 5: 150 lb/ft over 9 ft"
    )
    rigid = 1_600_000 * 79.39
    what = "Wooden beam, 1.6 million psi, 79.39 in4: sag"
    ours = partial(sag, loading("even", "free"), 150 * 9, 108, rigid, 1e30)
    yield what, book, "in", 0.17, 0.005, ours
    manual = "EWPAA Structural Plywood and LVL Design Manual, 7.14: 1.4 kN in the middle of 3.6 m"
    what = "Lintel: sag, times E I"
    ours = partial(sag, loading("middle", "free"), 1.4, 3600, 1.0, 1e30)
    yield what, manual, "kN mm3", 1.4e9, 0.05e9, ours
    sheet = "Worksheet on falsework: plywood 18 mm, E 10 kN/mm2, 7.32 N/mm on 1 m, limit span/360"
    inertia = rectangle_inertia(1000, 18)
    yield "Plywood of 1 m: second moment of area", sheet, "mm4", 486e3, 0.5, lambda: inertia
    what = "Plywood of 1 m over 521.27 mm: span over sag"
    yield what, sheet, "", 360, 0.5, lambda: 521.27 / _even(7.32, 521.27, 10_000 * inertia)


def _even(push: float, span: float, rigid: float) -> float:
    return sag(loading("even", "free"), push * span, span, rigid, 1e30)


@cache
def _slab() -> float:
    """Return the sag of the slab's end under 1 kg there, in W L3 / (E I) of its narrow end."""
    span = "part: slab, as: overhang, supports: [600, right], load: {kg: 1, at: end}, held: fixed"
    found = Spanned(TAPERED).bent(f"{span}, lasting: no")
    bent = found.sags[0].first_day - found.rest.first_day
    return bent * _E * rectangle_inertia(100, _T) / (G * 900**3)


def _tapers() -> Iterator[_Row]:
    source = "Megson, Structural and Stress Analysis, example 13.14: I from I0 to 2 I0"
    what = "Slab that tapers to half its width, load at its end: sag, times E I0 / (W L3)"
    yield what, source, "", 0.19, 0.005, _slab


def _columns() -> Iterator[_Row]:
    source = "Public lesson on columns: round bar of 30 mm, 39 761 mm4, 200 GPa, 2 m"
    yield (
        "Round column: load",
        source,
        "kN",
        19.621,
        0.0005,
        lambda: buckling_load(200e3, 39_761, 2000) / 1000,
    )


def _runs() -> Iterator[_Row]:
    what = "Run of 2 km from rest to rest at 60 km/h, 0.83333 m/s2"
    source = "Programming exercise on a subway train: 2.33333 minutes"
    yield what, source, "s", 2.33333 * 60, 0.001, partial(travel_seconds, 2e6, 1e6, 833.33)
    slow = replace(SMALL_ROUTER, acceleration=1340.0)
    what = "Path of 880 m that never reaches its feed, 1.34 m/s2"
    path = ((0.0, 0.0), (440e3, 0.0), (880e3, 0.0))
    source = "Solved exercise on a subway train, stations 880 m apart"
    yield what, source, "s", 51.25, 0.005, partial(path_seconds, path, 1e9, slow)
    source = "Solved exercise on a subway train, stations 1100 m apart"
    what = "Run of 1100 m that never reaches its feed, 1.2 m/s2"
    yield what, source, "s", 60.6, 0.1, partial(travel_seconds, 1.1e6, 1e9, 1200)


def _damp() -> Iterator[_Row]:
    source = "University course on timber structures, problem 4.34: 0.2 % for each %, 19 to 10 %"
    what = "Timber of 13.25 in: shrinkage"
    yield what, source, "in", 0.2385, 5e-5, partial(grown, 13.25, 0.2, 9)
    source = "Woodworking magazine (September 2021) on wood movement: 8 x 0.0026 x 6"
    yield "Red alder of 8 in: movement", source, "in", 0.1248, 5e-5, partial(grown, 8, 0.26, 6)
    source = "Public list of moistures at 70 F by FPL-RN-0268, humidity in whole per cent"
    for humidity, percent in ((25, 5.3), (60, 11.1), (84, 17.6), (87, 19.0)):
        ours = partial(equilibrium_moisture, humidity, (70 - 32) / 1.8)
        what = f"Moisture of wood at 70 F and {humidity} % humidity"
        yield what, source, "%", percent, 0.15, ours


def _noise() -> Iterator[_Row]:
    code = "41 CFR 50-204.10, Table I, in quarters of an hour"
    for level, hours in ((92, 6), (97, 3), (102, 1.5)):
        what = f"Noise of {level} dBA, US code: minutes a day"
        ours = partial(bearable_minutes, level, _OSHA)
        yield what, code, "min", hours * 60, 4, ours
    directive = "NJC Occupational Health and Safety Directive (Canada), in preferred numbers"
    for level, hours, near in ((90, 4.0, 0.1), (94, 1.6, 1), (97, 0.8, 0.5), (100, 0.4, 0.5)):
        what = f"Noise of {level} dBA, Canadian directive: minutes a day"
        ours = partial(bearable_minutes, level, _CANADA)
        yield what, directive, "min", hours * 60, near, ours


def _sheets() -> Iterator[_Row]:
    source = "Birch plywood datasheet, column of weights, sheets of {} mm"
    for long, wide, kg in ((2440, 1220, 24.8), (3050, 1525, 38.8)):
        what = f"Sheet of birch plywood 12 mm, {long} x {wide} mm: weight"
        ours = partial(_weight, long, wide)
        yield what, source.format(f"{long} x {wide}"), "kg", kg, 0.05, ours


def _weight(long: int, wide: int) -> float:
    text = SHEET.replace("LONG", str(long)).replace("WIDE", str(wide))
    return settled_at(12.0, text).parts[0].mass


def _bounds() -> Iterator[OutsideCheck]:
    """Yield checks of what must lie to one side of what others say."""
    yield OutsideCheck(
        what="Leg that tapers from 120 to 60 mm over 700 mm: load that buckles it",
        source="Euler's equation for a bar of changing width, its least root by scipy",
        standing=WORKED,
        unit="N",
        value=_buckled(),
        within=0.4 * _buckled(),
        ours=_leg,
        bound=AT_MOST,
    )
    yield OutsideCheck(
        what="Screw in the edge of MDF over one in its face: pull",
        source="IS 14587, screw withdrawal strength of MDF, 1250 N over 1500 N",
        standing=PUBLISHED,
        unit="",
        value=1250 / 1500,
        within=0.1,
        ours=_edge_over_face,
        bound=AT_MOST,
    )
    yield OutsideCheck(
        what="MDF from 50 to 80 % humidity: growth in its plane",
        source="ANSI A208.2, requirements common to all MDF, linear expansion, most",
        standing=PUBLISHED,
        unit="%",
        value=0.33,
        within=0.2,
        ours=lambda: grown(100, movement("mdf").plane, board_moisture(80) - board_moisture(50)),
        bound=AT_MOST,
    )
    yield OutsideCheck(
        what="MDF from 9 to 12 % moisture: growth of 1 m",
        source="Facts About Particleboard and MDF, as a rough guide",
        standing=PUBLISHED,
        unit="mm",
        value=1.0,
        within=1.0,
        ours=lambda: grown(1000, movement("mdf").plane, 3),
        bound=AT_LEAST,
    )
    yield OutsideCheck(
        what="Plywood, 10 % more humidity from 45 % on: growth of 1 m",
        source="APA on dimensional stability of panels: 0.0002 in for each inch, average",
        standing=PUBLISHED,
        unit="mm",
        value=0.2,
        within=0.2,
        ours=lambda: grown(
            1000,
            movement("hardwood-plywood").plane,
            equilibrium_moisture(55) - equilibrium_moisture(45),
        ),
        bound=AT_LEAST,
    )


def _leg() -> float:
    found = Spanned(TAPERED).result(
        "part: leg, as: leg, supports: [0, 700], load: {kg: 1}, safety: 3"
    )
    assert isinstance(found, LegResult)
    return found.load_held * G * found.safety


@cache
def _buckled(count: int = 400) -> float:
    """Return the least P of E I w'' + P w = 0, both ends held in place, by finite differences."""
    step = 700 / count
    along = np.arange(1, count) * step
    rigid = _E * rectangle_inertia(1, _T) * (120 - 60 * along / 700)
    bent = (2 * np.eye(count - 1) - np.eye(count - 1, k=1) - np.eye(count - 1, k=-1)) / step**2
    least = eigh(bent, np.diag(1 / rigid), eigvals_only=True, subset_by_index=[0, 0])
    return float(least[0])


def _edge_over_face() -> float:
    stock = workshop().stock.sheet("mdf-18")
    assert stock is not None
    return allowable_hold(stock, 4, 20, edge=True) / allowable_hold(stock, 4, 20)
