"""Stiffness, strength and creep of the shipped library against the tables they come from."""

from __future__ import annotations

import re

import pytest

from kerfolio.model.stock import SheetStock, Stock
from tests.plans import workshop


@pytest.fixture(scope="module")
def stock() -> Stock:
    return workshop().stock


def sheet(stock: Stock, name: str) -> SheetStock:
    found = stock.sheet(name)
    assert found is not None, name
    return found


# From memory: Handbook of Finnish Plywood (2002/2007), birch of 1.4 mm veneers: mean modulus of
# elasticity along and across, characteristic bending strength along and across, N/mm2.
BIRCH = {
    "6-5": (12737, 4763, 50.9, 29.0),
    "9": (11395, 6105, 45.6, 32.1),
    "12": (10719, 6781, 42.9, 33.2),
    "15": (10316, 7184, 41.3, 33.8),
    "18": (10048, 7452, 40.2, 34.1),
    "21": (9858, 7642, 39.4, 34.3),
    "24": (9717, 7783, 38.9, 34.4),
    "27": (9607, 7893, 38.4, 34.5),
    "30": (9519, 7981, 38.1, 34.6),
}


@pytest.mark.parametrize("size", BIRCH)
def test_birch_is_as_stiff_and_strong_as_the_handbook_says(size: str, stock: Stock) -> None:
    found = sheet(stock, f"birch-plywood-{size}")
    stiff = (found.stiffness_along, found.stiffness_across)
    assert (*stiff, found.strength_along, found.strength_across) == BIRCH[size]
    assert (found.stiffness_kind, found.strength_kind) == ("mean", "characteristic")
    assert found.source_of("stiffness_along").startswith("from memory: Handbook of Finnish")


def test_birch_follows_the_ply_model(stock: Stock) -> None:
    # Laminate theory: plies along the span take the share f of the moment of inertia. 13 plies of
    # 1.4 mm, the outer two sanded to 1.15 mm: f = 0.581; with E0 + E90 = 17 500 N/mm2, E0 = 30 E90.
    heights = [1.15, *[1.4] * 11, 1.15]
    level, along, whole = -sum(heights) / 2, 0.0, 0.0
    for number, height in enumerate(heights):
        part = (level + height) ** 3 - level**3
        along, whole, level = along + (number % 2 == 0) * part, whole + part, level + height
    share = along / whole
    assert share == pytest.approx(0.581, abs=0.001)
    across_grain = 17_500 / 31
    modelled = share * (17_500 - across_grain) + (1 - share) * across_grain
    assert sheet(stock, "birch-plywood-18").stiffness_along == pytest.approx(modelled, rel=0.03)


@pytest.mark.parametrize("size", ["35", "40"])
def test_thick_birch_has_the_guaranteed_minima(size: str, stock: Stock) -> None:
    # Exterior birch plywood datasheet, guaranteed minima from 9 to 40 mm, N/mm2.
    found = sheet(stock, f"birch-plywood-{size}")
    assert (found.stiffness_along, found.stiffness_across) == (6000, 3000)
    assert (found.strength_along, found.strength_across) == (60, 30)
    assert (found.stiffness_kind, found.strength_kind) == ("minimum", "minimum")


@pytest.mark.parametrize("size", ["4", "45", "50"])
def test_what_no_table_gives_is_left_out(size: str, stock: Stock) -> None:
    found = sheet(stock, f"birch-plywood-{size}")
    assert found.stiffness_along is None
    assert found.strength_along is None
    assert found.shear_modulus_flat is None
    assert found.shear_strength_flat is None


@pytest.mark.parametrize(
    ("name", "stiffness", "strength"),
    [
        # From memory: EN 622-5 (2009), general purpose, dry: least values by thickness.
        ("mdf-6", 2700, 23),
        ("mdf-9", 2700, 23),
        ("mdf-12", 2500, 22),
        ("mdf-15", 2200, 20),
        ("mdf-19", 2200, 20),
        ("mdf-22", 2100, 18),
        ("mdf-30", 2100, 18),
        # Wood Handbook FPL-GTR-190 (2010), Table 12-1, MDF 3.59 GPa and 35.85 MPa.
        ("mdf-3-4", 3590, 35.85),
        # The same, low ends: hardboard 3.10 to 5.52 GPa, 31.02 to 56.54 MPa.
        ("hardboard-6", 3100, 31.02),
        # The same, particleboard 2.76 to 4.14 GPa; strength by the P2 datasheet (EN 312).
        ("particleboard-18", 2760, 11),
        ("particleboard-38", 2760, 8.5),
    ],
)
def test_boards_without_grain_are_alike_both_ways(
    name: str, stiffness: float, strength: float, stock: Stock
) -> None:
    found = sheet(stock, name)
    assert (found.stiffness_along, found.stiffness_across) == (stiffness, stiffness)
    assert (found.strength_along, found.strength_across) == (strength, strength)
    assert not found.grain


