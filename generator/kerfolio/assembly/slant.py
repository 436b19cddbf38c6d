"""At which angles panels meet that are not square to each other."""

from __future__ import annotations

import math
from collections.abc import Iterator

from kerfolio.assembly.assembled import Assembled
from kerfolio.geometry.rigid import dot

_SQUARE = 1.0
"""Degrees by which two panels may be off the square and nobody sees it (common practice, no single
source)."""


def slants(assembled: Assembled) -> Iterator[float]:
    """Yield the angle of each joint between panels that neither lie flat nor stand square; degrees.

    Of the two angles between them it is the sharper one.
    """
    faces = {each.label: each.pose.vector((0.0, 0.0, 1.0)) for each in assembled.pieces}
    for joint in assembled.joints:
        along = min(1.0, abs(dot(faces[joint.a], faces[joint.b])))
        angle = math.degrees(math.acos(along))
        if _SQUARE < angle < 90.0 - _SQUARE:
            yield angle
