"""What a figure rests on, as shown to people beside it."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Text, phrase, told

COMMON_PRACTICE = phrase("grounds-common-practice")
"""The source of a fact that every shop knows and no table states."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumption:
    """One thing taken for granted: what it is, its value in words, and where that comes from."""

    label: Text
    value: Text
    source: Text

    def told(self, reader: Reader) -> Assumption:
        """Return it in a reader's language and unit."""
        words = (told(each, reader) for each in (self.label, self.value, self.source))
        return Assumption(**dict(zip(("label", "value", "source"), words, strict=True)))


def named_fact(fact: tuple[str, Text, Text]) -> Assumption:
    """Return an assumption from the name of its label's message, its value and its source."""
    name, value, source = fact
    return Assumption(label=phrase(f"grounds-fact-{name}"), value=value, source=source)
