"""The functions and operators of expressions: plain numbers in, a finite number out.

Angles are degrees. Every function raises ExpressionError, with words for people, where it has no
value.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

MOST_POWER = 8


class ExpressionError(ValueError):
    """An expression that is well written but has no value; the message is for people.

    ``advice`` says what to write instead, where that is known.
    """

    def __init__(self, message: str, advice: str = "") -> None:
        super().__init__(message)
        self.advice = advice


def _finite(value: float) -> float:
    if not math.isfinite(value):
        raise ExpressionError("the result is too large")
    return value


def _add(a: float, b: float) -> float:
    return _finite(a + b)


def _subtract(a: float, b: float) -> float:
    return _finite(a - b)


def _multiply(a: float, b: float) -> float:
    return _finite(a * b)


def divide(a: float, b: float) -> float:
    """Return the quotient of two numbers, the second not 0. Raises ExpressionError beyond range."""
    return _finite(a / b)


def _power(a: float, b: float) -> float:
    if abs(b) > MOST_POWER:
        raise ExpressionError(f"the power {b:g} is too large (at most {MOST_POWER})")
    if a == 0 and b < 0:
        raise ExpressionError("division by zero")
    if a < 0 and b != int(b):
        raise ExpressionError(f"the power {b:g} of a negative number has no value")
    try:
        return _finite(a**b)
    except OverflowError:
        raise ExpressionError("the result is too large") from None


def _round(x: float) -> float:
    """Round to the nearest whole number, halves away from zero (as people do)."""
    return math.copysign(math.floor(abs(x) + 0.5), x) if abs(x) < 2**52 else x


def _sqrt(x: float) -> float:
    if x < 0:
        raise ExpressionError(f"sqrt({x:g}) has no value")
    return math.sqrt(x)


def _sin(degrees: float) -> float:
    """Return the sine, exact at the quarter turns."""
    turned = math.fmod(degrees, 360.0)
    exact = {0.0: 0.0, 90.0: 1.0, 180.0: 0.0, 270.0: -1.0}
    value = exact.get(abs(turned))
    if value is None:
        return math.sin(math.radians(turned))
    return -value if turned < 0 else value


def _cos(degrees: float) -> float:
    turned = math.fmod(abs(degrees), 360.0)
    exact = {0.0: 1.0, 90.0: 0.0, 180.0: -1.0, 270.0: 0.0}
    return exact.get(turned, math.cos(math.radians(turned)))


def _tan(degrees: float) -> float:
    if _cos(degrees) == 0:
        raise ExpressionError(f"tan({degrees:g}) has no value")
    return _finite(_sin(degrees) / _cos(degrees))


def _asin(x: float) -> float:
    if abs(x) > 1:
        raise ExpressionError(f"asin({x:g}) has no value")
    return math.degrees(math.asin(x))


def _acos(x: float) -> float:
    if abs(x) > 1:
        raise ExpressionError(f"acos({x:g}) has no value")
    return math.degrees(math.acos(x))


def _atan(x: float) -> float:
    return math.degrees(math.atan(x))


def _atan2(y: float, x: float) -> float:
    return math.degrees(math.atan2(y, x))


@dataclass(frozen=True, slots=True)
class Function:
    """A function of expressions with the least and most arguments it takes."""

    call: Callable[..., float]
    least: int
    most: int


FUNCTIONS: dict[str, Function] = {
    "min": Function(min, 2, 20),
    "max": Function(max, 2, 20),
    "abs": Function(abs, 1, 1),
    "round": Function(_round, 1, 1),
    "sqrt": Function(_sqrt, 1, 1),
    "sin": Function(_sin, 1, 1),
    "cos": Function(_cos, 1, 1),
    "tan": Function(_tan, 1, 1),
    "asin": Function(_asin, 1, 1),
    "acos": Function(_acos, 1, 1),
    "atan": Function(_atan, 1, 1),
    "atan2": Function(_atan2, 2, 2),
}
SHEET_FUNCTIONS = ("thickness", "fit")
CONSTANTS = {"pi": math.pi}
OPERATORS: dict[str, Callable[[float, float], float]] = {
    "+": _add,
    "-": _subtract,
    "*": _multiply,
    "**": _power,
}
