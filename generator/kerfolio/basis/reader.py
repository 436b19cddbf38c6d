"""Whom a text is for: which unit stands first, and the language."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

from babel import Locale

from kerfolio.basis.catalogue import message, spoken
from kerfolio.basis.digits import digits, fixed


@dataclass(frozen=True, slots=True, kw_only=True)
class Reader:
    """Whom a text is for: the unit that stands first, ``mm`` or ``in``; the language (BCP 47)."""

    unit: str = "mm"
    language: str = "en"

    @property
    def mark(self) -> str:
        """The decimal mark (Unicode CLDR)."""
        return str(self.locale.number_symbols["latn"]["decimal"])

    @property
    def locale(self) -> Locale:
        """What dates and numbers are told by: the reader's, where the catalogue has its words."""
        return _locale(spoken(self.language))

    def digits(self, value: float, places: int) -> str:
        """Return a number of at most so many decimals, none trailing. Raises as ``digits``."""
        return self.number(digits(value, places))

    def fixed(self, value: float, places: int) -> str:
        """Return a number with all its decimals. Raises as ``fixed``."""
        return self.number(fixed(value, places))

    def says(self, name: str, /, **values: str | int) -> str:
        """Return a message of the catalogue without figures in it; ``saying.say`` takes those too.

        Raises as that.
        """
        return "".join(map(str, message(self.language, name, values)))

    def number(self, text: str) -> str:
        """Return a number's digits with the reader's decimal mark: ``17.8`` or ``17,8``."""
        return text.replace(".", self.mark)

    @property
    def metric(self) -> Reader:
        """The same reader, told in mm."""
        return replace(self, unit="mm")

    @property
    def inches(self) -> Reader:
        """The same reader, told in inches."""
        return replace(self, unit="in")

    @property
    def plain(self) -> Reader:
        """One who reads figures with a point: a program."""
        return Reader(unit=self.unit)

    @property
    def both(self) -> tuple[Reader, Reader]:
        """The same reader told in the unit that stands first, and told in the other."""
        return self, self.metric if self.unit == "in" else self.inches


METRIC = Reader()
INCHES = Reader(unit="in")


@cache
def _locale(language: str) -> Locale:
    return Locale.parse(language, sep="-")
