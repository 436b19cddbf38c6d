"""Whom a text is for: which unit stands first, and the language."""

from __future__ import annotations

from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True, kw_only=True)
class Reader:
    """Whom a text is for: the unit that stands first, ``mm`` or ``in``; the language (BCP 47)."""

    unit: str = "mm"
    language: str = "en"

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
