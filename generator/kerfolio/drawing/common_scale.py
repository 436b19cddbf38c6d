"""One scale for pictures that are to be compared."""

from __future__ import annotations

from collections.abc import Iterable

from kerfolio.settling.settled import SettledPart

SCALES = (1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50)
"""How many mm of wood a mm on paper stands for: those that are easy to reckon with."""
_ROOM = (125.0, 80.0)
"""What the largest part takes of a page, mm, its lettering aside."""


def common_scale(parts: Iterable[SettledPart]) -> int:
    """Return how many mm of wood a mm on paper stands for, so that the largest part has room."""
    sizes = [part.size for part in parts]
    over = max((max(wide / _ROOM[0], high / _ROOM[1]) for wide, high in sizes), default=1.0)
    return next((each for each in SCALES if each >= over), SCALES[-1])
