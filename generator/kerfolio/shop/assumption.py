"""What a figure rests on, as shown to people beside it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from kerfolio.basis.reader import Reader
from kerfolio.basis.said import Text, told

COMMON_PRACTICE = "common practice, no single source"
"""The source of a fact that every shop knows and no table states."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Assumption:
    """One thing taken for granted: what it is, its value in words, and where that comes from."""

    label: str
    value: Text
    source: str

    def told(self, reader: Reader) -> Assumption:
        """Return it with its value told in a unit, ``mm`` or ``in``."""
        return replace(self, value=told(self.value, reader))
