"""From numbers to digits: the one rule by which every number that is written is rounded.

The rule, so that any program of double precision gives the same digits:

1. ``fine = floor(value * 10^(decimals + 3) + 1/2)``: the value on a grid three digits finer than
   asked for. Multiplication and addition are those of IEEE 754 binary64; the scale is the exact
   power of ten (in a script ``Number("1e7")``, not ``Math.pow``).
2. ``steps = floor((fine + 500) / 1000)``: halves go up, towards plus infinity. From ``fine`` on
   all numbers are whole, so that nothing depends on how a language prints fractions.
3. The digits of ``steps`` with a point ``decimals`` from their end.

The first step takes away what binary fractions add: 1.005 is 1.01 to two decimals though the
nearest double lies below it. A value less than half a fine step below a half therefore goes up.
The rule holds for ``|value| * 10^(decimals + 3)`` up to 4e15, where adding a half is exact and so
is the whole part of the quotient: 400 km for a length of 4 decimals.
"""

from __future__ import annotations

from decimal import Decimal
from math import floor

LENGTH_DECIMALS = 4
"""Of lengths in files: a ten-thousandth of a millimetre, below what any machine resolves."""

RATIO_DECIMALS = 8
"""Of ratios in files, which are multiplied by lengths. A bulge moves the top of its arc by half the
chord times its own error: 0.00001 mm on a chord of 5 m.
"""

MOST_DECIMALS = 12

_MOST = 4e15
_FINER = 3
_SCALES = tuple(float(10**power) for power in range(MOST_DECIMALS + _FINER + 1))


def steps(value: float, decimals: int) -> int:
    """Return the value as a whole number of steps of 10^-``decimals``, halves up.

    Raises ValueError for what is no number or not finite, and beyond the range stated above.
    """
    fine = float(value) * _SCALES[decimals + _FINER]
    if not -_MOST <= fine <= _MOST:
        raise ValueError(f"{value} cannot be written to {decimals} decimals")
    return (floor(fine + 0.5) + 500) // 1000


def rounded(value: float, decimals: int = LENGTH_DECIMALS) -> float:
    """Return the double nearest to the digits; never ``-0.0``. Raises as ``steps``."""
    return steps(value, decimals) / _SCALES[decimals]


def fixed(value: float, decimals: int) -> str:
    """Return the digits with all their decimals: ``2.50``; never ``-0.00``. Raises as ``steps``."""
    whole = steps(value, decimals)
    if not decimals:
        return str(whole)
    text = f"{abs(whole):0{decimals + 1}d}"
    return f"{'-' if whole < 0 else ''}{text[:-decimals]}.{text[-decimals:]}"


def digits(value: float, decimals: int = LENGTH_DECIMALS) -> str:
    """Return the digits, no zero after the last one that counts: ``2.5``; never ``-0``.

    Raises as ``steps``.
    """
    text = fixed(value, decimals)
    return text.rstrip("0").rstrip(".") if decimals else text


def plain(value: float) -> str:
    """Return a double that is ``rounded`` already in its digits, never with a power of ten.

    For libraries that take numbers and write them: the fewest digits that give the double back are
    those that ``digits`` gives.
    """
    text = repr(float(value))
    return (f"{Decimal(text):f}" if "e" in text else text).removesuffix(".0")
