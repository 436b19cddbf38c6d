"""Where something stands in a maker's files."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A spot in a file of the workshop.

    ``file`` is relative to the workshop with forward slashes; ``line`` and ``column`` count
    from 1, and 0 means the file as a whole.
    """

    file: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}" if self.line else self.file


NOWHERE = Place("")
