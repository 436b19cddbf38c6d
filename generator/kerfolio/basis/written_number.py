"""Numbers as people write them that a machine would read as another: marks, exponents.

A comma is a decimal mark in one country and parts thousands in the next, as are a point, a blank
and an apostrophe (ISO 80000-1, 7.3.1, knows the comma and the point as decimal marks and only a
small space between groups of three). Such a number is never bent into one of its readings: it is
refused, and all that it can mean are offered.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from decimal import Decimal

from kerfolio.basis.complaint import Complaint, quoted

_BLANKS = "\u0020\u00a0\u2007\u2009\u202f"
_MARKS = f".'’{_BLANKS}"
_RUN = re.compile(rf"[0-9]+(?:[,{_MARKS}][0-9]+)+")
_RUN_IN_A_CALL = re.compile(rf"[0-9]+(?:[{_MARKS}][0-9]+)+")
_GROUPED = re.compile(
    rf"(?P<head>[1-9][0-9]{{0,2}})(?P<groups>(?P<mark>[,{_MARKS}])[0-9]{{3}}(?:(?P=mark)[0-9]{{3}})*)"
    r"(?:(?!(?P=mark))[.,](?P<rest>[0-9]+))?"
)
_EXPONENT = re.compile(r"(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)[eE][+-]?[0-9]+(?![A-Za-z0-9_])")
_LONGEST = 15
"""Digits of the longest number that advice writes out."""


def any_number(_: str) -> bool:
    """Take every reading for possible."""
    return True


def number_fault(
    text: str, start: int = 0, *, commas: bool = False, possible: Callable[[str], bool] = any_number
) -> Complaint | None:
    """Return what is wrong with the number that begins at ``start``, or None.

    ``commas`` tells that a comma may follow a number here. ``possible`` tells of a reading whether
    it can be meant: one that cannot is not offered, as long as another one can.
    """
    exponent = _EXPONENT.match(text, start)
    if exponent:
        return _with_exponent(exponent.group())
    run = (_RUN_IN_A_CALL if commas else _RUN).match(text, start)
    return _marked(run.group(), possible) if run else None


def _with_exponent(written: str) -> Complaint:
    power = re.split("[eE][+-]?0*", written)[1]
    short = len(written) <= _LONGEST and len(power) <= 2  # `1e9999999999` would fill the memory
    plain = format(Decimal(written), "f") if short else ""
    advice = f"Write `{plain}`." if 0 < len(plain) <= _LONGEST else "Write it out in digits."
    return Complaint(f"{quoted(written)} has an exponent", advice)


def _marked(run: str, possible: Callable[[str], bool]) -> Complaint | None:
    decimal = run.replace(",", ".") if re.fullmatch("[0-9]+,[0-9]+", run) else ""
    whole = _without_marks(run)
    if decimal and whole:
        decimal = decimal.rstrip("0").rstrip(".")  # `1.2` looks like no thousand, `1.200` does
        likely = [each for each in (decimal, whole) if possible(each)]
        if len(likely) != 1:
            advice = f"Write `{decimal}` if it is a decimal comma, `{whole}` if it parts thousands."
            return Complaint(f"{quoted(run)} can be read two ways", advice)
        return Complaint(f"{quoted(run)} has a comma", f"Write `{likely[0]}`.")
    if decimal:
        advice = f"Write a point: `{decimal}`; no mark between thousands."
        return Complaint(f"{quoted(run)} has a comma", advice)
    if whole:
        return Complaint(f"{quoted(run)} has a mark between thousands", f"Write `{whole}`.")
    if "," in run or run.count(".") > 1:
        return Complaint(f"{quoted(run)} is no number", "Write digits with one point: `12.5`.")
    return None


def _without_marks(run: str) -> str:
    """Return a number whose thousands are parted, without these marks; empty for any other.

    One point and nothing else is a decimal point.
    """
    found = _GROUPED.fullmatch(run)
    if found is None or re.fullmatch(r"[0-9]+\.[0-9]+", run):
        return ""
    digits = found["head"] + re.sub("[^0-9]", "", found["groups"])
    return f"{digits}.{found['rest']}" if found["rest"] else digits
