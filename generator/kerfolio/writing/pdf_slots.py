"""Numbers of a PDF file that may be told anew: none of them moves what stands after it.

A file states how long its streams are and where each object begins. So a number that may change is
told in a fixed number of signs, in streams that are not packed; while the file is made a token
stands for it, which nothing takes apart.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field, replace

from kerfolio.basis.figured import Figure
from kerfolio.basis.style import Numbers, Rule, Style, told_as, widest_of

PLACE = Style(rule=Rule.PADDED, decimals=3, width=10)
"""A coordinate in points: 0.0002 mm exact, up to the 14,400 points that a page may have."""

_TOKEN = re.compile("\x01([0-9]+)\x01")
_UNFIT = re.compile(r"[()\\]|[^ -~]")
"""What would have to be written otherwise in a string of the file."""


@dataclass(slots=True)
class Slots:
    """The numbers of a file being written, told by ``numbers`` in the end."""

    numbers: Numbers
    _held: list[tuple[float | None, Style]] = field(default_factory=list)
    _streams: list[tuple[str, str]] = field(default_factory=list)

    def hold(self, value: float | None, style: Style = PLACE) -> str:
        """Return a token for a number."""
        self._held.append((value, style))
        return f"\x01{len(self._held) - 1}\x01"

    def figure(self, figure: Figure) -> str:
        """Return a figure in words as a string of the file. Raises ValueError for what is none."""
        told = told_as(figure.value, figure.style)
        if _UNFIT.search(told):
            raise ValueError(f"`{told}` is no figure that a PDF file can tell anew")
        return self.hold(figure.value, _in_brackets(figure.style))

    def stream(self, operators: Iterable[str]) -> str:
        """Return a stream's text with its numbers as they are here."""
        text = "\n".join(operators)
        told = self._filled(text, told_as)
        if self.numbers is not told_as and told != text:
            self._streams.append((told, self._filled(text, self.numbers)))
        return told

    def told(self, content: str) -> str:
        """Return a written file with the numbers of its streams told by ``numbers``."""
        for here, anew in self._streams:
            before, found, after = content.partition(here)
            if not found:
                raise ValueError("a stream is not in its file as it was written")
            content = f"{before}{anew}{after}"
        return content

    def _filled(self, text: str, numbers: Numbers) -> str:
        return _TOKEN.sub(lambda found: numbers(*self._held[int(found[1])]), text)


def _in_brackets(style: Style) -> Style:
    """Return a style that tells a string of the file, and takes the same room up to 10 m.

    What fills it stands behind the string, where blanks mean nothing.
    """
    before, after = f"({style.before}", f"{style.after})"
    none = f"({style.none})" if style.none else ""
    bracketed = replace(style, before=before, after=after, none=none)
    return replace(bracketed, room=len(widest_of(bracketed)) + 2)
