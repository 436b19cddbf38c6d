"""Numbers with a unit as makers write them: ``18 mm``, ``3/4 in``, ``23/32"``, ``1' 6-1/2"``.

All arithmetic is exact (``fractions.Fraction``). A mixed number joins its parts with a tight
hyphen or a single blank (``6-1/2 in``, ``6 1/2 in``); ``6 - 1/2 in`` is a subtraction. Where bare
numbers are inches, ``6-1/2`` alone is one too.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.lengths import MM_PER_UNIT
from kerfolio.basis.said import written
from kerfolio.basis.written_number import number_fault

FEET_MARKS, INCH_MARKS = "'′’", '"″”'
NUMBER = re.compile(r"(?:[0-9]{1,12}(?:\.[0-9]{1,12})?|\.[0-9]{1,12})(?![0-9])")
_END = r"(?![A-Za-z0-9_])"
_DIGITS = r"[0-9]{1,12}"
_AMOUNT = (
    rf"(?:(?P<whole>{_DIGITS})(?P<joint>-|[ ])(?P<top>{_DIGITS})/(?P<bottom>{_DIGITS})"
    rf"|(?P<upper>{_DIGITS})[ ]?/[ ]?(?P<lower>{_DIGITS})"
    rf"|(?P<decimal>{_DIGITS}(?:\.{_DIGITS})?|\.{_DIGITS}))"
)
_PLAIN = re.compile(
    rf"{_AMOUNT}[ ]?(?:(?P<word>mm|cm|m|in|ft){_END}|(?P<mark>[{FEET_MARKS}{INCH_MARKS}]))"
)
_FEET = re.compile(rf"(?P<feet>{_DIGITS})[ ]?(?:[{FEET_MARKS}]|ft{_END})(?:-|[ ]?)(?=[0-9.])")
_MIXED = re.compile(
    rf"(?P<whole>{_DIGITS}(?:\.[0-9]+)?)(?P<joint>-|[ ])"
    rf"(?P<top>{_DIGITS})/(?P<bottom>{_DIGITS})(?![0-9])"
)
_VULGAR = "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"
_LENGTH = written("18 mm` or `3/4 in", "3/4 in", "Write a length such as `{}`.")
_RULE_DENOMINATORS = (2, 4, 8, 16, 32, 64)
_SPELLINGS = {
    **dict.fromkeys(("inch", "inches", "ins", "zoll"), "in"),
    **dict.fromkeys(("foot", "feet"), "ft"),
    **dict.fromkeys(("millimetre", "millimetres", "millimeter", "millimeters", "mms"), "mm"),
    **dict.fromkeys(("centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
    **dict.fromkeys(("metre", "metres", "meter", "meters"), "m"),
}


@dataclass(frozen=True, slots=True)
class Literal:
    """A number found in a text: its exact value and where it ends.

    ``unit`` is True when a unit was written; the value is then in mm.
    """

    value: Fraction
    end: int
    unit: bool


def literal_at(
    text: str, start: int, *, commas: bool = False, inches: bool = False
) -> Literal | Complaint:
    """Read the number or quantity that begins at ``start`` (a digit or a dot).

    ``commas`` tells that a comma may follow a number here (between a function's arguments),
    ``inches`` that bare numbers are inches, so that they may be mixed.
    """
    feet = _FEET.match(text, start)
    if feet:
        return _feet_and_inches(text, feet, commas=commas)
    plain = _PLAIN.match(text, start)
    if plain:
        return _quantity(text, plain)
    mixed = _MIXED.match(text, start)
    if inches and mixed and _is_mixed(text, mixed):
        whole, part = int(mixed["whole"]), Fraction(int(mixed["top"]), int(mixed["bottom"]))
        return Literal(whole + part, mixed.end(), unit=False)
    return _trap_at(text, start, commas=commas) or _bare(text, start)


def _bare(text: str, start: int) -> Literal | Complaint:
    number = NUMBER.match(text, start)
    if number is None:
        return Complaint(f"{quoted(text[start:])} is no number", "Write a number such as `18.5`.")
    return Literal(Fraction(number.group()), number.end(), unit=False)


def _quantity(text: str, found: re.Match[str]) -> Literal | Complaint:
    value = _value(found)
    if isinstance(value, Complaint):
        return value
    mark = found["mark"] or ""
    if mark and mark in FEET_MARKS and text[found.end() : found.end() + 1] == mark:
        return Complaint(f"{quoted(found.group() + mark)} has two marks", 'Write `"` for inches.')
    unit = found["word"] or ("ft" if mark in FEET_MARKS else "in")
    return Literal(value * MM_PER_UNIT[unit], found.end(), unit=True)


def _value(found: re.Match[str]) -> Fraction | Complaint:
    """Return the number of a match of ``_AMOUNT``."""
    if found["decimal"]:
        return Fraction(found["decimal"])
    top = int(found["top"] or found["upper"])
    bottom = int(found["bottom"] or found["lower"])
    if bottom == 0:
        return Complaint(f"{quoted(found.group())} divides by zero", "Write another fraction.")
    if not found["whole"]:
        return Fraction(top, bottom)
    if top >= bottom:
        advice = "Put blanks round the minus to subtract, or write a fraction below one."
        return Complaint(f"{quoted(found.group())} is no mixed number", advice)
    return int(found["whole"]) + Fraction(top, bottom)


def _feet_and_inches(text: str, feet: re.Match[str], *, commas: bool) -> Literal | Complaint:
    inches = _PLAIN.match(text, feet.end())
    unit = inches and (inches["word"] or ("in" if inches["mark"] in INCH_MARKS else "ft"))
    if inches is None or unit != "in":
        fault = number_fault(text, feet.start(), commas=commas)  # `1'200`: thousands, not feet
        if fault is not None:
            return fault
        shown = quoted(text[feet.start() :])
        return Complaint(f"no inches after the feet in {shown}", "Write `1' 6\"` or `1 ft 6 in`.")
    rest = _quantity(text, inches)
    if isinstance(rest, Complaint):
        return rest
    return Literal(int(feet["feet"]) * MM_PER_UNIT["ft"] + rest.value, rest.end, unit=True)


def _trap_at(text: str, start: int, *, commas: bool) -> Complaint | None:
    """Return a complaint where a number looks like something else than it would be read as."""
    mixed = _MIXED.match(text, start)
    if mixed and _looks_mixed(mixed):
        return _ambiguous(mixed)
    fault = number_fault(text, start, commas=commas)
    if fault is not None:
        return fault
    number = NUMBER.match(text, start)
    after = text[number.end() :].lstrip(" ") if number else ""
    if after[:1] and after[0] in _VULGAR:
        advice = "Write the fraction with a slash and a unit: `1-1/2 in`."
        return Complaint(f"`{after[0]}` is one sign", advice)
    word = re.match(r"[A-Za-z_][A-Za-z0-9_]*", text[number.end() :].lstrip(" ")) if number else None
    if number and word and word.group() not in MM_PER_UNIT:
        return _no_unit(number.group(), word.group())
    return None


def _looks_mixed(mixed: re.Match[str]) -> bool:
    """Tell whether ``6 1/2`` or ``6-1/2`` reads like a number on a rule."""
    top, bottom = int(mixed["top"]), int(mixed["bottom"])
    return mixed["joint"] == " " or (top < bottom and bottom in _RULE_DENOMINATORS)


def _is_mixed(text: str, mixed: re.Match[str]) -> bool:
    """Tell whether it is a number on a rule whatever stands around it: no product, no quotient."""
    bottom = int(mixed["bottom"])
    whole = "." not in mixed["whole"] and int(mixed["top"]) < bottom and _looks_mixed(mixed)
    before, after = text[: mixed.start()].rstrip(" ")[-1:], text[mixed.end() :].lstrip(" ")[:1]
    return whole and before not in ("*", "/") and not re.match(r"[*/(A-Za-z_.]", after)


def _ambiguous(mixed: re.Match[str]) -> Complaint:
    shown = mixed.group()
    if mixed["joint"] == " ":
        return Complaint(f"{quoted(shown)} has no unit", f"Write `{shown} in`, or a decimal.")
    apart = shown.replace("-", " - ", 1)
    advice = f"Write `{shown} in` for a mixed number, `{apart}` to subtract."
    return Complaint(f"{quoted(shown)} can be read two ways", advice)


def _no_unit(number: str, word: str) -> Complaint:
    lower = word.lower()
    known = lower if lower in MM_PER_UNIT else _SPELLINGS.get(lower, "")
    if known:
        return Complaint(f"`{word}` is no unit here", f"Write `{number} {known}`.")
    units = ", ".join(f"`{unit}`" for unit in MM_PER_UNIT)
    advice = f"To multiply write `{number}*{word}`; units are {units}."
    return Complaint(f"{quoted(f'{number} {word}')} has no operator", advice)


def read_quantity(text: str) -> Fraction | Complaint:
    """Return a length in mm: a quantity with a unit, or a bare number of mm; nothing else."""
    stripped = text.strip()
    if not stripped or not (
        stripped[0].isascii() and (stripped[0].isdigit() or stripped[0] == ".")
    ):
        found = quoted(stripped) if stripped else "nothing"
        return Complaint(f"{found} is no length", _LENGTH)
    found_literal = literal_at(stripped, 0)
    if isinstance(found_literal, Complaint):
        return found_literal
    if found_literal.end != len(stripped):
        return _left_over(stripped)
    return found_literal.value


def _left_over(text: str) -> Complaint:
    fraction = re.fullmatch(r"([0-9]+ ?/ ?[0-9]+)\s*([A-Za-z]*)", text)
    if fraction and fraction[2]:
        return _no_unit(fraction[1], fraction[2])
    if fraction:
        return Complaint(f"{quoted(text)} has no unit", f"Write `{text} in`, or a decimal.")
    advice = written("18 mm` or `1' 6-1/2\"", "1' 6-1/2\"", "Write one length, such as `{}`.")
    return Complaint(f"{quoted(text)} is no single length", advice)
