"""Forms of single values: texts, choices, counts, dates, money, speeds, lengths with a unit."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import date
from decimal import Decimal

from kerfolio.basis.budgets import CELL, SUMMARY, TITLE, WORDS
from kerfolio.basis.complaint import Complaint, quoted
from kerfolio.basis.digits import plain
from kerfolio.basis.names import NAME, did_you_mean, name_of
from kerfolio.basis.quantity import read_quantity
from kerfolio.basis.said import written
from kerfolio.basis.thickness import read_off
from kerfolio.basis.written_number import number_fault
from kerfolio.model.statement import Named
from kerfolio.reading.forms import ListOf, ScalarForm, Schema
from kerfolio.reading.nodes import Scalar

PLAIN_NUMBER = re.compile(r"[0-9]{1,9}(?:\.[0-9]{1,6})?")
"""Digits, perhaps with a point: no sign, no exponent, no mark between thousands."""

_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}")
FIRST_YEAR, LAST_YEAR = 1980, 2107
"""Years that the files of a bundle can carry (PKWARE's APPNOTE, 4.4.6: MS-DOS dates). No plan and
no trial is older; a year out of them is a slip."""

_ADDRESS = re.compile(r"https?://[^\s/?#]+[^\s]*")
_FLAGS = {"true": True, "yes": True, "false": False, "no": False}
SCALAR: Schema = {"type": ["string", "number"]}
"""A text that editors may take for a number."""


def _text(node: Scalar) -> str | Complaint:
    return " ".join(node.text.split())


TEXT = ScalarForm(
    noun="a text",
    advice="Write a text; put it in quotes if it holds `: `.",
    convert=_text,
    json=SCALAR,
    prose=True,
)
TITLE_TEXT = replace(TEXT, budget=TITLE)
SUMMARY_TEXT = replace(TEXT, budget=SUMMARY)
CELL_TEXT = replace(TEXT, budget=CELL)
WORDS_TEXT = replace(TEXT, budget=WORDS)


def choice(noun: str, *words: str) -> ScalarForm[str]:
    """Return the form of one of a few words."""

    def convert(node: Scalar) -> str | Complaint:
        word = " ".join(node.text.split())
        if word in words:
            return word
        return Complaint(f"{quoted(word)} is not {noun}", did_you_mean(word, words))

    listed = ", ".join(f"`{word}`" for word in words)
    return ScalarForm(
        noun=noun,
        advice=f"Write one of {listed}.",
        convert=convert,
        json={"enum": list(words)},
        rule="not-a-choice",
    )


def number(least: float, most: float) -> ScalarForm[float]:
    """Return the form of a plain number within bounds beyond which nobody can mean it."""

    def convert(node: Scalar) -> float | Complaint:
        text = node.text.strip()
        if not PLAIN_NUMBER.fullmatch(text):
            return number_fault(text) or Complaint(f"{quoted(text)} is no plain number")
        if least <= float(text) <= most:
            return float(text)
        return Complaint(f"{quoted(text)} is no number from {plain(least)} to {plain(most)}")

    return ScalarForm(
        noun="a number",
        advice="Write digits with a point, such as `12` or `0.5`.",
        convert=convert,
        json={"type": "number", "minimum": least, "maximum": most},
    )


def whole(least: int = 0, most: int = 10_000) -> ScalarForm[int]:
    """Return the form of a whole number."""

    def convert(node: Scalar) -> int | Complaint:
        text = node.text.strip()
        if re.fullmatch("[0-9]{1,9}", text) and least <= int(text) <= most:
            return int(text)
        fault = number_fault(text, possible=str.isdigit)
        return fault or Complaint(f"{quoted(text)} is no whole number from {least} to {most}")

    return ScalarForm(
        noun="a whole number",
        advice="Write digits alone, such as `4`.",
        convert=convert,
        json={"type": "integer", "minimum": least, "maximum": most},
    )


def _flag(node: Scalar) -> bool | Complaint:
    word = node.text.strip().lower()
    return _FLAGS[word] if word in _FLAGS else Complaint(f"{quoted(node.text)} is not yes or no")


FLAG: ScalarForm[bool] = ScalarForm(
    noun="`true` or `false`",
    advice="Write `true` or `false`.",
    convert=_flag,
    json={"enum": [True, False, "yes", "no"]},
)


def _date(node: Scalar) -> date | Complaint:
    text = node.text.strip()
    try:
        day = date.fromisoformat(text if _DATE.fullmatch(text) else "")
    except ValueError:
        return Complaint(f"{quoted(text)} is no date")
    if FIRST_YEAR <= day.year <= LAST_YEAR:
        return day
    advice = f"Write a year from {FIRST_YEAR} to {LAST_YEAR}: `2026{text[4:]}`, say."
    return Complaint(f"{quoted(text)} is of a year that nobody can mean", advice)


DATE: ScalarForm[date] = ScalarForm(
    noun="a date",
    advice="Write year, month and day: `2026-10-02`.",
    convert=_date,
    json={"type": "string", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"},
)


def version_fault(text: str) -> Complaint | None:
    """Return what is wrong with a version, or None."""
    if re.fullmatch(r"(?:0|[1-9][0-9]{0,5})(?:\.(?:0|[1-9][0-9]{0,5})){2}", text):
        return None
    return Complaint(f"{quoted(text)} is no version", "Write three numbers, such as `1.2.0`.")


VERSION: ScalarForm[str] = ScalarForm(
    noun="a version",
    advice="Write three numbers, such as `1.2.0`.",
    convert=lambda node: version_fault(node.text.strip()) or node.text.strip(),
    json={"type": "string", "pattern": r"^[0-9]+\.[0-9]+\.[0-9]+$"},
)


def _money(node: Scalar) -> Decimal | Complaint:
    text = node.text.strip()
    if re.fullmatch(r"[0-9]{1,9}(?:\.[0-9]{1,4})?", text):
        return Decimal(text)
    return number_fault(text) or Complaint(f"{quoted(text)} is no price")


MONEY: ScalarForm[Decimal] = ScalarForm(
    noun="a price",
    advice="Write the number alone with a point: `92.50`; the workshop states the currency.",
    convert=_money,
    json={"type": "number", "minimum": 0},
)


_MOST_MM = 100_000
_LEAST_MM = 0.001


def _length(node: Scalar) -> float | Complaint:
    value = read_quantity(node.text)
    if isinstance(value, Complaint):
        return value
    if value > _MOST_MM:
        return Complaint(f"{quoted(node.text)} is more than 100 m", "See what unit it is in.")
    return float(value)


def _thing_length(node: Scalar) -> float | Complaint:
    value = _length(node)
    if isinstance(value, Complaint) or value >= _LEAST_MM:
        return value
    advice = "See what unit it is in; the least is a thousandth of a millimetre."
    return Complaint(f"{quoted(node.text)} is no length of a thing", advice)


QUANTITY: ScalarForm[float] = ScalarForm(
    noun="a length",
    advice=written(
        "18 mm` or `3/4 in", "3/4 in", "Write a length such as `{}`; a bare number is mm."
    ),
    convert=_length,
    json=SCALAR,
)
THING_LENGTH = replace(QUANTITY, convert=_thing_length)
"""A length of something that can be held."""


def _reading(node: Scalar) -> float | Complaint:
    value = _length(node)
    return value if isinstance(value, Complaint) else read_off(value)


READING = replace(QUANTITY, convert=_reading)
"""A length that was read off a calliper."""


def split_size(text: str) -> tuple[str, str] | None:
    """Return the two sides of ``2440 x 1220`` as texts, or None."""
    parts = split_sides(text)
    return (parts[0], parts[1]) if len(parts) == 2 and all(parts) else None


def split_sides(text: str) -> list[str]:
    """Return the sides of ``2440 x 1220 x 18`` as texts, however many there are."""
    return re.split(r"\s+[xX]\s+|\s*×\s*|(?<=[0-9])[xX](?=[0-9])", text.strip())


def _sheet_size(node: Scalar) -> tuple[float, float] | Complaint:
    sides = split_size(node.text)
    if sides is None:
        return Complaint(f"{quoted(node.text)} is no sheet size")
    along, across = (_thing_length(replace(node, text=each)) for each in sides)
    if isinstance(along, Complaint):
        return along
    return across if isinstance(across, Complaint) else (along, across)


SHEET_SIZE: ScalarForm[tuple[float, float]] = ScalarForm(
    noun="a sheet size",
    advice=written("2440 x 1220", "96 in x 48 in", "Write the side along the grain first: `{}`."),
    convert=_sheet_size,
)


def _address(node: Scalar) -> str | Complaint:
    text = node.text.strip()
    return text if _ADDRESS.fullmatch(text) else Complaint(f"{quoted(text)} is no web address")


ADDRESS: ScalarForm[str] = ScalarForm(
    noun="a web address",
    advice="Write it whole: `https://example.org/page`.",
    convert=_address,
    json={"type": "string", "pattern": "^https?://"},
)


def name_fault(text: str) -> Complaint | None:
    """Return what is wrong with a name of a part, board or feature, or None."""
    if NAME.fullmatch(text) and len(text) <= 40:
        return None
    fixed = name_of(text)
    advice = "Use lower case letters, digits and inner hyphens, a letter first."
    if NAME.fullmatch(fixed) and len(fixed) <= 40:
        advice = f"Write `{fixed}`: lower case letters, digits and inner hyphens."
    return Complaint(f"{quoted(text)} is no name", advice)


def _named(node: Scalar) -> Named | Complaint:
    text = node.text.strip()
    return name_fault(text) or Named(text, node.place)


def _label(node: Scalar) -> Named | Complaint:
    """Return a piece or a feature of one: after the part any name that a drawing may have."""
    text = node.text.strip()
    if re.fullmatch(rf"{NAME.pattern}(?:\.[^.\s](?:[^.]*[^.\s])?)*", text):
        return Named(text, node.place)
    return Complaint(f"{quoted(text)} is no piece or feature")


NAMED: ScalarForm[Named] = ScalarForm(
    noun="a name",
    advice="Write the name of something stated elsewhere.",
    convert=_named,
    json={"type": "string"},
    rule="name",
)
LABEL: ScalarForm[Named] = ScalarForm(
    noun="a name with points",
    advice="Write part, piece and feature joined by points: `side.left.rail-slot`.",
    convert=_label,
    json={"type": "string"},
    rule="name",
)
CUT_FILES: ListOf[str] = ListOf(
    item=choice("a unit", "mm", "in"),
    noun="a list of units",
    advice="Write `[mm, in]`: files in mm are always written.",
    single=True,
)
TEXTS = ListOf(item=TEXT, noun="a list of texts", advice="Write `[first, second]`.", single=True)
