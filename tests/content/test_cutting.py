"""Chip loads, depths, threads and masses of the shipped library against their tables."""

from __future__ import annotations

import math

import pytest

from kerfolio.model.stock import ChipLoad, HardwareStock, Stock
from tests.plans import workshop

INCH = 25.4
STEEL = 7.85e-6
"""kg/mm3, common practice."""


@pytest.fixture(scope="module")
def stock() -> Stock:
    return workshop().stock


def item(stock: Stock, name: str) -> HardwareStock:
    found = stock.item(name)
    assert found is not None, name
    return found


def chips(stock: Stock, family: str, machine: str) -> list[ChipLoad]:
    found = [each for each in stock.chip_loads if (each.family, each.machine) == (family, machine)]
    return sorted(found, key=lambda each: each.diameter or 0.0)


# Chip-load ranges by material and cutter diameter (common practice, no single source), inches a
# tooth for cutters of 1/8, 1/4, 3/8 and 1/2 in at a depth of one diameter.
SHOP = {
    "hardwood": ((0.003, 0.005), (0.009, 0.011), (0.015, 0.018), (0.019, 0.021)),
    "softwood": ((0.004, 0.006), (0.011, 0.013), (0.017, 0.020), (0.021, 0.023)),
    "hardwood-plywood": ((0.004, 0.006), (0.011, 0.013), (0.017, 0.020), (0.021, 0.023)),
    "mdf": ((0.004, 0.007), (0.013, 0.016), (0.020, 0.023), (0.025, 0.027)),
    "particleboard": ((0.004, 0.007), (0.013, 0.016), (0.020, 0.023), (0.025, 0.027)),
    "laminate": ((0.003, 0.005), (0.009, 0.012), (0.015, 0.018), (0.023, 0.025)),
}


@pytest.mark.parametrize("family", SHOP)
def test_chip_loads_of_a_small_shop(family: str, stock: Stock) -> None:
    found = chips(stock, family, "small shop")
    sizes = [each.diameter for each in found]
    assert sizes == pytest.approx([INCH / 8, INCH / 4, INCH * 3 / 8, INCH / 2])
    for each, (least, most) in zip(found, SHOP[family], strict=True):
        assert (each.least, each.most) == pytest.approx((least * INCH, most * INCH))
        assert each.depth == "one cutter diameter"


# A page on light hobby machines, and one of single ranges for a 1/4 in cutter, half for 1/8 in
# (common practice, no single source); inches a tooth.
HOBBY = {"hardwood-plywood": (0.001, 0.003), "mdf": (0.002, 0.005), "softwood": (0.002, 0.004)}
QUARTER = {"hardwood-plywood": (0.010, 0.018), "mdf": (0.015, 0.025), "hardwood": (0.005, 0.010)}


@pytest.mark.parametrize("family", HOBBY)
def test_chip_loads_of_light_machines(family: str, stock: Stock) -> None:
    (found,) = chips(stock, family, "light hobby")
    least, most = HOBBY[family]
    assert (found.least, found.most) == pytest.approx((least * INCH, most * INCH))
    assert found.diameter is None


@pytest.mark.parametrize("family", QUARTER)
def test_chip_loads_of_industrial_machines(family: str, stock: Stock) -> None:
    small, large = chips(stock, family, "industrial")
    least, most = QUARTER[family]
    assert (large.diameter, small.diameter) == pytest.approx((INCH / 4, INCH / 8))
    assert (large.least, large.most) == pytest.approx((least * INCH, most * INCH))
    assert (small.least, small.most) == pytest.approx((least * INCH / 2, most * INCH / 2))
    assert "half" in small.source_of("least")


def test_published_ranges_differ_many_times_over(stock: Stock) -> None:
    # Published ranges for a 1/4 in cutter in plywood run from 0.001 to 0.018 in a tooth.
    found = [each for each in stock.chip_loads if each.family == "hardwood-plywood"]
    quarter = [each for each in found if each.diameter in (None, pytest.approx(INCH / 4))]
    assert min(each.least for each in quarter) == pytest.approx(0.001 * INCH)
    assert max(each.most for each in quarter) == pytest.approx(0.018 * INCH)


