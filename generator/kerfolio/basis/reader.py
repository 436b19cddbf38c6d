"""Whom a text is for: which unit stands first, and the language."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cache

from babel import Locale

from kerfolio.basis.catalogue import spoken


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
    def both(self) -> tuple[Reader, Reader]:
        """The same reader told in the unit that stands first, and told in the other."""
        return self, self.metric if self.unit == "in" else self.inches


METRIC = Reader()
INCHES = Reader(unit="in")


@cache
def _locale(language: str) -> Locale:
    return Locale.parse(language, sep="-")