@pytest.mark.parametrize(
    ("name", "along", "across"), [("9", 18.0, 9.0), ("18", 16.4, 8.2), ("22", 14.8, 7.4)]
)
def test_osb_3_is_as_en_12369_says(name: str, along: float, across: float, stock: Stock) -> None:
    # From memory: EN 12369-1 (2001), OSB/3: bending strength by thickness, mean E 4930 and 1980.
    found = sheet(stock, f"osb-{name}")
    assert (found.stiffness_along, found.stiffness_across) == (4930, 1980)
    assert (found.strength_along, found.strength_across) == (along, across)


# Wood Handbook FPL-GTR-190 (2010), Table 12-1: modulus of elasticity in GPa, strength in MPa.
RANGES = {
    "plywood": ((6.96, 8.55), (33.72, 42.61)),
    "osb": ((4.41, 6.28), (21.80, 34.70)),
    "hardboard": ((3.10, 5.52), (31.02, 56.54)),
}


@pytest.mark.parametrize("kind", RANGES)
def test_us_panels_are_at_the_low_end_of_the_wood_handbook(kind: str, stock: Stock) -> None:
    (stiff, _), (strong, _) = RANGES[kind]
    found = [s for s in stock.sheets if re.fullmatch(rf"{kind}-\d+-\d+", s.name)]
    assert len(found) >= 2
    assert {each.stiffness_along for each in found} == {round(1000 * stiff)}
    assert {each.strength_along for each in found} == {strong}
    assert {each.stiffness_kind for each in found} == {"minimum"}


# EN 1995-1-1, Table 3.2, service class 1: solid timber and plywood as the European LVL handbook
# (2025) prints them in Tables 4.2 and 4.3; the others from memory.
CREEP = {
    **{"hardwood-plywood": 0.8, "softwood-plywood": 0.8, "osb": 1.5},
    **{"mdf": 2.25, "particleboard": 2.25, "hardboard": 2.25},
}


def test_creep_is_that_of_eurocode_5(stock: Stock) -> None:
    assert {(each.family, each.creep) for each in stock.sheets} == set(CREEP.items())
    assert {each.creep for each in stock.boards} == {0.6}


@pytest.mark.parametrize(
    ("name", "stiffness", "strength", "kind"),
    [
        # Wood Handbook FPL-GTR-190 (2010), Table 12-1: clear western white pine, coast Douglas fir.
        ("pine-1x6", 10070, 66.88, "mean"),
        ("fir-2x4", 13440, 85.49, "mean"),
        # EN 338, class C24, as tables of structural timber print it: 11 000 and 24 N/mm2.
        ("pine-45x95", 11000, 24, "characteristic"),
    ],
)
def test_boards_are_as_the_tables_say(
    name: str, stiffness: float, strength: float, kind: str, stock: Stock
) -> None:
    found = stock.board(name)
    assert found is not None
    assert (found.stiffness, found.strength, found.strength_kind) == (stiffness, strength, kind)


def test_nominal_sizes_are_what_yards_call_them(stock: Stock) -> None:
    # Common practice, no single source: a 1 x 4 measures 3/4 x 3-1/2 in.
    assert {each.nominal for each in stock.boards if each.name == "pine-1x4"} == {"1 x 4"}
    assert {each.nominal for each in stock.boards if each.title.endswith("planed")} == {""}


def test_what_is_from_memory_says_so(stock: Stock) -> None:
    for name, field in (
        ("mdf-18", "stiffness_along"),
        ("mdf-18", "creep"),
        ("osb-18", "strength_along"),
        ("birch-plywood-18", "strength_along"),
    ):
        assert sheet(stock, name).source_of(field).startswith("from memory: ")
