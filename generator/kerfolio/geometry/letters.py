"""Which letters can be printed: those of the sans, and those it has another spelling of.

Every face of booklets and templates falls back on it.
"""

from __future__ import annotations

from functools import cache
from importlib import resources
from pathlib import Path
from unicodedata import category, decomposition, normalize

from fontTools.ttLib import TTFont

from kerfolio.basis.complaint import Complaint

_SUBSTITUTES = {
    "\N{DIAMETER SIGN}": "Ø",
    "\N{HYPHEN}": "-",
    "\N{NON-BREAKING HYPHEN}": "-",
}
_ALIKE = ("", "<compat>", "<wide>", "<narrow>", "<square>", "<font>")
"""Kinds of decomposition that leave the meaning as it is; a raised digit's does not (UAX #44,
section 5.7.3, compatibility formatting tags)."""

_SELECTORS = range(0xFE00, 0xFE10)
"""They choose between looks of the sign before them."""

_SHOWN = 5

_ADVICE = "The fonts hold Latin, Greek and Cyrillic letters and common signs: say it in those."


def sans_file() -> Path:
    """Return the TrueType file of the sans."""
    return Path(
        str(resources.files("font_source_sans_pro").joinpath("files", "SourceSansPro-Regular.ttf"))
    )


@cache
def as_printed(letter: str) -> str | None:
    """Return what the sans prints for a letter: itself or what stands in for it; None for nothing.

    What has no look of its own, such as a soft hyphen, is left out.
    """
    if category(letter) == "Cf" or ord(letter) in _SELECTORS:
        return ""
    if _has(letter):
        return letter
    if letter.isspace():
        return " "
    stands_in = _SUBSTITUTES.get(letter) or _spelt_otherwise(letter)
    return stands_in if stands_in and all(map(_has, stands_in)) else None


def unprintable(text: str) -> tuple[str, ...]:
    """Return the letters of a text that cannot be printed, each once."""
    return tuple(dict.fromkeys(each for each in text if as_printed(each) is None))


def letter_fault(what: str, text: str) -> Complaint | None:
    """Return the complaint about letters that cannot be printed; ``what`` says what the text is."""
    missing = unprintable(text)
    if not missing:
        return None
    shown = [f"`{each}`" for each in missing[:_SHOWN]]
    more = [f"{len(missing) - _SHOWN} more"] if len(missing) > _SHOWN else []
    *first, last = (*shown, *more)
    listed = f"{', '.join(first)} and {last}" if first else last
    return Complaint(f"{listed} in {what} {'print' if first else 'prints'} as `?`", _ADVICE)


def _spelt_otherwise(letter: str) -> str:
    kind, *_ = decomposition(letter).split() or ["none"]
    kind = kind if kind.startswith("<") else ""
    return normalize("NFKC", letter) if kind in _ALIKE else ""


@cache
def _glyphs() -> frozenset[int]:
    with TTFont(sans_file(), lazy=True) as font:
        return frozenset(font.getBestCmap())


def _has(letter: str) -> bool:
    return ord(letter) in _glyphs()
