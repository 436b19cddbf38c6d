"""The plane faces and straight edges of a solid, whatever it is made from."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from kerfolio.geometry.facets import SMOOTH

Numbers = NDArray[np.float64]
Indices = NDArray[np.int64]
Spot = tuple[float, float, float]


@dataclass(frozen=True, slots=True, eq=False)
class SolidFaces:
    """Plane faces and straight edges in a solid's own frame, mm.

    ``points`` (n, 3) of all loops in a row; loop i starts at ``loops[i]`` and is closed without
    repeating its first point. Face j has the loops from ``faces[j]``, the outer one first and
    counter-clockwise as seen from outside, and the outward unit ``normals[j]``. ``ends``
    (m, 2, 3) are the edges, ``sides`` (m, 2) the two faces that meet there, ``smooth`` (m) tells
    where these are facets of one curve.
    """

    points: Numbers
    loops: Indices
    faces: Indices
    normals: Numbers
    ends: Numbers
    sides: Indices
    smooth: NDArray[np.bool_]


@dataclass(slots=True)
class FacesMade:
    """Faces and edges of a solid as they are collected."""

    loops: list[list[Spot]] = field(default_factory=list)
    firsts: list[int] = field(default_factory=list)
    normals: list[Spot] = field(default_factory=list)
    ends: list[tuple[Spot, Spot]] = field(default_factory=list)
    sides: list[tuple[int, int]] = field(default_factory=list)

    def face(self, loops: Sequence[list[Spot]], normal: Spot) -> int:
        """Add a face, its outer loop first; return its number."""
        self.firsts.append(len(self.loops))
        self.loops += loops
        self.normals.append(normal)
        return len(self.normals) - 1

    def edge(self, start: Spot, end: Spot, one: int, other: int) -> None:
        """Add an edge between two faces; a line on a face has that one on both sides."""
        self.ends.append((start, end))
        self.sides.append((one, other))

    def faces(self, smooth: float = SMOOTH) -> SolidFaces:
        """Return all of it; neighbours that turn less than ``smooth`` degrees are one curve."""
        sizes = [len(loop) for loop in self.loops]
        normals, sides = np.array(self.normals), np.array(self.sides)
        turned = np.einsum("ij,ij->i", normals[sides[:, 0]], normals[sides[:, 1]])
        return SolidFaces(
            points=np.array([spot for loop in self.loops for spot in loop]),
            loops=np.concatenate(([0], np.cumsum(sizes))),
            faces=np.array([*self.firsts, len(self.loops)]),
            normals=normals,
            ends=np.array(self.ends),
            sides=sides,
            smooth=(turned > math.cos(math.radians(smooth))) & (sides[:, 0] != sides[:, 1]),
        )
