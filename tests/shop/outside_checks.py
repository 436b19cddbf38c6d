"""Published figures and what the shop makes of the same input; a row each, with its source.

``PUBLISHED`` figures were read where the source says. ``MEMORY`` figures are from memory of a
document: check them there before relying on them. ``WORKED`` figures are no publication: they were
worked out by hand from a formula of the source, apart from the program. Sources are named by
document or table.
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.reading.desk import Desk
from kerfolio.reading.span import SPANS
from kerfolio.reading.yaml_text import read_yaml
from kerfolio.shop.beam import (
    Layer,
    buckling_load,
    built_up,
    loading,
    long_term,
    rectangle_inertia,
    sag,
    together,
)
from kerfolio.shop.chip_load import (
    chip_of,
    chip_ranges,
    depth_share,
)
from kerfolio.shop.noise import NIOSH, NoiseRule, bearable_minutes
from kerfolio.shop.screw import allowable_withdrawal, ultimate_in_board, ultimate_withdrawal
from tests.assembly.in_use_checks import in_use_checks
from tests.plans import workshop
from tests.settling.damp_checks import damp_checks
from tests.shop.outside_check import MEMORY, PUBLISHED, WORKED, OutsideCheck
from tests.shop.outside_worked import worked_checks
from tests.trials.log_checks import log_checks

_INCH = float(MM_PER_UNIT["in"])
_POUND = 4.4482216152605  # N; 0.45359237 kg x 9.80665 m/s2, both exact
_STIFF = 1e30  # no shear


def checks() -> tuple[OutsideCheck, ...]:
    """Return every check, grouped by subject."""
    return (
        *_beams(),
        *_built_up(),
        *_columns(),
        *_time(),
        *_screws(),
        *_chips(),
        *_tables(),
        *_noise(),
        *worked_checks(),
        *in_use_checks(),
        *damp_checks(),
        *log_checks(),
    )


def greatest_moment(load: str, ends: str) -> float:
    """Return the greatest moment over W L: in the middle, or at an end that is clamped."""
    case = loading(load, ends)
    return max(abs(case.moment_at(share)) for share in (0.0, 0.5))


def _moment(load: str, ends: str, force: float, length: float) -> float:
    return greatest_moment(load, ends) * force * length


def _bent(load: str, force: float, length: float, rigid: float) -> float:
    return sag(loading(load, "free"), force, length, rigid, _STIFF)


def _stress(moment: float, inertia: float, reach: float) -> float:
    """Return the stress of a section of one layer, ``reach`` from its middle to its edge."""
    layer = Layer(stiffness=1, area=1, inertia=inertia, middle=0, half=reach)
    return moment * together((layer,)).stresses[0]


def _safe_load(load: str, width: float, height: float, length: float, strength: float) -> float:
    """Return the load that brings a rectangle to its strength."""
    inertia = rectangle_inertia(width, height)
    return strength / _stress(_moment(load, "free", 1.0, length), inertia, height / 2)


def _beams() -> Iterator[OutsideCheck]:
    page = "Public calculation page on beam stress and deflection, worked example (inch units)"
    steel = 29e6 * 285
    yield OutsideCheck(
        what="Steel beam, 100 lb/in over 100 in: stress",
        source=page,
        standing=PUBLISHED,
        unit="psi",
        value=2741,
        within=0.5,
        ours=lambda: _stress(_moment("even", "free", 100 * 100, 100), 285, 6.25),
    )
    yield OutsideCheck(
        what="Steel beam, 100 lb/in over 100 in: deflection",
        source=page,
        standing=PUBLISHED,
        unit="in",
        value=0.016,
        within=0.0005,
        ours=lambda: _bent("even", 100 * 100, 100, steel),
    )
    yield OutsideCheck(
        what="Steel beam, 10 000 lb at mid-span: stress",
        source=page,
        standing=PUBLISHED,
        unit="psi",
        value=5482,
        within=0.5,
        ours=lambda: _stress(_moment("middle", "free", 10_000, 100), 285, 6.25),
    )
    yield OutsideCheck(
        what="Steel beam, 10 000 lb at mid-span: deflection",
        source=page,
        standing=WORKED,
        unit="in",
        value=0.0252067,
        within=1e-7,
        ours=lambda: _bent("middle", 10_000, 100, steel),
    )
    top = "Public worked example of a pine table top, 12 x 1.5 in over 48 in, 5 lb/in"
    pine = 1.5e6 * rectangle_inertia(12, 1.5)
    yield OutsideCheck(
        what="Table top: second moment of area",
        source=top,
        standing=PUBLISHED,
        unit="in4",
        value=3.375,
        within=0.0005,
        ours=lambda: rectangle_inertia(12, 1.5),
    )
    yield OutsideCheck(
        what="Table top: deflection",
        source=top,
        standing=PUBLISHED,
        unit="in",
        value=0.068,
        within=0.0005,
        ours=lambda: _bent("even", 5 * 48, 48, pine),
    )
    safe = "Safe Building (handbook), rectangular beams; hemlock 3 x 10 in, 9 ft, 750 psi"
    for load, value in (("even", 2778), ("middle", 1389)):
        yield OutsideCheck(
            what=f"Hemlock beam: safe load, {load}",
            source=safe,
            standing=PUBLISHED,
            unit="lb",
            value=value,
            within=0.5,
            ours=lambda load=load: _safe_load(load, 3, 10, 108, 750),
        )
    table = "Public page of beam formulas: clamped ends sag so many times less than free ones"
    for load, value in (("even", 5), ("middle", 4)):
        yield OutsideCheck(
            what=f"Sag with free ends over sag with clamped ends, load {load}",
            source=table,
            standing=PUBLISHED,
            unit="",
            value=value,
            within=1e-9,
            ours=lambda load=load: loading(load, "free").bending / loading(load, "clamped").bending,
        )
    moments = "Statics: moments of beams with clamped ends"
    for load, value in (("even", 1 / 12), ("middle", 1 / 8)):
        yield OutsideCheck(
            what=f"Greatest moment over W L, clamped ends, load {load}",
            source=moments,
            standing=MEMORY,
            unit="",
            value=value,
            within=1e-12,
            ours=lambda load=load: greatest_moment(load, "clamped"),
        )
    birch = (
        "Wood Handbook FPL-GTR-190, equation 9-2: birch shelf 300 x 17.7 mm, 30 kg/m over 800 mm"
    )
    force, rigid = 30 * 0.8 * 9.80665, 10048 * rectangle_inertia(300, 17.7)
    shear = 10048 / 16 * 300 * 17.7 * 5 / 6
    yield OutsideCheck(
        what="Birch shelf: sag with its shear part",
        source=birch,
        standing=WORKED,
        unit="mm",
        value=1.1264 + 0.0085,
        within=0.0001,
        ours=lambda: sag(loading("even", "free"), force, 800, rigid, shear),
    )
    yield OutsideCheck(
        what="Birch shelf: stress",
        source=birch,
        standing=WORKED,
        unit="N/mm2",
        value=1.5025,
        within=0.00005,
        ours=lambda: _stress(
            _moment("even", "free", force, 800), rectangle_inertia(300, 17.7), 17.7 / 2
        ),
    )


def _built_up() -> Iterator[OutsideCheck]:
    source = (
        "Beer & Johnston, Mechanics of Materials, sample problem on a cast T section: flange "
        "90 x 20 mm over a stem 30 x 40 mm, 3 kN m"
    )
    layers = (
        Layer(stiffness=1, area=1800, inertia=60_000, middle=50, half=10),
        Layer(stiffness=1, area=1200, inertia=160_000, middle=20, half=20),
    )
    yield OutsideCheck(
        what="T section as one: second moment of area",
        source=source,
        standing=MEMORY,
        unit="mm4",
        value=868e3,
        within=500,
        ours=lambda: together(layers).bending,
    )
    for index, (where, value) in enumerate((("flange", 76.0), ("stem", 131.3))):
        yield OutsideCheck(
            what=f"T section as one: stress in the {where}",
            source=source,
            standing=MEMORY,
            unit="N/mm2",
            value=value,
            within=0.05,
            ours=lambda index=index: together(layers).stresses[index] * 3e6,
        )
    yield OutsideCheck(
        what="T section only laid together: second moments add up",
        source="Statics of members that slip on one another",
        standing=WORKED,
        unit="mm4",
        value=220e3,
        within=1e-6,
        ours=lambda: built_up(layers, (False,)).bending,
    )


def _columns() -> Iterator[OutsideCheck]:
    source = "Mechanics of materials textbook: square wooden column, 2 m, E 13 GPa, factor 2.5"
    for side, kilonewtons, within in ((98.3, 100, 0.25), (116.95, 200, 0.25)):
        yield OutsideCheck(
            what=f"Column of {side} mm a side, both ends turning: load",
            source=source,
            standing=MEMORY,
            unit="kN",
            value=kilonewtons,
            within=within,
            ours=lambda side=side: (
                buckling_load(13_000, rectangle_inertia(side, side), 2000) / 2.5 / 1000
            ),
        )
    yield OutsideCheck(
        what="Round steel column, 0.5 m thick, 20 m: load",
        source="Lesson on linear column buckling; its statement, pi3 E d4 / (64 L2)",
        standing=WORKED,
        unit="MN",
        value=15.1398,
        within=0.00005,
        ours=lambda: buckling_load(200e9, math.pi * 0.5**4 / 64, 20) / 1e6,
    )
    yield OutsideCheck(
        what="Birch leg 60 x 18 mm, 700 mm, weak axis: load",
        source="Euler's formula by hand",
        standing=WORKED,
        unit="N",
        value=5901.6,
        within=0.05,
        ours=lambda: buckling_load(10048, rectangle_inertia(60, 18), 700),
    )


def _time() -> Iterator[OutsideCheck]:
    yield OutsideCheck(
        what="Plywood in a heated room: growth of the sag (kdef)",
        source="European LVL handbook (2025), Tables 4.2 and 4.3, cross-bonded flat",
        standing=PUBLISHED,
        unit="",
        value=0.80,
        within=1e-9,
        transcription=True,
        ours=lambda: workshop().stock.sheet("birch-plywood-18").creep or math.nan,  # type: ignore[union-attr]
    )
    yield OutsideCheck(
        what="MDF in a heated room: final sag over first",
        source="EN 1995-1-1, Table 3.2 (kdef 2.25)",
        standing=MEMORY,
        unit="",
        value=3.25,
        within=1e-9,
        transcription=True,
        ours=lambda: long_term(1.0, 2.25),
    )


def _screws() -> Iterator[OutsideCheck]:
    per_inch = _POUND / _INCH
    yield OutsideCheck(
        what="Screw No. 10 in wood of gravity 0.45: allowable withdrawal",
        source="Public table of allowable wood screw withdrawal (cuts the decimals)",
        standing=PUBLISHED,
        unit="lb/in",
        value=109,
        within=1,
        ours=lambda: allowable_withdrawal(0.45, 0.190 * _INCH, 1.0) / per_inch,
    )
    yield OutsideCheck(
        what="Screw No. 8, 1 in of thread, red oak 0.70: ultimate withdrawal",
        source="Public page quoting the Wood Handbook's equation",
        standing=PUBLISHED,
        unit="lb",
        value=1262,
        within=1,
        ours=lambda: ultimate_withdrawal(0.70, 0.164 * _INCH, _INCH) / _POUND,
    )
    for where, factor in (("face", 2655), ("edge", 2055)):
        deep = 0.75 - 0.164 / 3
        yield OutsideCheck(
            what=f"Screw No. 8, 3/4 in deep in particleboard of gravity 0.75, {where}: ultimate",
            source="from memory: Wood Handbook FPL-GTR-190, chapter 8, in lb and in",
            standing=MEMORY,
            unit="lb",
            value=factor * 0.164**0.5 * deep**1.25 * 0.75**2,
            within=0.2,
            transcription=True,
            ours=lambda edge=where == "edge": (
                ultimate_in_board(0.75, 0.164 * _INCH, 0.75 * _INCH, edge=edge) / _POUND
            ),
        )


def _chips() -> Iterator[OutsideCheck]:
    shop = "Cutter shop page on feeds, worked figure"
    yield OutsideCheck(
        what="Chip load: 3600 mm/min, 18 000 rpm, 2 flutes",
        source=shop,
        standing=PUBLISHED,
        unit="mm",
        value=0.1,
        within=1e-9,
        ours=lambda: chip_of(3600, 18_000, 2),
    )
    yield OutsideCheck(
        what="Chip load: 100 in/min, 18 000 rpm, 2 flutes",
        source="Definition of chip load",
        standing=WORKED,
        unit="in",
        value=0.00277778,
        within=5e-9,
        ours=lambda: chip_of(100, 18_000, 2),
    )


def _tabled(family: str, diameter: float, end: str) -> float:
    found = chip_ranges(workshop().stock, family, diameter * _INCH, "small shop")
    return float(getattr(found[0], end)) / _INCH


def _tables() -> Iterator[OutsideCheck]:
    table = "Chip-load ranges by material and cutter diameter, common practice"
    rows = (
        ("hardwood", 1 / 8, 0.003, 0.005),
        ("softwood-plywood", 1 / 4, 0.011, 0.013),
        ("mdf", 1 / 4, 0.013, 0.016),
        ("laminate", 1 / 2, 0.023, 0.025),
    )
    for family, diameter, least, most in rows:
        for end, value in (("least", least), ("most", most)):
            yield OutsideCheck(
                what=f"Chip load, {family}, {diameter:g} in cutter, {end}",
                source=table,
                standing=PUBLISHED,
                unit="in",
                value=value,
                within=1e-6,
                transcription=True,
                ours=lambda f=family, d=diameter, e=end: _tabled(f, d, e),
            )
    for diameters, share in ((2, 0.75), (3, 0.5)):
        yield OutsideCheck(
            what=f"Share of the chip load at a depth of {diameters} diameters",
            source=table,
            standing=PUBLISHED,
            unit="",
            value=share,
            within=1e-9,
            transcription=True,
            ours=lambda deep=diameters: (
                depth_share(workshop().stock.depth_rules, deep * 6.0, 6.0) or math.nan
            ),
        )
    for pounds, value, what in ((20, 29.76, "Books"), (35, 52.09, "A library's books")):
        yield OutsideCheck(
            what=f"{what}, {pounds} lb/ft, as read from a plan",
            source="Public pages on shelf loads",
            standing=PUBLISHED,
            unit="kg/m",
            value=value,
            within=0.005,
            ours=lambda pounds=pounds: _read_load(f"lb-per-ft: {pounds}"),
        )


def _read_load(stated: str) -> float:
    node, _ = read_yaml(f"shelf: {{part: top, load: {{{stated}}}}}".encode(), "x.yaml")
    assert node is not None
    (span,) = SPANS.read(node, Desk()) or ()
    return span.load.kg


def _noise() -> Iterator[OutsideCheck]:
    osha = "41 CFR 50-204.10, Table I, as 29 CFR 1910.95, Table G-16"
    rule = NoiseRule(body="OSHA", level=90, exchange=5)
    for level, value in ((95, 240), (100, 120), (105, 60), (110, 30), (115, 15)):
        yield OutsideCheck(
            what=f"Noise of {level} dBA, OSHA: minutes a day",
            source=osha,
            standing=PUBLISHED,
            unit="min",
            value=value,
            within=1e-9,
            ours=lambda level=level: bearable_minutes(level, rule),
        )
    yield OutsideCheck(
        what="Noise of 100 dBA, NIOSH: minutes a day",
        source="NIOSH criteria (85 dBA, 3 dB), as a public reference gives them",
        standing=PUBLISHED,
        unit="min",
        value=15,
        within=1e-9,
        ours=lambda: bearable_minutes(100, NIOSH),
    )
    for level, value, within in ((95, 45, 3), (100, 15, 0.5), (105, 5, 0.5)):
        yield OutsideCheck(
            what=f"Noise of {level} dB, UK upper action value: minutes a day, rounded",
            source="Table of UK guidance as quoted in public",
            standing=PUBLISHED,
            unit="min",
            value=value,
            within=within,
            ours=lambda level=level: bearable_minutes(level, NIOSH),
        )
