"""A plan to begin from: a text with words to fill in, and when to take it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date

_WORD = re.compile(r"\$([a-z_]+)( +(?=#))?")
"""A word to fill in; a remark behind it stays in its column."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Beginning:
    """A kind of plan to begin from: ``name`` is what a maker asks for it by.

    ``when`` says what it is for. ``words`` are those that its ``text`` has as ``$word``, by the
    plan's unit, ``mm`` or ``in``.
    """

    name: str
    order: int
    title: str
    when: str
    words: Mapping[str, Mapping[str, str]]
    text: str

    def written(self, title: str, unit: str, day: date) -> str:
        """Return the text of a plan of this kind, whose first release is of that day."""
        own = {"title": title, "unit": unit, "day": day.isoformat()}
        words = {**self.words[unit], **own}

        def filled(found: re.Match[str]) -> str:
            word, gap = words[found[1]], found[2] or ""
            return word.ljust(len(found[0]) - 1) + " " if gap else word

        return _WORD.sub(filled, self.text)
