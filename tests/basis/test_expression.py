"""Expressions over sizes: what they are worth, what they refuse, and in which words."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from kerfolio.basis.complaint import Complaint
from kerfolio.basis.expression import RESERVED, Expression, ExpressionError, parse
from kerfolio.basis.quantity import read_quantity

NAMES = {"seat": 360.0, "t": 18.0, "x6": 100.0, "none": 0.0}
AFTER_A_NUMBER = "A unit stands right after a number: `18 mm`."
THICKNESS, FIT = {"ply": 17.6}, {"ply": 0.1}


def sound(text: str, unit: str = "mm") -> Expression:
    read = parse(text, unit)
    assert isinstance(read, Expression), read
    return read


def value(text: str, unit: str = "mm") -> float:
    return sound(text, unit).evaluate(NAMES, THICKNESS, FIT)


def complaint(text: str, unit: str = "mm") -> Complaint:
    read = parse(text, unit)
    assert isinstance(read, Complaint), read
    assert read.advice
    return read


@pytest.mark.parametrize(
    ("text", "result"),
    [
        ("360", 360),
        ("seat/2 - t", 162),
        ("(seat - 2*t)/3", 108),
        ("-seat + 400", 40),
        ("2 - 3 - 4", -5),
        ("24/4/2", 3),
        ("2 + 3*4", 14),
        ("-2**2", -4),
        ("2**2**3/32", 8),
        ("2**-1", 0.5),
        ("- -3", 3),
        ("+3", 3),
        ("min(3, seat, t)", 3),
        ("max(18,5)", 18),
        ("abs(t - seat)", 342),
        ("round(2.5)", 3),
        ("round(-2.5)", -3),
        ("round(2.4)", 2),
        ("sqrt(2)**2", 2),
        ("thickness(ply) + 2*fit(ply)", 17.8),
        ("2*pi", 2 * math.pi),
        ("seat-6-1/2 in", 360 - 165.1),
        ("x6-1/2 in", 100 - 12.7),
        ("6 - 1/2 in", 6 - 12.7),
        ("1' - 6\"", 152.4),
        ("t*3/4 in", 18 * 19.05),
        ("seat/(18 mm)", 20),
        ("360-4/2", 358),
        ("seat -\n 2", 358),
    ],
)
def test_values(text: str, result: float) -> None:
    assert value(text) == pytest.approx(result, abs=1e-9)


@pytest.mark.parametrize(
    ("text", "result"),
    # An inch plan: bare numbers are inches and a quantity is converted (1 in = 25.4 mm, 1959).
    [
        ("seat - 2", 358),
        ("18 mm", 18 / 25.4),
        ('23/32"', 0.71875),
        ("1' 6-1/2\"", 18.5),
        ("2 ft", 24),
        ("25.4 mm", 1),
        ("3/4", 0.75),
        ("2-1/2", 2.5),
        ("2 1/2", 2.5),
        ("seat - 2-1/2", 357.5),
        ("-2-1/2", -2.5),
        ("max(1, 2-1/2)", 2.5),
        ("2 - 1/2", 1.5),
        ("5-1/3", 5 - 1 / 3),  # no number on a rule
    ],
)
def test_values_in_inches(text: str, result: float) -> None:
    assert value(text, "in") == pytest.approx(result, rel=1e-15)


@pytest.mark.parametrize("text", ["2*2-1/2", "8/2-1/2", "2-1/2*seat", "2-1/2 inch", "2.5-1/2"])
def test_a_mixed_number_in_a_product_can_be_read_two_ways(text: str) -> None:
    assert "can be read two ways" in str(parse(text, "in"))
    assert "can be read two ways" in str(parse("2-1/2", "mm"))


@pytest.mark.parametrize(
    ("text", "result"),
    # Exact values of the functions at these angles (any table of trigonometric functions).
    [
        ("sin(30)", 0.5),
        ("cos(60)", 0.5),
        ("tan(45)", 1.0),
        ("asin(1)", 90.0),
        ("acos(0)", 90.0),
        ("atan(1)", 45.0),
        ("atan2(1, -1)", 135.0),
        ("atan2(-1, 0)", -90.0),
    ],
)
def test_angles_are_degrees(text: str, result: float) -> None:
    assert value(text) == pytest.approx(result, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "result"),
    [("sin(180)", 0), ("cos(90)", 0), ("sin(-90)", -1), ("cos(540)", -1), ("tan(720)", 0)],
)
def test_quarter_turns_are_exact(text: str, result: float) -> None:
    assert value(text) == result


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("1/none", "division by zero"),
        ("none**-1", "division by zero"),
        ("sqrt(0 - 4)", "sqrt(-4) has no value"),
        ("asin(1.5)", "asin(1.5) has no value"),
        ("acos(2)", "acos(2) has no value"),
        ("tan(90)", "tan(90) has no value"),
        ("2**9", "the power 9 is too large (at most 8)"),
        ("(0-8)**0.5", "the power 0.5 of a negative number has no value"),
        ("((9**8)**8)**8", "the result is too large"),
        ("(((99**8)**8)**2)*((99**8)**8)", "the result is too large"),
        ("unknown + 1", "`unknown` has no value"),
        ("thickness(mdf)", "`thickness(mdf)` has no value"),
        ("fit(mdf)", "`fit(mdf)` has no value"),
    ],
)
def test_no_value_is_told_in_words(text: str, words: str) -> None:
    with pytest.raises(ExpressionError) as told:
        value(text)
    assert str(told.value) == words


@pytest.mark.parametrize(
    ("text", "message", "advice"),
    [
        ("", "nothing is written", "Write a number, a quantity or an expression."),
        (
            "seat/2 mm",
            "a unit after `/`: `/2 mm`",
            "Leave the unit out, or write `/ (2 mm)` if you mean that.",
        ),
        (
            "10/3/4 in",
            "a unit after `/`: `/3/4 in`",
            "Leave the unit out, or write `/ (3/4 in)` if you mean that.",
        ),
        (
            "2**3 mm",
            "a unit after `**`: `**3 mm`",
            "Leave the unit out, or write `** (3 mm)` if you mean that.",
        ),
        ("18,5", "`18,5` has a comma", "Write a point: `18.5`; no mark between thousands."),
        ("max((1,5), 2)", "`1,5` has a comma", "Write a point: `1.5`; no mark between thousands."),
        (
            "2t",
            "`2 t` has no operator",
            "To multiply write `2*t`; units are `mm`, `cm`, `m`, `in`, `ft`.",
        ),
        (
            "(seat/2) mm",
            "the unit `mm` has no number",
            "A unit stands right after a number: `18 mm`.",
        ),
        ("mm", "the unit `mm` has no number", "A unit stands right after a number: `18 mm`."),
        ("seat^2", "`^` is no operator here", "Write `**`."),
        ("seat × 2", "`×` is no operator here", "Write `*`."),
        ("seat − 2", "`−` is no operator here", "Write `-`."),
        ("45°", "`°` is not needed", "Angles are degrees: write the number alone."),
        ("min(1, 2", "a `)` is missing", "Close every parenthesis you open."),
        ("thicknes(ply)", "unknown function `thicknes`", "Did you mean `thickness`?"),
        ("seat(2)", "unknown function `seat`", "To multiply write `seat*(...)`."),
        ("sqrt", "`sqrt` lacks its parentheses", "Write `sqrt(...)`."),
        ("thickness", "`thickness` lacks its parentheses", "Write `thickness(ply)`."),
        ("thickness(18)", "`thickness` needs a sheet", "Write `thickness(ply)`."),
    ],
)
def test_refuses_with_advice(text: str, message: str, advice: str) -> None:
    read = complaint(text)
    assert (str(read), read.advice) == (message, advice)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("seat -", "`seat -` stops too soon"),
        ("7 8", "no operator before `8`"),
        ("seat t", "no operator before `t`"),
        ("2(3)", "no operator before `(3)`"),
        ("max(1)", "`max` takes two numbers or more, not 1"),
        ("atan2(1)", "`atan2` takes two numbers, not 1"),
        ("round(1, 2)", "`round` takes one number, not 2"),
        ("seat.real", "`.real` cannot be read"),
        ("seat[0]", "`[0]` cannot be read"),
        ("'a'", "`'a'` cannot be read"),
        ("seat > 2", "`> 2` cannot be read"),
        ("seat if t else 2", "no operator before `if t else 2`"),
        ("__import__", None),
        ("lambda: 1", None),
        ("seat // 2", "`/ 2` cannot be read"),
        ("seat % 2", "`% 2` cannot be read"),
        ("\tseat", "`seat` cannot be read"),
    ],
)
def test_nothing_else_gets_in(text: str, message: str | None) -> None:
    if message is None:
        read = parse(text, "mm")
        assert isinstance(read, Complaint) or read.names == (text,)
    else:
        assert complaint(text) == message


def test_bounds_on_length_depth_and_power() -> None:
    assert complaint("1+" * 160 + "1") == "`1+1+1+1+1+1+1+1+1...` is too long"
    assert complaint("(" * 30 + "1" + ")" * 30) == "too many parentheses or signs"
    assert complaint("-" * 30 + "1") == "too many parentheses or signs"
    assert value("(" * 10 + "1" + ")" * 10) == 1
    assert value("+".join("1" * 150)) == 150


def test_names_and_sheets_are_told_in_order() -> None:
    read = sound("b + a*b + fit(ply) + thickness(mdf)/thickness(ply) + pi + 3 mm")
    assert read.names == ("b", "a")
    assert read.sheets == ("ply", "mdf")
    assert read.has_unit
    assert not sound("seat/2").has_unit


def test_a_name_may_be_a_word_of_python() -> None:
    assert sound("lambda + if").evaluate({"lambda": 1, "if": 2}, {}, {}) == 3


def test_reserved_words() -> None:
    assert {"mm", "in", "pi", "sqrt", "thickness", "fit"} <= RESERVED


@pytest.mark.parametrize("text", ["18 mm", '23/32"', "6-1/2 in", "1' 6\"", "2.5 cm"])
def test_a_quantity_alone_is_worth_the_same_as_an_expression(text: str) -> None:
    quantity = read_quantity(text)
    assert isinstance(quantity, Fraction)
    assert value(text) == float(quantity)


Tree = tuple[str, Fraction]
LEAVES = st.integers(0, 999).map(lambda n: (str(n), Fraction(n))) | st.tuples(
    st.integers(0, 999), st.sampled_from([2, 4, 8, 16])
).map(lambda p: (f"({p[0]}/{p[1]} in)", Fraction(p[0], p[1]) * Fraction(254, 10)))


def joined(pair: tuple[Tree, str, Tree]) -> Tree:
    (left, a), sign, (right, b) = pair
    results = {"+": a + b, "-": a - b, "*": a * b}
    return f"({left} {sign} {right})", results[sign]


TREES = st.recursive(
    LEAVES,
    lambda inner: st.tuples(inner, st.sampled_from("+-*"), inner).map(joined),
    max_leaves=8,
)


@given(TREES)
def test_agrees_with_exact_arithmetic(tree: Tree) -> None:
    text, exact = tree
    assert value(text) == pytest.approx(float(exact), rel=1e-12, abs=1e-6)


WORDS = ["seat", "t", "thickness(ply)", "fit(ply)", "sqrt(", "max(", "tan(", "18 mm", '3/4"', "1'"]
SIGNS = ["+", "-", "*", "/", "**", "(", ")", ",", " ", "2", "0", ".5", "999999999999", "½", "x("]


@given(st.lists(st.sampled_from(WORDS + SIGNS), max_size=14).map("".join) | st.text(max_size=40))
def test_any_text_has_a_value_or_is_told_in_words(text: str) -> None:
    read = parse(text, "in")
    if isinstance(read, Complaint):
        assert str(read)
        assert read.advice
        return
    told, result = "", 0.0
    try:
        result = read.evaluate(dict.fromkeys(read.names, 3.0), THICKNESS, FIT)
    except ExpressionError as trouble:
        told = str(trouble) or "nothing"
    assert math.isfinite(result)
    assert told != "nothing"


FLOATS = st.integers(0, 40).map(lambda n: f"{n / 4}")
TERMS = st.one_of(
    FLOATS,
    FLOATS.map(lambda text: f"-{text}"),
    st.tuples(FLOATS, st.sampled_from(["0.0", "1.0", "2.0", "-1.0", "-2.0"])).map("**".join),
    st.tuples(FLOATS, FLOATS, FLOATS).map(lambda three: f"max({three[0]}, {three[1]}-{three[2]})"),
    FLOATS.map(lambda text: f"abs(2.5-{text})"),
)
CHAINS = st.lists(st.tuples(st.sampled_from("+-*/"), TERMS), min_size=1, max_size=9)


@given(TERMS, CHAINS)
def test_precedence_and_rounding_are_those_of_the_language_below(
    first: str, rest: list[tuple[str, str]]
) -> None:
    """Python's own reading of the same text, to the last bit (Language Reference, 6.17)."""
    text = first + "".join(f"{sign}{term}" for sign, term in rest)
    try:
        expected = float(eval(text, {"__builtins__": {"max": max, "abs": abs}}))
    except ZeroDivisionError:
        with pytest.raises(ExpressionError, match="division by zero"):
            value(text)
        return
    assert value(text) == expected


def test_the_longest_chain_has_a_value() -> None:
    assert value("1+" * 149 + "2") == 151
    assert value("9-" * 149 + "1") == 9 - 148 * 9 - 1
