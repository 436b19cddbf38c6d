"""A file to print that is the same at every point but for its numbers."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from kerfolio.basis.style import Numbers


@dataclass(frozen=True, slots=True, kw_only=True)
class PrintedFile:
    """Its name, and what writes it, each number told as it is told to."""

    name: str
    write: Callable[[Numbers], bytes]
