"""Numbers in digits: against exact decimal arithmetic, and against the same rule in a browser's
script."""

from __future__ import annotations

import json
import math
import random
import subprocess
from decimal import ROUND_FLOOR, Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.digits import digits, fixed, plain, rounded, steps
from tests.outside import node


def halves_up(exact: Decimal, decimals: int) -> Decimal:
    """Return a decimal to so many places, halves towards plus infinity, by decimal arithmetic."""
    shifted = exact.scaleb(decimals) + Decimal("0.5")
    return shifted.to_integral_value(rounding=ROUND_FLOOR).scaleb(-decimals)


@pytest.mark.parametrize(
    ("value", "decimals", "text"),
    [
        (-2.40625, 4, "-2.4062"),  # toFixed(4) says -2.4063, Python's format -2.4062
        (2.40625, 4, "2.4063"),  # Python's format says 2.4062
        (0.125, 2, "0.13"),
        (-0.125, 2, "-0.12"),
        (1.005, 2, "1.01"),  # the nearest double lies below 1.005
        (259.40000000000003, 4, "259.4"),
        (-0.00004, 4, "0"),
        (-0.00005, 4, "0"),
        (-0.00006, 4, "-0.0001"),
        (-0.0, 4, "0"),
        (1200.0, 4, "1200"),
        (1200, 0, "1200"),
        (0.5, 0, "1"),
        (-0.5, 0, "0"),
        (1e-9, 9, "0.000000001"),
    ],
)
def test_digits(value: float, decimals: int, text: str) -> None:
    assert digits(value, decimals) == text


def test_fixed_decimals_keep_their_zeros() -> None:
    assert fixed(2.5, 2) == "2.50"
    assert fixed(-0.001, 2) == "0.00"
    assert fixed(-1.5, 0) == "-1"


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 5e8, -5e8])
def test_what_cannot_be_written_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="cannot be written to 4 decimals"):
        digits(value, 4)


@given(st.integers(-(10**11), 10**11), st.integers(0, 4))
def test_a_number_of_few_decimals_is_rounded_as_it_reads(number: int, decimals: int) -> None:
    """What a person reads in seven decimals is rounded by those, exact halves included."""
    exact = Decimal(number).scaleb(-7)
    assert Decimal(digits(float(exact), decimals)) == halves_up(exact, decimals)


def test_exact_halves_go_up() -> None:
    """Dyadic fractions lie exactly on halves: no binary noise decides."""
    for odd in range(-4001, 4001, 2):
        for power, decimals in ((1, 0), (2, 1), (3, 2), (4, 3), (5, 4)):
            exact = Decimal(odd) / 2**power
            assert Decimal(digits(odd / 2**power, decimals)) == halves_up(exact, decimals)


@given(st.floats(-1e6, 1e6), st.integers(0, 6))
def test_a_double_is_rounded_by_its_exact_value_unless_it_is_a_hair_below_a_half(
    value: float, decimals: int
) -> None:
    exact, found = Decimal(value), Decimal(digits(value, decimals))
    hair = Decimal("0.0006").scaleb(-decimals)
    assert found in (halves_up(exact, decimals), halves_up(exact + hair, decimals))
    assert abs(found - exact) <= Decimal("0.5006").scaleb(-decimals)


@given(st.floats(-4e8, 4e8))
def test_what_is_written_is_written_alike_again(value: float) -> None:
    assert digits(float(digits(value))) == digits(value)
    assert plain(rounded(value)) == digits(value)
    assert steps(value, 4) == round(rounded(value) * 10**4)


@given(st.floats(-4e4, 4e4))
def test_a_rounded_ratio_is_told_without_powers_of_ten(value: float) -> None:
    for ratio in (value, value / 1e8, value / 1e12):
        assert plain(rounded(ratio, 8)) == digits(ratio, 8)
    assert plain(1e-5) == "0.00001"
    assert plain(1e20) == "1" + 20 * "0"


SCRIPT = """
function digits(value, decimals) {
  const fine = value * Number(`1e${decimals + 3}`);
  if (!(Math.abs(fine) <= 4e15)) throw new RangeError(String(value));
  const steps = Math.floor((Math.floor(fine + 0.5) + 500) / 1000);
  const text = String(Math.abs(steps)).padStart(decimals + 1, "0");
  const cut = text.length - decimals;
  const tail = text.slice(cut).replace(/0+$/, "");
  return (steps < 0 ? "-" : "") + text.slice(0, cut) + (tail ? "." + tail : "");
}
const asked = JSON.parse(require("fs").readFileSync(0, "utf8"));
process.stdout.write(JSON.stringify(asked.map(([value, decimals]) => digits(value, decimals))));
"""


@pytest.mark.node
def test_a_script_of_a_browser_gives_the_same_digits() -> None:
    program = node()
    chance = random.Random(4)
    asked: list[tuple[float, int]] = [(odd / 32, 4) for odd in range(-9999, 9999, 2)]
    asked += [(number / 1e5, 4) for number in range(-9995, 10000, 5)]
    for _ in range(40_000):
        decimals = chance.choice((0, 1, 2, 3, 4, 6, 9))
        size = chance.choice((1e-7, 1.0, 300.0, 4e15 / 10 ** (decimals + 3)))
        asked.append((chance.uniform(-size, size), decimals))
    ran = subprocess.run(
        [program, "-e", SCRIPT], input=json.dumps(asked), capture_output=True, text=True, check=True
    )
    assert json.loads(ran.stdout) == [digits(value, decimals) for value, decimals in asked]
