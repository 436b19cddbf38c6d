"""Writes texts whose numbers are known before they were rounded.

A recorder is handed to whoever writes a file, as what tells its numbers. It puts a mark where each
number stands and keeps the number itself.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from kerfolio.basis.figured import resolved
from kerfolio.basis.style import Style

_OPENS, _CLOSES = "\ufdd0", "\ufdd1"
"""Noncharacters: Unicode keeps them for use inside programs, and formats write them as they are."""

_MARK = re.compile(f"{_OPENS}([0-9]+){_CLOSES}")


@dataclass(frozen=True, slots=True)
class Recorded:
    """A text in words and numbers by turns, words first and last; None where there is none of it.

    What is the same whatever the numbers are is its ``structure``.
    """

    words: tuple[str, ...]
    styles: tuple[Style, ...]
    values: tuple[float | None, ...]

    @property
    def structure(self) -> tuple[object, ...]:
        """Everything but the numbers."""
        return self.words, self.styles


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """A file at one point: its name and its text, recorded."""

    name: Recorded
    text: Recorded

    @property
    def structure(self) -> tuple[object, ...]:
        """Everything but the numbers."""
        return self.name.structure, self.text.structure


class Recorder:
    """Tells numbers by marks, for one text."""

    def __init__(self) -> None:
        self._kept: list[tuple[float | None, Style]] = []

    def __call__(self, value: float | None, style: Style) -> str:
        """Return a mark for a number, which is kept."""
        self._kept.append((value, style))
        return f"{_OPENS}{len(self._kept) - 1}{_CLOSES}"

    def recorded(self, text: str) -> Recorded:
        """Return a text that was written with this recorder."""
        pieces = _MARK.split(text)
        told = [self._kept[int(place)] for place in pieces[1::2]]
        return Recorded(
            words=tuple(pieces[::2]),
            styles=tuple(style for _, style in told),
            values=tuple(None if value is None else float(value) for value, _ in told),
        )


def recorded_words(text: str) -> Recorded:
    """Return words with figures in them, recorded."""
    recorder = Recorder()
    return recorder.recorded(resolved(text, recorder))
