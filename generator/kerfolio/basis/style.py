"""How a number is told where it stands: by which rule, with how many decimals, between which words.

A style is data, so that a file's numbers can be told elsewhere in the very same digits: the rules
here are those of ``digits.py`` and ``thickness.py``, and ``themes/workbench/fitted.js`` has them
too.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from kerfolio.basis.cutting_lengths import chosen_number
from kerfolio.basis.digits import LENGTH_DECIMALS, digits, fixed, steps
from kerfolio.basis.reader import INCHES
from kerfolio.basis.thickness import calliper_number, sold_number


class Rule(StrEnum):
    """From a number to its digits. The last five take mm and tell inches, of decimals of their own.

    ``TRIMMED`` is ``2.5`` and ``2``, ``POINTED`` ``2.5`` and ``2.0``, ``FIXED`` ``2.50``;
    ``PADDED`` is ``FIXED`` after blanks that fill a width. ``CALLIPER`` is inches as a calliper
    shows them, ``0.709``; ``SOLD`` the fraction that a sheet is sold as, ``23/32``, else as
    ``CALLIPER``; ``SOLD_NAME`` the same in a file's name, ``23-32``. ``CHOSEN`` and ``CHOSEN_NAME``
    are for a fit or a cutter, ``1/8`` and ``1-8``: the fraction, else three decimals or more.
    """

    TRIMMED = "trimmed"
    POINTED = "pointed"
    FIXED = "fixed"
    PADDED = "padded"
    CALLIPER = "calliper"
    SOLD = "sold"
    SOLD_NAME = "sold-name"
    CHOSEN = "chosen"
    CHOSEN_NAME = "chosen-name"


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """A rule with what it needs, and words before and after that belong to the number.

    What is ``signed`` has its sign before it, ``+0.2`` as well as ``-0.1``.

    ``width`` is that of ``PADDED``, in signs. A number that is ``unless`` to the style's decimals
    is not told at all, nor its words. ``none`` is said where there is none of it. Whatever is told
    takes ``room`` signs at least: blanks follow it. ``mark`` is the decimal mark, one sign.
    """

    rule: Rule = Rule.TRIMMED
    decimals: int = LENGTH_DECIMALS
    width: int = 0
    unless: float | None = None
    signed: bool = False
    before: str = ""
    after: str = ""
    none: str = ""
    room: int = 0
    mark: str = "."


Numbers = Callable[[float | None, Style], str]
"""How whoever writes a file tells a number: ``told_as``, or what records it on the way."""


def told_as(value: float | None, style: Style) -> str:
    """Return a number in its digits, with its words; None where there is none of it.

    Raises ValueError as ``digits``, and for what is wider than it may be.
    """
    return _said(value, style).ljust(style.room)


def _said(value: float | None, style: Style) -> str:
    if value is None:
        return style.none
    same = style.unless is not None and steps(value, style.decimals) == steps(
        style.unless, style.decimals
    )
    if same:
        return ""
    sign = ("-" if value < 0 else "+") if style.signed else ""
    number = _number(abs(value) if sign else value, style)
    return f"{style.before}{sign}{number.replace('.', style.mark)}{style.after}"


def _number(value: float, style: Style) -> str:
    match style.rule:
        case Rule.TRIMMED:
            return digits(value, style.decimals)
        case Rule.POINTED:
            text = digits(value, style.decimals)
            return text if "." in text else f"{text}.0"
        case Rule.FIXED:
            return fixed(value, style.decimals)
        case Rule.PADDED:
            return _padded(fixed(value, style.decimals), style.width)
        case Rule.CALLIPER:
            return calliper_number(value)
        case Rule.SOLD:
            return sold_number(value, INCHES)
        case Rule.SOLD_NAME:
            return _in_a_name(sold_number(value, INCHES))
        case Rule.CHOSEN:
            return chosen_number(value, INCHES)
        case Rule.CHOSEN_NAME:
            return _in_a_name(chosen_number(value, INCHES))


def _in_a_name(number: str) -> str:
    return number.replace(" ", "-").replace("/", "-")


def widest_of(style: Style) -> str:
    """Return as wide a text as a style gives for sizes below 100 mm, all digits 0."""
    match style.rule:
        case Rule.CALLIPER:
            number = "0.000"
        case Rule.SOLD | Rule.SOLD_NAME | Rule.CHOSEN | Rule.CHOSEN_NAME:
            number = "0 00/00"
        case _:
            number = "00." + "0" * style.decimals
    sign, number = "+" if style.signed else "", number.replace(".", style.mark)
    return f"{style.before}{sign}{number}{style.after}"


def _padded(text: str, width: int) -> str:
    if len(text) > width:
        raise ValueError(f"{text} is wider than {width} signs")
    return text.rjust(width)
