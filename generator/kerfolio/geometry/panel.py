"""A flat piece as a solid: its shape, its thickness, and what is cut into its show face."""

from __future__ import annotations

from dataclasses import dataclass

from kerfolio.geometry.contour import Point
from kerfolio.geometry.packing import Flat


@dataclass(frozen=True, slots=True)
class Recess:
    """A pocket, groove or counterbore cut from the show face to a depth, mm; walls stand square."""

    shape: Flat
    depth: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Panel:
    """A panel in its own frame: x and y in its face, the show face looks along +z.

    The material fills ``shape`` from z = 0 (rear) to z = ``thickness`` (show face), less each
    recess from z = thickness - depth upwards. Recesses lie inside the shape, may touch or overlap
    one another and may run out over its edge. All in mm. ``engraved`` are lines on the show face,
    which take no material that counts; a closed one repeats its first point.
    """

    shape: Flat
    thickness: float
    recesses: tuple[Recess, ...] = ()
    engraved: tuple[tuple[Point, ...], ...] = ()
