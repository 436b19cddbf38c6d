"""What is read out of a file that was written, so that it can be compared with what was meant."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from kerfolio.geometry.contour import Contour, Point

Layers = Mapping[str, tuple[Contour, ...]]
"""Contours in mm, y up, by the name of their layer, in the order of the file."""


class UnreadableError(ValueError):
    """A file is not what its ending says; the words tell why, for people."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadBack:
    """A cut file, read from its bytes alone; lengths in mm by the unit that the file states.

    ``words`` is its lettering by layer, in the order of the file. ``thickness`` is that of the
    sheet it is for, None when it states none. ``zeros`` are the places that programs take as 0,0,
    in the drawing's own mm. ``strange`` tells what is in it that no file of this program holds.
    """

    layers: Layers
    words: Mapping[str, tuple[str, ...]]
    thickness: float | None
    zeros: tuple[Point, ...] = ((0.0, 0.0),)
    strange: tuple[str, ...] = ()
