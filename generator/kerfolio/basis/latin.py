"""Letters outside ASCII written with ASCII ones, for names of folders, files and features."""

from __future__ import annotations

import unicodedata

_LETTERS = {
    **{"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "å": "aa", "æ": "ae", "ø": "oe", "œ": "oe"},
    **{"þ": "th", "ð": "d", "đ": "d", "ł": "l", "ħ": "h", "ŋ": "n", "ı": "i"},
}
"""Those that are more than a letter with a sign above or below it, as in passports (ICAO Doc
9303-3, section 6, table A; from memory)."""


def in_ascii(text: str) -> str:
    """Return a text in lower case with ASCII letters alone: ``bruecke`` for ``Brücke``.

    Signs above and below letters fall away (``é`` is ``e``). Empty where a letter has no such
    spelling here: one of another script.
    """
    composed = unicodedata.normalize("NFC", text).lower()
    spelt = "".join(_LETTERS.get(letter, letter) for letter in composed)
    apart = unicodedata.normalize("NFKD", spelt)
    plain = "".join(each for each in apart if not unicodedata.combining(each))
    return "" if any(each.isalpha() and not each.isascii() for each in plain) else plain
