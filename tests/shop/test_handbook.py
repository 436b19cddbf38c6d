"""The shop's arithmetic against published figures, and laws that any such arithmetic keeps."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.shop.beam import (
    LOADINGS,
    Layer,
    Loading,
    buckling_load,
    built_up,
    loading,
    long_term,
    rectangle_inertia,
    sag,
    together,
)
from kerfolio.shop.chip_load import chip_ranges, depth_share
from kerfolio.shop.screw import allowable_withdrawal, ultimate_withdrawal
from tests.plans import workshop
from tests.shop.outside_check import OutsideCheck
from tests.shop.outside_checks import checks
from tests.tools.outside_table import table

CHECKS = checks()
lengths = st.floats(10, 5000)
forces = st.floats(1, 1e5)


@pytest.mark.parametrize("check", CHECKS, ids=lambda each: each.what)
def test_a_published_figure(check: OutsideCheck) -> None:
    low, high = check.range
    assert low <= check.ours() <= high, check.source


def test_there_are_enough_of_them() -> None:
    assert len([each for each in CHECKS if each.outside]) >= 60
    assert len({each.what for each in CHECKS}) == len(CHECKS)
    assert all(each.source and "http" not in each.source for each in CHECKS)


@pytest.mark.parametrize("case", LOADINGS, ids=lambda each: f"{each.load}-{each.ends}")
def test_the_constants_follow_from_statics(case: Loading) -> None:
    """The table's constants by the unit-load method: integrals of M m and V v over a beam of 1."""
    count = 4_000
    bending = shear = 0.0
    for index in range(count):
        at = (index + 0.5) / count
        moment, push = _inner(case.load, case.ends, at)
        unit, unit_push = _inner("end" if case.ends == "one" else "middle", case.ends, at)
        bending += moment * unit / count
        shear += push * unit_push / count
        assert moment == pytest.approx(case.moment_at(at), abs=1e-9)
        assert abs(push) == pytest.approx(case.force_at(at), abs=1e-9)
    assert bending == pytest.approx(case.bending, rel=1e-5)
    assert shear == pytest.approx(case.shear, rel=1e-5)


def _inner(load: str, ends: str, at: float) -> tuple[float, float]:
    """Return moment and shear of a beam of length 1 under a load of 1 (statics)."""
    if ends == "one":
        out = 1 - at
        return (out, 1.0) if load == "end" else (out**2 / 2, out)
    if load == "even":
        moment, push = at * (1 - at) / 2, 0.5 - at
    else:
        moment, push = min(at, 1 - at) / 2, math.copysign(0.5, 0.5 - at)
    held = {"even": 1 / 12, "middle": 1 / 8}[load] if ends == "clamped" else 0.0
    return moment - held, push


@given(forces, lengths, st.floats(1.1, 4))
def test_sag_grows_with_the_third_power_of_the_span(force: float, span: float, by: float) -> None:
    case = loading("even", "free")
    one, other = (sag(case, force, each, 1e9, 1e30) for each in (span, span * by))
    assert other / one == pytest.approx(by**3)


@given(st.floats(50, 500), st.floats(3, 50), st.floats(1.1, 3))
def test_sag_falls_with_the_third_power_of_the_thickness(
    width: float, thick: float, by: float
) -> None:
    one, other = (rectangle_inertia(width, each) for each in (thick, thick * by))
    assert other / one == pytest.approx(by**3)


@given(forces, lengths)
def test_clamped_ends_never_sag_more(force: float, span: float) -> None:
    for load in ("even", "middle"):
        free, clamped = (
            sag(loading(load, ends), force, span, 1e9, 1e6) for ends in ("free", "clamped")
        )
        assert clamped < free


@given(st.floats(0.1, 20), st.floats(0, 4), st.floats(0.01, 2))
def test_creep_only_adds(first: float, creep: float, more: float) -> None:
    assert first <= long_term(first, creep) < long_term(first, creep + more)


@given(lengths, st.floats(1.1, 4))
def test_a_column_twice_as_long_bears_a_quarter(length: float, by: float) -> None:
    one, other = (buckling_load(10_000, 5000, each) for each in (length, length * by))
    assert one / other == pytest.approx(by**2)
    assert buckling_load(10_000, 5000, length, 2.0) * 4 == pytest.approx(one)


@given(st.floats(3, 40), st.floats(20, 200), st.integers(1, 4))
def test_glued_is_never_weaker_than_loose(thick: float, high: float, count: int) -> None:
    panel = Layer(
        stiffness=10_000,
        area=400 * thick,
        inertia=rectangle_inertia(400, thick),
        middle=high + thick / 2,
        half=thick / 2,
    )
    web = Layer(
        stiffness=9_000,
        area=count * 18 * high,
        inertia=count * rectangle_inertia(18, high),
        middle=high / 2,
        half=high / 2,
    )
    assert together((panel, web)).bending > built_up((panel, web), (False,)).bending
    assert together((panel,)).bending == pytest.approx(built_up((panel,), ()).bending)
    assert together((panel,)).stresses == pytest.approx(built_up((panel,), ()).stresses)


def test_between_two_rows_the_range_lies_between_them() -> None:
    stock = workshop().stock
    ranges = [chip_ranges(stock, "mdf", each, "small shop")[0] for each in (3.175, 5.0, 6.35)]
    assert [each.diameter for each in ranges] == [3.175, 5.0, 6.35]
    assert sorted(ranges, key=lambda each: each.least) == ranges
    assert sorted(ranges, key=lambda each: each.most) == ranges


def test_far_from_every_row_there_is_no_range() -> None:
    assert not [
        each
        for each in chip_ranges(workshop().stock, "mdf", 60.0, "small shop")
        if each.diameter is not None
    ]
    assert chip_ranges(workshop().stock, "no-such-family", 6.0, "small shop") == ()


def test_tables_are_not_mixed() -> None:
    stock = workshop().stock
    for each in chip_ranges(stock, "hardwood-plywood", 6.0, "small shop"):
        assert each.source in {row.source for row in stock.chip_loads}


def test_the_depth_rule_falls_and_then_says_nothing() -> None:
    rules = workshop().stock.depth_rules
    shares = [depth_share(rules, depth, 6.0) for depth in (3, 6, 9, 12, 18)]
    assert shares == pytest.approx([1, 1, 0.875, 0.75, 0.5])
    assert depth_share(rules, 30, 6.0) is None
    assert depth_share((), 6, 6.0) is None


@given(st.floats(0.3, 0.9), st.floats(2, 8), st.floats(5, 60))
def test_ultimate_and_allowable_withdrawal_keep_apart(
    gravity: float, diameter: float, thread: float
) -> None:
    # 15 700 / 2850 = 5.5 (both constants as published, in lb and in).
    ultimate = ultimate_withdrawal(gravity, diameter, thread)
    assert ultimate / allowable_withdrawal(gravity, diameter, thread) == pytest.approx(
        15_700 / 2850, rel=1e-3
    )


def test_the_table_of_outside_checks_is_up_to_date() -> None:
    shown = (Path(__file__).resolve().parent.parent / "OUTSIDE-CHECKS.md").read_text("utf-8")
    assert shown == table(), "python -m tests.tools.outside_table > tests/OUTSIDE-CHECKS.md"
