"""Fitted files put together with others that depend on fewer of the same numbers."""

from __future__ import annotations

from dataclasses import replace

from kerfolio.fitted.form import Cell, Fitted, Slot, Text, trimmed


def joined(whole: Fitted, other: Fitted) -> Fitted:
    """Return the files of both, with the numbers of ``whole``.

    Raises ValueError where the other depends on a number that the whole has not, or has otherwise.
    """
    names = [each.name for each in whole.numbers]
    for each in other.numbers:
        if each not in whole.numbers:
            raise ValueError(f"{each.name} is not a number of both")
    places = [names.index(each.name) for each in other.numbers]

    def text_of(text: Text) -> Text:
        return tuple(_moved(each, places) if isinstance(each, Slot) else each for each in text)

    def cell_of(cell: Cell) -> Cell:
        return replace(cell, name=text_of(cell.name), text=text_of(cell.text))

    files = (replace(file, cells=tuple(map(cell_of, file.cells))) for file in other.files)
    return replace(whole, files=(*whole.files, *files))


def _moved(slot: Slot, places: list[int]) -> Slot:
    """Return a slot whose slopes stand at other places."""
    if not slot.slopes:
        return slot
    slopes = [0.0] * (max(places[: len(slot.slopes)]) + 1)
    for place, slope in zip(places, slot.slopes, strict=False):
        slopes[place] = slope
    return replace(slot, slopes=trimmed(slopes))