def test_depths_leave_a_share_of_the_chip_load(stock: Stock) -> None:
    # Depth correction of the same table: 0.75 at two diameters, 0.5 at three; begin at one.
    assert [(each.diameters, each.share) for each in stock.depth_rules] == [
        (1.0, 1.0),
        (2.0, 0.75),
        (3.0, 0.5),
    ]


def test_v_cutters_state_their_angle(stock: Stock) -> None:
    found = [each for each in stock.cutters if each.kind == "v"]
    assert {each.angle for each in found} == {60.0, 90.0}
    for each in found:
        assert each.angle is not None
        # Geometry: the edges reach the cutter's radius at r / tan(angle / 2).
        reach = each.diameter / 2 / math.tan(math.radians(each.angle) / 2)
        assert each.cutting_length == pytest.approx(reach, abs=0.1)
    assert all(each.angle is None for each in stock.cutters if each.kind != "v")


# DIN 912, weights in kg a thousand pieces, as a dealer's chart prints them.
DIN_912 = {
    **{"m4x16": 2.3, "m4x40": 4.7, "m5x20": 4.0, "m5x50": 8.6, "m6x20": 6.5, "m6x40": 11.0},
    **{"m6x60": 15.4, "m8x25": 15.0, "m8x40": 20.9, "m8x80": 37.0},
}


@pytest.mark.parametrize("name", DIN_912)
def test_bolts_weigh_what_the_chart_says(name: str, stock: Stock) -> None:
    assert item(stock, f"bolt-{name}").mass == pytest.approx(DIN_912[name] / 1000)


# From memory: ISO 4762 heads (diameter, key, depth of the socket) and ISO coarse pitch, mm.
HEADS = {4: (7, 3, 2, 0.7), 5: (8.5, 4, 2.5, 0.8), 6: (10, 5, 3, 1.0), 8: (13, 6, 4, 1.25)}


def test_bolts_weigh_what_their_steel_does(stock: Stock) -> None:
    bolts = [each for each in stock.hardware if each.name.startswith("bolt-m")]
    assert len(bolts) >= 25
    for each in bolts:
        assert each.thread is not None
        assert each.length is not None
        head, key, socket, pitch = HEADS[round(each.thread)]
        shank = math.pi / 4 * (each.thread - 0.6495 * pitch) ** 2 * each.length
        top = math.pi / 4 * head**2 * each.thread - math.sqrt(3) / 2 * key**2 * socket
        assert each.mass == pytest.approx((shank + top) * STEEL, rel=0.17), each.name


def test_computed_masses_say_what_they_are_computed_from(stock: Stock) -> None:
    for name in ("bolt-1-4x2in", "washer-m6", "nut-m6", "dowel-8x40", "bolt-m6x100"):
        assert item(stock, name).source_of("mass").startswith("computed: ")
    assert item(stock, "screw-4x40").source_of("mass").startswith("estimate from memory: ")


def test_a_dowel_weighs_what_its_wood_does(stock: Stock) -> None:
    # From memory: beech 720 kg/m3.
    expected = math.pi / 4 * 8**2 * 40 * 720e-9
    assert item(stock, "dowel-8x40").mass == pytest.approx(expected, rel=0.05)


def test_threads_are_in_the_names(stock: Stock) -> None:
    for name, thread in (("bolt-m6x40", 6.0), ("insert-m4", 4.0), ("screw-4-5x40", 4.5)):
        assert item(stock, name).thread == thread
    # US numbered sizes: 0.060 + 0.013 x number, inches (screw makers' size charts).
    for name, number in (("screw-no8x1in", 8), ("bolt-no10x1in", 10), ("insert-no8", 8)):
        assert item(stock, name).thread == pytest.approx((0.060 + 0.013 * number) * INCH)
    assert item(stock, "bolt-5-16x2in").thread == pytest.approx(INCH * 5 / 16)
    plates = ("bracket", "clamp")
    assert all((each.thread is None) == (each.kind in plates) for each in stock.hardware)


def test_kinds_of_hardware_are_in_the_names(stock: Stock) -> None:
    assert all(each.name.startswith(f"{each.kind}-") for each in stock.hardware)
