"""Finding a free place for lettering."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from kerfolio.drawing.lettering import Box, label_box
from kerfolio.drawing.vocabulary import Label


def first_free(candidates: Iterable[Label], is_free: Callable[[Box], bool]) -> Label | None:
    """Return the first label whose box is free, None when there is no such place."""
    return next((label for label in candidates if is_free(label_box(label))), None)
